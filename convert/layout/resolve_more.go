package layout

import (
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// settleCounts decides between several columns of figures: a total beside its
// parts is left out, a column that counts the rows is none.
func (b *block) settleCounts() {
	var plain, marked []*column
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.meaning != Count || c.trap {
			continue
		}
		if c.sex != "" || c.stage != "" || c.split == splitMarks {
			marked = append(marked, c)
		} else {
			plain = append(plain, c)
		}
	}
	// One column of stages or sexes in words, not counts.
	if len(plain) == 0 && len(marked) == 0 && !b.trapped() {
		for i := range b.cols { // "Total" alone is the count
			if c := &b.cols[i]; c.left == leaveTotal && c.stats.share(lookCount) >= 0.5 && !c.fixed {
				c.sense, c.left = sense{meaning: Count}, ""
				return
			}
		}
		return
	}
	for _, c := range plain {
		if len(marked) > 0 && len(marked)+len(plain) > 2 && b.isSum(c, marked) {
			b.leave(c, leaveTotal)
		}
	}
	headed := false
	for _, c := range plain {
		headed = headed || c.used() && c.byHeading()
	}
	for _, c := range plain { // a word that is not known, beside counts that are headed as such
		if len(marked) > 0 && c.used() && !headed && c.heading != "" && !c.byHeading() {
			b.leave(c, leaveNotUnderstood)
		}
	}
	first := (*column)(nil)
	for _, c := range plain {
		if headed && c.used() && !c.byHeading() {
			b.leave(c, leaveNotUnderstood) // figures beside a column that is headed as counts
			continue
		}
		switch {
		case !c.used():
		case first == nil:
			first = c
		case isTotalHeading(c.heading):
			b.leave(c, leaveTotal)
		case isTotalHeading(first.heading):
			b.leave(first, leaveTotal)
			first = c
		default:
			b.leave(c, leaveSecond)
			b.note("second-column", fmt.Sprintf("Both “%s” and “%s” look like counts. The first is used, column %s is left out. Say in the project file which is meant.",
				first.heading, c.heading, notebook.ColumnName(c.col+1)), c.col)
		}
	}
}

// byHeading reports whether the column's heading says what it is.
func (c *column) byHeading() bool {
	if c.fixed {
		return true
	}
	for _, m := range headingSenses(c.heading, false) {
		if m.meaning == c.meaning && m.weight >= weightMisspelt {
			return true
		}
	}
	return false
}

func isTotalHeading(s string) bool {
	for _, x := range vocabulary[normHeading(s)] {
		if x.leave == leaveTotal || x.leave == leaveCumulative {
			return true
		}
	}
	return false
}

// isSum reports whether a column is the sum of others on its rows.
func (b *block) isSum(c *column, parts []*column) bool {
	fit, all := 0, 0
	for i := range b.sample {
		r := &b.sample[i]
		total, ok := isInt(r.text(c.col))
		if !ok {
			continue
		}
		sum, any := 0, false
		for _, p := range parts {
			if v, ok := isInt(r.text(p.col)); ok {
				sum += v
				any = true
			}
		}
		if any {
			all++
			if sum == total {
				fit++
			}
		}
	}
	return all > 0 && fit*10 >= all*7
}

// together are meanings whose several columns make one value, a list.
var together = map[Meaning]bool{Recorder: true, Determiner: true, Verifier: true}

// settleSeconds settles two columns of one meaning.
func (b *block) settleSeconds() {
	first := map[Meaning]*column{}
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.master != i || manyAllowed[c.meaning] || c.meaning == "" {
			continue
		}
		f := first[c.meaning]
		if f == nil {
			first[c.meaning] = c
			continue
		}
		switch {
		case together[c.meaning]:
			if len(f.joined) == 0 {
				b.join(f)
			}
			c.master = b.index(f)
			f.joined = append(f.joined, i)
			continue
		case c.meaning == Site || c.meaning == Habitat:
			c.sense = sense{meaning: Remarks}
			b.note("second-column", fmt.Sprintf("Both “%s” and “%s” look like the %s. The first is used; column %s is kept as remarks. Say in the project file which is meant.",
				f.heading, c.heading, f.meaning, notebook.ColumnName(c.col+1)), c.col)
			continue
		}
		winner, loser := f, c
		switch {
		case c.meaning == GridRef && f.stats.n > 0 && c.stats.n*2 >= f.stats.n && c.stats.figures() != f.stats.figures():
			if c.stats.figures() > f.stats.figures() { // the finer one
				winner, loser = c, f
				first[c.meaning] = c
			}
		case c.stats.n > 0 && f.stats.n == 0 || c.weight > f.weight+2*stepDown:
			winner, loser = c, f
			first[c.meaning] = c
		}
		if alt, ok := b.otherSense(loser); ok {
			loser.sense, loser.left = alt, ""
			if alt.meaning == Ignored {
				loser.left = alt.leave
			}
			continue
		}
		b.leave(loser, leaveSecond)
		if c.meaning == Date && !winner.byHeading() {
			winner.doubt = reading.HeldOf("several-dates", fmt.Sprintf("Columns %s and %s both hold dates, and no heading says which is the date of the record. Please say in the project file, or head the columns.",
				notebook.ColumnName(f.col+1), notebook.ColumnName(c.col+1)))
		}
		b.note("second-column", fmt.Sprintf("Both “%s” (column %s) and “%s” (column %s) look like the %s. Column %s is used, the other is left out. Say in the project file which is meant.",
			winner.heading, notebook.ColumnName(winner.col+1), loser.heading, notebook.ColumnName(loser.col+1), winner.meaning, notebook.ColumnName(winner.col+1)), loser.col)
	}
}

// figures is the average number of figures of the column's grid references.
func (s *stats) figures() float64 {
	n, all := 0, 0
	for t, k := range s.distinct {
		if _, d, ok := gridParts(t); ok {
			n += d * k
			all += k
		}
	}
	return float64(n) / float64(max(1, all))
}

// otherSense finds the next fitting sense of a heading, of a meaning that no
// other column has.
func (b *block) otherSense(c *column) (sense, bool) {
	for _, m := range headingSenses(c.heading, b.terms) {
		if m.meaning == c.meaning || m.weight < weightContained-2*stepDown || m.part != whole || m.meaning == Count && m.sex == "" && m.stage == "" {
			continue
		}
		if m.weight+agree(m.sense, &c.stats) < accepted || !manyAllowed[m.meaning] && b.find(m.meaning, whole) != nil {
			continue
		}
		return m.sense, true
	}
	return sense{}, false
}

// findSplits finds columns whose cells hold two things: names with counts
// where no column counts, sites with grid references where none has them.
func (b *block) findSplits() {
	counts := false
	for i := range b.cols {
		counts = counts || b.cols[i].used() && b.cols[i].meaning == Count && b.cols[i].stats.n > 0
	}
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.master != i || len(c.joined) > 0 || c.stats.n == 0 {
			continue
		}
		n, fit := 0, 0
		for t, k := range c.stats.distinct {
			n += k
			switch c.meaning {
			case Taxon, Vernacular, Scientific:
				if _, _, ok := splitNameCountText(t); ok {
					fit += k
				}
			case Site:
				if a, _ := gridRefIn(t); a >= 0 {
					fit += k
				}
			}
		}
		switch {
		case c.meaning == Site && fit > 0 && b.find(GridRef, whole) == nil:
			c.split = splitSiteGrid
		case c.meaning == Taxon && !counts && (fit*2 >= n || fit >= 2 && fit*4 >= n):
			c.split = splitNameCount
			counts = true
		}
	}
}
