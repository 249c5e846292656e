package notebook

import (
	"context"

	"fieldfare/dwc"
)

// leftReasons are why tables of an archive have no records, by the short name
// of their row type.
var leftReasons = map[string]string{
	"MeasurementOrFact":           "measurements of no record here, or without a kind or a value",
	"Event":                       "events that others are parts of, which a submission has of its own making",
	"Taxon":                       "names of a checklist without a record",
	"VernacularName":              "names of a checklist without a record",
	"Distribution":                "distribution of a checklist's names",
	"Description":                 "descriptions of a checklist's names",
	"SpeciesProfile":              "descriptions of a checklist's names",
	"Reference":                   "references to writings",
	"Identifier":                  "further identifiers",
	"Identification":              "identifications beside the record's own",
	"ResourceRelationship":        "relations between records",
	"Multimedia":                  "pictures and sounds",
	"Image":                       "pictures and sounds",
	"ChronometricAge":             "ages of specimens",
	"MaterialSample":              "samples",
	"Preservation":                "samples",
	"Permit":                      "permits",
	"GermplasmAccession":          "samples",
	"DNADerivedData":              "sequences",
	"HumboldtEcologicalInventory": "how events were surveyed",
}

func leftReason(rowType string) string {
	return leftReasons[shortRowType(rowType)]
}

// leftTable is a table of an archive that has no records, or those of its rows
// that could not be put beside one.
type leftTable struct {
	*archiveTable
	reason string
	keep   func(*dwc.Row) bool // nil for all rows
	count  int
}

// LeftOut says why a sheet is not read for records: it is a table of an
// archive that has none, or the rest of one. It is empty for any other sheet.
func LeftOut(s Sheet) string {
	if l, is := s.(*leftTable); is {
		return l.reason
	}
	return ""
}

// Walk yields the names of the terms as row 1, then the rows that are left
// out, by their numbers in the table.
func (l *leftTable) Walk(fn func(*Row) error) error {
	stopped, err := l.walk(fn)
	return l.src.ended(l.name, stopped, archiveTrouble(err))
}

func (l *leftTable) walk(fn func(*Row) error) (stopped, err error) {
	row := Row{Number: 1}
	l.headings(&row)
	if err := fn(&row); err != nil {
		return err, nil
	}
	for r, err := range l.table.Rows() {
		if err == nil {
			err = l.ctx.Err()
		}
		if err != nil {
			return nil, err
		}
		row.Number++
		if l.keep != nil && !l.keep(r) {
			continue
		}
		l.cells(&row, r)
		if err := fn(&row); err != nil {
			return err, nil
		}
	}
	return nil, nil
}

// leftTables are the tables of an archive, beside those of occurrences, as far
// as they hold anything that is not put beside an occurrence.
func leftTables(ctx context.Context, src *source, a *dwc.Archive, m *measures) ([]*leftTable, error) {
	belonging, err := findBelonging(a, m)
	if err != nil {
		return nil, err
	}
	var list []*leftTable
	for _, t := range a.Tables() {
		if t.RowType() == dwc.RowOccurrence {
			continue
		}
		l := &leftTable{archiveTable: newArchiveTable(ctx, src, t), reason: leftReason(t.RowType())}
		if l.reason == "" {
			l.reason = "a table of another kind"
		}
		switch {
		case t.RowType() == dwc.RowMeasurement:
			l.keep = func(r *dwc.Row) bool {
				key, _, whole := measureOf(a, r)
				return !whole || !belonging.measured(key)
			}
		case t == a.Core:
			l.keep = func(r *dwc.Row) bool { return !belonging.cores[r.ID()] }
		}
		for r, err := range t.Rows() {
			if err != nil {
				return list, err
			}
			if l.keep == nil || l.keep(r) {
				l.count++
			}
		}
		if l.count > 0 {
			list = append(list, l)
		}
	}
	return list, nil
}

// belonging knows which rows of an archive's core are read with occurrences or
// as visits, and which records and events measurements can belong to.
type belonging struct {
	event   bool // the core's rows are events
	cores   map[string]bool
	records map[string]bool // that have measurements
}

func findBelonging(a *dwc.Archive, m *measures) (*belonging, error) {
	b := &belonging{event: a.Core.RowType() == dwc.RowEvent, cores: map[string]bool{}, records: map[string]bool{}}
	for _, t := range a.Tables() {
		if t.RowType() != dwc.RowOccurrence || t == a.Core && m == nil {
			continue
		}
		for r, err := range t.Rows() {
			if err != nil {
				return nil, err
			}
			id := r.ID()
			if t != a.Core {
				b.cores[id] = true
				id = r.Get("occurrenceID")
			}
			if m != nil && len(m.of[measured{id: id}]) > 0 {
				b.records[id] = true
			}
		}
	}
	if !b.event {
		return b, nil
	}
	parents, err := parentsOf(a.Core)
	if err != nil {
		return nil, err
	}
	for r, err := range a.Core.Rows() {
		if err != nil {
			return nil, err
		}
		if !parents[r.ID()] {
			b.cores[r.ID()] = true // a visit
		}
	}
	return b, nil
}

// measured tells whether a measurement is put beside a record or an event.
func (b *belonging) measured(key measured) bool {
	if key.event {
		return b.event && b.cores[key.id]
	}
	return b.records[key.id]
}
