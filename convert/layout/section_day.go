package layout

import "fieldfare/convert/reading"

// ofDay are the facts that a line may give for its day alone: "12 June 2021, MV,
// Ines Calloway".
var ofDay = [...]struct {
	meaning Meaning
	code    string
}{{Method, methodOfAnotherDate}, {Recorder, "recorder-of-another-date"}}

const methodOfAnotherDate = "method-of-another-date"

// otherMethod is called before the facts of a line hold. The traps of one day may
// stand on several lines; those that stand below records of the day, or are
// named for a new one, are others.
func (s *listState) otherMethod(f *facts) {
	if v := s.section.get(Method); v != nil && f.has(Method) && (s.recorded || f.has(Date) || v.Doubt.Code == methodOfAnotherDate) {
		s.section.drop(Method)
	}
	s.recorded = false
}

// nextDay is called where a line begins another day, as f says it, before its
// facts hold. What it does not say itself is taken from the day before, but was
// said of that.
func (s *listState) nextDay(f *facts) {
	for _, m := range ofDay {
		if f.has(m.meaning) {
			continue
		}
		v := s.ofDayBefore(m.meaning)
		if v == nil || v.Doubt.State != reading.Fair {
			continue
		}
		w := *v
		w.Doubt = reading.QueryOf(m.code, "“"+w.Text+"” was written beside an earlier date, and the lines of later ones do not say. It was taken to be the same for them. If it was not, write it beside each date.", w.Text)
		s.section.drop(m.meaning)
		s.section.set(w)
	}
}

// ofDayBefore returns what was said of the day that ends: on the line of its
// date, or below that.
func (s *listState) ofDayBefore(m Meaning) *Value {
	if day := s.section.get(Date); day != nil {
		if v := s.section.get(m); v != nil && v.Ref.Row >= day.Ref.Row {
			return v
		}
		return nil
	}
	day, v := s.b.facts.get(Date), s.b.facts.get(m)
	if s.section.has(m) || day == nil || v == nil || day.Ref.Row != v.Ref.Row {
		return nil
	}
	return v
}
