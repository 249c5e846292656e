package when

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"fieldfare/convert/reading"
)

// nothing holds a text without any component of a date.
func (b *builder) nothing(s *scan) {
	switch {
	case s.why == movingWord:
		b.held("feast", b.quoted()+" falls on different days in different years. Write the day, month and year.")
	case s.why == pointWord:
		b.held("date-elsewhere", b.quoted()+" points at another date. Write the date itself.")
	case s.why == emptyWord, s.doubt && s.unknown == "", s.unknown == "" && s.nClock == 0 && s.nDays == 0:
		b.held("date-missing", b.quoted()+" gives no date. Give the day, the night or at least the month if it can be found.")
	case s.unknown == "" && s.nClock > 0:
		b.held("no-day", b.quoted()+" is a time without a day. Write the date.")
	case s.unknown == "" && s.nDays > 0:
		b.held("no-day", b.quoted()+" names a weekday only. Write the day, month and year.")
	default:
		b.held("date-unreadable", b.quoted()+" could not be read as a date. Write the day, month and year.")
	}
}

// unread says why items make no date.
func (b *builder) unread(s *scan) (code, message string, candidates []string) {
	if s.n == 2 && s.items[0].width == 4 && s.items[1].kind == number && (s.items[1].sep == '/' || s.items[1].sep == '-') {
		y, z := s.items[0].val, s.items[1].val
		tail := 10 // what the second year's figures count to
		if s.items[1].width == 2 {
			tail = 100
		}
		later := y - y%tail + z%tail
		if later <= y {
			later += tail
		}
		switch {
		case s.items[1].width == 4 && z < y:
			return "reversed", b.quoted() + " ends before it begins. Correct one of the two years.", nil
		case z >= 1 && z <= 12:
			return "month-or-year", fmt.Sprintf("%s may be %s %d, or the years %d and %d. Write the month's name, or both years in full.",
					b.quoted(), monthNames[z-1], y, y, later),
				[]string{fmt.Sprintf("%d/%d", y, later), fmt.Sprintf("%d-%02d", y, z)}
		}
	}
	if s.week == weekOf && s.n == 2 {
		if code, message, candidates, ok := b.numberedWeek(s.items[0], s.items[1]); ok {
			return code, message, candidates
		}
	}
	if nightOrDate(s.items[:s.n], b.o) == reading.Held {
		return "night-or-date", b.quoted() + " may be one day, or run from one day or month to another. Write the month's name.", nil
	}
	for i := range s.items[:s.n] {
		it := &s.items[i]
		switch {
		case it.kind == blank && i == 0 && it.width > 2:
			return "no-year", b.quoted() + " gives no year. Write the year if it can be found.", nil
		case it.kind == blank && i == s.n-1:
			return "no-year", b.quoted() + " gives no year. Write the year if it can be found.", nil
		case it.kind == blank:
			return "no-month", b.quoted() + " gives no month. Write the month if it can be found.", nil
		case it.kind == number && i == s.n-1 && s.n == 3 && (it.width == 3 || it.width > 4 || it.width == 1 || it.width == 4 && it.val < 1000):
			return "year-figures", fmt.Sprintf("The year of %s has %s. Write it in four figures.", b.quoted(), figuresCount(it.width)), nil
		}
	}
	if s.n == 2 && s.items[0].kind == number && s.items[1].kind == number && s.items[1].val == s.items[0].val+1 {
		return "no-month", b.quoted() + " may be a night without its month. Write the day, month and year.", nil
	}
	if s.n == 3 && s.items[0].kind == number && s.items[1].kind == number && s.items[2].kind == number {
		if s.items[0].val > 12 && s.items[1].val > 12 && s.items[0].width <= 2 {
			return "no-such-day", b.quoted() + " has no month in it: both numbers are above 12. Check the day and the month.", nil
		}
		if s.items[1].val == 0 {
			return "no-month", b.quoted() + " gives no month. Write the month if it can be found.", nil
		}
		return "no-such-day", b.quoted() + " is no day of the calendar. Check the day and the month.", nil
	}
	return "date-unreadable", b.quoted() + " could not be read as a date. Write the day, month and year.", nil
}

func figuresCount(n int) string {
	switch n {
	case 1:
		return "one figure"
	case 3:
		return "three figures"
	case 4:
		return "a nought in front"
	}
	return strconv.Itoa(n) + " figures"
}

// doubts says what was noticed about the writing.
func (b *builder) doubts(v span, s *scan) {
	if s.before || s.after || s.from && !v.two || s.trailing && v.from.prec != dayPrec {
		side := "no beginning"
		if !s.before {
			side = "no end"
		}
		b.held("open-ended", fmt.Sprintf("%s has %s. Write the earliest and the latest day or year it can have been.", b.quoted(), side))
		b.open = true
	}
	if v.from.swapped || v.to.swapped {
		first, other := "month", "day"
		if b.o.Order == MonthDay {
			first, other = other, first
		}
		b.query("against-order", fmt.Sprintf("%s can only be read with the %s first, though the %s comes first in this notebook: it was read as %s.", b.quoted(), first, other, b.e.words()))
	}
	if v.from.yearOnce {
		b.query("year-first", fmt.Sprintf("%s was read with the year first, as %s. Write the year in four figures.", b.quoted(), b.e.words()))
	}
	if v.from.askRoman {
		b.query("roman-or-unknown", fmt.Sprintf("The x of %s was read as the Roman ten, October. If it stands for a day that is not known, write the month and year only.", b.quoted()))
	}
	switch it := s.items[1]; {
	case !v.from.stray:
	case it.roman && it.sep != ' ': // 12/VI-21: one date, though the strokes differ
		b.query("dash", fmt.Sprintf("%s was read as %s, not as days of one month. Write it out if that is not what was meant.", b.quoted(), b.e.words()))
	default:
		b.held("dash", fmt.Sprintf("%s may be %s, or days of one month. Write it out.", b.quoted(), b.e.words()))
	}
	if v.askYear {
		b.query("year-or-month", fmt.Sprintf("%s was read as %s, but the page's year is %d. If the last number is a month, write its name.", b.quoted(), b.e.words(), b.o.Year))
	}
	if v.askPair {
		b.query("dash", fmt.Sprintf("%s was read as %s. Write it out if that is not what was meant.", b.quoted(), b.e.words()))
	}
	if s.hourOrYear {
		b.held("hour-or-year", fmt.Sprintf("The last number of %s may be an hour or a year. Write the year in four figures.", b.quoted()))
	}
	if s.letters {
		b.query("letters", fmt.Sprintf("A letter stands for a figure in %s: it was read as %s.", b.quoted(), b.e.words()))
	}
	if s.doubled && v.from.prec == monthPrec {
		b.open = true
		b.held("strokes", fmt.Sprintf("%s has nothing between two strokes, where a day or a month should stand. Write the day, month and year.", b.quoted()))
	}
	if s.doubled || s.trailing && !b.open {
		b.query("strokes", fmt.Sprintf("%s has a stroke or dash with nothing beside it: it was read as %s.", b.quoted(), b.e.words()))
	}
	if s.doubt {
		b.query("date-doubt", fmt.Sprintf("%s is marked as not certain: it was read as %s.", b.quoted(), b.e.words()))
	}
	if s.added {
		b.query("brackets", fmt.Sprintf("%s stands in brackets, as if added by another hand: it was read as %s.", b.quoted(), b.e.words()))
	}
	if s.lead != "" {
		b.query("date-remark", fmt.Sprintf("“%s” before the date was not read. Move it to the remarks.", s.lead))
	}
	if s.remark != "" {
		b.query("date-remark", fmt.Sprintf("“%s” after the date was not read. Move it to the remarks.", s.remark))
	}
	b.name(s)
}

// name says how a month that is not plainly spelt was read.
func (b *builder) name(s *scan) {
	switch s.quality {
	case misspelt:
		b.say(fmt.Sprintf("“%s” was read as %s.", s.named, b.monthOf(s)))
	case likely:
		b.query("month-spelling", fmt.Sprintf("“%s” was read as %s. Check the spelling.", s.named, b.monthOf(s)))
	case foreign:
		b.query("month-language", fmt.Sprintf("“%s” was read as %s, from another language.", s.named, b.monthOf(s)))
	case twoWays:
		b.held("month-spelling", fmt.Sprintf("“%s” may be more than one month. Write the month out.", s.named))
		b.open = true
	}
}

func (b *builder) monthOf(s *scan) string {
	_, m, _ := lookUp([]byte(strings.ToLower(s.named)))
	if m < 1 || m > 12 {
		return b.e.words()
	}
	return monthNames[m-1]
}

// weekdays compares the days of the week that are written with the calendar.
func (b *builder) weekdays(s *scan) {
	if s.nDays == 0 {
		return
	}
	e := b.e
	if b.named.IsZero() && !b.stated {
		b.query("weekday-unused", fmt.Sprintf("The weekday of %s could not be compared with one day.", b.quoted()))
		return
	}
	check := func(d Date, want int) {
		if got := d.Weekday(); got != time.Weekday(want) {
			b.query("weekday-disagrees", fmt.Sprintf("%s was a %s, not a %s. Check the day, the month and the year.", d.Words(), got, time.Weekday(want)))
		}
	}
	if !b.named.IsZero() && (s.nDays == 1 || !b.night) {
		check(b.named, s.days[0])
	} else {
		check(e.first, s.days[0])
	}
	if s.nDays > 1 {
		check(e.last, s.days[1])
	}
}

// limits compares the extent with the present, the earliest year and the
// longest interval.
func (b *builder) limits() {
	e, o := b.e, b.o
	if e.first.Year < 1000 || e.last.Year > 9999 {
		b.open = true
		b.held("year-figures", b.quoted()+" has no year of four figures. Check the year.")
		return
	}
	switch {
	case o.Today.IsZero():
	case o.Today.Before(e.first),
		e.unit == dayPrec && b.stated && o.Today.Add(1).Before(e.last):
		b.note(reading.HeldOf("future", fmt.Sprintf("%s is in the future: today is %s. Check the year.", b.e.words(), o.Today.Words())))
		b.v.Candidates = earlierYears(e.first, o.Today)
	}
	switch {
	case e.first.Year < firstYear:
		b.held("early-year", fmt.Sprintf("%s is before %d, too early for a record. Check the year.", b.e.words(), firstYear))
	case e.first.Year < o.floor() && e.unit != decadePrec:
		b.query("early-year", fmt.Sprintf("%s is before %d, the earliest year that is taken without asking. Check the year.", b.e.words(), o.floor()))
	}
	if e.first == e.last && epoch(e.first) {
		b.query("empty-date", fmt.Sprintf("%s is the day that programs write where a date is empty. Check that it was really then.", e.first.Words()))
	}
	if n := e.last.Days() - e.first.Days() + 1; b.stated && n > o.maxDays() {
		b.query("long-interval", fmt.Sprintf("%s is %d days long. Check both ends, or write the days apart.", b.e.words(), n))
	}
}

// earlierYears are what a date in the future may have been: the same day of the
// last year in which it is past, then those of years that differ from the
// written one in one figure or in the order of two, the latest first.
func earlierYears(d, today Date) []string {
	written := d.Year
	d.Year = today.Year
	if today.Before(d) {
		d.Year--
	}
	years := []int{d.Year}
	if written > today.Year {
		years = append(years, slipsOfYear(written, d.Year)...)
	}
	var list []string
	for _, y := range years {
		if d.Year = y; d.Valid() {
			list = append(list, d.String())
		}
	}
	return list
}

// slipsOfYear returns the years before last, no earlier than a lifetime ago,
// that one slip of the hand makes into the written one.
func slipsOfYear(written, last int) []int {
	const lifetime = 100
	text := strconv.Itoa(written)
	var years []int
	for y := last - 1; y > last-lifetime; y-- {
		other := strconv.Itoa(y)
		if len(other) != len(text) {
			continue
		}
		var differ []int
		for i := range text {
			if text[i] != other[i] {
				differ = append(differ, i)
			}
		}
		swapped := len(differ) == 2 && differ[1] == differ[0]+1 && text[differ[0]] == other[differ[1]] && text[differ[1]] == other[differ[0]]
		if len(differ) == 1 || swapped {
			years = append(years, y)
		}
	}
	return years
}
