package validate

import (
	"errors"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// Entry is one record of a set, with its place among the others.
type Entry struct {
	// N is the record's number; numbers rise.
	N int
	// Sheet and Row say where it stands: the sheet's index among all sheets,
	// and the row in it.
	Sheet, Row int
	// Content is the fingerprint of what was written.
	Content [16]byte
	// Visit: nothing was found on it, so it is no record.
	Visit bool
	// ID is the occurrenceID that the record leaves with; needed by Findings
	// only.
	ID string
	*dwc.Occurrence
	Facts *Facts
}

// Set checks records as a set. Every record is observed in order, then Settle
// draws the conclusions, and Findings says what concerns one record; it is to
// be called for the same records in the same order.
//
// Of each record the set remembers at most four 64-bit values until it is
// settled: one each for its taxon, day and place, its person and night, and its
// count, which are left out where the record does not say them, and one for its
// content. From some hundred thousand records on they go to temporary files. After
// that it holds about
// a hundred bytes of each record that shares taxon, day and place with
// another, and small tables of the different sites, traps, people and names.
// Nothing depends on chance or on the number of processors.
type Set struct {
	contents   hashes
	repeats    repeats
	duplicates duplicates
	journeys   journeys
	history    history
	past       past
	names      [3]names // of taxa, people, sites
	autofill   autofill
	nights     trapNights
	pages      pages
}

// NewSet returns an empty set.
func NewSet() *Set { return &Set{} }

// Past takes in a record made earlier, before the first record of
// the set is observed: duplicates, firsts and the history of counts know it.
// FactsOf gives what can be read from the record itself. HandedIn tells the
// records of an earlier submission of the same notebooks from those of others,
// which are no duplicates.
func (s *Set) Past(o *dwc.Occurrence, f *Facts, handedIn bool) {
	if handedIn {
		s.duplicates.addPast(o, f)
	}
	s.history.add(o, f)
	s.past.add(o, f)
}

// Observe takes in a record.
func (s *Set) Observe(e *Entry) {
	s.contents.add(contentKey(&e.Content))
	if e.Visit {
		return
	}
	s.duplicates.add(e)
	s.journeys.add(e)
	s.history.add(e.Occurrence, e.Facts)
	s.names[0].add(e.ScientificName)
	for person := range strings.SplitSeq(e.RecordedBy, " | ") {
		s.names[1].add(person)
	}
	s.names[2].add(e.Locality)
	s.autofill.add(e)
	s.nights.add(e)
	s.pages.add(e)
}

// Settle draws the conclusions once every record has been observed. An error is
// one of reading a temporary file back.
func (s *Set) Settle() error {
	err := errors.Join(s.repeats.settle(&s.contents), s.duplicates.settle(), s.journeys.settle(), s.history.settle(), s.past.settle())
	for i := range s.names {
		s.names[i].settle()
	}
	s.autofill.settle()
	s.nights.settle()
	return err
}

// Close gives up the temporary files of a set that is not to be settled; after
// Settle it does nothing.
func (s *Set) Close() {
	for _, h := range []*hashes{&s.contents, &s.duplicates.keys, &s.duplicates.pastKeys, &s.duplicates.pastBoth, &s.journeys.visits, &s.history.counts, &s.past.taxa} {
		h.drop()
	}
}

// Ordinal says the how manyth record with its content this is, from 1. It is
// to be called once for each record, in order.
func (s *Set) Ordinal(content *[16]byte) int { return s.repeats.next(content) }

// Findings returns what there is to say about a record. Where says in words
// where another record stands. A finding that is fair is advice.
func (s *Set) Findings(e *Entry, where func(sheet, row int) string) []reading.Finding {
	if e.Visit {
		return nil
	}
	var found []reading.Finding
	add := func(f reading.Finding, ok bool) {
		if ok {
			found = append(found, f)
		}
	}
	add(s.duplicates.find(e, where))
	found = append(found, s.journeys.find(e, where)...)
	add(s.history.find(e))
	add(s.past.find(e))
	found = append(found, s.oddNames(e)...)
	found = append(found, s.autofill.find(e)...)
	add(s.pages.find(e))
	add(s.nights.find(e))
	return found
}

func queryOf(about, written, code, message string, candidates ...string) reading.Finding {
	return reading.Finding{Verdict: reading.QueryOf(code, message, candidates...), About: about, Written: written}
}

// placeKey takes in the place: its name, else its reference, else the
// hundredth of a degree around it.
func (h hash) place(o *dwc.Occurrence, f *Facts) hash {
	switch {
	case o.Locality != "":
		return h.folded(o.Locality)
	case f.Reference != "":
		return h.text(f.Reference)
	case f.Placed:
		return h.number(int32(f.Latitude * 100)).number(int32(f.Longitude * 100))
	}
	return h.byte(0)
}

// taxon takes in the taxon: its name, else what was written.
func (h hash) taxon(o *dwc.Occurrence) hash {
	if o.ScientificName != "" {
		return h.text(o.ScientificName)
	}
	return h.folded(o.VerbatimIdentification)
}
