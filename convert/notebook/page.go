package notebook

import (
	"fmt"
	"slices"
	"strings"
)

// page gives the rows of a workbook's sheet to a walk's function: it fills
// the gaps between the rows that the file holds, spreads merged areas and
// puts comments on their cells. The readers of both workbook formats use it.
type page struct {
	fn          func(*Row) error
	limits      Limits
	merges      []area // by their first row
	comments    map[Ref]string
	commentRefs []Ref // in order

	row     Row
	cells   []Cell
	last    int // the last row given out
	active  []spreading
	spread  int   // cells and areas handled for merging so far
	stopped error // what fn returned
}

// spreading is a merged area that the current row lies in.
type spreading struct {
	area
	cell Cell
}

// begin starts a row. Rows before it that the file leaves out are given out
// blank.
func (p *page) begin(number int, hidden bool) error {
	if number > p.limits.Rows {
		return &Problem{
			Found:  fmt.Sprintf("it claims a row %d, and the most that is read is %d", number, p.limits.Rows),
			Advice: raise("rows", "split the sheet; if not, open it in a spreadsheet program and save it afresh as .xlsx"),
		}
	}
	for p.last+1 < number {
		if err := p.blank(); err != nil {
			return err
		}
	}
	p.start(number, hidden)
	return nil
}

func (p *page) start(number int, hidden bool) {
	clear(p.cells)
	p.cells = p.cells[:0]
	p.row = Row{Number: number, Hidden: hidden}
}

// blank gives out one row that the file leaves out.
func (p *page) blank() error {
	p.start(p.last+1, false)
	return p.end()
}

// at returns the current row's cell in the column, widening the row.
func (p *page) at(col int) (*Cell, error) {
	if col > p.limits.Columns {
		return nil, &Problem{
			Found:  fmt.Sprintf("row %d claims a cell in column %d, and the most that is read is %d columns", p.row.Number, col, p.limits.Columns),
			Advice: raise("columns", "split the sheet"),
		}
	}
	if n := col - len(p.cells); n > 0 {
		// What is appended was cleared when the row before it was done.
		p.cells = slices.Grow(p.cells, n)[:col]
	}
	return &p.cells[col-1], nil
}

// end gives out the current row.
func (p *page) end() error {
	p.last = max(p.last, p.row.Number)
	if err := p.spreadMerged(); err != nil {
		return err
	}
	for len(p.commentRefs) > 0 && p.commentRefs[0].Row <= p.row.Number {
		ref := p.commentRefs[0]
		p.commentRefs = p.commentRefs[1:]
		if ref.Row == p.row.Number {
			cell, err := p.at(ref.Col)
			if err != nil {
				return err
			}
			cell.Comment = p.comments[ref]
		}
	}
	texts, struck := 0, 0
	for i := range p.cells {
		if c := &p.cells[i]; c.Kind != Empty && !c.Spread && strings.TrimSpace(c.Text) != "" {
			texts++
			if c.Struck {
				struck++
			}
		}
	}
	p.row.Struck = texts > 0 && texts == struck
	p.row.Cells = p.cells
	p.stopped = p.fn(&p.row)
	return p.stopped
}

// finish gives out the rows below the last that have comments.
func (p *page) finish() error {
	for len(p.commentRefs) > 0 {
		if err := p.blank(); err != nil {
			return err
		}
	}
	return nil
}

// spreadMerged repeats the first cell of each merged area over the area's
// other cells in this row. A cell that has a text of its own keeps it: it is
// out of sight in a spreadsheet program, but it is in the file.
func (p *page) spreadMerged() error {
	n := p.row.Number
	for len(p.merges) > 0 && p.merges[0].top <= n {
		a := p.merges[0]
		p.merges = p.merges[1:]
		if a.top == n && a.left <= len(p.cells) {
			if c := p.cells[a.left-1]; c.Kind != Empty {
				c.Spread, c.Comment = true, ""
				p.active = append(p.active, spreading{a, c})
			}
		}
		p.spread++
	}
	if len(p.active) == 0 {
		return nil
	}
	kept := p.active[:0]
	for _, s := range p.active {
		if s.bottom < n {
			continue
		}
		kept = append(kept, s)
		if p.spread += s.right - s.left + 1; p.spread > p.limits.SpreadCells {
			return tooSpread(p.limits)
		}
		if _, err := p.at(s.right); err != nil {
			return err
		}
		for c := s.left; c <= s.right; c++ {
			if cell := &p.cells[c-1]; cell.Kind == Empty {
				*cell = s.cell
			}
		}
	}
	p.active = kept
	return nil
}

func tooSpread(l Limits) error {
	return &Problem{
		Found:  fmt.Sprintf("its merged areas cover more than %d cells", l.SpreadCells),
		Advice: raise("spread_cells", "unmerge them in a spreadsheet program"),
	}
}

func tooManySheets(l Limits) error {
	return &Problem{
		Found:  fmt.Sprintf("it has more than %d sheets", l.Sheets),
		Advice: raise("sheets", "split it"),
	}
}
