package notebook

import (
	"slices"

	"fieldfare/dwc"
)

// parentsOf are the ids of the events of which others are parts.
func parentsOf(events *dwc.DataTable) (map[string]bool, error) {
	parents := map[string]bool{}
	at := slices.IndexFunc(events.Columns(), func(c dwc.Column) bool { return c.Term.Name == "parentEventID" })
	if at < 0 {
		return parents, nil
	}
	for r, err := range events.Rows() {
		if err != nil {
			return nil, err
		}
		parents[r.Value(at)] = true
	}
	return parents, nil
}

// visitsOnce sees to it that of several tables of occurrences one yields the
// visits, knowing the events of all.
func visitsOnce(sheets []Sheet) error {
	for i, sheet := range sheets {
		s := sheet.(*archiveTable)
		if s.core == nil || s.core.table.RowType() != dwc.RowEvent {
			return nil
		}
		if s.last = i == len(sheets)-1; !s.last {
			continue
		}
		s.elsewhere = map[string]bool{}
		for _, other := range sheets[:i] {
			for r, err := range other.(*archiveTable).table.Rows() {
				if err != nil {
					return err
				}
				s.elsewhere[r.ID()] = true
			}
		}
	}
	return nil
}

// visits yields the events of an archive's core that no occurrence belongs to
// and that are no parent of others: visits on which nothing was found. Each
// is a row whose cells stand under the terms of the occurrences' table.
func (s *archiveTable) visits(row *Row, seen map[string]bool, fn func(*Row) error) (stopped, err error) {
	parents, err := parentsOf(s.core.table)
	if err != nil {
		return nil, err
	}
	heads := append(slices.Clone(s.heads), s.core.heads...)
	from := make([]int, len(heads)) // column of the core, for each of heads
	for i, h := range heads {
		from[i] = slices.IndexFunc(s.core.table.Columns(), func(c dwc.Column) bool { return c.Term.Name == h })
	}
	for r, err := range s.core.table.Rows() {
		if err != nil {
			return nil, err
		}
		if seen[r.ID()] || s.elsewhere[r.ID()] || parents[r.ID()] {
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
