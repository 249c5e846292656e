package dwc

import (
	"reflect"
	"unsafe"
)

// Record is one row of a table in the shape of its class: an Occurrence, an
// Event, a Measurement, a Taxon or a VernacularName.
type Record interface {
	// RowType is the IRI of what the record describes.
	RowType() string
	// Field returns the text of the i-th term of TermsOf(RowType()).
	Field(i int) *string
}

// shape describes a struct that consists of text fields only, each with the
// name of its term in a dwc tag.
type shape struct {
	terms []string
	index map[string]int
}

// shapeOf reads the tags of T, once, when the program starts. It panics where
// a field is no string, because fields are then not where text expects them.
func shapeOf[T any]() shape {
	typ := reflect.TypeFor[T]()
	s := shape{index: make(map[string]int, typ.NumField())}
	for i := range typ.NumField() {
		f := typ.Field(i)
		if f.Type.Kind() != reflect.String || f.Offset != uintptr(i)*stringSize {
			panic("dwc: field " + f.Name + " of " + typ.Name() + " is no text")
		}
		term := f.Tag.Get("dwc")
		s.terms = append(s.terms, term)
		s.index[term] = i
	}
	return s
}

const stringSize = unsafe.Sizeof("")

// text returns the i-th field of a struct of strings. A struct whose fields
// all have one type is laid out as an array of it; shapeOf has seen to it.
func text[T any](r *T, i int) *string {
	if i < 0 || uintptr(i) >= unsafe.Sizeof(*r)/stringSize {
		panic("dwc: no such field")
	}
	return (*string)(unsafe.Add(unsafe.Pointer(r), uintptr(i)*stringSize))
}

// texts are all fields of a struct of strings, in their order and in its own
// memory.
func texts[T any](r *T) []string {
	return unsafe.Slice((*string)(unsafe.Pointer(r)), unsafe.Sizeof(*r)/stringSize)
}

func get[T any](s *shape, r *T, term string) string {
	if i, ok := s.index[term]; ok {
		return *text(r, i)
	}
	return ""
}

func set[T any](s *shape, r *T, term, value string) bool {
	i, ok := s.index[term]
	if ok {
		*text(r, i) = value
	}
	return ok
}

var (
	occurrenceShape  = shapeOf[Occurrence]()
	eventShape       = shapeOf[Event]()
	measurementShape = shapeOf[Measurement]()
	taxonShape       = shapeOf[Taxon]()
	vernacularShape  = shapeOf[VernacularName]()
)

func shapeFor(rowType string) *shape {
	switch rowType {
	case RowOccurrence:
		return &occurrenceShape
	case RowEvent:
		return &eventShape
	case RowMeasurement:
		return &measurementShape
	case RowTaxon:
		return &taxonShape
	case RowVernacularName:
		return &vernacularShape
	}
	return nil
}

// TermsOf returns the names of the terms that a record of the row type has, in
// the standard's order. It returns nil for a row type that this package has no
// record for. The slice must not be changed.
func TermsOf(rowType string) []string {
	if s := shapeFor(rowType); s != nil {
		return s.terms
	}
	return nil
}

// IDTerm returns the name of the term that identifies a record of the row
// type: "occurrenceID" for an occurrence. It returns "" where there is none.
func IDTerm(rowType string) string {
	switch rowType {
	case RowOccurrence:
		return "occurrenceID"
	case RowEvent:
		return "eventID"
	case RowMeasurement:
		return "measurementID"
	case RowTaxon:
		return "taxonID"
	}
	return ""
}

// Terms returns the names of the terms of an Occurrence, in the standard's
// order. The slice must not be changed.
func Terms() []string { return occurrenceShape.terms }

// TermIndex returns the place of a term in Terms.
func TermIndex(term string) (int, bool) {
	i, ok := occurrenceShape.index[term]
	return i, ok
}

// RowType returns RowOccurrence.
func (o *Occurrence) RowType() string { return RowOccurrence }

// Field returns the text of the i-th term of Terms. It panics where there is
// none.
func (o *Occurrence) Field(i int) *string { return text(o, i) }

// Texts returns the texts of all terms in the order of Terms, in the memory of
// the occurrence.
func (o *Occurrence) Texts() []string { return texts(o) }

// Get returns the value of a term by name, and "" for a term that an
// Occurrence does not have.
func (o *Occurrence) Get(term string) string { return get(&occurrenceShape, o, term) }

// Set gives a term, by name, a value. It returns false for a term that an
// Occurrence does not have.
func (o *Occurrence) Set(term, value string) bool { return set(&occurrenceShape, o, term, value) }
