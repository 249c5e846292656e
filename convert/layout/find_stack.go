package layout

// widen adds columns of counts between the axis columns whose own heading is
// blank or a mark of sex: they stand under a heading over several columns.
func (p *page) widen(r *keptRow, body []keptRow, cols []int, to int) []int {
	isAxis := map[int]bool{}
	for _, c := range cols {
		isAxis[c] = true
	}
	var out []int
	for c := cols[0]; c <= to; c++ {
		switch {
		case isAxis[c]:
			out = append(out, c)
		case r.look(c) == 0 && countsBelow(body, c) && anyText(body, c) && headedBelow(body, c),
			r.look(c) == 0 && len(body) > 0 && columnRole(body[0].text(c)) == Remarks && columnRole(body[0].text(cols[0])) == Count:
			out = append(out, c)
		}
	}
	return out
}

func anyText(body []keptRow, c int) bool {
	for i := range body {
		if body[i].look(c) != 0 {
			return true
		}
	}
	return false
}

// headedBelow: the first text of the column is a word, a further heading.
func headedBelow(body []keptRow, c int) bool {
	for i := range body {
		if l := body[i].look(c); l != 0 {
			if i > 3 {
				return false
			}
			return !l.is(lookInt) || l.is(lookSmall|lookYear) && body[i].count(lookInt, 0, len(body[i].looks)) >= 2 && i == 0
		}
	}
	return false
}

// stack finds the rows of headings of the table that begins at a row: rows
// above that stand over the counts only, and rows below before the body.
func (p *page) stack(i int, cols []int, species bool, at int) (top, bottom int) {
	top, bottom = i, i
	for top-1 >= at && p.rows[top-1].n > 0 && i-top < 4 && p.standsOver(&p.rows[top-1], cols, species) {
		top--
	}
	if p.yearsOverDates(&p.rows[i], p.tableBody(i), cols[0], cols[len(cols)-1]) != nil {
		return top, bottom
	}
	for bottom+1 < len(p.rows) && bottom-i < 5 && p.furtherHeads(bottom+1, cols, species) {
		bottom++
	}
	return top, bottom
}

// standsOver: a row whose cells stand over the columns of counts, but for a
// label.
func (p *page) standsOver(r *keptRow, cols []int, species bool) bool {
	if species && fewerOver(r, cols) && statesFact(r) {
		return false
	}
	over, beside := 0, 0
	first, last := cols[0], cols[len(cols)-1]
	if p.mixedTitle(r, first) {
		return false
	}
	for c := range r.cells {
		if r.looks[c] == 0 || mergedAcross(r.cells, c) {
			continue
		}
		if c >= first && c <= last {
			if r.looks[c].is(lookLong) || len(labelsIn(r.text(c))) > 0 {
				return false
			}
			over++
		} else {
			if len(labelsIn(r.text(c))) > 0 && !r.looks[c].is(lookMarked) || holdsGridRef(r.text(c)) {
				return false // a label with its value, or a place: a fact of the page
			}
			beside++
		}
	}
	if over == 0 || beside > 2 {
		return false
	}
	if beside > 0 && over == 1 { // "Site: | Tinker's Row" is a fact, not a heading, where one value stands first
		if _, ok := labelOf(r.text(r.first)); ok && r.look(first) != 0 {
			return false
		}
	}
	if over == 1 && beside == 0 && r.first == first && len(cols) > 2 && p.factLine(r) {
		return false
	}
	return true
}

// mixedTitle reports whether a row is a title that commas have parted: a date
// stands beside a reference, or within words.
func (p *page) mixedTitle(r *keptRow, first int) bool {
	dates, grids, words := 0, 0, 0
	for c := first; c < len(r.looks); c++ {
		switch l := r.looks[c]; {
		case l == 0:
		case l.is(lookDate | lookRealDate):
			dates++
		case l.is(lookGrid):
			grids++
		default:
			if day, _ := dateInTitle(r.text(c)); day != "" && len(day) < len(r.text(c)) && dayOfNight(r.text(c)) == "" {
				return true
			}
			words++
		}
	}
	return dates > 0 && grids > 0 || grids == 1 && words > 0 && r.n > 2 && dates+grids+words > 2 && r.look(0).is(lookWords) && r.n > first
}

// fewerOver reports whether fewer cells than columns stand over the counts, or a
// grid reference does: no row of names.
func fewerOver(r *keptRow, cols []int) bool {
	n := 0
	for _, c := range cols {
		if r.look(c) != 0 {
			n++
		}
	}
	return n < len(cols) || r.count(lookGrid, cols[0], cols[len(cols)-1]) > 0
}

// furtherHeads: a row below the first headings that holds headings, too:
// words or dates over the counts, or a label of the vocabulary.
func (p *page) furtherHeads(i int, cols []int, species bool) bool {
	r := &p.rows[i]
	words, counts, n := 0, 0, 0
	for _, c := range cols {
		l := r.look(c)
		switch {
		case l == 0:
			continue
		case r.first >= cols[0] && isLetter(r.text(c)[0]) && len(r.text(c)) == 1: // trap A, trap B, beside no name
			words++
		case columnRole(r.text(c)) != "" && !l.is(lookInt) && !isTotalHeading(r.text(c)):
			words++
		case l.is(lookCount | lookTick | lookNil):
			counts++
			if x := vocabulary[normHeading(r.text(c))]; len(x) > 0 && x[0].meaning == Count && (x[0].sex != "" || x[0].stage != "") {
				words++
				counts--
			}
		default:
			words++
		}
		n++
	}
	if n == 0 {
		return false
	}
	label := ""
	for c := 0; c < cols[0] && c < len(r.cells); c++ {
		if r.looks[c] != 0 {
			label = r.text(c)
		}
	}
	if words*2 > n && words >= 1 {
		return n >= 2 || words*2 >= len(cols) || label == ""
	}
	if counts == n && !species && visitLabel(label) && !p.eyes.known(label) {
		return true // "Min temp C" over counts
	}
	ss := vocabulary[normHeading(label)]
	exact := len(ss) > 0 && !p.eyes.known(label)
	if exact && counts == n && !species { // day numbers under months, temperatures
		return axisMeanings[ss[0].meaning] && ss[0].meaning != Taxon && ss[0].meaning != Scientific && ss[0].meaning != Vernacular && ss[0].meaning != Site ||
			(ss[0].part == partDay || ss[0].meaning == Taxon) && n >= 2 && (p.risingDays(r, cols[0], cols[len(cols)-1]) || p.daysUnderMonths(i, cols))
	}
	if species && counts == n && label == "" && n*2 >= len(cols) && r.count(lookDate|lookDay|lookRealDate, 0, len(r.looks)) == 0 {
		return true // numbers of the checklist under the names
	}
	return !species && counts == n && label == "" && n >= 2 && r.first >= cols[0] && (p.risingDays(r, cols[0], cols[len(cols)-1]) || p.daysUnderMonths(i, cols))
}
