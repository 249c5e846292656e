package compare

import (
	"fmt"
	"slices"
	"strings"

	"fieldfare/dwc"
)

// State says how a record stands to the earlier submission.
type State uint8

const (
	New State = iota
	Changed
	Same
)

// Known is what is remembered of a submission: of each record and event 32
// bytes.
type Known struct {
	byID     map[Mark]Mark
	events   map[Mark]bool // to which occurrences belong
	repeated []string      // ids that stand more than once
	repeats  map[Mark]bool // their marks
}

// Read remembers a submission.
func Read(path string) (*Known, error) {
	if partial, err := changesOnly(path); err != nil {
		return nil, err
	} else if partial {
		return nil, fmt.Errorf("%s: it holds only what was new or changed since an earlier submission, so all else would count as new. Give the last one that was made without --against", path)
	}
	k := &Known{byID: map[Mark]Mark{}, events: map[Mark]bool{}, repeats: map[Mark]bool{}}
	return k, each(path, func(o *Observation) error {
		id := o.Mark()
		if _, twice := k.byID[id]; twice {
			if !k.repeats[id] {
				k.repeats[id] = true
				k.repeated = append(k.repeated, o.ID())
			}
			return nil
		}
		k.byID[id] = o.content()
		if !o.visit() {
			k.events[VisitMark(o.Occurrence.EventID)] = true
		}
		return nil
	})
}

// State compares a record with the submission. A visit of whose event the
// submission has occurrences is the same: nothing was found there by somebody
// else, or of another group.
func (k *Known) State(o *Observation) State {
	old, found := k.byID[o.Mark()]
	switch {
	case !found && !k.described(o):
		return New
	case found && old != o.content():
		return Changed
	}
	return Same
}

// described tells whether a visit's event is in the submission with
// occurrences.
func (k *Known) described(o *Observation) bool { return o.visit() && k.events[o.Mark()] }

// changesOnly tells whether a submission says that it holds only what changed.
func changesOnly(path string) (bool, error) {
	archive, err := dwc.OpenArchive(path)
	if err != nil {
		return false, err
	}
	defer archive.Close()
	about, err := archive.Metadata()
	if err != nil || about == nil {
		return false, nil // the records can be compared without
	}
	return strings.Contains(about.AdditionalInfo, ChangesOnly), nil
}

// each yields every occurrence of a submission, whatever its shape, and then
// the visits on which nothing was found.
func each(path string, fn func(o *Observation) error) error {
	archive, err := dwc.OpenArchive(path)
	if err != nil {
		return err
	}
	defer archive.Close()
	if archive.Table(dwc.RowOccurrence) == nil {
		return fmt.Errorf("%s: there are no occurrences in it. Give a submission.zip or another Darwin Core Archive", path)
	}
	measured, err := readMeasured(archive)
	if err != nil {
		return err
	}
	used := map[string]bool{} // events
	events := archive.Core.RowType() == dwc.RowEvent
	err = archive.Occurrences(func(o *dwc.Occurrence, row *dwc.Row) error {
		if o.OccurrenceID == "" {
			return fmt.Errorf("%s, %s, line %d: the record has no occurrenceID, so it cannot be compared", path, row.File, row.Line)
		}
		of := measured.ofRecord[o.OccurrenceID]
		if events {
			used[row.ID()] = true
			of = slices.Concat(of, measured.ofEvent[row.ID()])
		}
		is := NewObservation(o, of)
		for i, c := range row.Columns() {
			if _, known := dwc.TermIndex(c.Term.Name); !known {
				if value := row.Value(i); value != "" {
					is.beside = append(is.beside, besideTerm{c.Term.Name, value})
				}
			}
		}
		is.settle()
		return fn(&is)
	})
	if err != nil || !events {
		return err
	}
	return eachVisit(archive, used, measured, fn)
}

// eachVisit yields the events that no occurrence belongs to and that are no
// parent of others.
func eachVisit(archive *dwc.Archive, used map[string]bool, measured *measuredTable, fn func(o *Observation) error) error {
	for row, err := range archive.Core.Rows() {
		if err != nil {
			return err
		}
		used[row.Get("parentEventID")] = true
	}
	for row, err := range archive.Core.Rows() {
		if err != nil {
			return err
		}
		if used[row.ID()] {
			continue
		}
		var e dwc.Event
		row.Fill(&e)
		o := occurrenceOf(e)
		is := NewObservation(&o, measured.ofEvent[row.ID()])
		if err := fn(&is); err != nil {
			return err
		}
	}
	return nil
}

// measuredTable are the measurements of an archive, by the ids of what they
// are of.
type measuredTable struct{ ofRecord, ofEvent map[string][]dwc.Measurement }

func readMeasured(archive *dwc.Archive) (*measuredTable, error) {
	t := &measuredTable{map[string][]dwc.Measurement{}, map[string][]dwc.Measurement{}}
	for _, table := range archive.Tables() {
		if table.RowType() != dwc.RowMeasurement {
			continue
		}
		for row, err := range table.Rows() {
			if err != nil {
				return nil, err
			}
			var m dwc.Measurement
			row.Fill(&m)
			switch of := m.OccurrenceID; {
			case archive.Core.RowType() == dwc.RowOccurrence:
				t.ofRecord[row.ID()] = append(t.ofRecord[row.ID()], m)
			case of != "":
				t.ofRecord[of] = append(t.ofRecord[of], m)
			default:
				t.ofEvent[row.ID()] = append(t.ofEvent[row.ID()], m)
			}
		}
	}
	return t, nil
}
