package layout

import (
	"slices"
	"strings"

	"fieldfare/convert/notebook"
)

const (
	// headRows and headCells bound what Survey keeps of a sheet's head. Most
	// notebooks are shorter, and are seen whole.
	headRows  = 4000
	headCells = 400_000
	// Beyond the head only headings and the rows after them are kept, and rows
	// whose dates or references go up by one.
	afterHeading = 40
	extraRows    = 4000
	// maxColumns is how many columns of a row are judged; cells beyond are
	// reported as left out.
	maxColumns = 2000
)

// keptRow is a row of the page that Survey keeps, with what its cells look
// like.
type keptRow struct {
	number int
	cells  []notebook.Cell
	looks  []look
	n      int // cells with text
	first  int // the first of them, -1 for none
	hidden bool
	struck bool
}

// text returns the trimmed, tidied text of a cell by its index from 0.
func (r *keptRow) text(col int) string {
	if col < 0 || col >= len(r.cells) {
		return ""
	}
	s, _ := tidy(trim(r.cells[col].Text))
	return s
}

func (r *keptRow) look(col int) look {
	if col < 0 || col >= len(r.looks) {
		return 0
	}
	return r.looks[col]
}

// count returns how many cells from one column to another look like any of m.
func (r *keptRow) count(m look, from, to int) int {
	n := 0
	for c := max(from, 0); c < len(r.looks) && c <= to; c++ {
		if r.looks[c].is(m) {
			n++
		}
	}
	return n
}

// page is what Survey has seen of a sheet.
type page struct {
	file, sheet   string
	rows          []keptRow
	complete      bool // every row of the sheet is kept
	headEnd       int  // number of the last row of the head, where that is not all
	last          int  // number of the last row with text
	width         int
	hiddenColumns map[int]bool // from 0
	eyes          eyes
	initials      map[string]string // whose they are, where the page says so
	bands         map[string]string // counts for which letters stand, likewise
	legend        map[string]string // places and traps for which letters stand, likewise
}

// readPage walks the sheet once.
func readPage(s notebook.Sheet, probe Probe) (*page, error) {
	p := &page{file: s.File(), sheet: s.Name(), complete: true, eyes: eyes{probe, map[string]look{}}, hiddenColumns: map[int]bool{}}
	for _, c := range s.HiddenColumns() {
		p.hiddenColumns[c-1] = true
	}
	cells, extra, after := 0, 0, 0
	var steps *stepWatch
	err := s.Walk(func(r *notebook.Row) error {
		if len(p.rows) < headRows && cells < headCells {
			p.keep(r)
			cells += len(r.Cells)
			return nil
		}
		if p.complete {
			p.complete, p.headEnd = false, p.rows[len(p.rows)-1].number
			steps = p.watchSteps()
		}
		p.last = r.Number
		run := steps.row(r)
		switch {
		case extra >= extraRows:
		case after > 0:
			after--
			extra++
			p.keep(r)
		case run > 0:
			extra += p.keepRun(steps, run)
		case mayBeHeadings(r):
			k := p.view(r)
			if headings, _ := p.headingScore(&k); headings && !p.seenHeadings(&k) {
				p.rows = append(p.rows, k)
				after = afterHeading
				extra++
			}
		}
		return nil
	})
	return p, err
}

func (p *page) keep(r *notebook.Row) {
	k := p.view(r)
	if k.n > 0 {
		p.last = r.Number
	}
	p.width = max(p.width, len(k.cells))
	p.rows = append(p.rows, k)
}

func (p *page) view(r *notebook.Row) keptRow {
	cells := r.Cells
	if len(cells) > maxColumns {
		cells = cells[:maxColumns]
	}
	for len(cells) > 0 && !HasText(&cells[len(cells)-1]) {
		cells = cells[:len(cells)-1]
	}
	k := keptRow{number: r.Number, cells: slices.Clone(cells), looks: make([]look, len(cells)), first: -1, hidden: r.Hidden, struck: r.Struck}
	for i := range k.cells {
		if k.looks[i] = p.eyes.look(&k.cells[i]); k.looks[i] != 0 {
			k.n++
			if k.first < 0 {
				k.first = i
			}
		}
	}
	p.spellMonths(&k)
	k.sectionsAcross()
	k.sixFigureDates()
	return k
}

// mayBeHeadings sieves the rows beyond the head cheaply: the first cell with
// text is a word of the vocabulary.
func mayBeHeadings(r *notebook.Row) bool {
	for i := range r.Cells {
		c := &r.Cells[i]
		if c.Text == "" {
			continue
		}
		if c.Kind != notebook.Text || len(c.Text) > 24 || isDigit(c.Text[0]) {
			return false
		}
		_, ok := vocabulary[normHeading(c.Text)]
		return ok
	}
	return false
}

// seenHeadings reports whether the same row of headings has been kept already.
func (p *page) seenHeadings(k *keptRow) bool {
	for i := range p.rows {
		if sameHeadings(&p.rows[i], k) {
			return true
		}
	}
	return false
}

// sameHeadings reports whether two rows say the same, four cells in five.
func sameHeadings(a, b *keptRow) bool {
	if a.n < 2 || b.n < 2 || a.first != b.first || b.n*5 < a.n*4 || a.n*5 < b.n*4 {
		return false
	}
	same := 0
	for c := range a.cells {
		if c < len(b.cells) && a.looks[c] != 0 && strings.EqualFold(trim(a.cells[c].Text), trim(b.cells[c].Text)) {
			same++
		}
	}
	return same >= 2 && same*5 >= max(a.n, b.n)*4
}
