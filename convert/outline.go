package convert

import (
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// outline is what there is to know of the records that leave as a whole, as
// they may leave: which columns they need and what they cover.
type outline struct {
	// used knows which terms, and so which columns, have a value at all.
	used, usedByEvents *dwc.Used
	lastEvent          string // the id of the last event added
	// visits and chances count the records that belong to a trap night or
	// visit, and those that do not.
	visits, chances int
	// coverage is that of the occurrences, visited that of the visits on which
	// nothing was found.
	coverage, visited coverage
}

func newOutline() outline {
	return outline{used: dwc.NewUsed(dwc.RowOccurrence), usedByEvents: dwc.NewUsed(dwc.RowEvent)}
}

// add takes in a record, as it may leave.
func (l *outline) add(o *dwc.Occurrence, r *spool.Record) {
	if isVisit(r) {
		l.visits++
	} else {
		l.chances++
	}
	if o.EventID != l.lastEvent {
		e := withoutNames(o).Event()
		l.event(&e)
	}
	if r.EmptyVisit {
		l.visited.add(o)
		return
	}
	l.used.Add(o)
	l.coverage.add(o)
}

// event takes in the event of a record. Only the first record of an event
// describes it.
func (l *outline) event(e *dwc.Event) {
	if e.EventID != l.lastEvent {
		l.lastEvent = e.EventID
		l.usedByEvents.Add(e)
	}
}

// join takes in what another outline has of other records.
func (l *outline) join(other *outline) {
	l.used.Join(other.used)
	l.usedByEvents.Join(other.usedByEvents)
	l.visits += other.visits
	l.chances += other.chances
	l.coverage.join(&other.coverage)
	l.visited.join(&other.visited)
}

// batchOutline makes the outline of records that come in batches, of which
// others may lie between. The first event of a batch may be the last of the
// batch before, so it waits until that is known.
type batchOutline struct {
	outline
}

// batchEvents are the first and the last event of a batch; no records leave
// where there is none.
type batchEvents struct {
	any   bool
	first dwc.Event
	last  string
}

func (l *batchOutline) add(o *dwc.Occurrence, r *spool.Record, events *batchEvents) {
	if !events.any {
		events.any, events.first = true, withoutNames(o).Event()
		l.lastEvent = o.EventID
	}
	l.outline.add(o, r)
	events.last = l.lastEvent
}

// between takes in the events of the next batch.
func (l *outline) between(events *batchEvents) {
	if events.any {
		l.event(&events.first)
		l.lastEvent = events.last
	}
}
