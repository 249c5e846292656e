package notebook

import (
	"slices"

	"fieldfare/dwc"
)

// visits yields the events of an archive's core that no occurrence belongs to
// and that are no parent of others: visits on which nothing was found. Each
// is a row whose cells stand under the terms of the occurrences' table.
func (s *archiveTable) visits(row *Row, seen map[string]bool, fn func(*Row) error) (stopped, err error) {
	parents := map[string]bool{}
	at := slices.IndexFunc(s.core.Columns(), func(c dwc.Column) bool { return c.Term.Name == "parentEventID" })
	for r, err := range s.core.Rows() {
		if err != nil {
			return nil, err
		}
		if at >= 0 {
			parents[r.Value(at)] = true
		}
	}
	heads := append(slices.Clone(s.heads), s.events.heads...)
	from := make([]int, len(heads)) // column of the core, for each of heads
	for i, h := range heads {
		from[i] = slices.IndexFunc(s.core.Columns(), func(c dwc.Column) bool { return c.Term.Name == h })
	}
	for r, err := range s.core.Rows() {
		if err != nil {
			return nil, err
		}
		if seen[r.ID()] || parents[r.ID()] {
			continue
		}
		row.Number++
		row.Cells, row.Repaired = row.Cells[:0], ""
		for i, c := range from {
			cell := Cell{}
			switch {
			case heads[i] == "eventID":
				cell = textCell(r.ID())
			case c >= 0:
				cell = textCell(validText([]byte(r.Value(c))))
			}
			row.Cells = append(row.Cells, cell)
		}
		if s.measures != nil {
			row.Cells = s.measures.append(row.Cells, "", r.ID())
		}
		if err := fn(row); err != nil {
			return err, nil
		}
	}
	return nil, nil
}
