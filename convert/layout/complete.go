package layout

import (
	"fmt"
	"strconv"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

func itoa(n int) string { return strconv.Itoa(n) }

var monthTitles = [...]string{"", "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// completeDate gives a date without a year, or a day without a month, what
// the section, the headings or the page say.
func (s *listState) completeDate(v *Value) {
	if v.Kind == notebook.Date {
		s.checkStoredYear(v)
		if len(v.Raw) >= 10 {
			s.above = v.Raw[8:10] + "/" + v.Raw[5:7] + "/" + v.Raw[:4]
		}
		return
	}
	t := v.Text
	if n := len(t); n >= 8 && isDigit(t[n-1]) && isDigit(t[n-2]) && isDigit(t[n-3]) && isDigit(t[n-4]) && t[n-4] <= '2' {
		s.year, s.short, s.above = 0, false, t
		s.yearText(t[n-4:])
		return
	}
	form := noDate
	isDay := dayNumber(t) > 0
	if !isDay {
		form = scanDate(t)
	}
	if form.hasYear() {
		if y := yearIn(t); y > 0 {
			s.year, s.short = y, false
		} else if y, ok := shortYear(t); ok {
			s.year, s.short = y, true
		}
		return
	}
	year, _ := s.contextYear()
	month := s.section.month
	if month == 0 {
		month = s.b.facts.month
	}
	doubt := reading.Verdict{}
	short := false
	winter := 0
	if year == 0 && form != noDate {
		winter = s.b.facts.winterYear(t)
	}
	if winter > 0 {
		year = winter
		doubt = s.b.facts.winterDoubt(t, year)
	} else if year == 0 && s.year > 0 && form != noDate {
		year, short = s.year, s.short
		said := itoa(year)
		if short {
			said = said[2:]
		}
		doubt = reading.QueryOf("year-from-above", fmt.Sprintf("“%s” has no year. The year %s was taken from the date above it. Please check it.", t, said))
	}
	full := ""
	switch {
	case isDay && month == 0 && s.b.axis == nil:
		full, doubt = s.dayBelow(t)
	case isDay && month > 0:
		full = t + " " + monthTitles[month]
		if year > 0 {
			full += " " + itoa(year)
		}
	case form == dayMonth || form == pairOnly || form == monthOnly || form == noDate && isNight(t):
		full, doubt = s.withYear(t, form, month, year, doubt)
	}
	if full == "" || full == t {
		return
	}
	if winter == 0 {
		doubt = s.turnOfYear(t, month, year, doubt)
	}
	if v.Verbatim == "" {
		v.Verbatim = t
	}
	s.above = full
	if v.Text = full; short { // the century is for the reader of dates to say
		v.Text = strings.ReplaceAll(full, itoa(year), itoa(year)[2:])
	}
	if doubt.State != reading.Fair {
		v.Doubt = v.Doubt.And(doubt)
	}
}

// shortYear returns the year of two figures at the end of a date, as one of
// this century: 3/7/19, 12 June 14.
func shortYear(t string) (int, bool) {
	n := len(t)
	if n < 5 || !isDigit(t[n-1]) || !isDigit(t[n-2]) || strings.IndexByte("/. '", t[n-3]) < 0 || scanDate(t) != fullDate {
		return 0, false
	}
	y, ok := isInt(t[n-2:])
	return 2000 + y, ok
}

// turnOfYear asks about a year stated once where the dates run on into the
// next: January below December.
func (s *listState) turnOfYear(t string, month, year int, doubt reading.Verdict) reading.Verdict {
	m := monthIn(monthWord(t))
	if m == 0 {
		if m = month; m == 0 {
			return doubt
		}
	}
	if s.lastMonth >= 10 && m <= 3 {
		s.turned = true
	} else if m >= 4 {
		s.turned = false
	}
	s.lastMonth = m
	if s.turned && year > 0 {
		doubt = doubt.And(reading.QueryOf("year-may-have-turned", fmt.Sprintf("“%s” stands below dates of the end of the year and is read as %d, the year that the page states. It may be %d. Please check it.", t, year, year+1)))
	}
	return doubt
}

// monthWord is the first word of a text that names a month.
func monthWord(t string) string {
	for i := 0; i < len(t); i++ {
		if isLetter(t[i]) {
			w := firstWord(t[i:])
			if monthOf(w) > 0 {
				return w
			}
			i += len(w)
		}
	}
	return ""
}

func (s *listState) yearText(digits string) {
	if y, ok := isInt(digits); ok && y >= 1800 && y <= 2100 {
		s.year = y
	}
}

// isNight: 13/14, two days running.
func isNight(t string) bool {
	a, b, ok := strings.Cut(t, "/")
	if !ok {
		a, b, ok = strings.Cut(t, "-")
	}
	x, okA := isInt(trim(a))
	y, okB := isInt(trim(b))
	return ok && okA && okB && x >= 1 && y <= 31 && y == x+1
}

func (s *listState) withYear(t string, form dateForm, month, year int, doubt reading.Verdict) (string, reading.Verdict) {
	if month > 0 && (form == pairOnly || form == noDate) && isNight(t) {
		_, b, _ := strings.Cut(strings.ReplaceAll(t, "-", "/"), "/")
		if n, _ := isInt(trim(b)); n == month {
			doubt = doubt.And(reading.QueryOf("day-or-night", "“"+t+"” may be a day and a month, or the night between two days of "+monthTitles[month]+". It is read as a day and a month."))
		} else {
			full := t + " " + monthTitles[month]
			if year > 0 {
				full += " " + itoa(year)
			}
			return full, doubt
		}
	}
	if year == 0 || form == noDate {
		return "", reading.Verdict{}
	}
	return addYear(t, year), doubt
}

func (s *listState) contextYear() (int, string) {
	if s.rowYear > 0 {
		return s.rowYear, "the place"
	}
	if s.section.year > 0 {
		return s.section.year, s.section.yearSaid
	}
	return s.b.facts.year, s.b.facts.yearSaid
}

// addYear completes a day and month in the style they are written in. A night
// that runs into January gets both years.
func addYear(t string, year int) string {
	y := itoa(year)
	if a, b, ok := strings.Cut(t, "/"); ok && monthIn(a) == 12 && monthIn(b) == 1 && len(a) > 2 && len(b) > 2 {
		return trim(a) + " " + y + "/" + trim(b) + " " + itoa(year+1)
	}
	bare := strings.TrimRight(t, " ./-,")
	end := bare[len(bare)-1]
	i := strings.LastIndexAny(bare, " ./-")
	switch {
	case monthOf(firstWord(bare)) > 0 && isDigit(end):
		return bare + ", " + y
	case i > 0 && bare[i] != ' ' && (isDigit(end) || strings.Count(bare, string(bare[i])) == 1 && !strings.Contains(bare, " ")):
		return bare + string(bare[i]) + y
	}
	return bare + " " + y
}

func firstWord(s string) string {
	for i := 0; i < len(s); i++ {
		if !isLetter(s[i]) {
			return s[:i]
		}
	}
	return s
}

// checkStoredYear asks where a spreadsheet stored a year that nobody wrote: a
// date shown without its year, on a page of another year.
func (s *listState) checkStoredYear(v *Value) {
	year, said := s.contextYear()
	if year == 0 || len(v.Raw) < 10 {
		return
	}
	stored, ok := isInt(v.Raw[:4])
	if !ok || stored == year || strings.Contains(v.Text, v.Raw[:4]) || scanDate(v.Text).hasYear() {
		return
	}
	right := itoa(year) + v.Raw[4:10]
	v.Doubt = v.Doubt.And(reading.QueryOf("stored-year-differs", fmt.Sprintf(
		"The cell shows “%s” without a year; the spreadsheet stored %s, but %s says %d. Most likely it was %s.", v.Text, v.Raw[:4], said, year, right), right))
}

// bareMonth gives a row without any date the month or year of its section or
// page.
func (s *listState) bareMonth(b *block, d *Draft) {
	year, _ := s.contextYear()
	month, from := s.section.month, FromSection
	if month == 0 {
		month, from = b.facts.month, b.facts.monthFrom
	}
	switch {
	case month > 0 && year > 0:
		d.Values = append(d.Values, Value{Meaning: Date, Text: monthTitles[month] + " " + itoa(year), Kind: notebook.Text, From: from})
	case year > 0:
		if from = b.facts.yearFrom; s.section.year > 0 {
			from = FromSection
		}
		d.Values = append(d.Values, Value{Meaning: Date, Text: itoa(year), Kind: notebook.Text, From: from})
	}
}
