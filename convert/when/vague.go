package when

import (
	"fmt"

	"fieldfare/convert/reading"
)

// vague applies approximations and words about weeks, and asks about dates
// that are no single day.
func (b *builder) vague(v span, s *scan) {
	single := v.from.prec == dayPrec && !v.two && !v.from.noDay
	switch {
	case s.week != 0 && single:
		b.weeks(s.week)
		return
	case s.week != 0 && b.stated && s.nth == 0:
		b.query("whole-week", fmt.Sprintf("%s names a week or weekend: it was read as %s. Write the day if it is known.", b.quoted(), b.e.words()))
		return
	case s.part != wholePart && single && s.nth == 0 && !s.weekSeen:
		b.query("date-words", fmt.Sprintf("%s was read as %s, without the word before or after it.", b.quoted(), b.e.words()))
		return
	case s.week != 0, s.nth != 0, s.part != wholePart, s.weekSeen && v.from.part == wholePart && v.to.part == wholePart:
		b.held("date-words", b.quoted()+" could not be read as a part of a month. Write the first and the last day.")
		return
	}
	if s.about {
		was := b.e.words()
		if !v.two {
			b.e = b.e.around()
		}
		b.stated = false
		b.query("approximate", fmt.Sprintf("%s is approximate: about %s, handed in as %s.", b.quoted(), was, b.e.words()))
		return
	}
	switch {
	case v.list:
		b.query("several-days", fmt.Sprintf("%s names more than one date: it was read as %s. Write one row for each if the records belong to one of them.", b.quoted(), b.e.words()))
	case v.from.noDay:
		b.query("no-day", fmt.Sprintf("%s gives no day: it was read as %s.", b.quoted(), b.e.words()))
	case s.either && v.from.prec == dayPrec && v.two:
		b.query("between", fmt.Sprintf("%s does not say which day: it was read as %s.", b.quoted(), b.e.words()))
	case v.from.prec == dayPrec:
	case b.e.unit == dayPrec:
		b.query("part-of-month", fmt.Sprintf("%s is no single day: it was read as %s.", b.quoted(), b.e.words()))
	case v.from.prec == seasonPrec && v.from.season == winter && !v.double && !v.two && v.from.part == wholePart:
		b.query("season", fmt.Sprintf("%s was read as the winter that began in the year, %s. Write both years.", b.quoted(), b.e.words()),
			b.e.eventDate(), monthsExtent(12*b.e.first.Year-1, 12*b.e.first.Year+1).eventDate())
	case v.from.prec == seasonPrec:
		b.query("season", fmt.Sprintf("%s is no single day: it was read as %s.", b.quoted(), b.e.words()))
	case v.from.prec == monthPrec:
		b.query("month-only", fmt.Sprintf("%s gives no day: it was read as %s. Write the day if it is known.", b.quoted(), b.e.words()))
	default:
		b.query("year-only", fmt.Sprintf("%s gives no month: it was read as %s. Write the day and month if they are known.", b.quoted(), b.e.words()))
	}
}

// weeks widens a day to the week or weekend that it names.
func (b *builder) weeks(kind int) {
	d := b.e.first
	switch kind {
	case weekEnding:
		b.e.first = d.Add(-6)
	case weekStarting, weekOf:
		b.e.last = d.Add(6)
	case weekEnd:
		switch d.Weekday() {
		case 6:
			b.e.last = d.Add(1)
		case 0:
			b.e.first = d.Add(-1)
		default:
			b.held("weekend", fmt.Sprintf("%s was a %s, not a day of a weekend.", d.Words(), d.Weekday()))
			return
		}
	}
	b.query("whole-week", fmt.Sprintf("%s names several days: it was read as %s. Write the day if it is known.", b.quoted(), b.e.words()))
}

// evening makes a night of a day that is written as one, or that the notebook
// takes for an evening.
func (b *builder) evening(s *scan) {
	if s != nil && s.night && b.stated {
		b.night = true
		if n := b.e.last.Days() - b.e.first.Days(); n > 1 && !s.plural {
			b.query("nights", fmt.Sprintf("%s names one night but runs over %d: it was read as %s.", b.quoted(), n, b.e.words()))
		}
	}
	if b.e.unit != dayPrec || b.e.first != b.e.last || b.v.State == reading.Held {
		return
	}
	written := s != nil && (s.night || s.dusk && s.dawn)
	if !written && (!b.o.Evening || b.time != "" || s != nil && s.daytime) {
		return
	}
	b.e.last = b.e.first.Add(1)
	b.night = true
}

// times applies the hours that are written.
func (b *builder) times(s *scan) {
	for _, c := range s.clocks[:s.nClock] {
		if !c.known {
			b.query("no-such-time", fmt.Sprintf("“%s” is no time of day. The date was read without it.", c.text))
			return
		}
	}
	if s.nClock == 0 || b.e.unit != dayPrec {
		return
	}
	first := s.clocks[0].text
	if s.nClock == 1 && s.openClock && !s.dusk {
		b.query("open-hours", fmt.Sprintf("The hours of %s have no beginning or no end, and the date was read without them.", b.quoted()))
		return
	}
	if s.nClock == 1 {
		if s.dusk && first < "12:00" && b.e.first == b.e.last { // dusk to 01:00
			b.endTime, b.night = first, true
			b.e.last = b.e.first.Add(1)
			return
		}
		if first == "00:00" || first == "00:00:00" {
			b.say("A time of midnight was left out: spreadsheet programs add it to a plain day.")
			return
		}
		b.time = first
		if s.dawn && first >= "12:00" && b.e.first == b.e.last { // 22:00 to dawn
			b.e.last = b.e.first.Add(1)
			b.night = true
		}
		return
	}
	b.time, b.endTime = first, s.clocks[1].text
	if b.e.first != b.e.last {
		return
	}
	if b.endTime[:5] < b.time[:5] {
		b.e.last = b.e.first.Add(1)
		b.night = true
	}
}
