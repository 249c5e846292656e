package dwc

// Occurrences calls fn for each occurrence of an archive of either shape, in
// the order of its table, with the row that it was read from; it stops at the
// first error. In an archive whose core are events, an occurrence that does
// not say itself when and where it was says it by its event. An archive
// without a table of occurrences has none. fn may keep both.
func (a *Archive) Occurrences(fn func(o *Occurrence, row *Row) error) error {
	table := a.Table(RowOccurrence)
	if table == nil {
		return nil
	}
	events, err := a.eventsFor(table)
	if err != nil {
		return err
	}
	for row, err := range table.Rows() {
		if err != nil {
			return err
		}
		var o Occurrence
		row.Fill(&o)
		if events != nil {
			events.complete(&o, row.ID())
		}
		if err := fn(&o, row); err != nil {
			return err
		}
	}
	return nil
}

// eventTerms are what the events of an archive say in place of their
// occurrences.
type eventTerms struct {
	terms []string // that the table of occurrences has no column for
	byID  map[string][]string
}

// eventsFor reads the events of an archive; nil where they are not its core.
func (a *Archive) eventsFor(occurrences *DataTable) (*eventTerms, error) {
	if a.Core.RowType() != RowEvent {
		return nil, nil
	}
	own := map[string]bool{}
	for _, c := range occurrences.Columns() {
		own[c.Term.Name] = true
	}
	e := &eventTerms{byID: map[string][]string{}}
	var columns []int
	for i, c := range a.Core.Columns() {
		if _, known := TermIndex(c.Term.Name); known && !own[c.Term.Name] && c.Term.Name != "eventID" {
			e.terms, columns = append(e.terms, c.Term.Name), append(columns, i)
		}
	}
	if len(columns) == 0 {
		return e, nil
	}
	for row, err := range a.Core.Rows() {
		if err != nil {
			return nil, err
		}
		values := make([]string, len(columns))
		for i, c := range columns {
			values[i] = row.Value(c)
		}
		e.byID[row.ID()] = values
	}
	return e, nil
}

// complete gives an occurrence what its event says.
func (e *eventTerms) complete(o *Occurrence, id string) {
	if o.EventID == "" {
		o.EventID = id
	}
	for i, value := range e.byID[id] {
		o.Set(e.terms[i], value)
	}
}
