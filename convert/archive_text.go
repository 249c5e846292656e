package convert

import (
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// archiveText makes what the archive has of records that leave as they are,
// apart from the archive, so that several goroutines can.
type archiveText struct {
	shape string
	rows  []*rowText // as in archive
	// made are events of which the text was made, up to so many.
	made map[string]bool
	last visitOf // of the last record
}

// visitOf is what a record says of its visit.
type visitOf struct {
	id, parent string
	noted      noted
}

// plainEvent is an event that may be new to the archive, and its season.
type plainEvent struct {
	visitOf
	date   string
	text   []byte // a row of the table of events
	season *dwc.Event
}

const eventsMade = 4096

// newText returns one for a goroutine.
func (a *archive) newText() *archiveText {
	t := &archiveText{shape: a.shape, made: map[string]bool{}}
	for _, rows := range a.rows {
		t.rows = append(t.rows, newRowText(rows.columns))
	}
	return t
}

// append appends the row of a record with an id, and its event where that may
// not be in the archive yet.
func (t *archiveText) append(text []byte, events []plainEvent, o *dwc.Occurrence, r *spool.Record) ([]byte, []plainEvent) {
	table := 0
	if t.shape == shapeEvent {
		table = 1
		events = t.event(events, o, r)
	}
	return append(t.rows[table].append(text, o, r), '\n'), events
}

func (t *archiveText) event(events []plainEvent, o *dwc.Occurrence, r *spool.Record) []plainEvent {
	visit := visitOf{o.EventID, o.ParentEventID, notedOf(o)}
	if visit == t.last {
		return events
	}
	t.last = visit
	e := plainEvent{visitOf: visit, date: o.EventDate}
	if e.parent != "" && t.fresh(e.parent) {
		season := seasonOf(o)
		e.season = &season
	}
	if t.fresh(e.id) {
		e.text = append(t.rows[0].append(nil, withoutNames(o), r), '\n')
	}
	if e.season == nil && e.text == nil && e.noted == (noted{}) {
		return events
	}
	return append(events, e)
}

// fresh tells whether an event's text may not have been made before.
func (t *archiveText) fresh(id string) bool {
	if t.made[id] {
		return false
	}
	if len(t.made) >= eventsMade {
		clear(t.made)
	}
	t.made[id] = true
	return true
}

// addText takes in the rows of so many records, made by an archiveText, and
// those of their events that are new.
func (a *archive) addText(rows []byte, events []plainEvent, records int) error {
	table := 0
	if a.shape == shapeEvent {
		table = 1
	}
	a.occurrences += records
	for i := range events {
		e := &events[i]
		if e.season != nil && a.isNew(e.parent) {
			if err := a.w.Write(0, e.season); err != nil {
				return err
			}
		}
		if e.text != nil && a.isNew(e.id) {
			a.note(e.id, e.noted)
			if err := a.w.WriteRows(0, e.text); err != nil {
				return err
			}
		}
		a.compare(e.id, e.date, e.noted)
	}
	return a.w.WriteRows(table, rows)
}

// isNew tells whether an event is not in the archive yet, and counts it.
func (a *archive) isNew(id string) bool {
	if a.seen[id] {
		return false
	}
	a.seen[id] = true
	a.events++
	return true
}
