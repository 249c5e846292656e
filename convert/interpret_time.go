package convert

import (
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/reading"
	"fieldfare/convert/when"
	"fieldfare/convert/when/light"
)

// clock reads the time of day, from columns of its own or from beside the
// date. A time that cannot be read does not hold the record: it is kept as
// written among the field notes.
func (in *interpreter) clock(d *draft, r when.Reading) when.Reading {
	d.lit = r.Time
	v, found := d.Get(layout.Time)
	if !found || r.State == reading.Held {
		return r
	}
	text := in.text(v)
	if end, found := d.Get(layout.EndTime); found {
		text += "-" + in.text(end)
	}
	h := when.ReadTime(text)
	if h.State == reading.Held {
		h.State = reading.Query
	}
	in.note(d, h.Verdict, v)
	if h.EventTime == "" {
		d.o.FieldNotes = joinRemarks(d.o.FieldNotes, labelled(v, text))
		return r
	}
	if h.Start != "" {
		d.lit = h.Start
	}
	if d.ofNight(v) {
		return r.MorningAfter(h)
	}
	return r.At(h)
}

// ofNight reports whether the date beside a time is that of the evening on which
// the night began: its column is headed so, or the hours of one night stand side
// by side.
func (d *draft) ofNight(time *layout.Value) bool {
	date, found := d.Get(layout.Date)
	if !found {
		return false
	}
	return strings.Contains(strings.ToLower(date.Heading), "night") && date.From != layout.FromHeading ||
		d.Night && time.From == layout.FromHeading && date.From != layout.FromHeading
}

// daylight asks about a light trap that was lit by day. Where the place is not
// known, the sun is that of the middle of England.
func (in *interpreter) daylight(d *draft) {
	f := &d.facts
	if !f.Light || !f.Dated || d.lit == "" {
		return
	}
	lat, lon := 52.8, -1.5
	if f.Placed {
		lat, lon = f.Latitude, f.Longitude
	}
	verdict := light.Trap(lat, lon, when.DateOf(int(f.Start)), d.lit)
	if v, found := d.Get(layout.Time); found {
		in.noteRecord(d, verdict, d.lit+", "+d.o.SamplingProtocol, v)
	} else if v, found := d.Get(layout.Date); found {
		in.noteRecord(d, verdict, d.lit+", "+d.o.SamplingProtocol, v)
	}
}
