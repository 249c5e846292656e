package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// findBlocks parts the page into lists and tables and the lines between them.
func (p *Plan) findBlocks() {
	pg := p.page
	if p.overridden() {
		p.closeBlocks()
		return
	}
	var running facts
	p.namesOfPage(&running)
	p.yearAtFoot(&running)
	p.yearOfCover(&running)
	at := 0
	for at < len(pg.rows) {
		h, ok := p.nextHead(at)
		if !ok {
			break
		}
		from := p.preambleStart(at, h.from)
		p.closeBlock(from)
		before := running.clone()
		p.preamble(&running, from, h.from)
		p.corner(&running, h)
		p.openBlocks(&running, before, from, h)
		at = h.to + 1
	}
	if len(p.blocks) == 0 {
		p.headless(&running)
	}
	p.closeBlock(len(pg.rows))
}

// head is the headings of a list or table: indexes of its first and last row,
// and for a table the columns of counts.
type head struct {
	from, to int
	table    bool
	species  bool
	cols     []int
	// transposed: the table is a list that stands on its side.
	transposed bool
}

// nextHead finds the next headings at or after a row.
func (p *Plan) nextHead(at int) (head, bool) {
	pg := p.page
	current := (*block)(nil)
	if len(p.blocks) > 0 {
		current = p.blocks[len(p.blocks)-1]
	}
	for i := at; i < len(pg.rows); i++ {
		r := &pg.rows[i]
		if r.n == 0 || r.struck {
			continue
		}
		if current != nil && p.repeats(current, r) {
			continue
		}
		if current != nil && i > at && pg.rows[i-1].n > 1 && r.count(lookInt, 0, len(r.looks)) >= r.n-1 && !pg.factLine(&pg.rows[i-1]) {
			continue // figures behind a label, directly below records: sums
		}
		if current != nil && current.axis != nil && r.visitLine() {
			continue
		}
		if h, ok := pg.transposed(i); ok {
			return h, true
		}
		if cols, species, ok := pg.tableAt(i, 0, pg.width-1); ok {
			top, bottom := pg.stack(i, cols, species, at)
			return head{from: top, to: bottom, table: true, species: species, cols: cols}, true
		}
		if h, ok := pg.namesOverDates(i); ok {
			return h, true
		}
		ok, words := pg.headingScore(r)
		if !ok || current != nil && (words < 2 || i == at && pg.datedRow(r)) {
			continue
		}
		start, end := i, i
		if i > at && !pg.factLine(&pg.rows[i-1]) && pg.subHeadings(&pg.rows[i-1]) && pg.rows[i-1].number == r.number-1 && pg.rows[i-1].n > 0 && pg.rows[i-1].single() < 0 {
			start = i - 1
		} else if i > at && pg.rows[i-1].n > 0 && pg.upperHeadings(&pg.rows[i-1], r) {
			start = i - 1
		}
		for end+1 < len(pg.rows) && end < i+2 && pg.rows[end+1].number == pg.rows[end].number+1 && pg.subHeadings(&pg.rows[end+1]) {
			if pg.rows[end+1].single() >= 0 && pg.look1(end+1).is(lookGroup) || sameHeadings(&pg.rows[end], &pg.rows[end+1]) {
				break
			}
			end++
		}
		return head{from: start, to: end}, true
	}
	return head{}, false
}

// datedRow reports whether a row holds a day or a square: directly below
// headings it is their first record, though its words head columns elsewhere.
func (p *page) datedRow(r *keptRow) bool {
	return r.count(lookDate|lookDay|lookRealDate|lookGrid, 0, len(r.looks)) > 0
}

// visitLine reports whether a row within a table says of its nights or visits
// what the weather was or how long the trap ran: no headings of a further
// table.
func (r *keptRow) visitLine() bool {
	if r.first < 0 || r.n < 2 || r.count(lookDate|lookDay|lookMonth|lookRealDate, 0, len(r.looks)) > 0 || r.looks[r.first].is(lookKnownTaxon) || !visitLabel(r.text(r.first)) {
		return false
	}
	// "Temp | Wind | Cloud" are headings; "Weather | cloud | clear | clear" is not.
	heads := map[string]bool{}
	for c := r.first + 1; c < len(r.looks); c++ {
		if x := headingSenses(r.text(c), false); len(x) > 0 && x[0].weight >= weightMisspelt {
			heads[normHeading(r.text(c))] = true
		}
	}
	return len(heads)*2 <= r.n-1
}

// visitLabel reports whether a label says that what stands beside it tells of
// nights or visits: "Min temp C", "Weather".
func visitLabel(label string) bool {
	ms := headingSenses(strings.TrimRight(label, " :"), false)
	if len(ms) == 0 || ms[0].weight < weightContained {
		return false
	}
	switch ms[0].meaning {
	case Weather, Temperature, Effort, Time, EndTime:
		return true
	}
	return false
}

func (p *page) look1(i int) look {
	if s := p.rows[i].single(); s >= 0 {
		return p.rows[i].looks[s]
	}
	return 0
}

// upperHeadings reports whether a row above the headings groups them: a merged
// or lone word above several columns, that is itself a word of the vocabulary.
func (p *page) upperHeadings(up, r *keptRow) bool {
	if up.first <= r.first && up.single() >= 0 || p.factLine(up) {
		return false
	}
	return p.subHeadings(up)
}

func (p *Plan) repeats(b *block, r *keptRow) bool {
	for _, h := range b.heads {
		if sameHeadings(h, r) || b.mixed && b.sameWithin(h, r) {
			return true
		}
	}
	return false
}

// sameWithin compares headings in the block's own columns only.
func (b *block) sameWithin(h, r *keptRow) bool {
	same, n := 0, 0
	for c := b.from; c <= b.to && c < len(h.cells); c++ {
		if t := h.text(c); t != "" {
			n++
			if strings.EqualFold(t, r.text(c)) {
				same++
			}
		}
	}
	return n >= 2 && same*5 >= n*4
}

// preambleStart is where the lines that belong to the next headings begin:
// behind the last row of the block before.
func (p *Plan) preambleStart(at, head int) int {
	if len(p.blocks) == 0 {
		return 0
	}
	pg := p.page
	i := head
	for i > at {
		r := &pg.rows[i-1]
		if r.n > 0 && r.single() < 0 && !pg.factLine(r) {
			break
		}
		i--
	}
	// Lines that stand directly below the block before are its own.
	for j := i; j < head; j++ {
		if pg.rows[j].n == 0 {
			return j
		}
	}
	return i
}

// factLine reports whether a row is labels with their values.
func (p *page) factLine(r *keptRow) bool {
	if r.n > 8 {
		return false
	}
	marked := 0
	for c := range r.cells {
		if r.looks[c].is(lookMarked) || r.looks[c] != 0 && strings.IndexByte(r.cells[c].Text, ':') > 0 && len(labelsIn(r.text(c))) > 0 {
			marked++
		}
	}
	if marked > 0 && marked*3 >= r.n {
		return true
	}
	if r.first >= 0 && r.n <= 4 && r.n%2 == 0 {
		next := r.first + 1
		for next < len(r.looks) && r.looks[next] == 0 {
			next++
		}
		if third := nextText(r, next); third >= 0 && !labelText(r.text(third)) {
			return false // "Monad survey 2016 | TL4581 | TL4681 | TL4682"
		}
		if s, ok := labelOf(r.text(r.first)); ok && !r.looks[r.first].is(lookDate) && !labelled(r.text(next), s) && len(vocabulary[normHeading(r.text(next))]) == 0 {
			// "Double Square-spot | 20" is a record, though spots are places
			return sureLabel(r.text(r.first)) || !r.looks[r.first].is(lookTaxon) && !r.looks[next].is(lookInt)
		}
	}
	return false
}

// nextText returns the next column with text, -1 for none.
func nextText(r *keptRow, c int) int {
	for c++; c < len(r.looks); c++ {
		if r.looks[c] != 0 {
			return c
		}
	}
	return -1
}

func labelText(text string) bool {
	_, ok := labelOf(text)
	return ok
}

// closeBlocks ends the blocks that the project file opened.
func (p *Plan) closeBlocks() {
	for i, b := range p.blocks {
		if b.last == 0 && i+1 < len(p.blocks) && p.blocks[i+1].first > b.first {
			b.last = p.blocks[i+1].first - 1 - len(p.blocks[i+1].headRows)
		}
		b.sample = p.bodyRows(b)
		b.decide(p)
	}
}

// closeBlock ends the block before at a row index.
func (p *Plan) closeBlock(end int) {
	if len(p.blocks) == 0 {
		return
	}
	pg := p.page
	for _, b := range p.blocks {
		if b.last != 0 {
			continue
		}
		if end < len(pg.rows) {
			b.last = pg.rows[end].number - 1
		}
		b.sample = p.bodyRows(b)
		b.decide(p)
	}
}

// preamble reads the lines above headings.
func (p *Plan) preamble(running *facts, from, to int) {
	for i := from; i < to; i++ {
		r := &p.page.rows[i]
		switch {
		case r.n == 0:
			p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipBlank})
		case r.struck:
			p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipStruck})
		case p.page.headsUnread(r):
			p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipTitle, used: make([]bool, len(r.cells))})
			p.notes = append(p.notes, Note{Verdict: reading.QueryOf("headings-not-read", "Row "+itoa(r.number)+
				" reads like the headings of a table, but what stands below it was not recognised as one. Nothing was taken from it. Please say in the project file what each column holds, or give the table a plain row of headings."),
				Ref: cellRef(max(r.first, 0), r.number), Text: r.text(max(r.first, 0))})
		default:
			used := running.read(p.page, r, FromPage)
			p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipTitle, used: used})
		}
	}
}

// Why a row is no record.
const (
	skipBlank    = "blank"
	skipTitle    = "title"
	skipHeadings = "headings"
	skipTotal    = "total"
	skipStruck   = "struck through"
	skipSection  = "section line"
	skipNote     = "note"
	skipProject  = "left out by the project file"
	skipOutside  = "outside the lists of the page"
	skipNoPage   = "not a page of records"
)

// headless opens a block on a page without headings: from the first row that
// looks like a record.
func (p *Plan) headless(running *facts) {
	pg := p.page
	start := -1
	if first, ok := p.isDiary(); ok {
		p.preamble(running, 0, first)
		b := &block{kind: kindDiary, to: pg.width - 1, facts: running.clone(), first: pg.rows[first].number, why: "lines that begin with a date and name species"}
		p.blocks = append(p.blocks, b)
		return
	}
	for i := range pg.rows {
		r := &pg.rows[i]
		if r.n < 2 || r.single() >= 0 || pg.factLine(r) || pg.dayLine(i) {
			continue
		}
		if r.count(lookDate|lookDay|lookInt|lookGrid|lookTaxon|lookPair|lookCount, 0, len(r.looks)) > 0 && pg.likeFollowing(i) {
			start = i
			break
		}
	}
	if start < 0 {
		start = p.singleColumnStart()
	}
	if start < 0 {
		p.noRecords()
		return
	}
	for _, i := range [...]int{start, start - 1} { // its letters may look like counts
		if i >= 0 && i+1 < len(pg.rows) && pg.headsCounts(i) {
			p.preamble(running, 0, i)
			p.openBlocks(running, running.clone(), 0, head{from: i, to: i})
			return
		}
	}
	p.preamble(running, 0, start)
	if groups := pg.listsBeside(start); groups != nil {
		p.openBeside(groups, start, running)
		return
	}
	b := &block{kind: kindList, why: "no row of headings; judged by what the columns hold", from: 0, to: pg.width - 1, facts: running.clone(), first: pg.rows[start].number}
	p.blocks = append(p.blocks, b)
}

// likeFollowing reports whether a row's cells look like those below them, as
// one record does like the next.
func (p *page) likeFollowing(i int) bool {
	const classes = lookDate | lookDay | lookPair | lookInt | lookGrid | lookTaxon | lookWords | lookCount | lookTime
	r := &p.rows[i]
	strange, judged := 0, 0
	for c := range r.looks {
		if r.looks[c] == 0 {
			continue
		}
		var below look
		for j := i + 1; j < len(p.rows) && j <= i+12; j++ {
			below |= p.rows[j].look(c)
		}
		if below == 0 {
			continue
		}
		judged++
		if r.looks[c]&below&classes == 0 {
			strange++
		}
	}
	return strange == 0 || strange*3 < judged
}

// singleColumnStart finds the first line of a page of one column that reads
// like a name, with or without a count.
func (p *Plan) singleColumnStart() int {
	names, first := 0, -1
	for i := range p.page.rows {
		r := &p.page.rows[i]
		c := r.single()
		if c < 0 {
			continue
		}
		if _, _, ok := splitNameCountText(r.text(c)); ok || r.looks[c].is(lookTaxon) {
			if names++; first < 0 {
				first = i
			}
		}
	}
	if names < 2 {
		return -1
	}
	return first
}

// noRecords leaves the whole page out, and asks.
func (p *Plan) noRecords() {
	pg := p.page
	n := 0
	for i := range pg.rows {
		n += pg.rows[i].n
	}
	b := &block{kind: kindNone, first: 1, why: "nothing on it reads like records"}
	p.blocks = append(p.blocks, b)
	if n > 0 {
		p.notes = append(p.notes, Note{Verdict: reading.QueryOf("no-records-found",
			"No list or table of records was found on this page, so nothing of it is used. If it holds records, say in the project file which row the headings are on and what each column holds."),
			Ref: notebook.Ref{Col: 1, Row: 1}, Text: pg.sheet})
	}
}
