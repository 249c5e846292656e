package dwc

import "slices"

// Used finds out which terms of a class have a value in any of a number of
// records, so that a table has no column that is empty throughout.
type Used struct {
	rowType string
	terms   []string
	seen    []bool
	unseen  []int // the others
}

// NewUsed starts with no term used. The row type must be that of the records
// to be added, one for which TermsOf has terms.
func NewUsed(rowType string) *Used {
	terms := TermsOf(rowType)
	u := &Used{rowType: rowType, terms: terms, seen: make([]bool, len(terms))}
	for i := range terms {
		u.unseen = append(u.unseen, i)
	}
	return u
}

// Add notes the terms that a record fills.
func (u *Used) Add(r Record) {
	found := false
	if o, ok := r.(*Occurrence); ok { // of which there are most
		for _, i := range u.unseen {
			if *text(o, i) != "" {
				u.seen[i], found = true, true
			}
		}
	} else {
		for _, i := range u.unseen {
			if *r.Field(i) != "" {
				u.seen[i], found = true, true
			}
		}
	}
	if found {
		u.unseen = slices.DeleteFunc(u.unseen, func(i int) bool { return u.seen[i] })
	}
}

// Join notes the terms that another has noted, which must be of the same row
// type.
func (u *Used) Join(other *Used) {
	for i, seen := range other.seen {
		u.seen[i] = u.seen[i] || seen
	}
	u.unseen = slices.DeleteFunc(u.unseen, func(i int) bool { return u.seen[i] })
}

// Columns returns the columns of a table for the records added: first the
// given terms, used or not, then every other used term in the standard's
// order. A reader looks for the ids first, so give those:
// Columns("eventID", "occurrenceID").
func (u *Used) Columns(first ...string) []string {
	columns := slices.Clone(first)
	for i, term := range u.terms {
		if u.seen[i] && !slices.Contains(first, term) {
			columns = append(columns, term)
		}
	}
	return columns
}

// Event returns the event that the occurrence was part of: the event,
// location and record-level terms that the two classes share.
func (o *Occurrence) Event() Event {
	var e Event
	for i, j := range ofEvent {
		*e.Field(i) = *o.Field(j)
	}
	return e
}

// ofEvent has, for each term of an Event, its place in an Occurrence. It
// panics when the program starts where an Occurrence lacks one.
var ofEvent = func() []int {
	places := make([]int, len(eventShape.terms))
	for i, term := range eventShape.terms {
		j, ok := occurrenceShape.index[term]
		if !ok {
			panic("dwc: an Occurrence has no " + term)
		}
		places[i] = j
	}
	return places
}()
