package layout

// marksHeaded reports whether columns of counts are headed by sexes, stages or
// castes, beside those that may run across a table: "Queen | Worker | Male |
// Unknown". The page is a list, then.
func (p *page) marksHeaded(r *keptRow, body []keptRow, cols []int, from, to int) bool {
	isAxis := map[int]bool{}
	for _, c := range cols {
		isAxis[c] = true
		if r.look(c).is(lookTaxon | lookDate | lookDay | lookRealDate | lookPlace) {
			return false
		}
	}
	for c := from; c <= to && c < len(r.looks); c++ {
		if r.looks[c] == 0 || isAxis[c] || !countsBelow(body, c) {
			continue
		}
		for _, x := range vocabulary[normHeading(r.text(c))] {
			if x.meaning == Count && (x.sex != "" || x.stage != "") {
				return true
			}
		}
	}
	return false
}

// rightOfDates leaves out columns that stand before the dates and are not
// headed by a name: the number of the week.
func (p *page) rightOfDates(r *keptRow, body []keptRow, cols []int) []int {
	date := -1
	for c := range r.looks {
		var st stats
		for i := range body {
			if l := body[i].look(c); l != 0 {
				st.add(body[i].text(c), l)
			}
		}
		if st.n > 0 && st.shares(lookDate, lookDay, lookRealDate) >= 0.6 {
			date = c
			break
		}
	}
	var out []int
	for _, c := range cols {
		if c > date || r.look(c).is(lookTaxon) {
			out = append(out, c)
		}
	}
	return out
}

// rightOfTotals leaves out a total that stands before the names of a table.
func (p *page) rightOfTotals(r *keptRow, cols []int) []int {
	for len(cols) > 0 && isTotalHeading(r.text(cols[0])) {
		next := cols[0] + 1
		if len(cols) > 1 && next == cols[1] || r.look(next) == 0 {
			break
		}
		cols = cols[1:]
	}
	return cols
}
