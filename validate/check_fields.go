package validate

import "fieldfare/dwc"

// checkFields asks about terms that break what the standard says of them.
// occurrenceID is given on the way out, to every record.
func checkFields(s *subject) {
	for _, fault := range dwc.Check(s.o) {
		if fault.Term == "occurrenceID" {
			continue
		}
		s.hold(aboutRecord, s.o.Get(fault.Term), "field-"+fault.Term, fault.Message)
	}
}
