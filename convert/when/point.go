package when

// precision is how finely a point of time is stated.
type precision uint8

const (
	dayPrec precision = iota
	monthPrec
	seasonPrec
	yearPrec
	decadePrec
)

// figuresYear is a year as written.
type figuresYear struct {
	val, width int
	apos       bool
}

// point is one end of what is written: a day, a month, a year; d, m or year
// may be missing and come from the other end.
type point struct {
	prec     precision
	d, m     int
	year     figuresYear
	season   season
	part     part
	until    part // of two parts the last
	swapped  bool // read against the order of the notebook: no other reading
	yearOnce bool // year first with two figures: 98/06/12
	noDay    bool // the day is written as not known
	askRoman bool // x/6/2021: October, or a day not known
	bothWays bool // June 12: a day or a year
	stray    bool // a dash before a year of two figures that no other dash goes with
}

// yearOf reads an item as a year: four figures, or two.
func yearOf(it item) (figuresYear, bool) {
	if it.kind != number || it.nth || it.width != 4 && it.width != 2 || it.width == 4 && it.val < 1000 {
		return figuresYear{}, false
	}
	return figuresYear{it.val, it.width, it.apos}, true
}

// dayOf reads an item as a day of a month; a day outside 1 to 31 is kept, for
// the message.
func dayOf(it item) (int, bool) {
	return it.val, it.kind == number && it.width <= 2 && !it.apos
}

// single reads items as one point of time.
func single(it []item, o *Options) (point, bool) {
	for i := range it {
		if i > 0 && (it[i].sep == 'T' || it[i].sep == '&') {
			return point{}, false
		}
	}
	switch len(it) {
	case 1:
		return one(it[0])
	case 2:
		return two(it[0], it[1], o)
	case 3:
		return three(it[0], it[1], it[2], o)
	}
	return point{}, false
}

func one(a item) (point, bool) {
	switch a.kind {
	case month:
		return point{prec: monthPrec, m: a.val, part: a.part, until: a.until}, true
	case seasonItem:
		return point{prec: seasonPrec, season: season(a.val), part: a.part, until: a.until}, true
	case decade:
		if a.width != 4 && a.width != 2 {
			return point{}, false
		}
		return point{prec: decadePrec, year: figuresYear{a.val, a.width, a.apos}, part: a.part, until: a.until}, true
	case number:
		if y, ok := yearOf(a); ok && (a.width == 4 || a.apos) {
			return point{prec: yearPrec, year: y, part: a.part, until: a.until}, true
		}
		if d, ok := dayOf(a); ok && d > 0 {
			return point{prec: dayPrec, d: d}, true
		}
	}
	return point{}, false
}

func two(a, b item, o *Options) (point, bool) {
	switch {
	case a.kind == month && b.kind == number:
		return monthNumber(a, b)
	case b.kind == month && a.kind == blank:
		return point{prec: dayPrec, m: b.val, noDay: true}, true
	case b.kind == month && a.kind == number:
		if y, ok := yearOf(a); ok && a.width == 4 {
			return point{prec: monthPrec, m: b.val, year: y, part: b.part, until: b.until}, true
		}
		d, ok := dayOf(a)
		if b.part != wholePart {
			return point{}, false
		}
		return point{prec: dayPrec, d: d, m: b.val, noDay: d == 0}, ok
	case a.kind == seasonItem && b.kind == number:
		y, ok := yearOf(b)
		return point{prec: seasonPrec, season: season(a.val), year: y, part: a.part, until: a.until}, ok
	case b.kind == seasonItem && a.kind == number:
		y, ok := yearOf(a)
		return point{prec: seasonPrec, season: season(b.val), year: y, part: b.part, until: b.until}, ok && a.width == 4
	case a.kind == number && b.kind == number:
		return twoNumbers(a, b, o)
	}
	return point{}, false
}

// monthNumber reads "June 98", "June 2003", "June 12th", and "June 12", which
// may be a day or a year.
func monthNumber(a, b item) (point, bool) {
	y, isYear := yearOf(b)
	d, isDay := dayOf(b)
	isDay = isDay && a.part == wholePart
	switch {
	case isYear && (b.width == 4 || b.apos || b.val > 31 || b.val == 0 || a.part != wholePart):
		return point{prec: monthPrec, m: a.val, year: y, part: a.part, until: a.until}, true
	case isDay && (b.nth || b.width == 1):
		return point{prec: dayPrec, d: d, m: a.val, noDay: d == 0}, true
	case isDay:
		return point{prec: dayPrec, d: d, m: a.val, bothWays: true}, true
	}
	return point{}, false
}

func twoNumbers(a, b item, o *Options) (point, bool) {
	if y, ok := yearOf(b); ok && b.width == 4 && a.width <= 2 && a.val <= 12 {
		if a.val == 0 {
			return point{prec: yearPrec, year: y}, true
		}
		return point{prec: monthPrec, m: a.val, year: y}, true
	}
	if y, ok := yearOf(a); ok && a.width == 4 {
		twoYears := b.sep == '/' && b.val == (a.val+1)%100 // 2003/04
		return point{prec: monthPrec, m: b.val, year: y}, b.width == 2 && b.val >= 1 && b.val <= 12 && b.sep != ' ' && !twoYears
	}
	if y, ok := yearOf(b); ok && b.sep != ' ' && a.width <= 2 && a.val >= 1 && a.val <= 12 && (b.val > 31 || b.apos) { // 5/98
		return point{prec: monthPrec, m: a.val, year: y}, true
	}
	d, m, swapped, ok := dayAndMonth(a, b, o.Order)
	night := swapped && b.val == a.val+1 // 12/13: a night without its month
	return point{prec: dayPrec, d: d, m: m, swapped: swapped, noDay: d == 0}, ok && m > 0 && !night
}

// dayAndMonth reads two numbers in the notebook's order, or against it where
// there is no other way. A blank or zero may stand for the day.
func dayAndMonth(a, b item, order Order) (d, m int, swapped, ok bool) {
	if a.width > 2 || b.width > 2 || a.apos || b.apos || a.kind > number && a.kind != blank || b.kind > number && b.kind != blank {
		return 0, 0, false, false
	}
	if order == MonthDay {
		a, b = b, a
	}
	switch {
	case b.kind == blank:
		return 0, 0, false, false
	case b.val >= 1 && b.val <= 12 && !b.nth:
		return a.val, b.val, false, true
	case b.val == 0 && a.val == 0:
		return 0, 0, false, true
	case b.val > 12 && b.val <= 31 && a.val >= 1 && a.val <= 12 && a.kind == number && !a.nth:
		return b.val, a.val, true, true
	}
	return 0, 0, false, false
}

func three(a, b, c item, o *Options) (point, bool) {
	switch {
	case a.kind == number && b.kind == month: // 12 June 2021, 2021 June 12
		if y, ok := yearOf(a); ok && a.width == 4 {
			d, isDay := dayOf(c)
			return point{prec: dayPrec, d: d, m: b.val, year: y, noDay: d == 0}, isDay && b.part == wholePart
		}
		y, isYear := yearOf(c)
		d, isDay := dayOf(a)
		stray := c.sep == '-' && b.sep != '-' && c.width == 2 && c.val <= 31
		return point{prec: dayPrec, d: d, m: b.val, year: y, noDay: d == 0, stray: stray}, isYear && isDay && b.part == wholePart
	case a.kind == blank && b.kind == month:
		y, ok := yearOf(c)
		return point{prec: dayPrec, m: b.val, year: y, noDay: true}, ok
	case a.kind == month && b.kind == number && (a.roman || c.sep != '-' && c.sep != '/' || b.sep == c.sep): // June 12th, 2021
		y, isYear := yearOf(c)
		d, isDay := dayOf(b)
		ask := a.roman && a.val == 10 && d <= 12 && b.sep != ' '
		return point{prec: dayPrec, d: d, m: a.val, year: y, askRoman: ask, noDay: d == 0}, isYear && isDay && a.part == wholePart
	case c.kind == month: // 2021 12 June
		y, isYear := yearOf(a)
		d, isDay := dayOf(b)
		return point{prec: dayPrec, d: d, m: c.val, year: y, noDay: d == 0}, isYear && isDay && a.width == 4 && c.part == wholePart
	case b.kind == blank:
		return blankMonth(a, c)
	case c.kind == blank: // 2021-06-??
		y, ok := yearOf(a)
		return point{prec: dayPrec, m: b.val, year: y, noDay: true}, ok && a.width == 4 && b.kind == number && b.width <= 2 && b.val >= 1 && b.val <= 12
	case c.kind != number:
		return point{}, false
	}
	if y, ok := yearOf(a); ok && (a.width == 4 || c.width <= 2 && c.val <= 31 && o.certainYear(a)) {
		d, m, swapped, ok := dayAndMonth(c, b, DayMonth)
		return point{prec: dayPrec, d: d, m: m, year: y, swapped: swapped, yearOnce: a.width == 2, noDay: d == 0}, ok
	}
	y, isYear := yearOf(c)
	d, m, swapped, ok := dayAndMonth(a, b, o.Order)
	return point{prec: dayPrec, d: d, m: m, year: y, swapped: swapped, noDay: d == 0}, isYear && ok
}

// blankMonth reads a year whose day and month are both written as not known:
// ??/??/2021, 2021-xx-xx.
func blankMonth(a, c item) (point, bool) {
	if a.kind == blank && a.width <= 2 && c.width == 4 {
		y, ok := yearOf(c)
		return point{prec: dayPrec, year: y, noDay: true}, ok
	}
	y, ok := yearOf(a)
	return point{prec: dayPrec, year: y, noDay: true}, ok && a.width == 4 && c.kind == blank
}

// certainYear reports whether a number of two figures can be a year and no
// day, and of one century only.
func (o *Options) certainYear(a item) bool {
	_, other := o.shortYear(a.val)
	return a.val > 31 && a.width == 2 && other == 0
}
