package layout

import (
	"fmt"

	"fieldfare/convert/reading"
)

// listsBeside parts a page without headings into lists that stand side by side:
// columns of different names, with the same columns beside each. A blank column
// or one of numbers stands between them, for two columns of names beside each
// other may name one thing twice, or a gall and its host.
func (p *page) listsBeside(start int) []listSpan {
	if len(p.rows)-start > 400 {
		return nil
	}
	cols := make([]stats, p.width)
	for i := start; i < len(p.rows); i++ {
		r := &p.rows[i]
		if r.single() >= 0 && r.looks[r.first].is(lookLong|lookMarked|lookTotal) || p.factLine(r) {
			continue
		}
		for c := range r.looks {
			if r.looks[c] != 0 {
				cols[c].add(r.text(c), r.looks[c])
			}
		}
	}
	var names []int
	numbered := false
	for c := range cols {
		if cols[c].listsNames() && (c > 0 && cols[c-1].sequential() || cols[c].share(lookTaxon) >= 0.5) {
			names = append(names, c)
			numbered = len(names) > 1 && numbered || len(names) == 1 && c > 0 && cols[c-1].sequential()
		}
	}
	if len(names) < 2 || names[1]-names[0] < 2 {
		return nil
	}
	first, period := names[0], names[1]-names[0]
	var groups []listSpan
	for i, c := range names {
		if c != first+i*period || (cols[c].share(lookBinomial) >= 0.5) != (cols[first].share(lookBinomial) >= 0.5) {
			return nil
		}
		from := c
		if numbered {
			from--
			if !cols[from].sequential() {
				return nil
			}
		} else if i > 0 && cols[c-1].n > 0 {
			return nil
		}
		for k := from; k < from+period && k < len(cols); k++ { // the same beside each
			if a, b := &cols[k], &cols[k-i*period]; a.n > 0 && b.n > 0 && (a.share(lookInt) >= 0.5) != (b.share(lookInt) >= 0.5) {
				return nil
			}
		}
		if i > 0 {
			groups[i-1].to = from - 1
		}
		groups = append(groups, listSpan{span{from, p.width - 1}, c})
	}
	groups[0].from = 0
	return groups
}

// listSpan is the columns of one of several lists, and which of them names the
// species.
type listSpan struct {
	span
	names int
}

// listsNames: words that each come once, as the names of a list do.
func (s *stats) listsNames() bool {
	return s.n >= 3 && s.share(lookWords) >= 0.9 && len(s.distinct) == s.n && s.longest <= 50 && s.share(lookPerson) < 0.3 && s.share(lookPlace) < 0.4 && s.share(lookLong) < 0.1
}

// openBeside opens a list for each group of columns.
func (p *Plan) openBeside(groups []listSpan, start int, running *facts) {
	for _, g := range groups {
		p.blocks = append(p.blocks, &block{kind: kindList, why: "one of several lists side by side, without headings", from: g.from, to: g.to,
			facts: running.clone(), first: p.page.rows[start].number, mixed: true, names: g.names + 1})
	}
	p.notes = append(p.notes, Note{Verdict: reading.QueryOf("lists-side-by-side", fmt.Sprintf(
		"%d lists stand side by side on this page, without headings. Each was read as a list of its own. Please check that they are.", len(groups))),
		Ref: cellRef(groups[1].from, p.page.rows[start].number), Text: "(lists side by side)"})
}

// tickColumn returns the column of ticks of a list that was printed before: some
// of its names are ticked, and the others were not seen. It is -1 where there is
// none, or where rows have dates of their own.
func (b *block) tickColumn() int {
	if b.kind != kindList || b.find(Date, whole) != nil || b.find(Date, partDay) != nil {
		return -1
	}
	for i := range b.cols {
		c := &b.cols[i]
		if c.used() && c.meaning == Count && c.stats.n >= 2 && c.stats.blank > 0 && c.stats.cells(lookTick) == c.stats.n && c.stats.numbers == 0 {
			return c.col
		}
	}
	return -1
}
