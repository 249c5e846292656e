package layout

// headsUnread reports whether a row above a list names several dates, squares
// or species side by side: the headings of a table that was not recognised, of
// which none may be taken for a fact of the whole page.
func (p *page) headsUnread(r *keptRow) bool {
	if r.n < 3 || p.factLine(r) {
		return false
	}
	seen := [3]map[string]bool{{}, {}, {}}
	for c := range r.looks {
		l, text := r.looks[c], r.text(c)
		if l == 0 || l.is(lookMarked|lookLong) || len(labelsIn(text)) > 0 {
			continue
		}
		switch a, b := gridRefIn(text); {
		case l.is(lookKnownTaxon | lookBinomial):
			seen[0][text] = true
		case l.is(lookDate|lookDay|lookRealDate) || dayOfNight(text) != "":
			seen[1][text] = true
		case a >= 0:
			seen[2][text[a:b]] = true
		case l.is(lookGrid):
			seen[2][text] = true
		}
	}
	return len(seen[0]) >= 2 || len(seen[1]) >= 2 && !p.setAndEmptied(r) || len(seen[2]) >= 2
}

// setAndEmptied: two dates beside words of the trade, of one visit.
func (p *page) setAndEmptied(r *keptRow) bool {
	return r.n <= 4 && r.count(lookWords, 0, len(r.looks)) >= 2
}

// isBand: a capital letter that stands for how many there were.
func isBand(text string) bool { return len(text) == 1 && text[0] >= 'A' && text[0] <= 'F' }
