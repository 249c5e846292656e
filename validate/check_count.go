package validate

import (
	"fmt"
	"strings"
)

// Counts above which somebody should look (common practice, no source).
const (
	mostAdults   = 1000  // of one taxon in one night or on one walk
	mostAnything = 10000 // eggs and larvae included
	mostScarce   = 20    // of a taxon that is accepted only with proof
)

// checkCountCode asks about a count that is a number of another kind.
func checkCountCode(s *subject) {
	n := s.f.Count
	if !s.f.Counted || n < 100 {
		return
	}
	if n == s.f.Taxon.Number {
		s.query(aboutCount, s.o.IndividualCount, "count-is-a-code", fmt.Sprintf(
			"The count %d is also the checklist number of %s. The number has probably slipped into the column for the count.", n, s.name()))
		return
	}
	if n >= 1000 && figuresOf(s.f.Reference) == s.o.IndividualCount {
		s.query(aboutCount, s.o.IndividualCount, "count-is-a-code", fmt.Sprintf(
			"The count %d has the figures of the grid reference %s. They have probably slipped into the column for the count.", n, s.f.Reference))
	}
}

// figuresOf are the figures of a grid reference: 4588 of TL4588.
func figuresOf(reference string) string {
	return strings.TrimFunc(reference, func(r rune) bool { return r < '0' || r > '9' })
}

// checkCountLarge asks about a count larger than is ever seen.
func checkCountLarge(s *subject) {
	f := s.f
	if !f.Counted || f.Count <= mostScarce && f.Taxon.Most == 0 {
		return
	}
	if most := f.Taxon.Most; most > 0 {
		if f.Count > most {
			s.query(aboutRecord, written(s.name(), s.o.IndividualCount), "count-too-large", fmt.Sprintf(
				"%d of %s is more than the %d that the list expects at most. Check the count and the name.", f.Count, s.name(), most))
		}
		return
	}
	adult := s.o.LifeStage == "" || s.o.LifeStage == "adult"
	switch {
	case f.Count > mostAnything, f.Count > mostAdults && adult:
		s.query(aboutRecord, written(s.name(), s.o.IndividualCount), "count-too-large", fmt.Sprintf(
			"%d of %s is more than is ever seen at once. Check the count; a figure may have been typed twice.", f.Count, s.name()))
	case adult && (f.Taxon.NeedsNote || f.Taxon.NeedsSpecimen):
		s.query(aboutRecord, written(s.name(), s.o.IndividualCount), "count-too-large", fmt.Sprintf(
			"%s is accepted only with proof, and %d at once are many for such a taxon. Check the count and the name.", s.name(), f.Count))
	}
}
