package validate

import "strings"

// Observer looks at records for a set. It does what does not depend on their
// order, so that several goroutines can share the records of a set, each with
// an observer of its own.
type Observer struct {
	keys  keys
	names [3]names // of taxa, people, sites
	// people are those named last.
	people string
	nights trapNights
}

// Glance is what a set takes in of one record, beside what its observer keeps.
type Glance struct {
	sheet   int
	content uint64
	visit   bool
	same    uint64   // the key of duplicates
	visits  []uint64 // of the journeys
	counted uint64   // the value of the history, 0 for none
	named   bool     // a determiner is
	// What filling down is found by:
	facts                  fillFacts
	taxon                  uint64
	name, site, stage, sex string
	verbatimDate           string
}

// fillFacts are those of a record's facts that filling down repeats.
type fillFacts struct {
	reference      string
	start, end     int32
	count          int32
	dated, counted bool
}

// Observer returns an observer for a goroutine. All must be asked for before
// the set is settled.
func (s *Set) Observer() *Observer {
	o := &Observer{}
	s.observers = append(s.observers, o)
	return o
}

// Look looks at a record, whose N does not count yet. The glance must then be
// taken in by the set, in the order of the records; its memory is used again.
func (o *Observer) Look(e *Entry, g *Glance) {
	*g = Glance{sheet: e.Sheet, content: contentKey(&e.Content), visit: e.Visit, visits: g.visits[:0]}
	if e.Visit {
		return
	}
	f := e.Facts
	g.same = o.keys.same(e.Occurrence, f)
	if oneVisit(e.Occurrence, f) {
		g.visits = append(g.visits, o.keys.visits(e.Occurrence, f)...)
	}
	if countsForHistory(e.Occurrence, f) {
		g.counted = historyValue(o.keys.history(e.Occurrence, f), f)
	}
	o.names[0].add(e.ScientificName)
	if e.RecordedBy == o.people && !strings.Contains(o.people, "|") {
		o.names[1].add(e.RecordedBy)
	} else {
		o.people = e.RecordedBy
		for person := range strings.SplitSeq(e.RecordedBy, " | ") {
			o.names[1].add(person)
		}
	}
	o.names[2].add(e.Locality)
	if trapped(e) {
		o.nights.add(o.keys.trap(e.Occurrence, f), f.Start)
	}
	g.named = e.IdentifiedBy != ""
	g.facts = fillFacts{f.Reference, f.Start, f.End, f.Count, f.Dated, f.Counted}
	g.taxon = o.keys.taxon(e.Occurrence).sum()
	g.name, g.site, g.stage, g.sex = nameOf(e.Occurrence), siteOf(e.Occurrence, f), e.LifeStage, e.Sex
	if !f.Dated {
		g.verbatimDate = e.VerbatimEventDate
	}
}

// subject names the observation as subjectOf does.
func (g *Glance) subject() string {
	day := g.verbatimDate
	if g.facts.dated {
		day = iso(g.facts.start)
	}
	return written(g.name, g.site, day, g.sex, stageUnlessAdult(g.stage))
}

// Take takes in a record that was looked at, the n-th of the set; numbers rise.
func (s *Set) Take(n int, g *Glance) {
	s.contents.list.add(g.content)
	if g.visit {
		return
	}
	s.duplicates.keys.add(g.same)
	s.journeys.add(g.visits)
	if g.counted != 0 {
		s.history.counts.add(g.counted)
	}
	s.autofill.add(n, g)
	s.pages.add(g)
}
