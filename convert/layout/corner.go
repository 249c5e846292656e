package layout

import "fieldfare/convert/notebook"

// cornerTitle reports whether a text over the names of a table is the title of
// the page, and no heading of its own column: "Moths at Ash Carr 2020", "2 July
// 2019 NF".
func (p *page) cornerTitle(text string, l look) bool {
	if l.is(lookBinomial|lookGrid|lookInt|lookDecimal|lookMarked|lookRealDate) || len(text) > 90 {
		return false
	}
	bare := cutYear(text)
	if ms := headingSenses(bare, false); bare == "" || len(ms) > 0 && ms[0].weight >= weightExact-5 {
		return false
	}
	if day, _ := dateInTitle(text); day != "" {
		return true
	}
	return bare != text && yearIn(text) > 0 || looksPlace(bare) && !l.is(lookTaxon|lookKnownTaxon)
}

// corner takes the facts of the title that stands in the corner of a table, on
// the row of its headings.
func (p *Plan) corner(f *facts, h head) {
	if !h.table {
		return
	}
	for i := h.from; i <= h.to; i++ {
		r := &p.page.rows[i]
		if c := r.first; c >= 0 && c < h.cols[0] && p.page.cornerTitle(r.text(c), r.looks[c]) {
			f.readText(p.page, r.text(c), notebook.Ref{Col: c + 1, Row: r.number}, FromPage, &r.cells[c])
		}
	}
}
