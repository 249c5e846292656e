package convert

import "fieldfare/convert/notebook"

// watched is a sheet that tells how far a walk over it is, and counts its
// rows, so that the time left of the next walk can be told.
type watched struct {
	notebook.Sheet
	step func(rows int)
	rows int // of the last walk that came to the end
}

// Walk yields the rows of the sheet.
func (w *watched) Walk(fn func(*notebook.Row) error) error {
	n := 0
	err := w.Sheet.Walk(func(r *notebook.Row) error {
		if n++; n%batchRows == 0 {
			w.step(batchRows)
		}
		return fn(r)
	})
	if err == nil {
		w.rows = n
	}
	return err
}
