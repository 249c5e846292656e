package dwc

// Occurrences calls fn for each occurrence of an archive of any shape, in the
// order of its tables, with the row that it was read from; it stops at the
// first error. In an archive whose core are events or taxa, an occurrence that
// does not say itself when, where or of which taxon it was says it by its core
// row. An archive without a table of occurrences has none. fn may keep both.
func (a *Archive) Occurrences(fn func(o *Occurrence, row *Row) error) error {
	for _, table := range a.Tables() {
		if table.rowType != RowOccurrence {
			continue
		}
		if err := a.occurrencesOf(table, fn); err != nil {
			return err
		}
	}
	return nil
}

func (a *Archive) occurrencesOf(table *DataTable, fn func(o *Occurrence, row *Row) error) error {
	core, err := a.coreFor(table)
	if err != nil {
		return err
	}
	for row, err := range table.Rows() {
		if err != nil {
			return err
		}
		var o Occurrence
		row.Fill(&o)
		if core != nil {
			core.complete(&o, row.ID())
		}
		if err := fn(&o, row); err != nil {
			return err
		}
	}
	return nil
}

// coreValues are what the core of an archive says in place of the
// occurrences that belong to its rows.
type coreValues struct {
	id    string // the term that identifies its rows
	terms []string
	own   []bool // the table of occurrences has a column for the term too
	byID  map[string][]string
}

// coreFor reads the core of the archive; nil where it is the table itself.
func (a *Archive) coreFor(occurrences *DataTable) (*coreValues, error) {
	if occurrences.core {
		return nil, nil
	}
	c := &coreValues{id: IDTerm(a.Core.rowType), byID: map[string][]string{}}
	var columns []int
	for i, column := range a.Core.Columns() {
		if _, known := TermIndex(column.Term.Name); known && column.Term.Name != c.id {
			c.terms, columns = append(c.terms, column.Term.Name), append(columns, i)
			c.own = append(c.own, len(occurrences.lookup[column.Term.Name]) > 0)
		}
	}
	if len(columns) == 0 {
		return c, nil
	}
	for row, err := range a.Core.Rows() {
		if err != nil {
			return nil, err
		}
		values := make([]string, len(columns))
		for i, at := range columns {
			values[i] = row.Value(at)
		}
		c.byID[row.ID()] = values
	}
	return c, nil
}

// complete gives an occurrence what its core row says.
func (c *coreValues) complete(o *Occurrence, id string) {
	if o.Get(c.id) == "" {
		o.Set(c.id, id)
	}
	as := *o // as the row has it
	for i, value := range c.byID[id] {
		if value != "" && (!c.own[i] || Inherits(c.terms[i], as.Get)) {
			o.Set(c.terms[i], value)
		}
	}
}
