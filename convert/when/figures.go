package when

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// onlyFigures reports whether a text is one number, with or without decimals.
func onlyFigures(t string) bool {
	point := false
	for i := 0; i < len(t); i++ {
		switch {
		case digit(t[i]):
		case t[i] == '.' && !point && i >= 5 && i+1 < len(t):
			point = true
		default:
			return false
		}
	}
	return len(t) > 0
}

// figures reads a date that is one number: 20210612, 12062021, 120621, a year,
// or the day number of a spreadsheet.
func (b *builder) figures(t string) {
	whole, _, decimal := strings.Cut(t, ".")
	switch {
	case len(whole) == 5:
		b.serial(t)
	case decimal:
		b.held("date-unreadable", b.quoted()+" is a number, not a date. Write the day, month and year.")
	case len(t) == 8:
		b.eight(t)
	case len(t) == 6:
		b.six(t)
	case len(t) == 4 && figures(t) >= 1000:
		b.have = true
		b.e = yearsExtent(figures(t), figures(t))
		b.query("year-only", fmt.Sprintf("%s gives no month: it was read as the year. Write the day and month if they are known.", b.quoted()))
	default:
		b.held("date-unreadable", b.quoted()+" is a number, not a date. Write the day, month and year.")
	}
}

// serial reads a spreadsheet's day number that has become text. Day 1 is 1
// January 1900, and a 29 February 1900 is counted that never was (ECMA-376
// part 1, section 18.17.4.1, the 1900 date system), so that from March 1900
// the count is that of days since 30 December 1899.
func (b *builder) serial(t string) {
	v, err := strconv.ParseFloat(t, 64)
	n := int(math.Floor(v))
	seconds := int(math.Round((v - math.Floor(v)) * 86400))
	if err != nil || n < 10000 || n > 99999 || seconds >= 86400 {
		b.held("date-unreadable", b.quoted()+" is a number, not a date. Write the day, month and year.")
		return
	}
	epoch := Date{1899, 12, 30}.Days()
	d := DateOf(epoch + n)
	b.have, b.e = true, extent{d, d, dayPrec}
	if seconds > 0 {
		minutes := (seconds + 30) / 60 % (24 * 60)
		b.time = hhmm(minutes/60, minutes%60, -1)
	}
	b.evening(nil)
	b.query("day-number", fmt.Sprintf("%s looks like a spreadsheet's day number: it was read as %s.", b.quoted(), d.Words()),
		b.eventDate(), DateOf(epoch+n+1462).String())
}

// eight reads 20210612 (ISO 8601-1 basic format) and 12062021.
func (b *builder) eight(t string) {
	iso := Date{figures(t[:4]), figures(t[4:6]), figures(t[6:])}
	d := iso
	if !iso.Valid() || iso.Year < 1500 {
		d = Date{figures(t[4:]), figures(t[2:4]), figures(t[:2])}
		if b.o.Order == MonthDay {
			d.Month, d.Day = d.Day, d.Month
		}
	}
	if !d.Valid() || d.Year < 1500 {
		b.held("no-such-day", b.quoted()+" is no day of the calendar. Write the day, month and year.")
		return
	}
	b.have, b.e = true, extent{d, d, dayPrec}
	b.evening(nil)
}

// six reads 310598, and asks where the year may stand first or last.
func (b *builder) six(t string) {
	x, y, z := figures(t[:2]), figures(t[2:4]), figures(t[4:])
	var found []Date
	for _, c := range [...]struct{ yy, m, d int }{{z, y, x}, {x, y, z}} {
		if b.o.Order == MonthDay && c.yy == z {
			c.m, c.d = c.d, c.m
		}
		year, _ := b.o.shortYear(c.yy)
		if d := (Date{year, c.m, c.d}); d.Valid() && b.o.plainDay(d) && (len(found) == 0 || found[0] != d) {
			found = append(found, d)
		}
	}
	switch len(found) {
	case 0:
		b.held("no-such-day", b.quoted()+" is no day of the calendar. Write the day, month and year.")
	case 1:
		b.have, b.e = true, extent{found[0], found[0], dayPrec}
		b.evening(nil)
		b.query("run-together", fmt.Sprintf("%s was read as %s. Write the day, month and year apart.", b.quoted(), found[0].Words()))
	default:
		b.held("run-together", fmt.Sprintf("%s may be %s or %s. Write the day, month and year apart.", b.quoted(), found[0].Words(), found[1].Words()),
			found[0].String(), found[1].String())
	}
}

// weekOrOrdinal reads the week and ordinal dates of ISO 8601-1: 2021-W23-6,
// 2021W236, 2021-W23, 2021-163.
func (b *builder) weekOrOrdinal(t string) bool {
	if len(t) < 7 || len(t) > 10 || shortFigures(t[:4]) < 1000 {
		return false
	}
	year, rest := figures(t[:4]), strings.TrimPrefix(t[4:], "-")
	if len(rest) == 3 && len(t) == 8 && shortFigures(rest) > 0 {
		d := Date{year, 1, 1}.Add(figures(rest) - 1)
		if d.Year != year {
			b.held("no-such-day", b.quoted()+" is no day of that year.")
			return true
		}
		b.have, b.e = true, extent{d, d, dayPrec}
		b.evening(nil)
		return true
	}
	if rest[0] != 'W' && rest[0] != 'w' || len(rest) < 3 || shortFigures(rest[1:3]) < 1 || shortFigures(rest[1:3]) > 53 {
		return false
	}
	tail := strings.TrimPrefix(rest[3:], "-")
	monday, exists := weekOfYear(year, figures(rest[1:3]))
	switch {
	case !exists:
		b.held("no-such-day", b.quoted()+" is no week of that year.")
	case tail == "":
		b.have, b.e = true, extent{monday, monday.Add(6), dayPrec}
		b.query("whole-week", fmt.Sprintf("%s names a week: it was read as %s. Write the day if it is known.", b.quoted(), b.e.words()))
	case len(tail) == 1 && tail[0] >= '1' && tail[0] <= '7':
		d := monday.Add(int(tail[0] - '1'))
		b.have, b.e = true, extent{d, d, dayPrec}
		b.evening(nil)
	default:
		return false
	}
	return true
}

// weekOfYear is the Monday of a week of the year. ISO 8601-1: week 1 is the one
// with the year's first Thursday.
func weekOfYear(year, week int) (monday Date, exists bool) {
	fourth := Date{year, 1, 4}
	monday = fourth.Add(-(int(fourth.Weekday())+6)%7 + 7*(week-1))
	return monday, week >= 1 && monday.Add(3).Year == year
}

// numberedWeek says what a week by its number may be, "week 27 2004" or "2004
// week 27". It is not read, for recorders count weeks from the start of the
// year, from the first of April, or from their own first visit (common
// practice, no source).
func (b *builder) numberedWeek(week, year item) (code, message string, candidates []string, ok bool) {
	if week.width == 4 {
		week, year = year, week
	}
	if week.kind != number || week.width > 2 || year.kind != number || year.width != 4 {
		return "", "", nil, false
	}
	monday, exists := weekOfYear(year.val, week.val)
	if !exists {
		return "", "", nil, false
	}
	e := extent{monday, monday.Add(6), dayPrec}
	return "week-number", fmt.Sprintf("%s gives a week by its number, and weeks are counted in several ways: by the calendar it would be %s. Write the day, or the first and the last.",
		b.quoted(), e.words()), []string{e.eventDate()}, true
}

// shortFigures reads a text that is all figures; -1 for another.
func shortFigures(t string) int {
	for i := 0; i < len(t); i++ {
		if !digit(t[i]) {
			return -1
		}
	}
	return figures(t)
}
