package layout

import (
	"fmt"
	"slices"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// walker carries the state of one walk.
type walker struct {
	p          *Plan
	fixed      int // the next of p.fixed
	block      int // the first block that may still hold rows
	states     []*listState
	out        Outcome
	left       map[string]int
	started    bool
	cells      int   // cells with text of the row
	base       Draft // what the drafts of a table's row share
	groupDraft []int // draft of each group of a table's columns
	countPlan  cellPlan
	part       *walker // reads one of several lists side by side
	sideRow    notebook.Row
}

func newWalker(p *Plan) *walker {
	return &walker{p: p, left: map[string]int{}, countPlan: cellPlan{count: true, damage: damageCount}}
}

// Walk reads the sheet again and yields exactly one Outcome for every row, in
// order. The Outcome and all it points to are valid only during the call.
func (p *Plan) Walk(s notebook.Sheet, fn func(*Outcome) error) error {
	w := newWalker(p)
	for _, b := range p.blocks {
		w.states = append(w.states, newListState(p, b))
	}
	p.tally = tally{printed: p.columnNotes()}
	return s.Walk(func(r *notebook.Row) error {
		w.row(r)
		if len(p.page.initials)+len(p.page.bands)+len(p.page.legend) > 0 {
			for i := range w.out.Drafts {
				p.page.spellLegend(&w.out.Drafts[i])
				p.page.writeOut(&w.out.Drafts[i])
				p.page.countBands(&w.out.Drafts[i])
			}
		}
		p.tally.add(&w.out)
		return fn(&w.out)
	})
}

func (w *walker) row(r *notebook.Row) {
	p := w.p
	clear(w.left)
	w.out = Outcome{Row: r, Left: w.left, Notes: w.out.Notes[:0], Drafts: w.out.Drafts[:0]}
	if !w.started {
		w.started = true
		w.out.Notes = append(w.out.Notes, p.notes...)
	}
	whole, beside := r, 0
	if len(p.side) > 0 {
		r, beside = w.besideSide(r)
	}
	w.cells = countText(r)
	for w.fixed < len(p.fixed) && p.fixed[w.fixed].number < r.Number {
		w.fixed++
	}
	for w.block < len(p.blocks) && p.blocks[w.block].last != 0 && p.blocks[w.block].last < r.Number {
		w.block++
	}
	w.notesOf(r)
	switch {
	case w.fixed < len(p.fixed) && p.fixed[w.fixed].number == r.Number:
		w.fixedRow(r, &p.fixed[w.fixed])
	case w.cells == 0:
		w.out.Skip = skipBlank
		for _, s := range w.states[w.block:] {
			s.blanks = true
		}
	case r.Struck:
		w.skip(skipStruck)
	default:
		w.body(r)
	}
	w.lost(r)
	if beside > 0 {
		w.out.Row = whole
		w.out.Used += beside
		if w.out.Skip == skipBlank {
			w.out.Skip = skipTitle
		}
	}
	if r.Hidden && w.out.Skip != skipBlank {
		w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf("hidden-row",
			fmt.Sprintf("Row %d is hidden in the workbook. It was read like the others; strike it through, or leave it out in the project file, if it should not be.", r.Number)),
			Ref: notebook.Ref{Col: 1, Row: r.Number}})
	}
}

// notesOf hands out the notes about columns with the row they stand on.
func (w *walker) notesOf(r *notebook.Row) {
	for i := w.block; i < len(w.p.blocks); i++ {
		b := w.p.blocks[i]
		if len(b.notes) == 0 || w.states[i].noted {
			continue
		}
		for _, n := range b.notes {
			if n.Ref.Row > r.Number {
				return
			}
		}
		w.states[i].noted = true
		w.out.Notes = append(w.out.Notes, b.notes...)
	}
}

func (w *walker) fixedRow(r *notebook.Row, f *fixedRow) {
	w.out.Skip = f.skip
	if len(f.empty) > 0 {
		w.out.Skip = ""
		for i := range f.empty { // copied, as drafts are used again
			d := w.newDraft(r)
			d.Values = append(d.Values, f.empty[i].Values...)
			d.Empty, d.Night = true, f.empty[i].Night
		}
	}
	for i := range r.Cells {
		if !HasText(&r.Cells[i]) {
			continue
		}
		if i < len(f.used) && f.used[i] {
			w.out.Used++
		} else {
			w.left[f.skip]++
		}
	}
}

// skip leaves the whole row out.
func (w *walker) skip(why string) {
	w.out.Skip = why
	w.out.Used = 0
	clear(w.left)
	if w.cells > 0 {
		w.left[why] = w.cells
	}
	w.out.Drafts = w.out.Drafts[:0]
}

func (w *walker) body(r *notebook.Row) {
	done := false
	if w.sharedFacts(r) {
		return
	}
	for i := w.block; i < len(w.p.blocks) && w.p.blocks[i].first <= r.Number; i++ {
		b := w.p.blocks[i]
		if !b.holds(r.Number) {
			continue
		}
		if b.mixed {
			w.partRow(r, b, w.states[i], !done)
		} else {
			w.blockRow(r, b, w.states[i])
		}
		done = true
	}
	if !done {
		w.skip(skipOutside)
		return
	}
	if w.settle(skipOutside) && w.out.Skip == skipBlank {
		w.out.Skip = skipOutside
	}
}

// sharedFacts reads a line of labels and values that stands over lists side by
// side: it holds for all of them, unless it says the same thing of each.
func (w *walker) sharedFacts(r *notebook.Row) bool {
	if w.block >= len(w.p.blocks) || !w.p.blocks[w.block].mixed || !w.p.blocks[w.block].holds(r.Number) {
		return false
	}
	k := w.p.page.view(r)
	if !w.p.page.factLine(&k) || !k.looks[k.first].is(lookMarked) {
		return false
	}
	if !k.ownLabels() {
		return false
	}
	for i := w.block; i < len(w.p.blocks) && w.p.blocks[i].mixed && w.p.blocks[i].holds(r.Number); i++ {
		w.out.Used = 0
		clear(w.left)
		w.sectionLine(r, &k, w.states[i])
	}
	return true
}

func (w *walker) blockRow(r *notebook.Row, b *block, s *listState) {
	switch b.kind {
	case kindList:
		w.listRow(r, b, s)
	case kindAcross, kindDown:
		w.tableRow(r, b, s)
	case kindDiary:
		w.diaryRow(r, b, s)
	default:
		w.skip(skipNoPage)
	}
	s.blanks = false
}

// partRow reads what stands in one list's columns where several stand side by
// side, and adds it to the outcome.
func (w *walker) partRow(r *notebook.Row, b *block, s *listState, first bool) {
	if w.part == nil {
		w.part = newWalker(w.p)
	}
	part := *r
	part.Cells = slices.Clone(r.Cells)
	own, common := 0, 0 // cells with text in the list's own columns, and in those that all share
	for c := range part.Cells {
		switch {
		case slices.Contains(b.shared, c):
			if HasText(&part.Cells[c]) {
				common++
			}
		case c < b.from || c > b.to:
			part.Cells[c] = notebook.Cell{}
		case HasText(&part.Cells[c]):
			own++
		}
	}
	q := w.part
	clear(q.left)
	q.out = Outcome{Row: &part, Left: q.left, Drafts: q.out.Drafts[:0]}
	q.cells = own + common
	switch {
	case own == 0 && !(first && common > 0 && common == w.cells):
		q.out.Skip = skipBlank
		if first { // what all share is accounted for with the first
			q.out.Used = common
			s.noteShared(&part)
		}
	default:
		q.blockRow(&part, b, s)
	}
	if !first && own > 0 { // counted with the first list
		q.out.Used, common = takeAway(q.out.Used, common)
		for _, why := range sortedKeys(q.left) {
			q.left[why], common = takeAway(q.left[why], common)
			if q.left[why] == 0 {
				delete(q.left, why)
			}
		}
	}
	for i := range q.out.Drafts {
		d := w.newDraft(r)
		d.Values = append(d.Values, q.out.Drafts[i].Values...)
		d.Empty, d.Night = q.out.Drafts[i].Empty, q.out.Drafts[i].Night
	}
	w.out.Notes = append(w.out.Notes, q.out.Notes...)
	w.out.Used += q.out.Used
	for why, n := range q.left {
		w.left[why] += n
	}
	switch {
	case len(w.out.Drafts) > 0:
		w.out.Skip = ""
	case first || w.out.Skip == skipBlank:
		w.out.Skip = q.out.Skip
	}
}

func takeAway(n, less int) (rest, still int) {
	k := min(n, less)
	return n - k, less - k
}

func countText(r *notebook.Row) int {
	n := 0
	for i := range r.Cells {
		if r.Cells[i].Text != "" && HasText(&r.Cells[i]) {
			n++
		}
	}
	return n
}

// settle accounts for the cells that nothing took, and tells whether there were
// any.
func (w *walker) settle(why string) bool {
	sum := w.out.Used
	for _, n := range w.left {
		sum += n
	}
	rest := w.cells - sum
	if rest > 0 {
		w.left[why] += rest
	}
	return rest > 0
}
