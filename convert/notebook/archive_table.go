package notebook

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"fieldfare/dwc"
)

// archiveTable is one table of an archive.
type archiveTable struct {
	src   *source
	ctx   context.Context
	table *dwc.DataTable
	name  string
	heads []string
	// columns are those of the table, for each of heads; -1 is the row's id,
	// where no column has it.
	columns []int
	// core is the archive's core where the rows of this table belong to its
	// rows; measures are the archive's measurements.
	core     *coreTable
	measures *measures
	// last: the table yields visits, after its rows. elsewhere are the events
	// to which rows of other tables belong.
	last      bool
	elsewhere map[string]bool
}

func newArchiveTable(ctx context.Context, src *source, t *dwc.DataTable) *archiveTable {
	s := &archiveTable{src: src, ctx: ctx, table: t, name: shortRowType(t.RowType())}
	for i, c := range t.Columns() {
		s.heads, s.columns = append(s.heads, c.Term.Name), append(s.columns, i)
	}
	if id := dwc.IDTerm(t.RowType()); t.IsCore() && t.HasIDs() && id != "" && !slices.Contains(s.heads, id) {
		s.heads, s.columns = append([]string{id}, s.heads...), append([]int{-1}, s.columns...)
	}
	return s
}

// shortRowType is the name of a row type without its name space.
func shortRowType(rowType string) string {
	return rowType[strings.LastIndexAny(rowType, "/#")+1:]
}

func (s *archiveTable) File() string         { return s.src.path }
func (s *archiveTable) Name() string         { return s.name }
func (s *archiveTable) Hidden() bool         { return false }
func (s *archiveTable) HiddenColumns() []int { return nil }

// Walk yields the names of the terms as row 1, then the table's rows.
func (s *archiveTable) Walk(fn func(*Row) error) error {
	stopped, err := s.walk(fn)
	return s.src.ended(s.name, stopped, archiveTrouble(err))
}

func (s *archiveTable) walk(fn func(*Row) error) (stopped, err error) {
	row := Row{Number: 1}
	s.headings(&row)
	if err := fn(&row); err != nil {
		return err, nil
	}
	seen := map[string]bool{} // events
	id := slices.Index(s.heads, "occurrenceID")
	for r, err := range s.table.Rows() {
		if err != nil {
			return nil, err
		}
		if row.Number++; row.Number%4096 == 0 {
			if err := s.ctx.Err(); err != nil {
				return nil, err
			}
		}
		notes := slices.Clone(r.Notes)
		s.cells(&row, r)
		record, event := r.ID(), ""
		if s.core != nil {
			if s.last {
				seen[r.ID()] = true
			}
			known, err := s.core.complete(&row, s.heads, r.ID())
			if err != nil {
				return nil, err
			}
			if !known {
				notes = append(notes, fmt.Sprintf("The row belongs to “%s”, which the archive's core does not have.", r.ID()))
			}
			if record, event = "", r.ID(); id >= 0 {
				record = row.Cells[id].Text
			}
		}
		if s.measures != nil {
			row.Cells = s.measures.append(row.Cells, record, event)
		}
		row.Repaired = strings.Join(notes, " ")
		if err := fn(&row); err != nil {
			return err, nil
		}
	}
	if !s.last {
		return nil, nil
	}
	return s.visits(&row, seen, fn)
}

// headings makes the row of the names of the terms.
func (s *archiveTable) headings(row *Row) {
	lists := [][]string{s.heads}
	if s.core != nil {
		lists = append(lists, s.core.heads)
	}
	if s.measures != nil {
		lists = append(lists, s.measures.heads)
	}
	for _, list := range lists {
		for _, h := range list {
			row.Cells = append(row.Cells, textCell(h))
		}
	}
}

// cells puts the values of a row of the table into cells.
func (s *archiveTable) cells(row *Row, r *dwc.Row) {
	row.Cells = row.Cells[:0]
	for _, at := range s.columns {
		value := r.ID()
		if at >= 0 {
			value = r.Value(at)
		}
		row.Cells = append(row.Cells, textCell(validText([]byte(value))))
	}
}
