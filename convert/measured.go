package convert

import (
	"slices"

	"fieldfare/convert/notebook"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// measuredKinds are the kinds of measurements of a set of records, in the
// order in which they were met, with the terms that any of a kind states.
type measuredKinds struct {
	kinds []measuredKind
	used  *dwc.Used // by measurements of any kind
}

type measuredKind struct {
	heading string // of its value
	of      spool.Measurement
	terms   map[string]bool
}

// add takes in a measurement that leaves.
func (k *measuredKinds) add(m *spool.Measurement) {
	if k.used == nil {
		k.used = dwc.NewUsed(dwc.RowMeasurement)
	}
	k.used.Add(m)
	heading := notebook.MeasurementHeading(&m.Measurement, m.Event, "")
	i := slices.IndexFunc(k.kinds, func(kind measuredKind) bool { return kind.heading == heading })
	if i < 0 {
		i = len(k.kinds)
		k.kinds = append(k.kinds, measuredKind{heading, *m, map[string]bool{}})
	}
	for _, t := range notebook.MeasurementTerms {
		if m.Get(t.Term) != "" {
			k.kinds[i].terms[t.Term] = true
		}
	}
}

// columns are the columns in which a copy has the measurements.
func (k *measuredKinds) columns() []measuredColumn {
	var list []measuredColumn
	for i := range k.kinds {
		kind := &k.kinds[i]
		list = append(list, measuredColumn{kind: kind.heading, heading: kind.heading, term: "measurementValue"})
		for _, t := range notebook.MeasurementTerms {
			if kind.terms[t.Term] {
				list = append(list, measuredColumn{kind.heading, notebook.MeasurementHeading(&kind.of.Measurement, kind.of.Event, t.Term), t.Term})
			}
		}
	}
	return list
}

// measuredColumn is a column of a copy: a term of one kind of measurement.
type measuredColumn struct{ kind, heading, term string }

// cells are a record's values of the columns of measurements.
func (c *columns) cells(r *spool.Record) []string {
	if len(c.measured) == 0 {
		return nil
	}
	cells := make([]string, len(c.measured))
	if r.Facts.Blur > 0 {
		return cells
	}
	kinds := make([]string, len(r.Measurements))
	for i := range r.Measurements {
		m := &r.Measurements[i]
		kinds[i] = notebook.MeasurementHeading(&m.Measurement, m.Event, "")
	}
	for at, column := range c.measured {
		var values []string
		for i := range r.Measurements {
			if kinds[i] == column.kind {
				values = append(values, r.Measurements[i].Get(column.term))
			}
		}
		cells[at] = notebook.JoinMeasurements(values)
	}
	return cells
}

// measuredHeadings are the headings of the columns of measurements.
func (c *columns) measuredHeadings() []string {
	var list []string
	for _, column := range c.measured {
		list = append(list, column.heading)
	}
	return list
}
