package layout

import (
	"slices"
	"strings"

	"fieldfare/convert/reading"
)

// sumKind is what a row that names a group, such as “Macros”, is among the
// rows of single species.
type sumKind uint8

const (
	sumNone  sumKind = iota
	sumTotal         // its figures are what the rows above come to
	sumAsked         // it stands where a sum would, but its figures are none
)

// groupTotals are the words for all that was counted, or a part of it too
// large for a record, beside groupWords.
var groupTotals = wordSet("lepidoptera heterocera rhopalocera odonata macros micros macro micro insects leps bumbles all everything season year month week bag catch")

// sumsByName reports whether a name is that of a group, which a row of sums is
// labelled with as often as a record: “Macros”, “All moths”, “Moths 26”.
func sumsByName(name string) bool {
	name, _ = labelAndFigure(name)
	w := strings.ToLower(strings.Trim(name, " :=.-*"))
	w = strings.TrimPrefix(strings.TrimPrefix(w, "all "), "no of ")
	return w != "other" && w != "others" && (groupWords[w] || groupTotals[w])
}

// labelAndFigure parts “Moths 26”, “Moths: 26” and “Species = 3”.
func labelAndFigure(text string) (label string, n int) {
	i := len(text)
	for i > 0 && isDigit(text[i-1]) {
		i--
	}
	n, ok := isInt(text[i:])
	if !ok || i == 0 || isDigit(text[0]) {
		return text, 0
	}
	return strings.TrimRight(text[:i], " :=-–"), n
}

// isTotalFigure: words for a sum and the figure in one text, "Species: 34".
func isTotalFigure(text string) bool {
	label, n := labelAndFigure(text)
	return n > 0 && isTotalWord(label)
}

// sumRow is a row labelled as a sum while the page is surveyed.
type sumRow struct {
	number  int
	named   bool  // by a group, not by a word for sums
	family  bool  // by a family: a record, unless its figures fit
	dated   bool  // with a date of its own
	full    bool  // dated, and with more facts of its own, as a record is
	figures []int // by column of counts
	fits    bool
}

// running are the sums of the columns of counts, from the first row, from the
// row behind the last sums and from the first row of the visit.
type running struct {
	all, part, visit []int
	rows             [3]int
}

func (s *running) add(figures []int) {
	for i, n := range figures {
		s.all[i] += n
		s.part[i] += n
		s.visit[i] += n
	}
	for i := range s.rows {
		s.rows[i]++
	}
}

// endPart begins the sums anew behind a row of sums.
func (s *running) endPart() { clear(s.part); s.rows[1] = 0 }

func (s *running) endVisit() { clear(s.visit); s.rows[2] = 0 }

// fits reports whether figures are the sums above, or the number of rows.
func (s *running) fits(figures []int) bool {
	for k, sums := range [...][]int{s.all, s.part, s.visit} {
		fit, n := 0, 0
		for i, v := range figures {
			if v == 0 && sums[i] == 0 {
				continue
			}
			n++
			if v == sums[i] {
				fit++
			}
		}
		if fit > 0 && fit*5 >= n*3 && (s.rows[k] > 1 || fit > 1) {
			return true
		}
	}
	return false
}

// within reports whether no figure is larger than the sums above.
func (s *running) within(figures []int) bool {
	for i, v := range figures {
		if v > s.all[i] {
			return false
		}
	}
	return true
}

// findSums tells the rows that name a group and sum up others from records of
// something not named further, by their figures.
func (b *block) findSums(p *Plan) {
	counts, names := b.countColumns()
	if len(counts) == 0 || len(names) == 0 || b.axis != nil && b.axis.species {
		return
	}
	b.sums = map[int]sumKind{}
	sums := running{all: make([]int, len(counts)), part: make([]int, len(counts)), visit: make([]int, len(counts))}
	date := b.find(Date, whole)
	last := ""
	var run []sumRow
	for i := range b.sample {
		r := &b.sample[i]
		if !p.page.complete && r.number > p.page.headEnd {
			break
		}
		if r.n == 0 || r.struck || b.factRows[r.number] || p.repeats(b, r) {
			continue
		}
		dated := date != nil && r.look(date.col) != 0 && !r.look(date.col).is(lookDitto)
		name := firstOf(r, names)
		figures := make([]int, len(counts))
		any := false
		for j, c := range counts {
			n, ok := isInt(r.text(c))
			if !ok {
				n = leadingNumber(r.text(c))
			}
			figures[j], any = n, any || r.look(c) != 0
		}
		label := name
		if label == "" {
			label = r.text(r.first)
		}
		bare, n := labelAndFigure(label)
		if n > 0 && r.single() >= 0 && len(counts) == 1 {
			figures[0], any = n, true
		}
		named := sumsByName(bare)
		family := !named && isGroupName(bare) && !groupWords[strings.ToLower(bare)]
		switch {
		case any && (named || family || isTotalWord(bare) && !b.known(r, names)):
			run = append(run, sumRow{number: r.number, named: named || family, family: family, dated: dated, full: dated && r.n > 1+filledOf(r, names)+filledOf(r, counts), figures: figures})
			continue
		case !any && r.single() >= 0: // a line for the rows below
			b.judgeSums(run, &sums, true)
			run = nil
			sums.endVisit()
			continue
		case name == "":
			continue
		}
		visit := dated && r.text(date.col) != last
		b.judgeSums(run, &sums, visit)
		run = nil
		if visit {
			last = r.text(date.col)
			sums.endVisit()
		}
		sums.add(figures)
	}
	b.judgeSums(run, &sums, true)
}

// judgeSums settles rows next to each other that are labelled as sums; ends
// says that a visit or the list ends with them.
func (b *block) judgeSums(run []sumRow, sums *running, ends bool) {
	if len(run) == 0 {
		return
	}
	sure := false
	for i := range run {
		run[i].fits = sums.fits(run[i].figures)
		sure = sure || run[i].fits && !run[i].family
	}
	for i := 0; i+1 < len(run) && !sure; i++ { // Macros and Micros come to all together
		both := make([]int, len(run[i].figures))
		for j := range both {
			both[j] = run[i].figures[j] + run[i+1].figures[j]
		}
		sure = sums.fits(both)
	}
	ended := sure
	for i := range run {
		switch x := &run[i]; {
		case !x.named:
		case x.full && x.family, x.dated && x.family && !x.fits: // a record among others
			sums.add(x.figures)
		case x.full || x.dated && x.family: // as like to be one as the sum that it comes to
			if x.fits || sure && sums.within(x.figures) {
				b.sums[x.number] = sumAsked
			} else {
				sums.add(x.figures)
			}
		case x.fits && x.family && len(x.figures) == 1: // one figure may agree by chance
			b.sums[x.number] = sumAsked
		case x.fits, sure && !x.family && sums.within(x.figures):
			b.sums[x.number] = sumTotal
			ended = true
		case !x.dated && ends && !x.family:
			b.sums[x.number] = sumAsked
		case !x.dated || !sure: // a record among others
			sums.add(x.figures)
		}
	}
	if ended {
		sums.endPart()
	}
}

// countColumns are the columns of counts and of names.
func (b *block) countColumns() (counts, names []int) {
	for i := range b.cols {
		switch c := &b.cols[i]; {
		case !c.used():
		case isName(c.meaning) && c.meaning != TaxonNumber:
			names = append(names, c.col)
		case c.meaning == Count && b.axis == nil:
			counts = append(counts, c.col)
		}
	}
	if b.axis != nil {
		for i := range b.axis.cols {
			if ac := &b.axis.cols[i]; ac.left == "" && ac.role == Count {
				counts = append(counts, ac.col)
			}
		}
	}
	if len(counts) == 0 && len(names) == 1 { // names with counts in one column
		counts = names
	}
	return counts, names
}

// filledOf is how many of some columns a row has something in.
func filledOf(r *keptRow, cols []int) int {
	n := 0
	for _, c := range cols {
		if r.look(c) != 0 {
			n++
		}
	}
	return n
}

func firstOf(r *keptRow, cols []int) string {
	for _, c := range cols {
		if r.look(c) != 0 {
			return r.text(c)
		}
	}
	return ""
}

// sumOf is what a row that names a group is; beyond the rows that Survey has
// seen its figures alone tell.
func (w *walker) sumOf(b *block, s *listState, k *keptRow, name string) sumKind {
	if kind, ok := b.sums[k.number]; ok || w.p.page.complete || k.number <= w.p.page.headEnd {
		return kind
	}
	if b.axis != nil && b.axis.species || !sumsByName(name) {
		return sumNone
	}
	dated := slices.ContainsFunc(s.plans, func(pl cellPlan) bool { return pl.date && k.look(pl.column.col) != 0 })
	switch fits := w.figuresFit(b, s, k); {
	case fits && !dated:
		return sumTotal
	case dated && !fits:
		return sumNone
	}
	return sumAsked
}

// askSum holds a row that names a group and may be a sum.
func askSum(d *Draft) {
	for i := range d.Values {
		if v := &d.Values[i]; isName(v.Meaning) {
			v.Doubt = v.Doubt.And(reading.HeldOf("group-or-sum", "“"+v.Text+"” names a group, and stands below single species. It may sum up the rows above, or be a record of what was not named further. If it is a sum, leave it out; if it is a record, keep it."))
			return
		}
	}
}
