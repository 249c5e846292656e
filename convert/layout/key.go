package layout

import "strings"

// keyWords name sheets that other sheets look things up in.
var keyWords = wordSet("codes code lookup lookups key keys checklist validation dictionary reference lists")

// isKey reports whether a list is one of names and numbers that formulas look
// up: without dates, on a sheet whose name says so, each number once.
func (b *block) isKey(sheet string) bool {
	named := false
	for w := range strings.FieldsSeq(normHeading(sheet)) {
		named = named || keyWords[w]
	}
	if code := b.find(TaxonNumber, whole); code != nil && code.stats.codes() >= 0.9 && len(code.stats.distinct) == code.stats.n && b.named() && !b.facts.has(Site) && b.facts.year == 0 {
		named = true // letters that each stand for a name
	}
	if !named || b.axis != nil || b.facts.has(Date) || b.chosen != nil {
		return false
	}
	for i := range b.cols {
		c := &b.cols[i]
		switch {
		case c.stats.n == 0 || !c.used():
		case c.meaning == Count:
			if c.byHeading() || len(c.stats.distinct) < c.stats.n {
				return false
			}
		case !isName(c.meaning) && c.meaning != TaxonNumber && c.meaning != Group && c.meaning != Authorship && c.meaning != Remarks:
			return false
		}
	}
	return true
}

// leaveKey leaves a key out, and asks.
func (p *Plan) leaveKey(b *block) {
	b.kind, b.why = kindNone, "a key of names and numbers, without dates"
	b.notes = nil
	b.note("key-left-out", "The sheet “"+p.page.sheet+"” lists names and numbers without dates, and is taken for a key to the other sheets. If it holds records, say in the project file what each column holds.", b.from)
}
