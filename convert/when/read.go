package when

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
)

// Read reads a date as written. It never fails: what cannot be read is held,
// with the reason.
func Read(text string, o Options) Reading {
	d, ok := quick(text, &o)
	switch {
	case !ok:
		return readSlowly(text, o)
	case o.Evening || !o.plainDay(d):
		return readDay(d, o)
	}
	var buf [10]byte
	return Reading{Start: d, End: d, EventDate: string(d.appendTo(buf[:0])), Year: d.Year, Month: d.Month, Day: d.Day}
}

// readSlowly takes the text apart. It stands apart from Read so that the plain
// forms cost no more than they need.
func readSlowly(text string, o Options) Reading {
	b := builder{o: &o}
	if len(text) > 4*maxText {
		text = text[:4*maxText] // four bytes a character at most
	}
	tidied := tidy(text)
	lead, t := visitApart(spelledDays(openEnded(spelledOut(tidied))), &o)
	b.written = strings.TrimSpace(strings.ToValidUTF8(text, "?"))
	switch {
	case t == "":
		b.held("date-missing", "There is no date.")
	case len(t) > maxText:
		b.held("date-unreadable", "This is too long to be a date. Write the date alone.")
	case onlyFigures(t):
		b.figures(t)
	case b.weekOrOrdinal(t), b.feast(t), b.dayOfWeek(t):
	default:
		b.text(t)
	}
	if oneOrJanuary.MatchString(tidied) && b.v.State == reading.Fair {
		b.held("figure-or-month", b.quoted()+" may begin with the figure one or with the month of January. Write the month's name.", b.e.eventDate())
	}
	if ofVisit.MatchString(lead) {
		b.say(fmt.Sprintf("“%s” numbers the visit.", lead))
	} else if lead != "" {
		b.query("date-remark", fmt.Sprintf("“%s” before the date was not read. Move it to the remarks.", lead))
	}
	if nightOf.MatchString(tidied) {
		b.query("night-letters", fmt.Sprintf("“%s” in %s was read as night of.", tidied[:3], b.quoted()))
	}
	return b.finish()
}

// readDay is the reading of a plain day that has to be looked at.
func readDay(d Date, o Options) Reading {
	b := builder{o: &o, have: true, e: extent{d, d, dayPrec}, written: d.Words()}
	b.evening(nil)
	return b.finish()
}

// plainDay reports whether a day calls for no remark.
func (o *Options) plainDay(d Date) bool {
	return d.Year >= o.floor() && (o.Today.IsZero() || !o.Today.Before(d)) && !epoch(d)
}

// epoch reports whether a program writes the day for an empty date: the first
// day of a spreadsheet's count (1900 and 1904 date systems, ECMA-376 part 1,
// section 18.17.4.1) or of a computer's (POSIX, 1 January 1970).
func epoch(d Date) bool {
	switch d {
	case Date{1899, 12, 30}, Date{1899, 12, 31}, Date{1900, 1, 1}, Date{1904, 1, 1}, Date{1970, 1, 1}:
		return true
	}
	return false
}

// builder puts a reading together.
type builder struct {
	o       *Options
	written string
	v       reading.Verdict
	e       extent
	have    bool // e is what was read
	stated  bool // an interval of stated days
	night   bool
	named   Date // the one day that is written, before it is widened
	open    bool // a held reading has no candidate

	time, endTime string // hours as written for eventDate, with zone
}

func (b *builder) note(v reading.Verdict) { b.v = b.v.And(v) }

func (b *builder) held(code, message string, candidates ...string) {
	b.note(reading.HeldOf(code, message, candidates...))
}

func (b *builder) query(code, message string, candidates ...string) {
	b.note(reading.QueryOf(code, message, candidates...))
}

// say adds to the message of a reading without a doubt.
func (b *builder) say(message string) { b.note(reading.Verdict{Message: message}) }

// quoted is what was written, in quotation marks.
func (b *builder) quoted() string { return "“" + b.written + "”" }

// text reads words and figures.
func (b *builder) text(t string) {
	var s scan
	s.run(t)
	if s.full {
		b.held("date-unreadable", b.quoted()+" holds more than one date or night. Write one date a row.")
		return
	}
	if s.n == 0 || s.why == movingWord {
		b.nothing(&s)
		return
	}
	if s.why != noWord && s.unknown == "" {
		s.unknown = s.whyText // no moths 12/6/21
	}
	v, ok := parse(&s, b.o)
	if ok {
		ok = b.resolve(v)
	} else {
		code, message, candidates := b.unread(&s)
		b.held(code, message, candidates...)
	}
	b.have = ok
	if s.unknown != "" {
		b.open = s.inside
		b.v = reading.HeldOf("date-words", fmt.Sprintf("“%s” in %s was not understood. Write the date alone, and the rest in another column.", s.unknown, b.quoted()))
		return
	}
	if !ok {
		return
	}
	if b.doubts(v, &s); b.v.State == reading.Held {
		return
	}
	if b.e.unit == dayPrec && b.e.first == b.e.last {
		b.named = b.e.first
	}
	b.times(&s)
	b.vague(v, &s)
	b.evening(&s)
	b.weekdays(&s)
}

// finish makes the reading.
func (b *builder) finish() Reading {
	if b.have {
		b.limits()
	}
	if b.v.State == reading.Held {
		if b.have && !b.open && len(b.v.Candidates) == 0 {
			b.v.Candidates = []string{b.e.eventDate()}
		}
		return Reading{Verdict: b.v}
	}
	e := b.e
	r := Reading{Verdict: b.v, Night: b.night, EventDate: b.eventDate()}
	if len(b.time) >= 5 {
		r.Time = b.time[:5]
	}
	if len(b.endTime) >= 5 {
		r.EndTime = b.endTime[:5]
	}
	r.spanDays(e)
	return r
}

// spanDays sets the days of a reading, and the year, month and day they lie
// within.
func (r *Reading) spanDays(e extent) {
	r.Start, r.End = e.first, e.last
	r.Year, r.Month, r.Day = 0, 0, 0
	if e.first.Year != e.last.Year {
		return
	}
	r.Year = e.first.Year
	if e.first.Month != e.last.Month {
		return
	}
	r.Month = e.first.Month
	if e.first.Day == e.last.Day {
		r.Day = e.first.Day
	}
}

// eventDate writes the extent, with its hours where they fix both ends.
func (b *builder) eventDate() string {
	e := b.e
	switch {
	case e.unit != dayPrec || b.time == "":
	case b.endTime != "":
		return e.first.String() + "T" + b.time + "/" + e.last.String() + "T" + b.endTime
	case e.first == e.last:
		return e.first.String() + "T" + b.time
	}
	return e.eventDate()
}
