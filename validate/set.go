package validate

import (
	"errors"
	"sync"

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
// that it holds some twenty bytes of each group of records that share taxon, day
// and place, or that are alike in content, the rest of them in a temporary file
// that Close gives up, and small tables of the different sites, traps, people
// and names.
// Nothing depends on chance or on the number of processors.
type Set struct {
	contents   Repeats
	duplicates duplicates
	journeys   journeys
	history    history
	past       past
	names      [3]names // of taxa, people, sites
	autofill   autofill
	nights     trapNights
	pages      pages
	keys       keys
	own        *Observer
	glance     Glance
	observers  []*Observer
}

// NewSet returns an empty set.
func NewSet() *Set {
	s := &Set{}
	s.own = s.Observer()
	return s
}

// Past takes in a record made earlier, before the first record of
// the set is observed: duplicates, firsts and the history of counts know it.
// FactsOf gives what can be read from the record itself. HandedIn tells the
// records of an earlier submission of the same notebooks from those of others,
// which are no duplicates.
func (s *Set) Past(o *dwc.Occurrence, f *Facts, handedIn bool) {
	if handedIn {
		s.duplicates.addPast(s.keys.same(o, f), o.OccurrenceID)
	}
	if countsForHistory(o, f) {
		s.history.counts.add(historyValue(s.keys.history(o, f), f))
	}
	s.past.add(o, f)
}

// Observe looks at a record and takes it in.
func (s *Set) Observe(e *Entry) {
	s.own.Look(e, &s.glance)
	s.Take(e.N, &s.glance)
}

// Settle draws the conclusions once every record has been observed. An error is
// one of reading a temporary file back.
func (s *Set) Settle() error {
	var errs [5]error
	var wait sync.WaitGroup
	for i, settle := range [...]func() error{func() error { return s.contents.Settle(false) }, s.duplicates.settle, s.journeys.settle, s.history.settle, s.past.settle} {
		wait.Go(func() { errs[i] = settle() }) // each sorts what it alone remembers
	}
	wait.Wait()
	for _, o := range s.observers {
		for i := range s.names {
			s.names[i].join(&o.names[i])
		}
		s.nights.join(&o.nights)
	}
	s.own, s.observers = nil, nil
	for i := range s.names {
		s.names[i].settle()
	}
	s.autofill.settle()
	s.nights.settle()
	return errors.Join(errs[:]...)
}

// Close gives up the temporary files of a set.
func (s *Set) Close() {
	s.contents.Drop()
	s.duplicates.seen.close()
	for _, h := range []*hashes{&s.duplicates.keys, &s.duplicates.pastKeys, &s.duplicates.pastBoth, &s.journeys.visits, &s.history.counts, &s.past.taxa} {
		h.drop()
	}
}

// Failed returns the error that kept Findings from reading a temporary file
// back; nil where all that it said is whole.
func (s *Set) Failed() error { return s.duplicates.failed }

// Ordinal says the how manyth record with its content this is, from 1. It is
// to be called once for each record, in order.
func (s *Set) Ordinal(content *[16]byte) int { return s.contents.Next(content) }

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
	add(s.duplicates.find(&s.keys, e, where))
	found = append(found, s.journeys.find(e, where)...)
	add(s.history.find(&s.keys, e))
	add(s.past.find(e))
	found = append(found, s.oddNames(e)...)
	found = append(found, s.autofill.find(e)...)
	add(s.pages.find(e))
	add(s.nights.find(&s.keys, e))
	return found
}

func queryOf(about, written, code, message string, candidates ...string) reading.Finding {
	return reading.Finding{Verdict: reading.QueryOf(code, message, candidates...), About: about, Written: written}
}
