package layout

// Says reports whether any column, heading, line or fact of the page has the
// meaning: whether a row that lacks it could have had it. A checklist number
// counts as a name. Of a sheet longer than Survey keeps, lines among the rows
// are not looked at.
func (p *Plan) Says(m Meaning) bool {
	if p.tally.sections[m] {
		return true
	}
	for _, b := range p.blocks {
		if b.says(m) || m == Taxon && (b.says(Scientific) || b.says(Vernacular) || b.says(TaxonNumber)) {
			return true
		}
	}
	return false
}

func (b *block) says(m Meaning) bool {
	switch {
	case b.kind == kindNone:
		return false
	case b.kind == kindDiary && (m == Date || m == Taxon),
		b.axis != nil && b.axis.means[m],
		b.facts.has(m),
		m == Date && (b.facts.year > 0 || b.facts.month > 0):
		return true
	}
	for i := range b.cols {
		if c := &b.cols[i]; c.used() && (c.meaning == m || m == GridRef && c.split == splitSiteGrid) {
			return true
		}
	}
	return false
}
