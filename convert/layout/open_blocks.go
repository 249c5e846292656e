package layout

import (
	"slices"
	"strings"

	"fieldfare/convert/notebook"
)

// openBlocks starts the list or table below its headings, or several that
// stand side by side.
func (p *Plan) openBlocks(running *facts, before facts, from int, h head) {
	pg := p.page
	for i := h.from; i <= h.to; i++ {
		r := &pg.rows[i]
		used := make([]bool, len(r.cells))
		for c := range used {
			used[c] = r.looks[c] != 0
		}
		p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipHeadings, used: used})
	}
	groups, shared := p.sideBySide(h)
	if h.transposed {
		groups, shared = []span{{0, pg.width - 1}}, nil
	}
	for g, sp := range groups {
		b := &block{kind: kindList, from: sp.from, to: sp.to, first: pg.rows[h.to].number + 1, mixed: len(groups) > 1, shared: shared, transposed: h.transposed}
		b.facts = running.clone()
		if len(groups) > 1 {
			b.facts = p.factsOver(before, from, h.from, groups, g)
		}
		for i := h.from; i <= h.to; i++ {
			b.headRows = append(b.headRows, pg.rows[i].number)
			b.heads = append(b.heads, &pg.rows[i])
		}
		p.blocks = append(p.blocks, b)
		cols, species, table := h.cols, h.species, h.table
		if len(groups) > 1 {
			cols, species, table = pg.tableAt(h.to, sp.from, sp.to)
		}
		if table {
			b.kind = kindAcross
			if species {
				b.kind = kindDown
			}
			if len(groups) > 1 {
				b.monthBeside(cols)
			}
			b.across = func(cols []int) {
				p.buildAxis(b, cols, species, b.heads)
				b.axis.datesInCells(pg.tableBody(h.to))
			}
			b.across(cols)
		}
	}
}

// sideBySide parts the columns where headings start over: "Species | No. | |
// Species | No.". Columns before the first that comes again belong to all.
func (p *Plan) sideBySide(h head) (groups []span, shared []int) {
	pg := p.page
	all := []span{{0, pg.width - 1}}
	r := &pg.rows[h.to]
	keys := make([]string, pg.width)
	times := map[string]int{}
	for c := range r.cells {
		if r.looks[c] != 0 {
			keys[c] = normHeading(r.text(c))
			times[keys[c]]++
		}
	}
	start := 0
	for start < len(keys) && (keys[start] == "" || times[keys[start]] < 2) {
		start++
	}
	if start == len(keys) || slices.Contains(h.cols, start) {
		return all, nil
	}
	first := keys[start]
	if ss := vocabulary[first]; len(ss) == 0 || ss[0].meaning == Count {
		return all, nil
	}
	for c := start; c < len(keys); c++ {
		if keys[c] != first {
			continue
		}
		if n := len(groups); n > 0 {
			groups[n-1].to = c - 1
		}
		groups = append(groups, span{c, pg.width - 1})
	}
	for c := range start {
		for i := h.from; i <= h.to; i++ {
			if pg.rows[i].look(c) != 0 && !slices.Contains(shared, c) {
				shared = append(shared, c)
			}
		}
	}
	want := groupKeys(keys, groups[0])
	if last := &groups[len(groups)-1]; !h.table && len(groups) > 1 { // headings beyond the pattern belong to all
		n := 0
		for c := last.from; c < pg.width; c++ {
			if keys[c] != "" {
				n++
			}
			if n > len(want) {
				shared = append(shared, c)
			} else {
				last.to = c
			}
		}
	}
	for _, g := range groups {
		got := groupKeys(keys, g)
		if len(got) < 2 || !h.table && got[1] != want[1] || len(shared) > 0 && !namesIn(append(got, keysAt(keys, shared)...)) {
			return all, nil
		}
	}
	if len(shared) == 0 {
		groups[0].from = 0
	}
	return groups, shared
}

func keysAt(keys []string, cols []int) []string {
	var out []string
	for _, c := range cols {
		out = append(out, keys[c])
	}
	return out
}

// namesIn reports whether some of the headings names species.
func namesIn(keys []string) bool {
	for _, k := range keys {
		for _, s := range vocabulary[k] {
			if s.meaning == Taxon || s.meaning == Scientific || s.meaning == Vernacular {
				return true
			}
		}
	}
	return false
}

func groupKeys(keys []string, g span) []string {
	var out []string
	for c := g.from; c <= g.to && c < len(keys); c++ {
		if keys[c] != "" {
			out = append(out, keys[c])
		}
	}
	return out
}

// factsOver are the facts of one of several lists side by side: lines that
// stand over several of them say of each what stands over it.
func (p *Plan) factsOver(before facts, from, to int, groups []span, g int) facts {
	f := p.factsOf(before, from, to, groups, g)
	// What is said over one of the lists only holds for all.
	for other := range groups {
		if other == g {
			continue
		}
		o := p.factsOf(before, from, to, groups, other)
		for _, v := range o.values {
			if !f.has(v.Meaning) && !(v.Meaning == GridRef && f.has(Site)) {
				f.values = append(f.values, v)
			}
		}
		if f.year == 0 {
			f.year, f.yearFrom, f.yearSaid = o.year, o.yearFrom, o.yearSaid
		}
		if f.month == 0 {
			f.month, f.monthFrom, f.monthSaid = o.month, o.monthFrom, o.monthSaid
		}
	}
	return f
}

func (p *Plan) factsOf(before facts, from, to int, groups []span, g int) facts {
	f := before.clone()
	for i := from; i < to; i++ {
		r := &p.page.rows[i]
		if r.n == 0 || r.struck {
			continue
		}
		over := map[int]bool{}
		for c := range r.cells {
			if r.looks[c] != 0 {
				over[groupOf(groups, c)] = true
			}
		}
		part := *r
		if len(over) > 1 && !(r.marked() > 0 && p.page.factLine(r) && r.ownLabels()) {
			part.looks = append([]look(nil), r.looks...)
			for c := range part.looks {
				if groupOf(groups, c) != g {
					part.looks[c] = 0
				}
			}
		}
		f.read(p.page, &part, FromPage)
	}
	return f
}

// ownLabels reports whether no label of the row comes twice.
func (r *keptRow) ownLabels() bool {
	said := map[string]bool{}
	for c := range r.cells {
		if r.looks[c].is(lookMarked) {
			key := normHeading(r.text(c))
			if said[key] {
				return false
			}
			said[key] = true
		}
	}
	return true
}

func groupOf(groups []span, c int) int {
	for i, g := range groups {
		if c >= g.from && c <= g.to {
			return i
		}
	}
	if n := len(groups) - 1; c > groups[n].to {
		return n
	}
	return 0
}

// labelHeadings fills in the headings of the columns beside a table's counts:
// of the stack's rows, those that do not label the row itself.
func (b *block) labelHeadings(out []string) {
	for i, h := range b.heads {
		for c := range out {
			if b.axis.byCol[c] >= 0 {
				continue
			}
			if at, ok := b.axis.labels[h.number]; ok && at == c {
				continue
			}
			if t := oneLine(h.text(c)); t != "" && !((i+1 < len(b.heads) || h.look(c).is(lookPlace)) && c >= b.from && c <= b.to && b.headsTable(t, h, c)) {
				out[c] = strings.TrimSpace(out[c] + " " + t)
			}
		}
	}
}

func (b *block) isFactRow(row int) bool { return b.factRows[row] }

// settleTable finishes a table: rows of its body that speak of the nights,
// columns of totals, nights with nothing.
func (b *block) settleTable(p *Plan) {
	for i := range b.cols {
		if c := &b.cols[i]; c.used() && c.meaning == Count {
			if b.numbersNames(c) {
				c.sense, c.left = sense{meaning: Ignored, leave: leaveListNumber}, leaveListNumber
				continue
			}
			if !isTotalHeading(c.heading) && !c.fixed {
				b.note("counts-beside-table", "Column "+notebook.ColumnName(c.col+1)+" holds counts but stands under no night, place or species. It is taken for a total and left out. If it is none, give it a heading.", c.col)
			}
			c.sense, c.left = sense{meaning: Ignored, leave: leaveTotal}, leaveTotal
		}
	}
	for i := range b.cols { // “Year” behind the nights sums them up
		if c := &b.cols[i]; c.used() && c.meaning == Date && !c.fixed && c.col > b.axis.cols[len(b.axis.cols)-1].col && c.stats.numbers == c.stats.n && c.stats.share(lookYear) < 0.7 {
			c.sense, c.left = sense{meaning: Ignored, leave: leaveTotal}, leaveTotal
		}
	}
	if b.transposed {
		p.settleTransposed(b)
	} else if b.axis.species {
		b.namesAreNotes()
	} else {
		p.factRows(b)
	}
	b.tallyAxis(p)
	b.findCover(p.page)
	b.sumColumns()
	b.runningColumns()
	p.emptyNights(b)
}

// leaveListNumber is what a column of numbers before the names is: those of
// some list, of which nothing says which.
const leaveListNumber = "number of a list"

// numbersNames reports whether a column left of the counts numbers the names:
// every number comes once, and none is small.
func (b *block) numbersNames(c *column) bool {
	return c.col < b.axis.cols[0].col && !b.axis.species && c.stats.n >= 2 && c.stats.numbers == c.stats.n && len(c.stats.distinct) == c.stats.n && c.stats.upTo(99) == 0 && !isTotalHeading(c.heading)
}

// factRows finds rows among a table's counts that speak of its columns: the
// recorder, the temperature, the lamp.
func (p *Plan) factRows(b *block) {
	b.factRows = map[int]bool{}
	for i := range b.sample {
		r := &b.sample[i]
		label := ""
		for c := 0; c < b.axis.cols[0].col && c < len(r.cells); c++ {
			if r.looks[c] != 0 {
				label = r.text(c)
				break
			}
		}
		if label == "" {
			p.unlabelledFacts(b, r)
			continue
		}
		if p.page.eyes.known(label) {
			continue
		}
		ms := headingSenses(strings.TrimRight(label, " :"), false)
		if len(ms) == 0 || ms[0].weight < weightContained || ms[0].weight < weightExact-5 && looksVernacular(label) {
			continue
		}
		m := ms[0].sense
		if m.meaning == Ignored || m.meaning == Count {
			continue
		}
		if !axisMeanings[m.meaning] || isName(m.meaning) || m.meaning == Group || m.meaning == Stage || !p.labelAgrees(b, r, m) {
			continue
		}
		if m.meaning != Temperature && m.meaning != Effort && m.meaning != Time && m.meaning != EndTime && m.meaning != Weather && p.allCounts(b, r) {
			continue
		}
		p.takeFactRow(b, r)
	}
	b.axis.groups()
}

// takeFactRow takes a row among a table's counts for what it says of each
// column.
func (p *Plan) takeFactRow(b *block, r *keptRow) {
	b.factRows[r.number] = true
	p.axisRow(b, r)
	used := make([]bool, len(r.cells))
	for c := range used {
		used[c] = r.looks[c] != 0
	}
	p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipHeadings, used: used})
}

// unlabelledFacts takes a row without a label that holds nothing but traps or
// people for what was used, or who went, under each date.
func (p *Plan) unlabelledFacts(b *block, r *keptRow) {
	n := 0
	for i := range b.axis.cols {
		switch l := r.look(b.axis.cols[i].col); {
		case l.is(lookInt | lookDecimal | lookTick | lookNil | lookDate | lookDay):
			return
		case l != 0:
			n++
		}
	}
	if n < 2 || n < r.n {
		return
	}
	switch s := p.axisRowSense(b, r); {
	case b.axis.means[s.meaning]:
	case s.meaning == Method || s.meaning == Recorder:
		p.takeFactRow(b, r)
	}
}

func (p *Plan) allCounts(b *block, r *keptRow) bool {
	for i := range b.axis.cols {
		if l := r.look(b.axis.cols[i].col); l != 0 && !l.is(lookInt|lookTick|lookNil) {
			return false
		}
	}
	return true
}

// tallyAxis counts what stands in each column of counts.
func (b *block) tallyAxis(p *Plan) {
	for i := range b.sample {
		r := &b.sample[i]
		if r.struck || r.firstLook().is(lookTotal) || b.factRows[r.number] || p.repeats(b, r) || r.single() >= 0 && len(b.axis.cols) > 1 && r.single() < b.axis.cols[0].col {
			continue
		}
		for j := range b.axis.cols {
			ac := &b.axis.cols[j]
			switch l := r.look(ac.col); {
			case l == 0:
			case l.is(lookNil):
				ac.nils++
			default:
				ac.filled++
				if l.is(lookTick) && !l.is(lookInt) || r.text(ac.col) == "?" {
					ac.ticks++
				}
			}
		}
	}
}

// sumColumns finds unlabelled totals: a last column that is the sum of the
// others on its rows.
func (b *block) sumColumns() {
	a := b.axis
	if len(a.cols) < 3 {
		return
	}
	last := &a.cols[len(a.cols)-1]
	if last.left != "" || last.get(Date) != nil && !a.species {
		return
	}
	fit, all := 0, 0
	for i := range b.sample {
		r := &b.sample[i]
		total, ok := isInt(r.text(last.col))
		if !ok {
			continue
		}
		sum := 0
		for j := range a.cols[:len(a.cols)-1] {
			if a.cols[j].left == "" {
				n, _ := isInt(r.text(a.cols[j].col))
				sum += n
			}
		}
		all++
		if sum == total {
			fit++
		}
	}
	if all >= 3 && fit == all {
		last.left = leaveTotal
	}
}

// emptyNights makes a draft of each night under which nothing was written, on
// the row of its date.
func (p *Plan) emptyNights(b *block) {
	if b.axis.species || !p.page.complete && b.last == 0 {
		return
	}
	used := map[int]bool{}
	for i := range b.axis.cols {
		if b.axis.cols[i].filled > 0 {
			used[b.axis.cols[i].group] = true
		}
	}
	for i := range b.axis.cols {
		ac := &b.axis.cols[i]
		v := ac.get(Date)
		if ac.left != "" || used[ac.group] || ac.group != i || v == nil || ac.day == "" && scanDate(v.Text) < dayMonth && v.Kind != notebook.Date {
			continue
		}
		d := emptyNight(b, ac, ac.dateRow)
		if ac.nils == 0 {
			dv, _ := d.Get(Date)
			dv.Doubt = dv.Doubt.And(queryEmptyNight(dv.Text))
		}
		for j := range p.fixed {
			if p.fixed[j].number == ac.dateRow {
				p.fixed[j].empty = append(p.fixed[j].empty, d)
			}
		}
	}
}
