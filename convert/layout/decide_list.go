package layout

import (
	"slices"
	"strings"

	"fieldfare/convert/notebook"
)

// decide settles a block's columns once its rows are known.
func (b *block) decide(p *Plan) {
	e := p.entryFor(b)
	if e != nil {
		e.apply(b)
	}
	if b.kind == kindDiary && b.facts.year == 0 {
		p.yearFromFile(&b.facts)
	}
	if b.kind == kindNone || b.kind == kindDiary {
		return
	}
	b.chosen = e
	b.chooseAxis()
	b.lastRecord(p)
	b.makeColumns(p)
	b.resolve()
	if b.named() || b.axis != nil && b.axis.species {
		b.facts.dropSpecies()
	}
	b.speciesOfTitle(p)
	p.footFacts(b)
	p.factsOfCover(b)
	if b.axis != nil {
		b.settleTable(p)
	}
	b.findItems(p)
	b.findDamage(p)
	b.findSums(p)
	if b.holdsNone() {
		p.leaveBlock(b)
		return
	}
	if b.isKey(p.page.sheet) {
		p.leaveKey(b)
		return
	}
	b.findLoneVisits()
	b.settleCarry()
	b.byCol = make([]int, p.page.width)
	for i := range b.byCol {
		b.byCol[i] = -1
	}
	for i := range b.cols {
		b.byCol[b.cols[i].col] = i
	}
	if b.find(Site, whole) == nil && (b.axis == nil || !b.axis.means[Site]) && b.facts.get(Site) == nil {
		p.siteFromSheet(b)
	}
	if d := b.find(Date, whole); b.facts.year == 0 && d != nil {
		b.facts.setYear(d.heading, FromHeading, originWords(FromHeading))
	}
	if b.facts.year == 0 {
		p.yearFromFile(&b.facts)
	}
}

// holdsNone reports whether a list cannot be one of records: nothing on it
// names a species, and it lacks dates or counts as well.
func (b *block) holdsNone() bool {
	if b.axis != nil || b.named() || b.facts.has(Taxon) || b.chosen != nil && len(b.chosen.Columns) > 0 {
		return false
	}
	dated := b.find(Date, whole) != nil || b.find(Date, partDay) != nil
	counted := false
	for i := range b.cols {
		counted = counted || b.cols[i].used() && b.cols[i].meaning == Count && b.cols[i].stats.n > 0
	}
	return !(dated && counted)
}

// leaveBlock leaves a list without names out, and asks.
func (p *Plan) leaveBlock(b *block) {
	b.kind, b.why = kindNone, "no column of names"
	for i := range b.sample {
		if b.sample[i].n > 0 {
			b.notes = nil
			b.note("no-records-found", "Rows "+itoa(b.first)+" to "+itoa(b.sample[len(b.sample)-1].number)+
				" name no species, so nothing of them is used. If they are records, say in the project file what each column holds.", b.from)
			return
		}
	}
}

// findLoneVisits finds dates that stand alone on their row, with another date
// next: visits of which nothing is written.
func (b *block) findLoneVisits() {
	date := b.find(Date, whole)
	if date == nil || b.axis != nil {
		return
	}
	b.loneVisits = map[int]bool{}
	for i := range b.sample {
		r := &b.sample[i]
		if r.single() != date.col || !r.looks[date.col].is(lookDate|lookDay|lookPair) || r.number > b.lastData && b.lastData > 0 {
			continue
		}
		next := i + 1
		for next < len(b.sample) && b.sample[next].n == 0 {
			next++
		}
		if next < len(b.sample) && b.sample[next].look(date.col) != 0 && !b.sample[next].look(date.col).is(lookDitto) {
			b.loneVisits[r.number] = true
		}
	}
}

// lastRecord finds the last row with several cells, behind which single lines
// are notes.
func (b *block) lastRecord(p *Plan) {
	for i := range b.sample {
		r := &b.sample[i]
		if r.n >= 2 && r.single() < 0 && !r.firstLook().is(lookTotal) {
			b.lastData = r.number
		}
	}
	if !p.page.complete && b.last == 0 {
		b.lastData = 0
	}
}

func (r *keptRow) firstLook() look {
	if r.first < 0 {
		return 0
	}
	return r.looks[r.first]
}

// makeColumns judges every column by its headings and cells.
func (b *block) makeColumns(p *Plan) {
	tops, bottoms := b.headings(p.page.width)
	b.terms = writtenInTerms(append(append([]string{}, tops...), bottoms...))
	b.filled = map[int]float64{}
	for c := range len(bottoms) {
		if (c < b.from || c > b.to) && !slices.Contains(b.shared, c) {
			continue
		}
		if b.axis != nil && b.axis.byCol[c] >= 0 {
			continue
		}
		col := column{col: c, heading: strings.TrimSpace(tops[c] + " " + bottoms[c]), master: len(b.cols)}
		rows := 0
		for i := range b.sample {
			r := &b.sample[i]
			if strings.IndexByte(r.text(max(r.first, 0)), ':') > 0 && p.page.factLine(r) || b.isFactRow(r.number) || r.n < 2 && b.to > b.from || r.struck || r.single() >= 0 && b.to > b.from || r.firstLook().is(lookTotal) || p.repeats(b, r) {
				continue
			}
			rows++
			if l := r.look(c); l != 0 {
				col.stats.add(r.text(c), l)
			} else {
				col.stats.blank++
			}
		}
		if rows > 0 {
			b.filled[c] = float64(col.stats.n) / float64(rows)
		}
		if spelt := p.page.speltStats(&col.stats); spelt != &col.stats {
			col.stats = *spelt
		}
		decideColumn(&col, tops[c], bottoms[c], b.terms)
		if b.names == c+1 && !isName(col.meaning) {
			col.sense, col.left, col.why, col.weight = sense{meaning: Taxon}, "", "it stands where the names stand in the list beside it", accepted
		}
		if b.transposed { // its column of headings
			col.sense, col.left = sense{meaning: Ignored, leave: skipHeadings}, skipHeadings
		}
		b.choose(&col)
		b.cols = append(b.cols, col)
	}
}

// choose lets the project file's word on a column stand.
func (b *block) choose(c *column) {
	if b.chosen == nil {
		return
	}
	if s, ok := b.chosen.column(notebook.ColumnName(c.col + 1)); ok {
		c.sense, c.left, c.why, c.weight, c.fixed = s, "", "the project file", 1000, true
		c.trap = s.stage == partTrap
		if c.trap {
			c.stage = ""
		}
		if s.meaning == Ignored {
			c.left = s.leave
		}
	}
}

// chooseAxis lets the project file's word stand on the columns of counts of a
// table, and on the year and month that complete their dates.
func (b *block) chooseAxis() {
	e := b.chosen
	if e == nil || b.axis == nil {
		return
	}
	var cols []int
	for i := range b.axis.cols {
		c := b.axis.cols[i].col
		if s, said := e.column(notebook.ColumnName(c + 1)); !said || s.meaning == Count || s.meaning == Ignored {
			cols = append(cols, c)
		}
	}
	if len(cols) == 0 {
		return
	}
	if _, year := e.Facts["year"]; year || e.Facts["month"] != "" || len(cols) < len(b.axis.cols) {
		b.across(cols)
	}
	for i := range b.axis.cols {
		ac := &b.axis.cols[i]
		switch s, said := e.column(notebook.ColumnName(ac.col + 1)); {
		case said && s.meaning == Ignored:
			ac.left = s.leave
		case said:
			ac.left, ac.sex, ac.stage = "", s.sex, s.stage
		}
	}
	b.axis.groups()
}

// headings returns the upper and lower heading of every column as written. A
// heading over several columns stands over each of them.
func (b *block) headings(width int) (tops, bottoms []string) {
	tops, bottoms = make([]string, width), make([]string, width)
	if len(b.heads) == 0 {
		return tops, bottoms
	}
	if b.axis != nil {
		b.labelHeadings(bottoms)
		return tops, bottoms
	}
	last := b.heads[len(b.heads)-1]
	for c := range bottoms {
		bottoms[c] = oneLine(last.text(c))
	}
	if len(b.heads) == 1 {
		return tops, bottoms
	}
	for _, h := range b.heads[:len(b.heads)-1] {
		spread := ""
		for c := range tops {
			t := oneLine(h.text(c))
			switch {
			case t != "":
				spread = t
			case bottoms[c] == "":
				spread = ""
			}
			if t == "" && spread != "" && standsAlone(bottoms[c]) {
				spread = ""
			}
			s := spread
			if t != "" {
				s = t
			}
			if s != "" && tops[c] != s {
				tops[c] = strings.TrimSpace(tops[c] + " " + s)
			}
		}
	}
	for c := range bottoms { // a column named in the upper row only
		if bottoms[c] == "" {
			bottoms[c], tops[c] = tops[c], ""
		}
		if bottoms[c] == tops[c] {
			tops[c] = ""
		}
	}
	return tops, bottoms
}

// standsAlone reports whether a lower heading needs none above: a whole
// meaning by itself.
func standsAlone(s string) bool {
	ms := headingSenses(s, false)
	if len(ms) == 0 || ms[0].weight < weightExact-5 {
		return false
	}
	switch ms[0].meaning {
	case Taxon, Scientific, Vernacular, Site, Recorder, Remarks, Determiner, Method, ViceCounty:
		return ms[0].part == whole
	}
	return false
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// carried are the meanings whose blanks repeat what stands above; the rest of
// a visit's facts are carried with the date.
var carried = map[Meaning]bool{Date: true, Site: true, GridRef: true, Recorder: true, Method: true, ViceCounty: true, County: true, Latitude: true, Longitude: true}

// ofVisit are carried only to rows of the same visit: those whose date is
// carried too.
var ofVisit = map[Meaning]bool{EndDate: true, Weather: true, Temperature: true, Effort: true, Habitat: true, Time: true, EndTime: true}

// ofPlace belong to the site: a row that names another site does not take
// them from above.
var ofPlace = map[Meaning]bool{GridRef: true, ViceCounty: true, County: true, Latitude: true, Longitude: true, Habitat: true, Elevation: true}

// settleCarry chooses the columns that are carried down.
func (b *block) settleCarry() {
	for i := range b.cols {
		c := &b.cols[i]
		if b.carry != nil {
			c.carry = b.carry[c.meaning] && c.used()
			continue
		}
		if !c.used() {
			continue
		}
		c.carry = carried[c.meaning] || ofVisit[c.meaning]
	}
}

// namesOfPage takes what the name of the sheet says, and what stands beside
// the lists.
func (p *Plan) namesOfPage(f *facts) {
	defer f.join(&p.beside)
	name := trim(p.page.sheet)
	if name == "" || isGenericSheet(name) {
		return
	}
	ref := notebook.Ref{}
	switch scanDate(strings.ReplaceAll(name, "_", " ")) {
	case fullDate, dayMonth:
		f.set(Value{Meaning: Date, Text: name, Ref: ref, From: FromSheet})
		return
	case monthOnly, monthYear, yearOnly:
		f.setMonth(name, FromSheet, originWords(FromSheet))
		return
	}
	f.title(p.page, strings.ReplaceAll(name, "_", " "), ref, FromSheet)
}

func isGenericSheet(name string) bool {
	low := strings.ToLower(name)
	for _, prefix := range [...]string{"sheet", "tabelle", "feuil", "table", "page", "blad", "export"} {
		if rest, ok := strings.CutPrefix(low, prefix); ok {
			if _, isN := isInt(strings.Trim(rest, " ()_-")); isN || rest == "" {
				return true
			}
		}
	}
	return false
}
