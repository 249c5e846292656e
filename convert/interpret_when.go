package convert

import (
	"fmt"
	"strconv"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/when"
)

// when reads the date and time.
func (in *interpreter) when(d *draft) {
	whole, r, found := in.dates(d)
	d.read.date.value = &whole
	if !found {
		in.note(d, reading.HeldOf("date-missing", d.sheet.missing(layout.Date)), &whole)
		return
	}
	in.note(d, r.Verdict, &whole)
	r = in.clock(d, r)
	if r.State == reading.Held || r.EventDate == "" {
		return
	}
	d.o.EventDate, d.o.EventTime = r.EventDate, r.EventTime()
	number := func(n int) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	d.o.Year, d.o.Month, d.o.Day = number(r.Year), number(r.Month), number(r.Day)
	d.facts.Start, d.facts.End, d.facts.Dated = int32(r.Start.Days()), int32(r.End.Days()), true
	d.facts.Night = r.Night
}

// dates reads the date, or both dates of a row that has two, as one. What the
// recorder answered about the whole of it counts for more.
func (in *interpreter) dates(d *draft) (whole layout.Value, r when.Reading, found bool) {
	v, found := d.Get(layout.Date)
	if !found {
		gap := d.absent(layout.Date, d.sheet.hasDate)
		if _, found = in.instead(&gap); found {
			r = in.date(d, &gap)
		}
		return gap, r, found
	}
	whole = *v
	d.o.VerbatimEventDate = verbatim(v)
	end, ranged := d.Get(layout.EndDate)
	if ranged {
		whole = joined(" / ", v, end)
		d.o.VerbatimEventDate += " / " + verbatim(end)
	}
	if d.sheet.mixed.State != reading.Fair && when.Ambiguous(v.Text) {
		whole.Text += d.sheet.only() // elsewhere it may mean the other day
	}
	text, answered := in.instead(&whole)
	if !answered && in.answers.Len() > 0 {
		text, answered = in.answers.Replacement(string(layout.Date), d.o.VerbatimEventDate+d.sheet.only())
	}
	if answered {
		o := in.dateOptions
		o.Order, o.Year = d.sheet.order, d.sheet.year
		o.Evening = in.project.Reading.Evenings && (d.Night || d.facts.Light || strings.Contains(strings.ToLower(v.Heading), "night"))
		return whole, in.memory.date(text, o), true
	}
	r = in.date(d, v)
	if ranged {
		r = when.Join(r, in.date(d, end), fmt.Sprintf("%q", end.Text), in.dateOptions)
	}
	return whole, r, true
}

// date reads one date cell.
func (in *interpreter) date(d *draft, v *layout.Value) when.Reading {
	o := in.dateOptions
	o.Order = d.sheet.order
	o.Evening = in.project.Reading.Evenings && (d.Night || d.facts.Light || strings.Contains(strings.ToLower(v.Heading), "night"))
	text := in.text(v)
	o.Year = d.sheet.year
	if text == v.Text {
		switch {
		case v.Kind == notebook.Date && v.Raw != "":
			return when.ReadShown(v.Raw, verbatim(v), o)
		case v.Kind == notebook.Number && v.Verbatim == "":
			return when.ReadNumber(text, o)
		}
	}
	if d.sheet.yearFirst && text == v.Text {
		return when.ReadYearFirst(text, o)
	}
	r := in.memory.date(text, o)
	if d.sheet.mixed.State != reading.Fair && when.Ambiguous(text) {
		r.Verdict = r.Verdict.And(d.sheet.mixed)
	}
	return r
}

// verbatim is what the cells of a value really say.
func verbatim(v *layout.Value) string {
	if v.Verbatim != "" {
		return v.Verbatim
	}
	return v.Text
}
