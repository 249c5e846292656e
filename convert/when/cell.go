package when

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/dwc/calendar"
)

// ReadCell reads what a notebook stores for a real spreadsheet date, or any
// ISO 8601 text: "2021-06-12", "2021-06-12T22:45:00". A midnight is no time:
// spreadsheets add it to every plain day. Anything else is read as written.
func ReadCell(raw string, o Options) Reading {
	if len(raw) >= 19 && raw[10] == 'T' && raw[16:] == ":00" {
		raw = raw[:16] // seconds that a cell always has
	}
	return Read(strings.TrimSuffix(raw, "T00:00"), o)
}

// ReadShown reads a real spreadsheet date together with what its cell shows,
// for a cell may store more than was ever written down: a program that is
// given "June 1998" stores the first of the month, and one that is given "12
// June" adds the year in which it was typed. Where less than a day is shown
// and the day stored is the first, the month or year shown is what counts;
// where no year is shown, and the page does not state the same one, the year
// stored is asked about. A cell that shows its whole date, or something that
// is no date, is read by what it stores.
func ReadShown(raw, shown string, o Options) Reading {
	r := ReadCell(raw, o)
	if r.State == reading.Held || shown == "" || raw == shown {
		return r
	}
	shown = strings.ToValidUTF8(shown, "\ufffd") // it is quoted
	bare := o
	bare.Year, bare.Evening, bare.Today = 0, false, Date{}
	s := Read(shown, bare)
	switch {
	case s.Code == "no-year":
		return r.yearNotShown(shown, o)
	case s.State == reading.Held && len(s.Candidates) == 1 && s.Code == "day-or-year":
		// "Jun-98" is a month; "Jun-12" is the month of a year too, for a
		// program that shows a day puts it first or gives the year as well.
		s = Reading{Verdict: reading.QueryOf("month-only", ""), EventDate: s.Candidates[0]}
		s.Start = ReadCell(s.EventDate, bare).Start
		s.End = Date{s.Start.Year, s.Start.Month, calendar.DaysIn(s.Start.Year, s.Start.Month)}
	case s.State != reading.Query || unitOf(s) == dayPrec:
		return r
	}
	day := r.Start
	if day.Day != 1 || s.Start.Year != day.Year && s.Start.Year%100 != day.Year%100 {
		return r
	}
	e := extentOf(point{prec: monthPrec, m: day.Month}, day.Year)
	if unitOf(s) == yearPrec {
		if day.Month != 1 {
			return r
		}
		e = yearsExtent(day.Year, day.Year)
	} else if s.Start.Month != day.Month {
		return r
	}
	b := builder{o: &o, written: shown, have: true, e: e}
	b.query("day-not-shown", fmt.Sprintf("The cell shows “%s” and stores %s, as spreadsheet programs do for a date without a day. It was read as %s.",
		shown, day.Words(), e.words()), e.eventDate(), r.EventDate)
	return b.finish()
}

// yearNotShown asks about a year that a cell stores and does not show.
func (r Reading) yearNotShown(shown string, o Options) Reading {
	if o.Year == r.Start.Year {
		return r
	}
	message := fmt.Sprintf("The cell shows “%s” without a year and stores %d, which may be the year in which it was typed. Check the year.", shown, r.Start.Year)
	if o.Year > 0 {
		message = fmt.Sprintf("The cell shows “%s” without a year and stores %d, but the page's year is %d. Check the year.", shown, r.Start.Year, o.Year)
	}
	r.Verdict = r.And(reading.QueryOf("year-not-shown", message))
	return r
}

// ReadNumber reads a cell that holds a number: a year, a run-together date, a
// day number, or a day and month with a point between, whose final nought a
// spreadsheet drops: 12.1 may have been written 12.10.
func ReadNumber(text string, o Options) Reading {
	r := Read(text, o)
	day, month, found := strings.Cut(text, ".")
	if !found || month != "1" || len(day) > 2 || r.State == reading.Held || o.Order != DayMonth {
		return r
	}
	october := Date{r.Year, 10, r.Start.Day}
	r.Verdict = r.And(reading.QueryOf("nought-dropped", fmt.Sprintf("The cell holds the number %s, which may have been written %s0, %s: spreadsheets drop a final nought. It was read as %s.",
		text, text, october.Words(), r.Start.Words()), r.EventDate, october.String()))
	return r
}
