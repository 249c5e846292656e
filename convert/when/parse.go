package when

import "fieldfare/convert/reading"

// span is what is written, as one point of time or two.
type span struct {
	from, to point
	two      bool
	list     bool // 12 & 13 June: separate days rather than from one to the other
	double   bool // 31 Dec/1 Jan 2020/21: the years of both ends are stated
	askPair  bool // 12/13/6: a night without a year, or a date
	askYear  bool // 4/5/12 on a page of another year
}

// parse finds what the items say. It is a search: the items as one point of
// time, or cut in two at a separator that can mean "to".
func parse(s *scan, o *Options) (span, bool) {
	it := s.items[:s.n]
	if s.n == 0 {
		return span{}, false
	}
	if v, ok := seasonYears(it); ok {
		return v, true
	}
	var double bool
	it, double = doubleYear(it)
	it = shortenList(shortenRun(pairMonths(it)))
	p, whole := single(it, o)
	v, score, tie := cut(it, o)
	v.double = double
	pair := nightOrDate(it, o)
	switch {
	case pair == reading.Held && whole && !p.swapped:
		return span{}, false
	case whole && (score == 0 || !prefersCut(it, p)):
		// A Roman numeral alone is no month, but a mark of some other kind.
		lone := len(it) == 1 && it[0].roman
		return span{from: p, to: p, askYear: pair == reading.Query}, !lone && (!double || p.prec != dayPrec)
	case score == 0 || tie:
		return span{}, false
	}
	return v, true
}

// pairMonths rewrites two days with two months, 31/1 May/June 2021, as two
// dates.
func pairMonths(it []item) []item {
	if len(it) < 4 || it[0].kind != number || it[1].kind != number || it[2].kind != month || it[3].kind != month ||
		it[1].sep != it[3].sep || it[1].sep != '/' && it[1].sep != '-' {
		return it
	}
	out := append(make([]item, 0, len(it)), it[0], it[2], it[1], it[3])
	out[1].sep = ' '
	return append(out, it[4:]...)
}

// prefersCut reports whether items that could be one date are rather two
// days: 12-13/06, where the strokes differ and no month is 13.
func prefersCut(it []item, p point) bool {
	return len(it) == 3 && !alike(it[1], it[2]) && p.swapped && it[0].kind == number && it[1].kind == number
}

// alike reports whether two items have the same separator before them.
func alike(a, b item) bool { return a.sep == b.sep && a.wide == b.wide }

// nightOrDate looks at three numbers that make a date but may as well be some
// days and their month (5-6.07), on a page that states the year or not, or
// some months of a year (5-8/2021, or 2021-05/08, as ISO 8601-1 has them).
// Held: as likely the one as the other. Query: a date, but with another year
// than the page's.
func nightOrDate(it []item, o *Options) reading.State {
	if len(it) != 3 || it[2].apos || it[0].kind != number || it[1].kind != number || it[2].kind != number ||
		it[0].width > 2 && it[0].width != 4 || it[1].width > 2 || it[2].width == 1 || it[1].sep == 'T' || it[1].sep == '&' || it[2].sep == 'T' {
		return reading.Fair
	}
	a, b, c := it[0].val, it[1].val, it[2]
	days := a < b && c.width == 2 && c.val >= 1 && c.val <= 12
	mixed := !alike(it[1], it[2]) && it[1].sep != ' ' && it[2].sep != ' '
	switch {
	case it[0].width == 4:
		if mixed && b < c.val && c.val <= 12 {
			return reading.Held
		}
	case mixed && days && (b == a+1 || o.Year > 0):
		return reading.Held
	case mixed && it[1].sep == '-' && (it[2].sep == '/' || it[2].sep == '.') && a < b && b <= 12: // months
		return reading.Held
	case days && b <= 12 && o.Year > 0:
		if y, _ := o.shortYear(c.val); y < o.Year-1 || y > o.Year+1 {
			return reading.Query
		}
	}
	return reading.Fair
}

// seasonYears reads a winter that is given both its years: winter 1998/99.
func seasonYears(it []item) (span, bool) {
	if len(it) != 3 || it[0].kind != seasonItem || season(it[0].val) != winter || it[2].sep != '/' && it[2].sep != '-' {
		return span{}, false
	}
	y, ok := yearOf(it[1])
	z, ok2 := yearOf(it[2])
	if last := it[2]; last.width == 1 && last.kind == number && last.val == (y.val+1)%10 { // winter 2003/4
		z, ok2 = figuresYear{val: y.val + 1, width: 4}, true
	}
	if !ok || !ok2 || (y.val+1)%100 != z.val%100 || z.width == 4 && y.width == 4 && z.val != y.val+1 {
		return span{}, false
	}
	p := point{prec: seasonPrec, season: winter, year: y, part: it[0].part, until: it[0].until}
	return span{from: p, to: p, double: true}, true
}

// doubleYear drops the second of two years that follow each other at the end
// of something longer: 31 Dec/1 Jan 2020/21.
func doubleYear(it []item) ([]item, bool) {
	n := len(it)
	if n < 4 || it[0].width == 4 || it[n-1].kind != number || it[n-1].sep != '/' && it[n-1].sep != '-' || it[n-2].kind != number {
		return it, false
	}
	if it[n-2].width == 2 && n == 6 && it[n-3].kind == month && it[n-1].width == 2 && it[n-1].val == (it[n-2].val+1)%100 {
		return it[:n-1], true // 20/21
	}
	if it[n-2].width != 4 {
		return it, false
	}
	y, z := it[n-2].val, it[n-1]
	if z.width == 4 && z.val == y+1 || z.width == 2 && z.val == (y+1)%100 || z.width == 1 && z.val == (y+1)%10 && n == 4 && it[0].kind == month && it[1].kind == month && it[0].val > it[1].val {
		return it[:n-1], true
	}
	return it, false
}

// shortenList leaves the first and last of a list of days: 12, 15 & 18 June,
// 12/13/14 June.
func shortenList(it []item) []item {
	k, and := 0, false
	for i := 1; i < len(it) && it[i].kind == number && it[i].width <= 2 && !it[i].apos && it[i].sep != ' ' && it[i].sep != '.'; i++ {
		k = i
		and = and || it[i].sep == '&'
		if (it[i].sep == '/' || it[i].sep == '-') && (it[i].val != it[i-1].val+1 || it[i].sep != it[1].sep) {
			return it
		}
	}
	named := k+1 < len(it) && it[k+1].kind == month && it[k+1].sep == ' ' ||
		k+2 < len(it) && it[k+1].sep == '.' && it[k+2].sep == '.' // 3/4/5.7.2004
	if k < 2 || !and && !named || it[0].kind != number || it[1].sep == 'T' {
		return it
	}
	last := it[k]
	if last.sep == ',' {
		last.sep = '&'
	}
	out := append(make([]item, 0, len(it)), it[0], last)
	return append(out, it[k+1:]...)
}

// shortenRun leaves the first and last of three or more months or years that
// follow each other: June/July/August 1998.
func shortenRun(it []item) []item {
	k := 0
	for i := 1; i < len(it) && it[i].kind == it[0].kind && it[i].width == it[0].width && it[i].sep != ' ' &&
		it[i].val == it[i-1].val+1 && it[i].part == it[0].part; i++ {
		k = i
	}
	if k < 2 || it[0].kind != month && it[0].width != 4 || it[0].kind > month {
		return it
	}
	return append(append(make([]item, 0, len(it)), it[0]), it[k:]...)
}

// cut finds the best place to cut the items into two ends. Score is 0 where
// there is none; tie where two places are as good and differ in meaning.
func cut(it []item, o *Options) (best span, score int, tie bool) {
	for k := 1; k < len(it); k++ {
		n := 0
		switch sep := it[k].sep; {
		case sep == 'T':
			n = 40
		case sep == '&':
			n = 30
		case sep == '-' && it[k].wide:
			n = 25
		case sep == '-', sep == '/':
			n = 10
		case (sep == '.' || sep == ' ') && k == 1 && len(it) >= 4 && it[0].kind == number && it[1].kind == number &&
			it[0].width <= 2 && it[1].width == 2 && it[1].val == it[0].val+1: // 12 13 June 2021, not 1 2 June, which may be the 12th
			n = 3
		case sep == ',' && (k == 1 || k == 3 && len(it) == 6):
			n = 5
		default:
			continue
		}
		alone := true
		for i := 1; i < len(it); i++ {
			alone = alone && (i == k || !alike(it[i], it[k]))
		}
		if alone {
			n += 5
		}
		v, ok := join(it[:k], it[k:], o)
		if !ok {
			continue
		}
		v.list = it[k].sep == '&' || it[k].sep == ',' || n < 10
		v.askPair = v.askPair && !alone
		if (v.from.year.width > 0 || v.to.year.width > 0) && (o.Year == 0 || v.to.year.width == 4 || v.to.year.apos) {
			n += 2
		}
		if v.to.swapped {
			n -= 3
		}
		switch {
		case n > score:
			best, score, tie = v, n, false
		case n == score:
			tie = true
		}
	}
	return best, score, tie
}

// join reads two ends and reports whether they go together.
func join(a, b []item, o *Options) (span, bool) {
	from, ok := single(a, o)
	if !ok || len(a) == 3 && a[1].sep != a[2].sep && a[1].kind == number && a[1].sep != ' ' && a[2].sep != ' ' {
		return span{}, false // 9-10/11 is no date within a longer text
	}
	if len(b) == 2 && b[0].kind == number && b[1].kind == number && (b[1].sep == ' ' || b[1].sep == ',') && b[1].width <= 2 {
		return span{}, false // nor is 21 2
	}
	v := span{from: from, two: true}
	if to, ok := shortEnd(from, a, b, o); ok {
		v.to = to
		return v, true
	}
	to, ok := single(b, o)
	if !ok || to.prec != from.prec {
		return span{}, false
	}
	if from.swapped || to.swapped {
		if from, to, ok = against(a, b, o); !ok {
			return span{}, false
		}
		v.from = from
	}
	v.to = to
	switch from.prec {
	case dayPrec:
		if from.noDay || to.noDay {
			return span{}, false
		}
		// A day alone goes with a day and month, not with a day alone.
		numeric := len(b) > 1 && b[0].kind == number && b[1].kind == number
		if to.m == 0 || from.m == 0 && (b[0].kind == month || numeric && o.Order == MonthDay) {
			return span{}, false
		}
		if from.m == 0 && len(b) == 2 && numeric {
			v.askPair = true
		}
		return v, true
	case yearPrec:
		return v, from.year.width == to.year.width
	}
	return v, true
}

// against reads both ends against the order of the notebook, for one of them
// can only be read so. A day alone has no order.
func against(a, b []item, o *Options) (from, to point, ok bool) {
	other := *o
	other.Order = 1 - o.Order
	from, ok = single(a, &other)
	to, ok2 := single(b, &other)
	if !ok || !ok2 || from.swapped || to.swapped || from.m == 0 || to.m == 0 {
		return from, to, false
	}
	to.swapped = true
	return from, to, true
}

// shortEnd reads ends that leave out what the beginning has said: ISO 8601-1
// intervals (2021-06-12/14, 2021-06-12/07-03), 12 June 2021 to 13th, June 12-13, June 12-13 2021,
// 1990-95, and with the month first 6/12-13/2021.
func shortEnd(from point, a, b []item, o *Options) (point, bool) {
	isISO := len(a) == 3 && a[0].kind == number && a[0].width == 4 && from.prec == dayPrec
	last := b[0]
	d, isDay := dayOf(last)
	switch {
	case isISO && len(b) == 1 && isDay && last.width <= 2:
		return point{prec: dayPrec, d: d, m: from.m, year: from.year}, true
	case len(a) == 3 && from.prec == dayPrec && a[2].width == 4 && len(b) == 1 && isDay && (last.nth || last.wide || last.sep == 'T'):
		return point{prec: dayPrec, d: d, m: from.m, year: from.year}, true
	case len(a) == 2 && from.prec == dayPrec && from.m > 0 && from.year.width == 0 && a[1].kind == month && len(b) == 1 && isDay && last.nth:
		return point{prec: dayPrec, d: d, m: from.m}, true // 12 June - 15th
	case isISO && len(b) == 2 && isDay && b[1].kind == number && b[1].width == 2 && b[1].sep == '-':
		return point{prec: dayPrec, d: b[1].val, m: last.val, year: from.year}, true
	case from.prec == dayPrec && len(a) == 2 && (a[0].kind == month || o.Order == MonthDay && a[1].kind == number) && !from.swapped && isDay && from.year.val == 0:
		to := point{prec: dayPrec, d: d, m: from.m}
		if len(b) == 1 {
			return to, true
		}
		if y, ok := yearOf(b[1]); ok && len(b) == 2 && (b[1].sep != '/' && b[1].sep != '-' || a[0].kind == number) {
			to.year = y
			return to, true
		}
	case from.prec == yearPrec && from.year.width == 4 && len(b) == 1 && last.kind == number && last.width == 2 && len(a) == 1:
		y := from.year.val - from.year.val%100 + last.val
		if last.val == 0 {
			y += 100 // 1999/00
		}
		return point{prec: yearPrec, year: figuresYear{val: y, width: 4}}, y > from.year.val && (last.val > 12 || y == from.year.val+1 && last.val == 0)
	}
	return point{}, false
}
