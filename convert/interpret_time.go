package convert

import (
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
	return r.At(h)
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
