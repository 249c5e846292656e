package layout

import (
	"regexp"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// axis is what runs across the top of a table: nights, places or species, one
// column each, with counts below.
type axis struct {
	labels map[int]int // row of headings to the column that labels it

	cols    []axisColumn
	byCol   []int // index into cols by column, -1 for none
	species bool
	means   map[Meaning]bool // what the columns' headings say
	// overnight: hours of the day stand over the counts, and run over midnight.
	overnight bool
}

// axisColumn is one column of counts.
type axisColumn struct {
	col              int
	heading          string
	values           []Value // of each of its records
	day, month, year string
	sex, stage       string
	role             Meaning // what its cells are: Count, or the remarks that go with one
	left             string  // why it is left out: a total
	group            int     // columns of one night and place make one record
	dateRow          int     // row of its date
	filled, nils     int     // cells of the body with a count, with 0 or a dash
	ticks            int     // of those filled, the marks and question marks
}

// axisMeanings are what a row of a table's headings may say of its columns.
var axisMeanings = map[Meaning]bool{Date: true, Time: true, EndTime: true, Recorder: true, Site: true, GridRef: true, Method: true, Effort: true,
	Weather: true, Temperature: true, Remarks: true, ViceCounty: true, Determiner: true, TaxonNumber: true, Group: true, Scientific: true,
	Vernacular: true, Taxon: true, Habitat: true, Stage: true, County: true}

// buildAxis reads the stack of heading rows over the columns of a table.
func (p *Plan) buildAxis(b *block, cols []int, species bool, rows []*keptRow) {
	a := &axis{species: species, labels: map[int]int{}, means: map[Meaning]bool{}, byCol: make([]int, p.page.width)}
	for i := range a.byCol {
		a.byCol[i] = -1
	}
	for _, c := range cols {
		a.byCol[c] = len(a.cols)
		a.cols = append(a.cols, axisColumn{col: c, role: Count})
	}
	b.axis = a
	for _, r := range rows {
		p.axisRow(b, r)
	}
	p.axisDates(b)
	a.runOverMidnight()
	a.oneName()
	a.groups()
}

// oneName makes the only row of names above a table's counts plain names.
func (a *axis) oneName() {
	if a.means[Vernacular] == a.means[Scientific] {
		return
	}
	for i := range a.cols {
		for j := range a.cols[i].values {
			if v := &a.cols[i].values[j]; v.Meaning == Vernacular || v.Meaning == Scientific {
				v.Meaning = Taxon
			}
		}
	}
	delete(a.means, Vernacular)
	delete(a.means, Scientific)
	a.means[Taxon] = true
}

// axisRow takes what one row says over each column. A cell left blank repeats
// its left neighbour's, as a heading over several columns does.
func (p *Plan) axisRow(b *block, r *keptRow) {
	a := b.axis
	if p.roleRow(r, a) {
		return
	}
	s, labelled := p.axisLabel(b, r)
	unsure := false
	if !labelled {
		s = p.axisRowSense(b, r)
		unsure = s.meaning == Site && !p.page.placesAcross(a, r)
	}
	spread := -1
	for i := range a.cols {
		ac := &a.cols[i]
		at := ac.col
		if r.look(at) == 0 {
			if spread < 0 || spreadStops[s.meaning] && !a.sameNight(i, spread) || ac.left != "" {
				continue
			}
			at = spread
		} else {
			spread = at
		}
		text := r.text(at)
		if at == ac.col && (isTotalWord(text) || isTotalHeading(text)) && !p.page.eyes.known(text) {
			ac.left = leaveTotal
			if strings.HasPrefix(strings.ToLower(text), "cum") || strings.HasPrefix(strings.ToLower(text), "running") {
				ac.left = leaveCumulative
			}
			ac.heading = text
			spread = -1
			continue
		}
		ac.heading = strings.TrimSpace(ac.heading + " " + text)
		p.axisCell(b, ac, s, r, at, text)
		if v := ac.get(Site); v != nil && unsure && v.Ref.Row == r.number {
			b.askAcross(v)
		}
	}
}

// roleRow takes a row that says of each column whether it holds counts or
// remarks: "No. | Notes | No. | Notes" under the nights.
func (p *Plan) roleRow(r *keptRow, a *axis) bool {
	remarks := false
	for i := range a.cols {
		if t := r.text(a.cols[i].col); t != "" {
			m := columnRole(t)
			if m == "" && !isTotalHeading(t) {
				return false
			}
			remarks = remarks || m == Remarks
		}
	}
	if !remarks {
		return false
	}
	for i := range a.cols {
		ac := &a.cols[i]
		t := r.text(ac.col)
		switch m := columnRole(t); {
		case m != "":
			ac.role = m
		case t != "":
			ac.left = leaveTotal
		}
		ac.heading = strings.TrimSpace(ac.heading + " " + t)
	}
	return true
}

// columnRole is what a heading under a night says of its column.
func columnRole(t string) Meaning {
	ss := vocabulary[normHeading(t)]
	if len(ss) == 0 {
		return ""
	}
	for _, s := range ss {
		if s.meaning == Count || s.meaning == Remarks {
			return s.meaning
		}
	}
	return ""
}

// sameNight reports whether a column stands under the same date as another.
func (a *axis) sameNight(i, col int) bool {
	if col >= len(a.byCol) || a.byCol[col] < 0 {
		return false
	}
	x, y := a.cols[i].get(Date), a.cols[a.byCol[col]].get(Date)
	return x != nil && y != nil && x.Ref == y.Ref
}

// spreadStops are meanings that each column must state for itself.
var spreadStops = map[Meaning]bool{Temperature: true, Weather: true, TaxonNumber: true, Count: true, Remarks: true, Effort: true, Time: true, EndTime: true}

func (p *Plan) axisCell(b *block, ac *axisColumn, s sense, r *keptRow, at int, text string) {
	cell := &r.cells[at]
	v := Value{Meaning: s.meaning, Text: text, Kind: cell.Kind, Raw: cell.Raw, Ref: notebook.Ref{Col: at + 1, Row: r.number}, From: FromHeading}
	if said := trim(cell.Text); said != text {
		v.Verbatim = said
		_, v.Doubt = tidy(said)
	}
	switch {
	case s.part == partDay:
		ac.day, ac.dateRow = text, r.number
	case s.part == partMonth:
		ac.month = text
		if y := yearIn(text); y > 0 {
			ac.year = itoa(y)
		}
		ac.dateRow = max(ac.dateRow, r.number)
	case s.part == partYear:
		ac.year = text
		ac.dateRow = max(ac.dateRow, r.number)
	case s.part == partWeekday, s.meaning == Ignored, s.meaning == "":
	case s.meaning == Count:
		for _, x := range vocabulary[normHeading(text)] {
			if x.meaning == Count && (x.sex != "" || x.stage != "") {
				ac.sex, ac.stage = x.sex, x.stage
				break
			}
		}
	case s.meaning == Site && isSection(text) && (b.facts.has(Site) || b.facts.has(GridRef)):
		v.Meaning, v.Heading = Remarks, "section"
		ac.values = append(ac.values, v)
	case s.meaning == Site && strings.HasPrefix(strings.ToLower(text), "trap"):
		v.Meaning, v.Heading = Remarks, "trap"
		ac.values = append(ac.values, v)
	case s.meaning == Site:
		if from, to := gridRefIn(text); from >= 0 {
			var f facts
			f.siteAndGrid(v, from, to)
			ac.values = append(ac.values, f.values...)
			b.axis.means[GridRef] = true
			b.axis.means[Site] = true
			return
		}
		ac.values = append(ac.values, v)
		b.axis.means[Site] = true
	case s.meaning == Date:
		if day := dayOfNight(text); day != "" {
			v.Text, v.Verbatim = day, text
		} else if _, _, ok := sixFigureDate(text); ok && v.Kind != notebook.Date {
			v.Text, v.Verbatim = text[:2]+"/"+text[2:4]+"/"+text[4:], text
		}
		ac.dateRow = r.number
		fallthrough
	default:
		ac.values = append(ac.values, v)
		b.axis.means[s.meaning] = true
	}
}

// axisLabel is what the row's own label, left of the counts, says.
func (p *Plan) axisLabel(b *block, r *keptRow) (sense, bool) {
	first := b.axis.cols[0].col
	for c := min(first, len(r.cells)) - 1; c >= 0; c-- {
		if r.looks[c] == 0 {
			continue
		}
		text := strings.TrimRight(r.text(c), " :")
		for _, m := range headingSenses(text, false) {
			if m.weight < weightMisspelt {
				break
			}
			nameLabel := m.meaning == Taxon || m.meaning == Scientific || m.meaning == Vernacular || m.meaning == TaxonNumber || m.meaning == Group
			if nameLabel && !b.axis.species || !axisMeanings[m.meaning] && !b.transposed {
				continue
			}
			if !p.labelAgrees(b, r, m.sense) {
				continue
			}
			b.axis.labels[r.number] = c
			return m.sense, true
		}
		if b.axis.species {
			break // the label column's own heading stands here
		}
	}
	return sense{}, false
}

// labelAgrees checks a label against the row's cells: "Date" over the names of
// species is the heading of its own column.
func (p *Plan) labelAgrees(b *block, r *keptRow, s sense) bool {
	var st stats
	for i := range b.axis.cols {
		if l := r.look(b.axis.cols[i].col); l != 0 {
			st.add(r.text(b.axis.cols[i].col), l)
		}
	}
	if st.n == 0 {
		return false
	}
	switch {
	case s.part == partDay || s.part == partMonth || s.part == partYear:
		return agree(s, &st) > 0
	case s.meaning == Date:
		return st.shares(lookDate, lookDay, lookPair, lookRealDate) >= 0.5
	case s.meaning == GridRef && st.shares(lookDate, lookDay) >= 0.5:
		return false // "V2 20/3/21" is no square
	case b.axis.species && !b.transposed && (s.meaning == Site || s.meaning == Recorder || s.meaning == Remarks || s.meaning == Weather || s.meaning == Method || s.meaning == Habitat):
		return false
	case s.meaning == Site && st.share(lookDate) > 0.4:
		return false
	}
	return agree(s, &st) > -50
}

// axisRowSense judges an unlabelled row of headings by its cells.
func (p *Plan) axisRowSense(b *block, r *keptRow) sense {
	var st stats
	for i := range b.axis.cols {
		c := b.axis.cols[i].col
		if l := r.look(c); l != 0 && !isTotalWord(r.text(c)) && !isTotalHeading(r.text(c)) {
			st.add(r.text(c), l)
		}
	}
	return axisSense(&st, b.axis.species)
}

func axisSense(st *stats, species bool) sense {
	sexes := 0
	for t, n := range st.distinct {
		for _, x := range vocabulary[normHeading(t)] {
			if x.meaning == Count && (x.sex != "" || x.stage != "") {
				sexes += n
				break
			}
		}
	}
	visits := 0
	for t, n := range st.distinct {
		if dayOfNight(t) != "" {
			visits += n
		}
	}
	weekdays := 0
	for t, n := range st.distinct {
		if isWeekday(strings.ToLower(strings.Trim(t, ". "))) {
			weekdays += n
		}
	}
	switch {
	case st.n == 0:
		return sense{}
	case visits*2 >= st.n:
		return sense{meaning: Date}
	case sexes*10 >= st.n*8 && st.share(lookTaxon) < 0.5:
		return sense{meaning: Count}
	case weekdays*10 >= st.n*8:
		return sense{meaning: Ignored, part: partWeekday}
	case st.shares(lookDate, lookDay) >= 0.5, st.shares(lookDate, lookDay, lookPair) >= 0.8:
		return sense{meaning: Date}
	case st.share(lookMonth) >= 0.6:
		return sense{meaning: Date, part: partMonth}
	case st.share(lookYear) >= 0.8:
		return sense{meaning: Date, part: partYear}
	case st.upToOrNight() >= 0.8 && !species:
		return sense{meaning: Date, part: partDay}
	case st.share(lookGrid) >= 0.6:
		return sense{meaning: GridRef}
	case st.share(lookTime) >= 0.7:
		return sense{meaning: Time}
	case species && st.numbers*10 >= st.n*8:
		return sense{meaning: TaxonNumber}
	case st.numbers*2 > st.n:
		return sense{}
	case species && st.share(lookGroup) >= 0.6:
		return sense{meaning: Group}
	case species && st.share(lookBinomial) >= 0.5:
		return sense{meaning: Scientific}
	case species:
		return sense{meaning: Vernacular}
	case methodShare(st) >= 0.6:
		return sense{meaning: Method}
	case st.share(lookPerson) >= 0.6, st.shareWhere(givenName) >= 1:
		return sense{meaning: Recorder}
	}
	return sense{meaning: Site}
}

// numberOfLamps begins how many lamps there were, and of which power.
var numberOfLamps = regexp.MustCompile(`^[0-9]{1,2} ?[x×] ?[0-9]{1,4} ?w`)

// methodWord reports whether a text begins like the name of a method or lamp.
func methodWord(s string) bool {
	s = strings.ToLower(s)
	if numberOfLamps.MatchString(s) { // "2 x 15W actinic"
		return true
	}
	w, _, _ := strings.Cut(s, " ")
	switch strings.Trim(w, ".,0123456789") {
	case "mv", "actinic", "act", "sugar", "sugaring", "led", "robinson", "skinner", "heath", "light", "w", "wine", "pheromone", "sweep", "sweeping", "netting", "net",
		"transect", "beating", "dusking", "torch", "torching", "moth-trap", "mercury", "blacklight", "uv", "lamp", "pitfall", "malaise", "lured", "lure":
		return true
	}
	return false
}

func methodShare(st *stats) float64 {
	n := 0
	for t, k := range st.distinct {
		if methodWord(t) {
			n += k
		}
	}
	return float64(n) / float64(max(1, st.n))
}

// upToOrNight is the part of the cells that are days of a month, or the night
// between two.
func (s *stats) upToOrNight() float64 {
	return s.shareWhere(func(t string) bool { return dayNumber(t) > 0 || isNight(t) })
}

// axisDates joins each column's day, month and year, with what the page says.
func (p *Plan) axisDates(b *block) {
	a := b.axis
	s := &listState{b: b}
	for i := range a.cols {
		ac := &a.cols[i]
		if ac.left != "" {
			continue
		}
		if v := ac.get(Date); v != nil {
			if ac.year != "" && v.Kind != notebook.Date && !scanDate(v.Text).hasYear() {
				if y, ok := isInt(ac.year); ok {
					v.Verbatim, v.Text = v.Text, addYear(v.Text, y)
				}
			}
			s.completeDate(v)
			continue
		}
		month, year := ac.month, ac.year
		if month == "" && b.facts.month > 0 {
			month = monthTitles[b.facts.month]
		}
		if year == "" && b.facts.year > 0 && yearIn(month) == 0 {
			year = itoa(b.facts.year)
		}
		if ac.day == "" && ac.month == "" && ac.year == "" {
			continue
		}
		var doubt reading.Verdict
		if y := b.facts.winterYear(month); y > 0 && year == "" && yearIn(month) == 0 {
			year = itoa(y)
			doubt = b.facts.winterDoubt(month, y)
		}
		if y := yearIn(month); y > 0 && year == itoa(y) {
			year = ""
		}
		text := strings.Join(present([]string{ac.day, month, year}), " ")
		said := strings.Join(present([]string{ac.day, ac.month, ac.year}), " ")
		v := Value{Meaning: Date, Text: text, Kind: notebook.Text, Ref: notebook.Ref{Col: ac.col + 1, Row: ac.dateRow}, From: FromHeading, Doubt: doubt}
		if said != text {
			v.Verbatim = said
		}
		if ac.day != "" && month == "" {
			v.Doubt = reading.HeldOf("day-without-month", "“"+ac.day+"” above the counts looks like a day, but no month stands with it. Please write the month above.")
		}
		ac.values = append(ac.values, v)
		a.means[Date] = true
	}
}

func (ac *axisColumn) get(m Meaning) *Value {
	for i := range ac.values {
		if ac.values[i].Meaning == m {
			return &ac.values[i]
		}
	}
	return nil
}

// groups joins columns that differ in sex or stage only.
func (a *axis) groups() {
	for i := range a.cols {
		a.cols[i].group = i
		if a.cols[i].sex == "" && a.cols[i].stage == "" && (a.cols[i].role == Count || a.cols[i].role == Date) {
			continue
		}
		for j := range i {
			if a.cols[j].left == "" && (a.cols[j].sex != "" || a.cols[j].stage != "" || a.cols[i].role != Count) && sameValues(a.cols[i].values, a.cols[j].values) {
				a.cols[i].group = a.cols[j].group
				break
			}
		}
	}
}

func sameValues(x, y []Value) bool {
	if len(x) != len(y) {
		return false
	}
	for i := range x {
		if x[i].Meaning != y[i].Meaning || x[i].Text != y[i].Text || x[i].Ref != y[i].Ref && x[i].Meaning != Date {
			return false
		}
	}
	return true
}
