package convert

import (
	"fmt"
	"strconv"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/when"
)

// when reads the date and time.
func (in *interpreter) when(d *draft) {
	v, found := d.Get(layout.Date)
	if !found {
		in.note(d, reading.HeldOf("date-missing", d.sheet.missing(layout.Date)))
		return
	}
	d.o.VerbatimEventDate = verbatim(v)
	r := in.date(d, v)
	if end, found := d.Get(layout.EndDate); found {
		r = in.until(d, r, end)
	}
	in.note(d, r.Verdict, v)
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

// date reads one date cell.
func (in *interpreter) date(d *draft, v *layout.Value) when.Reading {
	o := in.dateOptions
	o.Order = d.sheet.order
	o.Evening = in.project.Reading.Evenings && (d.Night || d.facts.Light)
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
	r := in.memory.date(text, o)
	if d.sheet.mixed.State != reading.Fair && when.Ambiguous(text) {
		r.Verdict = r.Verdict.And(d.sheet.mixed)
	}
	return r
}

// until joins a date and the end date of a column of its own.
func (in *interpreter) until(d *draft, start when.Reading, v *layout.Value) when.Reading {
	d.o.VerbatimEventDate += " / " + verbatim(v)
	end := in.date(d, v)
	return when.Join(start, end, fmt.Sprintf("%q", v.Text), in.dateOptions)
}

// verbatim is what the cells of a value really say.
func verbatim(v *layout.Value) string {
	if v.Verbatim != "" {
		return v.Verbatim
	}
	return v.Text
}
