package when

import (
	"strings"

	"fieldfare/convert/reading"
)

// Join makes one reading of a date and an end date that stand in columns of
// their own; endText is the end as written. Either may be vague. A held
// beginning holds the whole; an end that could not be read leaves the
// beginning with a query.
func Join(start, end Reading, endText string, o Options) Reading {
	endText = strings.ToValidUTF8(endText, "?")
	switch {
	case start.State == reading.Held:
		start.Verdict = start.And(end.Verdict)
		return start
	case end.State == reading.Held:
		start.Verdict = start.And(reading.QueryOf("end-date-unread",
			"The end date "+endText+" was not read, and the beginning stands alone. "+end.Message))
		return start
	}
	b := builder{o: &o, written: endText, v: start.And(end.Verdict), have: true}
	if len(end.EventDate) > 10 && end.Time == "" {
		end.EventDate = "" // the end is a night or an interval itself
	}
	b.e = extent{start.Start, end.End, dayPrec}
	if unitOf(start) == unitOf(end) {
		b.e.unit = unitOf(start)
	}
	last := end.End
	if end.Night && start.Night && start.Start == end.Start {
		last = start.End
	}
	b.e.last = last
	b.stated = b.e.unit == dayPrec
	b.time, b.endTime = start.Time, end.Time
	if last.Before(start.Start) {
		b.held("reversed", "The end date "+endText+" lies before the beginning ("+start.Start.Words()+"). Correct one of the two.")
		b.have = false
		return b.finish()
	}
	b.night = start.Night || last.Days()-start.Start.Days() == 1
	return b.finish()
}

// unitOf tells whether a reading is in days, months or years.
func unitOf(r Reading) precision {
	switch len(r.EventDate) {
	case 4, 9:
		return yearPrec
	case 7, 15:
		return monthPrec
	}
	return dayPrec
}
