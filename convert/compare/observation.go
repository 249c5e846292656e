package compare

import (
	"cmp"
	"crypto/sha256"
	"fmt"
	"slices"

	"fieldfare/convert/notebook"
	"fieldfare/dwc"
)

// Mark is an id or a content in 16 bytes.
type Mark [16]byte

// IDMark returns the mark of the id of an occurrence.
func IDMark(id string) Mark {
	sum := sha256.Sum256([]byte(id))
	return Mark(sum[:16])
}

// Observation is a record as it is compared: an occurrence, or a visit on
// which nothing was found, with what stands beside it in other tables.
type Observation struct {
	Occurrence dwc.Occurrence
	beside     []besideTerm // in order
}

// besideTerm is what stands beside a record: a term of a measurement, or of
// another standard.
type besideTerm struct{ name, value string }

// NewObservation returns an occurrence, or a visit where it has no
// occurrenceID, with its measurements. Whether a measurement is of the organism
// or of the whole event makes no difference, nor does its id: the same
// submission may have either shape.
func NewObservation(o *dwc.Occurrence, measured []dwc.Measurement) Observation {
	is := Observation{Occurrence: *o}
	if is.visit() {
		is.Occurrence = occurrenceOf(o.Event())
	}
	for i := range measured {
		is.add(&measured[i])
	}
	is.settle()
	return is
}

func (o *Observation) add(m *dwc.Measurement) {
	o.beside = append(o.beside, besideTerm{notebook.MeasurementHeading(m, false, ""), m.MeasurementValue})
	for _, t := range notebook.MeasurementTerms {
		if value := m.Get(t.Term); value != "" && t.Term != "measurementID" && t.Term != "parentMeasurementID" {
			o.beside = append(o.beside, besideTerm{notebook.MeasurementHeading(m, false, t.Term), value})
		}
	}
}

func (o *Observation) settle() {
	slices.SortFunc(o.beside, func(a, b besideTerm) int {
		return cmp.Or(cmp.Compare(a.name, b.name), cmp.Compare(a.value, b.value))
	})
	o.beside = slices.Compact(o.beside)
}

// occurrenceOf gives an event's terms the form of an occurrence.
func occurrenceOf(e dwc.Event) dwc.Occurrence {
	var o dwc.Occurrence
	for i, term := range dwc.TermsOf(dwc.RowEvent) {
		o.Set(term, *e.Field(i))
	}
	return o
}

func (o *Observation) visit() bool { return o.Occurrence.OccurrenceID == "" }

// ID is the id of the occurrence, or of the visit.
func (o *Observation) ID() string {
	if o.visit() {
		return o.Occurrence.EventID
	}
	return o.Occurrence.OccurrenceID
}

// Mark is the mark of the id. An occurrence and a visit have different ones.
func (o *Observation) Mark() Mark {
	if o.visit() {
		return VisitMark(o.Occurrence.EventID)
	}
	return IDMark(o.Occurrence.OccurrenceID)
}

// VisitMark marks a visit on which nothing was found, by its eventID.
func VisitMark(id string) Mark { return IDMark("event\x1f" + id) }

// content is the mark of what a record says. When a record was last modified
// does not count: it says nothing of the observation.
func (o *Observation) content() Mark {
	h := sha256.New()
	for i, term := range dwc.Terms() {
		if value := *o.Occurrence.Field(i); value != "" && term != "modified" {
			fmt.Fprintf(h, "%s\x1f%s\x1e", term, value)
		}
	}
	for _, b := range o.beside {
		fmt.Fprintf(h, "%s\x1f%s\x1e", b.name, b.value)
	}
	var m Mark
	copy(m[:], h.Sum(nil))
	return m
}

func differences(old, now *Observation) []TermChange {
	var list []TermChange
	for i, term := range dwc.Terms() {
		if a, b := *old.Occurrence.Field(i), *now.Occurrence.Field(i); a != b && term != "modified" {
			list = append(list, TermChange{term, a, b})
		}
	}
	var names []string
	for _, b := range slices.Concat(old.beside, now.beside) {
		if !slices.Contains(names, b.name) {
			names = append(names, b.name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		if a, b := old.values(name), now.values(name); a != b {
			list = append(list, TermChange{name, a, b})
		}
	}
	return list
}

// values joins what stands beside a record under a name.
func (o *Observation) values(name string) string {
	var values []string
	for _, b := range o.beside {
		if b.name == name {
			values = append(values, b.value)
		}
	}
	return notebook.JoinMeasurements(values)
}
