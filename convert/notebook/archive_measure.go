package notebook

import (
	"slices"
	"strings"

	"fieldfare/dwc"
)

// Headings of the columns that measurements are put into, before what was
// measured and the unit: those of the record, and those of its whole event.
const (
	MeasurementHeading = "Measurement: "
	EventHeading       = "Event measurement: "
	// MeasurementsJoined stands between several measurements of a kind.
	MeasurementsJoined = " | "
)

// measures are the measurements of an archive, by what they are of. They are
// kept in memory.
type measures struct {
	heads []string
	of    map[measured][]measure
}

// measured is the record or event that a measurement is of.
type measured struct {
	event bool
	id    string
}

type measure struct {
	head  int
	value string
}

// readMeasures reads the table of measurements, if there is one.
func readMeasures(a *dwc.Archive) (*measures, error) {
	t := a.Table(dwc.RowMeasurement)
	if t == nil {
		return nil, nil
	}
	m := &measures{of: map[measured][]measure{}}
	for r, err := range t.Rows() {
		if err != nil {
			return nil, err
		}
		var x dwc.Measurement
		r.Fill(&x)
		key := measured{id: r.ID()}
		if a.Core.RowType() == dwc.RowEvent {
			if key.event = x.OccurrenceID == ""; !key.event {
				key.id = x.OccurrenceID
			}
		}
		if x.MeasurementType != "" && x.MeasurementValue != "" {
			m.of[key] = append(m.of[key], measure{m.head(key.event, &x), x.MeasurementValue})
		}
	}
	return m, nil
}

// head returns the number of the column of a measurement.
func (m *measures) head(event bool, x *dwc.Measurement) int {
	h := MeasurementHeading
	if event {
		h = EventHeading
	}
	if h += x.MeasurementType; x.MeasurementUnit != "" {
		h += " (" + x.MeasurementUnit + ")"
	}
	i := slices.Index(m.heads, h)
	if i < 0 {
		i = len(m.heads)
		m.heads = append(m.heads, h)
	}
	return i
}

// append adds the cells of a record's measurements and its event's.
func (m *measures) append(cells []Cell, record, event string) []Cell {
	values := make([][]string, len(m.heads))
	for _, key := range []measured{{false, record}, {true, event}} {
		for _, x := range m.of[key] {
			values[x.head] = append(values[x.head], x.value)
		}
	}
	for _, v := range values {
		cells = append(cells, textCell(strings.Join(v, MeasurementsJoined)))
	}
	return cells
}
