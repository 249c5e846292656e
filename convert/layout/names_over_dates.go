package layout

// namesOverDates reports whether a row heads a table whose dates stand in the
// row below: "Species | Visit 1 | Visit 2 | Max count" over the days of the
// visits, or years over the days.
func (p *page) namesOverDates(i int) (head, bool) {
	r := &p.rows[i]
	if i+2 >= len(p.rows) || r.first < 0 || r.n < 3 || r.struck || p.factLine(r) {
		return head{}, false
	}
	ms := headingSenses(r.text(r.first), false)
	if len(ms) == 0 || ms[0].weight < weightExact-5 || !isName(ms[0].meaning) {
		return head{}, false
	}
	below := &p.rows[i+1]
	if below.number != r.number+1 || below.look(r.first) != 0 {
		return head{}, false
	}
	body := p.tableBody(i + 1)
	var cols []int
	for c := range below.looks {
		switch l := below.looks[c]; {
		case l == 0:
		case !l.is(lookDate|lookDay|lookRealDate|lookPair) || r.look(c) == 0 || !countsBelow(body, c):
			return head{}, false
		default:
			cols = append(cols, c)
		}
	}
	if len(cols) < 2 || !countsUnder(body, cols) {
		return head{}, false
	}
	for c := range r.looks { // beside the dates stand headings that are known
		if l := r.looks[c]; l == 0 || below.look(c) != 0 {
			continue
		}
		if x := headingSenses(r.text(c), false); len(x) == 0 || x[0].weight < weightMisspelt {
			return head{}, false
		}
	}
	names, dates := p.labelsOf(i, body, cols, 0, p.width-1)
	return head{from: i, to: i + 1, table: true, cols: cols}, names && !dates
}
