package layout

import "fieldfare/convert/notebook"

// stepWatch looks for dragged-down cells beyond the head of a sheet, row by
// row. It remembers the last few rows only, and hands out those of a run.
type stepWatch struct {
	cols []steppedColumn
	ring [autofillDate + 1]notebook.Row // the last rows, the newest at n-1
	n    int
}

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
// have made ends with it; the rows of the run are the last of the ring.
func (w *stepWatch) row(r *notebook.Row) (run int) {
	if len(w.cols) == 0 {
		return 0
	}
	if w.n == len(w.ring) {
		oldest := w.ring[0]
		copy(w.ring[:], w.ring[1:])
		w.n--
		w.ring[w.n] = oldest // its memory is used again
	}
	at := &w.ring[w.n]
	cells := append(at.Cells[:0], r.Cells...)
	*at = *r
	at.Cells = cells
	w.n++
	if w.n < 2 {
		return 0
	}
	before := &w.ring[w.n-2]
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
			run = max(run, min(c.run+1, w.n))
		}
	}
	return run
}

// keepRun keeps the rows of a run that are not kept yet.
func (p *page) keepRun(w *stepWatch, run int) (kept int) {
	for i := w.n - run; i < w.n; i++ {
		if w.ring[i].Number > p.rows[len(p.rows)-1].number {
			p.keep(&w.ring[i])
			kept++
		}
	}
	return kept
}
