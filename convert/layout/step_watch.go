package layout

import "fieldfare/convert/notebook"

// stepWatch looks for dragged-down cells beyond the head of a sheet, row by
// row. It remembers the last few rows only, and hands out those of a run.
type stepWatch struct {
	cols []steppedColumn
	ring [autofillDate + 1]notebook.Row // the last rows
	n    int                            // how many there were
}

// last returns the row that was the n-th from the last; 0 is the last.
func (w *stepWatch) last(n int) *notebook.Row { return &w.ring[(w.n-1-n)%len(w.ring)] }

// steppedColumn is a column of dates or references, and how many of its last
// cells go up by one.
type steppedColumn struct{ col, run int }

// watchSteps chooses the columns to look at by what the head holds.
func (p *page) watchSteps() *stepWatch {
	w := &stepWatch{}
	from := max(0, len(p.rows)-200)
	for c := range p.width {
		n, fit := 0, 0
		for i := from; i < len(p.rows); i++ {
			if l := p.rows[i].look(c); l != 0 {
				n++
				if l.is(lookGrid | lookDate | lookRealDate | lookDay) {
					fit++
				}
			}
		}
		if n > 0 && fit*2 >= n {
			w.cols = append(w.cols, steppedColumn{col: c})
		}
	}
	return w
}

// row takes in the next row, and reports whether a run that a spreadsheet may
// have made ends with it; the rows of the run are then the last of the ring.
func (w *stepWatch) row(r *notebook.Row) (run int) {
	if len(w.cols) == 0 {
		return 0
	}
	w.n++
	at := w.last(0)
	cells := append(at.Cells[:0], r.Cells...)
	*at = *r
	at.Cells = cells
	if w.n < 2 {
		return 0
	}
	before := w.last(1)
	for i := range w.cols {
		c := &w.cols[i]
		if c.col >= len(at.Cells) || c.col >= len(before.Cells) {
			c.run = 0
			continue
		}
		x, y := &before.Cells[c.col], &at.Cells[c.col]
		if x.Text == y.Text || !stepsByOne(x, y) && !nextDay(x, y) {
			c.run = 0
			continue
		}
		c.run++
		if c.run+1 >= autofillGrid {
			run = max(run, min(c.run+1, w.n, len(w.ring)))
		}
	}
	return run
}

// keepRun keeps the rows of a run that are not kept yet.
func (p *page) keepRun(w *stepWatch, run int) (kept int) {
	for n := run - 1; n >= 0; n-- {
		if r := w.last(n); r.Number > p.rows[len(p.rows)-1].number {
			p.keep(r)
			kept++
		}
	}
	return kept
}
