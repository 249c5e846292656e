package notebook

import (
	"context"
	"encoding/binary"
	"io"
	"slices"

	"fieldfare/dwc"
)

// coreTable holds the values of an archive's core (events, or taxa) by their
// ids, to be put beside the occurrences that belong to its rows. The values
// are kept in a spool, since there may be many.
type coreTable struct {
	table *dwc.DataTable
	// heads are the terms that the occurrences have no column for. The first
	// may be that of the core's id, which every row knows.
	heads  []string
	idHead bool
	// terms are those kept, columns where they stand in the core, and own
	// where they stand in the table of occurrences, -1 where they do not.
	terms   []string
	columns []int
	own     []int
	kept    *spool
	places  map[string]span
}

// readCore reads what the core can say of the rows of a table.
func readCore(ctx context.Context, s *archiveTable, core *dwc.DataTable, o Options) (*coreTable, error) {
	c := &coreTable{table: core, kept: &spool{temp: o.TempDir}, places: map[string]span{}}
	id := dwc.IDTerm(core.RowType())
	if c.idHead = id != "" && !slices.Contains(s.heads, id); c.idHead {
		c.heads = append(c.heads, id)
	}
	for i, column := range core.Columns() {
		term := column.Term.Name
		own := slices.Index(s.heads, term)
		if term == id || own < 0 && slices.Contains(c.heads, term) {
			continue
		}
		if own < 0 {
			c.heads = append(c.heads, term)
		}
		c.terms, c.columns, c.own = append(c.terms, term), append(c.columns, i), append(c.own, own)
	}
	at := 0
	var b []byte
	for r, err := range core.Rows() {
		if err == nil {
			err = ctx.Err()
		}
		if err != nil {
			return c, err
		}
		b = b[:0]
		for _, i := range c.columns {
			v := validText([]byte(r.Value(i)))
			b = append(binary.AppendUvarint(b, uint64(len(v))), v...)
		}
		if _, err := c.kept.Write(b); err != nil {
			return c, err
		}
		if _, twice := c.places[r.ID()]; !twice && r.ID() != "" {
			c.places[r.ID()] = span{at, at + len(b)}
		}
		at += len(b)
	}
	return c, c.kept.flush()
}

// complete puts the values of the core row with the id beside the cells of an
// occurrence, whose first have the headings given. Where there is no such core
// row, only the id is known.
func (c *coreTable) complete(row *Row, heads []string, id string) (known bool, err error) {
	if c.idHead {
		row.Cells = append(row.Cells, textCell(id))
	} else if at := slices.Index(heads, dwc.IDTerm(c.table.RowType())); at >= 0 && row.Cells[at].Text == "" {
		row.Cells[at] = textCell(id)
	}
	place, known := c.places[id]
	if !known {
		for range len(c.heads) - (len(row.Cells) - len(heads)) {
			row.Cells = append(row.Cells, Cell{})
		}
		return false, nil
	}
	b := make([]byte, place.to-place.from)
	if _, err := io.ReadFull(c.kept.from(int64(place.from)), b); err != nil {
		return false, err
	}
	stated := func(term string) string {
		if at := slices.Index(heads, term); at >= 0 {
			return row.Cells[at].Text
		}
		return ""
	}
	var taken []int // own columns, filled when all have been looked at
	var values []string
	for i, term := range c.terms {
		n, size := binary.Uvarint(b)
		value := string(b[size : size+int(n)])
		b = b[size+int(n):]
		switch at := c.own[i]; {
		case at < 0:
			row.Cells = append(row.Cells, textCell(value))
		case value != "" && row.Cells[at].Text == "" && dwc.Inherits(term, stated):
			taken, values = append(taken, at), append(values, value)
		}
	}
	for i, at := range taken {
		row.Cells[at] = textCell(values[i])
	}
	return true, nil
}
