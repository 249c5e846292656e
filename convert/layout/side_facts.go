package layout

import (
	"slices"

	"fieldfare/convert/notebook"
)

// span of columns of one row that hold a label and its value beside a list.
type sideCells struct{ from, to int }

// takeSideFacts reads a block of labels with their values that stands to the
// right of a list or table, row beside row, and takes it off the page: what is
// left reads as if it were not there.
func (p *Plan) takeSideFacts() {
	pg := p.page
	for c := 2; c < pg.width; c++ {
		rows := pg.sideBlock(c)
		if len(rows) == 0 || p.chosenColumn(c) || p.chosenColumn(c+1) {
			continue
		}
		p.side = map[int]sideCells{}
		for _, i := range rows {
			r := &pg.rows[i]
			to := c
			for next := c + 1; next < len(r.looks) && next <= c+1; next++ {
				if r.looks[next] != 0 && len(labelsIn(r.text(c))) == 0 || r.looks[next] != 0 && r.looks[c].is(lookMarked) {
					to = next
				}
			}
			part := *r
			part.looks = slices.Clone(r.looks)
			for j := range part.looks {
				if j < c || j > to {
					part.looks[j] = 0
				}
			}
			p.beside.read(pg, &part, FromPage)
			p.side[r.number] = sideCells{c, to}
			r.without(sideCells{c, to})
		}
		return
	}
}

// chosenColumn reports whether the project file says what a column holds.
func (p *Plan) chosenColumn(c int) bool {
	for i := range p.entries {
		if _, ok := p.entries[i].Columns[notebook.ColumnName(c+1)]; ok {
			return true
		}
	}
	return false
}

// sideBlock returns the rows whose cell in the column is a label, where every
// cell of it is one, each of something else, and a list stands to the left.
func (p *page) sideBlock(c int) []int {
	var rows []int
	said := map[string]bool{}
	beside, gap := 0, true
	for i := range p.rows {
		r := &p.rows[i]
		if r.look(c) == 0 {
			continue
		}
		text := r.text(c)
		labels := labelsIn(text)
		label := text
		_, ok := labelOf(text)
		switch marked := r.looks[c].is(lookMarked); {
		case len(labels) == 1 && labels[0].from == 0 && !marked:
			label = text[:labels[0].to]
		case !ok || !marked && !sureLabel(text), !marked && r.look(c+1) == 0:
			return nil
		case !marked && r.looks[c].is(lookKnownTaxon|lookBinomial):
			return nil
		}
		key := normHeading(label)
		if said[key] {
			return nil
		}
		said[key] = true
		left := 0
		for j := range c {
			if l := r.looks[j]; l != 0 {
				left++
				if l.is(lookMarked) || len(labelsIn(r.text(j))) > 0 {
					return nil
				}
			}
		}
		if left >= 2 {
			beside++
		}
		gap = gap && r.look(c-1) == 0
		if !gap && !r.looks[c].is(lookMarked) && len(labels) == 0 {
			return nil
		}
		rows = append(rows, i)
	}
	if len(rows) < 2 || beside < 2 {
		return nil
	}
	return rows
}

// without blanks cells of a row.
func (r *keptRow) without(s sideCells) {
	r.cells, r.looks = slices.Clone(r.cells), slices.Clone(r.looks)
	for c := s.from; c <= s.to && c < len(r.cells); c++ {
		r.cells[c], r.looks[c] = notebook.Cell{}, 0
	}
	r.n, r.first = 0, -1
	for c := range r.looks {
		if r.looks[c] != 0 {
			if r.n++; r.first < 0 {
				r.first = c
			}
		}
	}
}

// besideSide returns the row as the list on it is to be read, without the
// facts beside it, and how many cells these are.
func (w *walker) besideSide(r *notebook.Row) (*notebook.Row, int) {
	s, ok := w.p.side[r.Number]
	if !ok {
		return r, 0
	}
	w.sideRow = *r
	w.sideRow.Cells = slices.Clone(r.Cells)
	n := 0
	for c := s.from; c <= s.to && c < len(r.Cells); c++ {
		if HasText(&r.Cells[c]) {
			n++
		}
		w.sideRow.Cells[c] = notebook.Cell{}
	}
	return &w.sideRow, n
}
