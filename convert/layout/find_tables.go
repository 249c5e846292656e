package layout

import (
	"strings"

	"fieldfare/convert/notebook"
)

const tableWindow = 40 // rows below the headings that show what a table is

// tableAt judges whether the row begins the headings of a table, within the
// given columns: columns of counts under dates, places or species.
func (p *page) tableAt(i, from, to int) (cols []int, species, ok bool) {
	r := &p.rows[i]
	if r.n < 2 || r.struck || r.single() >= 0 || r.marked() >= 2 || r.marked() == 1 && r.n == 2 {
		return nil, false, false
	}
	if c := oneNight(r, from, to); c >= 0 {
		body := p.tableBody(i)
		names, dates := p.labelsOf(i, body, []int{c}, from, to)
		if names && !dates && countsBelow(body, c) && countsUnder(body, []int{c}) {
			return []int{c}, false, true
		}
	}
	if !p.mayHeadTable(r, from, to) {
		return nil, false, false
	}
	body := p.tableBody(i)
	if len(body) == 0 {
		return nil, false, false
	}
	if cols := p.yearsOverDates(r, body, from, to); cols != nil {
		names, dates := p.labelsOf(i, body, cols, from, to)
		return cols, false, names && !dates && p.labelsFit(r, cols, from, to)
	}
	dated, plainWords := 0, true
	squares, sides, hours := p.squaresAcross(r, from, to), p.compassAcross(r), hoursAcross(r, from, to)
	for c := from; c <= to && c < len(r.cells); c++ {
		if !countsBelow(body, c) {
			continue
		}
		l := r.looks[c]
		text := r.text(c)
		switch {
		case l == 0:
			continue
		case l.is(lookDate | lookDay | lookMonth | lookYear | lookPair | lookRealDate), l.is(lookSmall), isNight(text), dayOfNight(text) != "", squares && l.is(lookGrid), hours && l.is(lookTime):
			dated++
		case sides && compassWord(text): // no easting
		case !p.axisWord(text, l, body, c):
			continue
		default:
			plainWords = plainWords && !knownHeading(text, l)
		}
		cols = append(cols, c)
	}
	if len(cols) < 2 || !p.labelsFit(r, cols, from, to) || !countsUnder(body, cols) {
		return nil, false, false
	}
	names, dates := p.labelsOf(i, body, cols, from, to)
	switch {
	case dated*2 >= len(cols) && names:
		if cols = p.rightOfTotals(r, cols); len(cols) < 2 {
			return nil, false, false
		}
		return p.widen(r, body, cols, to), false, true
	case dated*2 >= len(cols) && !dates && p.yearsDown(i, r, body, cols):
		return p.widen(r, body, cols, to), false, true
	case dated*2 >= len(cols):
		return nil, false, false
	case names && !dates && plainWords && !p.countsHeaded(r, body) && !p.marksHeaded(r, body, cols, from, to):
		return p.widen(r, body, cols, to), false, true
	case names:
		return nil, false, false
	case dates && p.marksHeaded(r, body, cols, from, to):
		return nil, false, false
	case dates && p.namesNone(r, cols) && p.titleNames(i):
		return nil, false, false // "Latrines | Sightings" of one species
	case dates && len(cols) >= 2:
		if cols = p.rightOfDates(r, body, cols); len(cols) < 2 {
			return nil, false, false
		}
		return p.widen(r, body, cols, to), true, true
	}
	return nil, false, false
}

// namesNone reports whether no heading over the counts is written like a name.
func (p *page) namesNone(r *keptRow, cols []int) bool {
	for _, c := range cols {
		if r.look(c).is(lookTaxon | lookKnownTaxon | lookBinomial) {
			return false
		}
	}
	return true
}

// titleNames reports whether a line above a row names a species.
func (p *page) titleNames(i int) bool {
	name, _ := p.speciesAbove(p.rows[i].number)
	return name != ""
}

// oneNight returns the column of the only night of a table, the date beside a
// heading for names ("Species, 6 June 2004"), or -1.
func oneNight(r *keptRow, from, to int) int {
	if r.n != 2 || r.first < from {
		return -1
	}
	ms := headingSenses(r.text(r.first), false)
	if len(ms) == 0 || ms[0].weight < weightExact-5 || ms[0].meaning != Taxon && ms[0].meaning != Vernacular && ms[0].meaning != Scientific {
		return -1
	}
	for c := r.first + 1; c <= to && c < len(r.looks); c++ {
		if r.looks[c] != 0 {
			if r.looks[c].is(lookDate|lookRealDate) && !r.looks[c].is(lookLong) {
				return c
			}
			return -1
		}
	}
	return -1
}

// marked counts the cells that end in a colon.
func (r *keptRow) marked() int { return r.count(lookMarked, 0, len(r.looks)) }

// mayHeadTable sieves rows: headings of a table are dates or words, not
// records.
func (p *page) mayHeadTable(r *keptRow, from, to int) bool {
	dates, words, numbers, other := 0, 0, 0, 0
	squares, hours := p.squaresAcross(r, from, to), hoursAcross(r, from, to)
	for c := from; c <= to && c < len(r.looks); c++ {
		switch l := r.looks[c]; {
		case l == 0:
		case l.is(lookDate | lookDay | lookMonth | lookYear | lookPair), squares && l.is(lookGrid), hours && l.is(lookTime), dayOfNight(r.text(c)) != "":
			dates++
		case l.is(lookInt):
			numbers++
		case l.is(lookDecimal | lookGrid | lookTime | lookLong | lookDitto):
			other++
		default:
			words++
		}
	}
	if dates+numbers >= 2 && words <= 6 && other*2 <= dates+numbers {
		return numbers == 0 || p.risingDays(r, from, to)
	}
	return words >= 3 && numbers == 0 && dates <= 1 && other == 0
}

// risingDays reports whether the whole numbers of a row are days or years in
// rising order, starting over with a new month.
func (p *page) risingDays(r *keptRow, from, to int) bool {
	last, falls, n := 0, 0, 0
	for c := from; c <= to && c < len(r.looks); c++ {
		v, ok := isInt(r.text(c))
		if !ok {
			continue
		}
		if v < 1 || v > 31 && (v < 1800 || v > 2100) {
			return false
		}
		if v < last {
			falls++
		}
		last = v
		n++
	}
	return n < 2 || falls*3 <= n
}

// labelsFit: what stands beside the headings over the counts is a heading,
// too, and no record.
func (p *page) labelsFit(r *keptRow, cols []int, from, to int) bool {
	isAxis := map[int]bool{}
	for _, c := range cols {
		isAxis[c] = true
	}
	for c := from; c <= to && c < len(r.looks); c++ {
		l := r.looks[c]
		if l == 0 || isAxis[c] {
			continue
		}
		if c == r.first && c < cols[0] && l.is(lookPlace) && !l.is(lookTaxon|lookGrid|lookInt) && p.yearsAcross(r, cols) {
			continue // the place of a table of years
		}
		if c == r.first && c < cols[0] && !p.numbered(r, cols) && r.count(lookYear, cols[0], cols[len(cols)-1]) == 0 && p.cornerTitle(r.text(c), l) {
			continue
		}
		if ms := headingSenses(r.text(c), false); len(ms) > 0 && (ms[0].weight >= weightExact-5 || ms[0].weight == weightMisspelt && !l.is(lookTaxon)) && !l.is(lookKnownTaxon) {
			if c == r.first && l.is(lookTotal) && !l.is(lookTaxon) && ms[0].meaning != Taxon {
				return false
			}
			continue
		}
		if p.numbered(r, cols) {
			return false
		}
		if c > cols[len(cols)-1]+1 && r.look(c-1) == 0 && l.is(lookWords) && p.datedHead(r, cols) {
			continue // a note in the margin
		}
		if l.is(lookTaxon | lookDate | lookDay | lookPair | lookGrid | lookInt | lookDecimal | lookPlace | lookGroup | lookDitto | lookTime | lookPerson) {
			return false
		}
	}
	return true
}

// numbered: the headings over the counts are bare numbers, so a record could
// look the same.
func (p *page) numbered(r *keptRow, cols []int) bool {
	for _, c := range cols {
		if l := r.look(c); l.is(lookSmall) && !l.is(lookYear) {
			return true
		}
	}
	return false
}

// countsUnder reports whether anything is counted under the headings.
func countsUnder(body []keptRow, cols []int) bool {
	for i := range body {
		for _, c := range cols {
			if body[i].look(c).is(lookCount | lookTick) {
				return true
			}
		}
	}
	return false
}

// axisWord: a heading that may name a place, a person or a species over
// counts, and no word for counts themselves or for a measurement.
func (p *page) axisWord(text string, l look, body []keptRow, c int) bool {
	if l.is(lookTotal) {
		return true
	}
	if l.is(lookTick | lookNil | lookDitto | lookGrid) {
		return false
	}
	if trapWord(text) {
		return true
	}
	ms := headingSenses(text, false)
	if l.is(lookBinomial|lookKnownTaxon) || len(ms) == 0 || ms[0].weight <= weightLoose {
		return true
	}
	if l.is(lookTaxon) && normHeading(text) != "moth" && (ms[0].weight < weightExact-5 || ms[0].meaning != Taxon && ms[0].meaning != Vernacular && ms[0].meaning != Scientific) {
		return true
	}
	if ms[0].weight >= weightExact-5 {
		return isTotalHeading(text)
	}
	if l.is(lookPlace) {
		return true
	}
	var st stats
	for i := range body {
		if k := body[i].look(c); k != 0 {
			st.add(body[i].text(c), k)
		}
	}
	for _, m := range ms {
		if agree(m.sense, &st) > -50 && m.meaning != Taxon && m.meaning != Site {
			return false
		}
	}
	return true
}

// knownHeading: a word that heads columns of lists, and no place or name.
func knownHeading(text string, l look) bool {
	if l.is(lookTaxon|lookPlace) || isTotalHeading(text) || l.is(lookTotal) {
		return false
	}
	ms := headingSenses(text, false)
	return len(ms) > 0 && ms[0].weight > weightLoose && ms[0].meaning != Site && ms[0].meaning != Recorder && ms[0].meaning != Method
}

// countsHeaded reports whether a column of counts is headed as such: the page
// is a list, then.
func (p *page) countsHeaded(r *keptRow, body []keptRow) bool {
	for c := range r.cells {
		if r.looks[c] == 0 || !countsBelow(body, c) || isTotalHeading(r.text(c)) {
			continue
		}
		ms := headingSenses(r.text(c), false)
		if len(ms) > 0 && ms[0].weight >= weightContained && ms[0].meaning == Count && ms[0].sex == "" && ms[0].stage == "" {
			return true
		}
	}
	return false
}

// tableBody are the rows below the headings up to the next ones.
func (p *page) tableBody(i int) []keptRow {
	to := i + 1
	for to < len(p.rows) && to-i <= tableWindow {
		r := &p.rows[to]
		if sameHeadings(&p.rows[i], r) || to > i+1 && (p.rows[to-1].n == 0 || p.rows[to-1].single() >= 0) && r.count(lookDate|lookDay|lookRealDate, 0, len(r.looks)) >= 2 {
			break
		}
		if to > i+1 && r.n >= 2 && r.first == p.rows[i].first && strings.EqualFold(r.text(r.first), p.rows[i].text(r.first)) && !r.looks[r.first].is(lookDate|lookDay|lookPair) && r.count(lookDate|lookDay|lookRealDate|lookSmall, r.first+1, len(r.looks)) >= r.n-1 {
			break
		}
		if to > i+2 && p.rows[to-1].n == 0 && (headsWords(r) || p.headsAnew(&p.rows[i], r)) {
			break
		}
		to++
	}
	// What stands above the next headings belongs to them.
	for to > i+1 && (p.rows[to-1].n == 0 || p.factLine(&p.rows[to-1]) || labelledFact(&p.rows[to-1])) {
		to--
	}
	return p.rows[i+1 : to]
}

// headsAnew tells whether a row behind a blank one begins with the word that
// heads the table above and goes on with a date: "Species | Sex | 24/6".
func (p *page) headsAnew(head, r *keptRow) bool {
	return r.n >= 2 && head.first >= 0 && r.first == head.first && strings.EqualFold(r.text(r.first), head.text(head.first)) &&
		!r.looks[r.first].is(lookDate|lookDay|lookPair) && r.count(lookDate|lookDay|lookRealDate|lookPair|lookMonth, r.first+1, len(r.looks)) > 0
}

// labelledFact tells whether the row is a label and its value, with no colon:
// "Grid ref | TL4587".
func labelledFact(r *keptRow) bool { return r.n == 2 && statesFact(r) }

// statesFact reports whether the row begins with the label of something that
// holds for the whole page.
func statesFact(r *keptRow) bool {
	ms := headingSenses(r.text(r.first), false)
	if len(ms) == 0 || ms[0].weight < weightExact-5 {
		return false
	}
	switch ms[0].meaning {
	case Site, GridRef, Recorder, Method, County, ViceCounty, Habitat:
		return true
	}
	return false
}

// headsWords tells whether the row is headings of another list: words alone,
// at least two of them known as headings.
func headsWords(r *keptRow) bool {
	known := 0
	for c := range r.looks {
		switch l := r.looks[c]; {
		case l == 0:
		case l.is(lookCount | lookTick | lookNil | lookDate | lookDay | lookPair | lookGrid | lookTime | lookTaxon | lookKnownTaxon):
			return false
		case knownHeading(r.text(c), l):
			known++
		}
	}
	return known >= 2
}

// countsBelow reports whether a column below the headings holds counts, marks
// or nothing; a few cells of further headings may come first.
func countsBelow(body []keptRow, c int) bool {
	counts, other, lead := 0, 0, 0
	for i := range body {
		if 4*other > counts+len(body)-i {
			return false // whatever is still to come
		}
		l := body[i].look(c)
		if counts == 0 && i < 4 && body[i].visitLine() || l == 0 { // what a night with nothing has, too
			continue
		}
		text := body[i].text(c)
		switch {
		case text == "?", text == `\`, body[i].first < c && body[i].firstLook().is(lookTotal) && l.is(lookError):
		case isBand(text):
			counts++
		case counts > 0 && countWithNote(text, l):
			counts++
		case l.is(lookPair|lookDay|lookDate) && !l.is(lookRealDate):
			if counts == 0 && lead < 4 {
				lead++
			} else {
				other++
			}
		case l.is(lookCount|lookTick|lookNil) && !l.is(lookYear):
			counts++
		case l.is(lookCount):
			counts++
		case counts == 0 && lead < 4:
			lead++
		case body[i].single() >= 0:
		default:
			other++
		}
	}
	return counts > 0 && counts >= 4*other && counts >= lead || counts == 0 && other == 0 && lead == 0
}

// countWithNote: "1 (photo)", "1 worn".
func countWithNote(text string, l look) bool {
	if l.is(lookDate|lookDay|lookPair|lookGrid|lookTime|lookTaxon|lookLong) || text == "" || !isDigit(text[0]) {
		return false
	}
	first, _, found := strings.Cut(text, " ")
	_, ok := isInt(first)
	return found && ok
}

// labelsOf tells what stands beside the counts: names of species, or dates.
func (p *page) labelsOf(i int, body []keptRow, cols []int, from, to int) (names, dates bool) {
	isAxis := map[int]bool{}
	for _, c := range cols {
		isAxis[c] = true
	}
	r := &p.rows[i]
	for c := from; c <= to; c++ {
		if isAxis[c] {
			continue
		}
		var st stats
		for j := range body {
			if k := &body[j]; k.look(c) != 0 && k.single() < 0 && !k.look(c).is(lookTotal) {
				st.add(k.text(c), k.look(c))
			}
		}
		if st.n == 0 {
			continue
		}
		var head sense
		for _, m := range headingSenses(r.text(c), false) {
			if m.weight >= weightMisspelt && agree(m.sense, &st) > -50 {
				head = m.sense
				break
			}
		}
		switch {
		case head.meaning == Remarks && !(head.labelled && c < cols[0] && 2*namesOver(r, cols) >= len(cols)), dates && r.look(c) == 0 && c > cols[len(cols)-1]: // notes, that may name species in passing
		case st.share(lookTaxon) >= 0.3 && st.share(lookWords) >= 0.6 && st.shares(lookDate, lookDay) < 0.3:
			names = true
		case st.shares(lookDate, lookDay, lookPair, lookRealDate) >= 0.6 || head.meaning == Date && head.part != partYear:
			dates = true
		case head.meaning == Remarks && head.labelled && c < cols[0] && 2*namesOver(r, cols) >= len(cols):
			dates = true // quadrats or stops down the side
		case st.share(lookPlace) >= 0.5 && st.share(lookTaxon) < 0.3, head.meaning == Site,
			st.share(lookGrid) >= 0.6 && 2*namesOver(r, cols) >= len(cols):
			dates = true // places down the side
		case head.meaning == Taxon || head.meaning == Scientific || head.meaning == Vernacular:
			names = true
		case c < cols[0] && head.meaning == "" && st.share(lookWords) >= 0.7 && st.share(lookLong) < 0.3 && st.share(lookPerson) < 0.5 && len(st.distinct)*3 >= st.n*2 && st.share(lookMonth) < 0.3 && p.datedHead(r, cols):
			names = true
		}
	}
	return names, dates
}

// namesOver counts the columns that are headed by names of species.
func namesOver(r *keptRow, cols []int) int {
	n := 0
	for _, c := range cols {
		if r.look(c).is(lookTaxon) {
			n++
		}
	}
	return n
}

// datedHead: most of the columns are headed by dates or squares, so the words beside
// them can only be names.
func (p *page) datedHead(r *keptRow, cols []int) bool {
	n := 0
	for _, c := range cols {
		if l := r.look(c); l.is(lookDate|lookDay|lookMonth|lookYear|lookPair|lookRealDate|lookSmall|lookGrid|lookTime) || isNight(r.text(c)) {
			n++
		}
	}
	return n*2 >= len(cols)
}

// emptyNight makes the draft of a night under which nothing stands.
func emptyNight(b *block, ac *axisColumn, row int) Draft {
	d := Draft{Row: row, Empty: true, Night: true}
	d.Values = append(d.Values, ac.values...)
	for _, v := range b.facts.values {
		if _, ok := d.Get(v.Meaning); !ok && v.Meaning != Group && !(v.Meaning == GridRef && b.axis.means[Site] && !b.axis.means[GridRef]) {
			d.Values = append(d.Values, v)
		}
	}
	return d
}

// cellRef is the address of a column on a row.
func cellRef(col, row int) notebook.Ref { return notebook.Ref{Col: col + 1, Row: row} }
