package convert

import (
	"fieldfare/convert/privacy"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// publisher makes records as they may leave. Whatever is written for others is
// made by it and by nothing else. Each goroutine has its own: it remembers the
// last ids, since the records of a visit follow one another.
type publisher struct {
	*settings
	event  lastID[eventParts]
	season lastID[seasonParts]
}

// lastID is the last id that was made, and what it was made of.
type lastID[P comparable] struct {
	parts P
	id    string
}

func (l *lastID[P]) of(parts P, key func(P) [16]byte) string {
	if l.id == "" || parts != l.parts {
		l.parts, l.id = parts, eventIDOf(key(parts))
	}
	return l.id
}

// public makes o the record as it may leave.
func (p *publisher) public(o *dwc.Occurrence, r *spool.Record) {
	privacy.Blur(o, r)
	p.finish(o, r)
}

// leave makes a record that is not blurred, and no empty visit, as it may leave,
// where it stands: published are the terms that this may change.
func (p *publisher) leave(r *spool.Record) *dwc.Occurrence {
	p.finish(&r.Occurrence, r)
	return &r.Occurrence
}

// published are the terms that finish gives an occurrence, and its id.
var published = func() (terms spool.Terms) {
	for _, term := range []string{"license", "rightsHolder", "datasetName", "datasetID", "institutionCode", "collectionCode", "language", "eventType", "eventID", "parentEventID", "occurrenceID"} {
		i, ok := dwc.TermIndex(term)
		if !ok {
			panic("convert: no term " + term)
		}
		terms.Add(i)
	}
	return terms
}()

// finish gives a record what holds for the dataset as a whole, and the ids of
// its event where it has none of its own.
func (p *publisher) finish(o *dwc.Occurrence, r *spool.Record) {
	p.fillDataset(o)
	o.EventType = eventTypeOf(r)
	if r.EmptyVisit {
		ofVisit(o)
	}
	if o.EventID == "" {
		o.EventID = p.event.of(partsOfEvent(o), eventParts.key)
	}
	if o.ParentEventID == "" && o.Year != "" {
		o.ParentEventID = p.season.of(partsOfSeason(o), seasonParts.key)
	}
}
