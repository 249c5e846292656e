package validate

// checkFields asks about terms that break what the standard says of them.
// occurrenceID is given on the way out, to every record, so meanwhile it is
// taken as given.
func checkFields(s *subject) {
	id := s.o.OccurrenceID
	if id == "" {
		s.o.OccurrenceID = "given on the way out"
	}
	faults := s.terms.Check(s.o)
	s.o.OccurrenceID = id
	for _, fault := range faults {
		s.hold(aboutRecord, s.o.Get(fault.Term), "field-"+fault.Term, fault.Message)
	}
}
