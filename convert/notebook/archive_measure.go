package notebook

import (
	"context"
	"slices"
	"strings"

	"fieldfare/dwc"
)

// Headings of the columns that measurements are put into are "Measurement: ",
// or "Event measurement: " for those of a whole event, what was measured and
// the unit; and for each further term of a measurement "Measurement method: "
// and the like, so that a cell holds one kind of thing.
const (
	ofRecord = "Measurement"
	ofEvent  = "Event measurement"
)

// MeasurementTerms are the terms that say more of a measurement than its type,
// value and unit, with the word that the headings of their columns have.
var MeasurementTerms = []struct{ Term, Word string }{
	{"verbatimMeasurementType", "type as written"},
	{"measurementAccuracy", "accuracy"},
	{"measurementMethod", "method"},
	{"measurementDeterminedBy", "by"},
	{"measurementDeterminedDate", "date"},
	{"measurementRemarks", "remarks"},
	{"measurementID", "id"},
	{"parentMeasurementID", "parent id"},
}

// MeasurementHeading is the heading of the column of a measurement, or of one
// of its MeasurementTerms; an empty term is the value itself.
func MeasurementHeading(m *dwc.Measurement, event bool, term string) string {
	h := ofRecord
	if event {
		h = ofEvent
	}
	for _, t := range MeasurementTerms {
		if t.Term == term {
			h += " " + t.Word
		}
	}
	h += ": " + m.MeasurementType
	switch {
	case m.MeasurementUnit != "":
		return h + " (" + m.MeasurementUnit + ")"
	case strings.HasSuffix(h, ")"):
		return h + " ()" // what is in brackets is no unit
	}
	return h
}

// ParseMeasurementHeading is the reverse of MeasurementHeading; the kind is
// what was measured, with the unit. It returns false for any other heading.
func ParseMeasurementHeading(heading string) (kind, term string, event, ok bool) {
	head, kind, found := strings.Cut(heading, ": ")
	if !found {
		return "", "", false, false
	}
	word, found := strings.CutPrefix(head, ofRecord)
	if !found {
		if word, event = strings.CutPrefix(head, ofEvent); !event {
			return "", "", false, false
		}
	}
	if word == "" {
		return kind, "", event, true
	}
	for _, t := range MeasurementTerms {
		if word == " "+t.Word {
			return kind, t.Term, event, true
		}
	}
	return "", "", false, false
}

// JoinMeasurements puts several measurements of a kind into one cell.
func JoinMeasurements(values []string) string {
	if strings.Join(values, "") == "" {
		return ""
	}
	escaped := make([]string, len(values))
	for i, v := range values {
		escaped[i] = strings.ReplaceAll(v, "|", `\|`)
	}
	return strings.Join(escaped, " | ")
}

// SplitMeasurements is the reverse of JoinMeasurements.
func SplitMeasurements(cell string) []string {
	var values []string
	start := 0
	for i := 0; i <= len(cell); i++ {
		if i == len(cell) || cell[i] == '|' && (i == 0 || cell[i-1] != '\\') {
			values = append(values, strings.TrimSpace(strings.ReplaceAll(cell[start:i], `\|`, "|")))
			start = i + 1
		}
	}
	return values
}

// measures are the measurements of an archive, by what they are of. They are
// kept in memory.
type measures struct {
	heads []string
	kinds []measureKind
	of    map[measured][]measure
}

// measureKind is a kind of measurement: that of its heading.
type measureKind struct {
	heading string
	of      dwc.Measurement // type and unit
	event   bool
	terms   map[string]bool // MeasurementTerms that any of the kind states
	column  int             // that of the value; those of the terms follow
}

// measured is the record or event that a measurement is of.
type measured struct {
	event bool
	id    string
}

type measure struct {
	kind int
	is   dwc.Measurement
}

// readMeasures reads the tables of measurements; nil where there are none.
func readMeasures(ctx context.Context, a *dwc.Archive) (*measures, error) {
	var m *measures
	for _, t := range a.Tables() {
		if t.RowType() != dwc.RowMeasurement {
			continue
		}
		if m == nil {
			m = &measures{of: map[measured][]measure{}}
		}
		for r, err := range t.Rows() {
			if err == nil {
				err = ctx.Err()
			}
			if err != nil {
				return nil, err
			}
			if key, x, whole := measureOf(a, r); whole {
				m.of[key] = append(m.of[key], measure{m.kind(key.event, &x), x})
			}
		}
	}
	if m != nil {
		m.settle()
	}
	return m, nil
}

// measureOf reads a row of measurements; whole is false where it does not say
// what was measured, or its value.
func measureOf(a *dwc.Archive, r *dwc.Row) (key measured, x dwc.Measurement, whole bool) {
	r.Fill(&x)
	for i := range dwc.TermsOf(dwc.RowMeasurement) {
		*x.Field(i) = validText([]byte(*x.Field(i)))
	}
	key = measured{id: r.ID()}
	if a.Core.RowType() != dwc.RowOccurrence {
		if key.event = x.OccurrenceID == ""; !key.event {
			key.id = x.OccurrenceID
		}
	}
	return key, x, x.MeasurementType != "" && x.MeasurementValue != ""
}

// kind returns the number of a measurement's kind.
func (m *measures) kind(event bool, x *dwc.Measurement) int {
	h := MeasurementHeading(x, event, "")
	i := slices.IndexFunc(m.kinds, func(k measureKind) bool { return k.heading == h })
	if i < 0 {
		i = len(m.kinds)
		m.kinds = append(m.kinds, measureKind{heading: h, of: *x, event: event, terms: map[string]bool{}})
	}
	for _, t := range MeasurementTerms {
		if x.Get(t.Term) != "" {
			m.kinds[i].terms[t.Term] = true
		}
	}
	return i
}

// settle gives every kind its columns.
func (m *measures) settle() {
	for i := range m.kinds {
		k := &m.kinds[i]
		k.column = len(m.heads)
		m.heads = append(m.heads, k.heading)
		for _, t := range MeasurementTerms {
			if k.terms[t.Term] {
				m.heads = append(m.heads, MeasurementHeading(&k.of, k.event, t.Term))
			}
		}
	}
}

// append adds the cells of a record's measurements and its event's.
func (m *measures) append(cells []Cell, record, event string) []Cell {
	values := make([][]string, len(m.heads))
	for _, key := range []measured{{false, record}, {true, event}} {
		for i := range m.of[key] {
			x := &m.of[key][i]
			k := &m.kinds[x.kind]
			values[k.column] = append(values[k.column], x.is.MeasurementValue)
			at := k.column
			for _, t := range MeasurementTerms {
				if k.terms[t.Term] {
					at++
					values[at] = append(values[at], x.is.Get(t.Term))
				}
			}
		}
	}
	for _, v := range values {
		cells = append(cells, textCell(JoinMeasurements(v)))
	}
	return cells
}
