package validate

import "fmt"

// checkAbsence asks about individuals of something that is said to be absent.
func checkAbsence(s *subject) {
	if s.o.OccurrenceStatus == "absent" && s.f.Counted && s.f.Count > 0 {
		s.hold(aboutRecord, written(s.name(), "absent", s.o.IndividualCount), "absent-with-count", fmt.Sprintf(
			"%s is said to be absent, and yet %d were counted. Say which is right.", s.name(), s.f.Count))
	}
}

// checkPresence asks about a presence of none.
func checkPresence(s *subject) {
	if s.f.Counted && s.f.Count == 0 && s.o.OccurrenceStatus == "present" {
		s.query(aboutRecord, written(s.name(), "present", "0"), "present-without-any", fmt.Sprintf(
			"%s is said to be present, and the count is 0. Say which is right.", s.name()))
	}
}
