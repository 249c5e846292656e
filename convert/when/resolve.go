package when

import (
	"fmt"
	"strconv"
)

// resolve gives the ends of a span their years and days. It reports whether
// there is an extent to go on with.
func (b *builder) resolve(v span) bool {
	if v.from.prec == dayPrec && v.two {
		return b.resolveDays(v)
	}
	if v.two {
		return b.resolveVague(v)
	}
	p := v.from
	if p.bothWays && p.year.width == 0 && b.o.Year == 0 {
		y, _ := b.o.shortYear(p.d)
		b.held("day-or-year", fmt.Sprintf("%s may be the %s of %s, or %s %d. Write the day, month and year.",
			b.quoted(), ordinal(p.d), monthNames[p.m-1], monthNames[p.m-1], y), fmt.Sprintf("%04d-%02d", y, p.m))
		return false
	}
	if p.prec == dayPrec && p.m == 0 && !p.noDay {
		b.held("no-month", b.quoted()+" gives no month. Write the day, month and year.")
		return false
	}
	if p.noDay && (p.m == 0 && p.year.width < 4 || p.m == 1 && p.year.val == 1900) { // a spreadsheet's day 0
		b.held("date-missing", b.quoted()+" gives no date. Give the day, the night or at least the month if it can be found.")
		return false
	}
	year, ok := b.year(p.year)
	if !ok {
		return false
	}
	if p.prec == decadePrec {
		year = b.decadeYear(p.year)
	}
	if p.bothWays && year%100 == p.d {
		b.query("day-or-year", fmt.Sprintf("%s was read as the %s of %s %d, but it could be the whole month of that year.",
			b.quoted(), ordinal(p.d), monthNames[p.m-1], year), fmt.Sprintf("%04d-%02d", year, p.m))
	}
	if p.noDay {
		p.prec = monthPrec
		if p.m == 0 {
			p.prec = yearPrec
		}
	}
	b.e = extentOf(p, year)
	return b.e.unit != dayPrec || b.exists(b.e.first)
}

// resolveDays resolves a span from one day to another.
func (b *builder) resolveDays(v span) bool {
	f, t := v.from, v.to
	bare := f.m == 0
	if bare {
		f.m = t.m
	}
	var fy, ty int
	var ok bool
	switch {
	case v.double:
		if fy, ok = b.year(t.year); !ok {
			return false
		}
		ty = fy + 1
	case f.year.width > 0 && t.year.width > 0:
		var ok2 bool
		fy, ok = b.year(f.year)
		ty, ok2 = b.year(t.year)
		if !ok || !ok2 {
			return false
		}
	case f.year.width > 0:
		if fy, ok = b.year(f.year); !ok {
			return false
		}
		ty = fy
		if t.m < f.m {
			ty++
		}
	case v.askPair && t.year.width == 0 && b.o.Year == 0:
		b.held("no-year", b.quoted()+" gives no year, or one of a single figure. Write the month's name, and the year in four figures.")
		return false
	default:
		if ty, ok = b.year(t.year); !ok {
			return false
		}
		fy = ty
		if f.m > t.m {
			b.oneYear(&fy, &ty, t.year.width > 0)
		}
	}
	first, last := Date{fy, f.m, f.d}, Date{ty, t.m, t.d}
	if bare && last.Day == 1 && first.Day > 1 && first.Day >= 28 {
		before := last.Add(-1)
		if before.Day == first.Day {
			b.query("month-left-out", fmt.Sprintf("%s was read as %s to %s: the month of the first day is left out.", b.quoted(), before.Words(), last.Words()))
			first = before
		}
	}
	if !b.exists(first) || !b.exists(last) {
		return false
	}
	switch n := last.Days() - first.Days(); {
	case n == -1 && bare:
		first, last = last, first
		b.query("reversed", fmt.Sprintf("The days of %s stand in reverse order. It was read as the night of %s; check the days.", b.quoted(), nightWords(first, last)))
	case n < 0:
		b.held("reversed", fmt.Sprintf("%s ends (%s) before it begins (%s). Correct one of the two.", b.quoted(), last.Words(), first.Words()))
		return false
	}
	b.e = extent{first, last, dayPrec}
	b.stated = true
	b.night = last.Days()-first.Days() == 1
	return true
}

// oneYear settles which end of an interval over New Year has the one year
// that is stated, and asks.
func (b *builder) oneYear(fy, ty *int, stated bool) {
	if stated {
		*fy--
	} else {
		*ty++
	}
	b.query("over-new-year", fmt.Sprintf("%s runs over New Year with one year for both ends: it was read as beginning in %d and ending in %d.", b.quoted(), *fy, *ty))
}

// resolveVague resolves a span from one month, season, year or decade to
// another.
func (b *builder) resolveVague(v span) bool {
	f, t := v.from, v.to
	ty, ok := b.year(t.year)
	if !ok {
		return false
	}
	fy := ty
	switch {
	case f.year.width > 0:
		if fy, ok = b.year(f.year); !ok {
			return false
		}
		if t.year.width == 0 {
			ty = fy
		}
	case v.double:
		ty++
	}
	if f.prec == decadePrec {
		fy, ty = b.decadeYear(f.year), b.decadeYear(t.year)
	}
	from, to := extentOf(f, fy), extentOf(t, ty)
	switch {
	case !to.last.Before(from.first):
	case f.year.width == 0:
		to2 := extentOf(t, ty+1)
		from2 := extentOf(f, fy-1)
		b.held("over-new-year", fmt.Sprintf("%s runs over New Year with one year: write the year of both ends.", b.quoted()),
			from2.to(to).eventDate(), from.to(to2).eventDate())
		return false
	default:
		b.held("reversed", fmt.Sprintf("%s ends (%s) before it begins (%s). Correct one of the two.", b.quoted(), to.words(), from.words()))
		return false
	}
	b.e = from.to(to)
	return true
}

// year resolves a year as written, or takes the page's.
func (b *builder) year(y figuresYear) (int, bool) {
	switch {
	case y.width == 0 && b.o.Year == 0:
		b.held("no-year", b.quoted()+" gives no year, and none is stated on the page. Write the year.")
		return 0, false
	case y.width == 0:
		b.say(fmt.Sprintf("The year %d is the page's.", b.o.Year))
		return b.o.Year, true
	case y.width == 4:
		return y.val, true
	}
	year, other := b.o.shortYear(y.val)
	switch {
	case other == 0:
	case other <= b.o.present()+2:
		// So near ahead, a slip of the year is likelier than a century ago.
		b.held("century", fmt.Sprintf("The year of %s may be %d or %d, the second still to come. Write it in four figures.", b.quoted(), year, other),
			strconv.Itoa(year), strconv.Itoa(other))
		return 0, false
	default:
		b.query("century", fmt.Sprintf("The year of %s was read as %d. Write it in four figures: two can belong to two centuries.", b.quoted(), year),
			strconv.Itoa(year), strconv.Itoa(other))
	}
	return year, true
}

// decadeYear returns the first year of a decade as written: 1990s, 90s.
func (b *builder) decadeYear(y figuresYear) int {
	if y.width == 4 {
		return y.val
	}
	year, _ := b.o.shortYear(y.val)
	return year
}

// exists holds a day that the calendar does not have.
func (b *builder) exists(d Date) bool {
	if d.Valid() {
		return true
	}
	switch {
	case d.Month == 2 && d.Day == 29:
		b.held("no-such-day", fmt.Sprintf("%d was no leap year: there is no 29 February in it. Check the day and the year.", d.Year))
	case d.Month >= 1 && d.Month <= 12:
		b.held("no-such-day", fmt.Sprintf("%s has no %d %s. Check the day and the month of %s.", "The calendar", d.Day, monthNames[d.Month-1], b.quoted()))
	default:
		b.held("no-such-day", b.quoted()+" is no day of the calendar. Check the day and the month.")
	}
	return false
}

func ordinal(n int) string {
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return strconv.Itoa(n) + end
}

// nightWords writes the days of one night: 12 to 13 June 2021.
func nightWords(a, z Date) string {
	switch {
	case a.Year != z.Year:
		return a.Words() + " to " + z.Words()
	case a.Month != z.Month:
		return strconv.Itoa(a.Day) + " " + monthNames[a.Month-1] + " to " + z.Words()
	}
	return strconv.Itoa(a.Day) + " to " + z.Words()
}
