package validate

import (
	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// Set checks records as a set. Records are observed one by one in their
// order, then Settle draws the conclusions, and Findings says what concerns
// one record.
//
// It remembers 16 bytes of each record (with the slack of the table that
// holds them, about 24), and a few more for each finding.
type Set struct {
	seen     map[[16]byte]int32 // what was observed: its first record
	repeated map[int32]int32    // record: the earlier one that it repeats
}

// NewSet returns an empty set.
func NewSet() *Set {
	return &Set{seen: map[[16]byte]int32{}, repeated: map[int32]int32{}}
}

// Observe takes in the record with that number; numbers rise. Content is its
// fingerprint.
func (s *Set) Observe(n int, content [16]byte, o *dwc.Occurrence, f *Facts) {
	if first, found := s.seen[content]; found {
		s.repeated[int32(n)] = first
	} else {
		s.seen[content] = int32(n)
	}
}

// Settle draws the conclusions once every record has been observed.
func (s *Set) Settle() {}

// Findings returns what there is to say about the record with that number.
func (s *Set) Findings(n int) []reading.Finding {
	if _, found := s.repeated[int32(n)]; !found {
		return nil
	}
	return []reading.Finding{{
		Verdict: reading.QueryOf("duplicate", "The same observation is written twice, letter for letter. If it is one observation, leave one row out."),
		About:   "record",
	}}
}
