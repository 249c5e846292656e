package layout

import "fieldfare/convert/reading"

// headsCounts reports whether a row directly above records can only be
// headings: single words over two columns of counts or more, and over nothing
// else but names or dates.
func (p *page) headsCounts(i int) bool {
	r := &p.rows[i]
	if r.n < 2 || r.struck || p.rows[i+1].number != r.number+1 || p.factLine(r) {
		return false
	}
	body := p.tableBody(i)
	over := 0
	said := map[string]bool{}
	for c := range r.looks {
		l := r.looks[c]
		if l == 0 {
			continue
		}
		text := r.text(c)
		if l.is(lookTick) && said[text] {
			return false // a record of ticks
		}
		said[text] = true
		if len(text) > 20 || l.is(lookInt|lookDecimal|lookDate|lookDay|lookGrid|lookTime|lookLong|lookMarked|lookKnownTaxon|lookBinomial|lookDitto) {
			return false
		}
		if countsBelow(body, c) {
			over++
		}
	}
	return over >= 2
}

// unnamedCounts takes columns of counts whose headings say nothing known for
// counts by trap or by part of the place: "Front | Back". Each makes records of
// its own, and is asked about.
func (b *block) unnamedCounts() {
	if b.axis != nil || b.trapped() {
		return
	}
	var found []*column
	for i := range b.cols {
		c := &b.cols[i]
		counts := c.master == i && !c.fixed && c.stats.n > 0 && c.stats.share(lookCount) >= 0.8 && c.stats.numbers*10 >= c.stats.n*7 && !c.stats.sequential()
		switch {
		case counts && c.heading != "" && !isTotalHeading(c.heading) && (len(headingSenses(c.heading, b.terms)) == 0 || b.loneMale(c)):
			found = append(found, c)
		case c.used() && c.meaning == Count && c.stats.n > 0 && !isTotalHeading(c.heading):
			return
		}
	}
	if len(found) < 2 {
		return
	}
	for _, c := range found {
		c.sense, c.left, c.trap, c.weight = sense{meaning: Count}, "", true, weightExact
		c.why = "its cells are counts, its heading may be a trap or a part of the place"
	}
	b.leaveTotals()
}

// loneMale: an M without an F says nothing of males.
func (b *block) loneMale(c *column) bool {
	key := normHeading(c.heading)
	return key == "m" && !b.headed("f") && !b.headed("females") && !b.headed("female") && !b.headed("fem")
}

// askUnnamed asks about the heading over a count, which the record keeps as a
// remark.
func askUnnamed(v *Value, settled bool) {
	v.Meaning, v.Heading = Remarks, "over the counts"
	if settled { // by the project file
		return
	}
	v.Doubt = reading.QueryOf("place-or-trap", "“"+v.Text+"” stands over counts. It is taken for a trap or a part of the place, and kept as a remark. If it is a place, a sex or something else, say in the project file what its column holds.", v.Text)
}
