package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// oddRow looks closely at a row of a list that is not plainly a record.
func (w *walker) oddRow(r *notebook.Row, b *block, s *listState) {
	k := w.p.page.view(r)
	for _, sp := range b.skip {
		if r.Number >= sp.from && (sp.to == 0 || r.Number <= sp.to) {
			w.skip(skipProject)
			return
		}
	}
	single := k.single()
	name := s.nameOf(&k)
	label := name
	if label == "" && k.first >= 0 {
		label = k.text(k.first)
	}
	kind := w.sumOf(b, s, &k, label)
	switch {
	case w.p.repeats(b, &k):
		w.skip(skipHeadings)
		w.out.Used = w.cells
		clear(w.left)
	case kind == sumTotal, single >= 0 && isTotalFigure(label), s.isTotal(&k, name), name == "" && w.sumsUp(b, s, &k):
		w.skip(skipTotal)
		s.endSums()
	case kind == sumAsked:
		w.record(r, b, s)
		for i := range w.out.Drafts {
			askSum(&w.out.Drafts[i])
		}
	case b.dayLines && k.headsDay():
		w.sectionLine(r, &k, s)
	case single < 0 && w.p.page.factLine(&k) && (k.looks[k.first].is(lookMarked) || len(labelsIn(k.text(k.first))) > 0):
		w.sectionLine(r, &k, s)
	case single >= 0:
		w.singleRow(r, b, s, &k, single)
	case notRun(name), name == "" && k.saysNotRun():
		w.skip(skipNoVisit)
	case isNothing(name), name == "" && s.saysNothing(&k):
		w.record(r, b, s)
		w.makeEmpty()
	default:
		w.record(r, b, s)
	}
}

// nameOf returns the text of the row's name, "" where it has none.
func (s *listState) nameOf(k *keptRow) string {
	for _, c := range s.nameAt {
		if l := k.look(c); l != 0 {
			return k.text(c)
		}
	}
	return ""
}

// isTotal reports whether the row sums up others.
func (s *listState) isTotal(k *keptRow, name string) bool {
	if name != "" && isTotalWord(name) && !s.b.known(k, s.nameAt) {
		return true
	}
	return k.first >= 0 && k.looks[k.first].is(lookTotal) && (name == "" || k.first == s.nameCol)
}

func (b *block) known(k *keptRow, at []int) bool {
	for _, c := range at {
		if k.look(c).is(lookKnownTaxon | lookBinomial) {
			return true
		}
	}
	return false
}

// isNothing: words for a visit on which nothing was found.
func isNothing(s string) bool {
	switch strings.ToLower(strings.Trim(s, " .!-()*\"")) {
	case "nil", "none", "nothing", "no moths", "no catch", "nothing caught", "nil return", "zero", "0", "no records", "no macros", "blank night",
		"nothing seen", "nothing in trap", "no moths caught", "no moths seen", "empty", "trap empty", "nil catch", "no species", "zero catch", "no insects", "none caught", "none seen",
		"nothing found", "nothing too cold", "nowt", "no moths at all", "nothing today", "nothing tonight", "blank", "no butterflies", "nothing trapped", "no captures", "nothing at all", "empty trap", "nothing recorded", "no butterflies seen", "no sightings", "not a thing":
		return true
	}
	return false
}

// saysNone reports whether some part of a line says so: "Cold. Nothing."
func saysNone(text string) bool {
	if isNothing(text) {
		return true
	}
	text = strings.NewReplacer(" - ", ";", " – ", ";", " — ", ";", "(", ";").Replace(text)
	for part := range strings.FieldsFuncSeq(text, func(r rune) bool { return strings.ContainsRune(".,;:", r) }) {
		if trim(part) != "0" && isNothing(part) {
			return true
		}
	}
	return false
}

// saysNothing: a row without a name whose count or remarks say that nothing
// was found.
func (s *listState) saysNothing(k *keptRow) bool {
	for i := range s.plans {
		pl := &s.plans[i]
		if pl.left != "" {
			continue
		}
		switch pl.column.meaning {
		case Count:
			if k.look(pl.column.col).is(lookNil) {
				return true
			}
		case Remarks, Weather:
			if isNothing(k.text(pl.column.col)) {
				return true
			}
		}
	}
	return false
}

// makeEmpty turns the draft just made into a visit with nothing found.
func (w *walker) makeEmpty() {
	d := &w.out.Drafts[len(w.out.Drafts)-1]
	d.Empty = true
	kept := d.Values[:0]
	for _, v := range d.Values {
		if !isName(v.Meaning) && v.Meaning != Count {
			kept = append(kept, v)
		}
	}
	d.Values = kept
}

// singleRow decides what a row with one text is: a record, a line that holds
// for the rows below, or a note.
func (w *walker) singleRow(r *notebook.Row, b *block, s *listState, k *keptRow, c int) {
	text, l := k.text(c), k.look(c)
	isNameCol := false
	for _, n := range s.nameAt {
		isNameCol = isNameCol || n == c
	}
	behind := b.lastData > 0 && r.Number > b.lastData
	one := b.from == b.to || b.oneColumn()
	switch {
	case l.is(lookGroup) && !behind, l.is(lookMarked), len(labelsIn(text)) > 0:
		if behind && !one {
			w.skip(skipNote)
			return
		}
		w.sectionLine(r, k, s)
	case !behind && !one && l.is(lookLong) && opensVisit(text):
		w.sectionLine(r, k, s)
	case l.is(lookLong) && !one, behind && !one && !isNameCol, behind && !one && !l.is(lookTaxon):
		w.skip(skipNote)
	case !behind && (beginsWithDay(text) || !one && isNameCol && dateStarts(text) && !l.is(lookKnownTaxon|lookBinomial)):
		w.sectionLine(r, k, s)
	case b.loneVisits[r.Number] && !isNameCol:
		w.record(r, b, s)
		w.makeEmpty()
		if v, ok := w.out.Drafts[len(w.out.Drafts)-1].Get(Date); ok {
			v.Doubt = v.Doubt.And(queryEmptyNight(v.Text))
		}
	case isNothing(text) && isNameCol:
		w.record(r, b, s)
		w.makeEmpty()
	case l.is(lookDate|lookDay|lookMonth|lookYear|lookGrid) && !(isNameCol && l.is(lookTaxon)):
		w.sectionLine(r, k, s)
	case isNameCol && l.is(lookTaxon) && !(l.is(lookPlace) && !l.is(lookKnownTaxon|lookBinomial) && b.find(Site, whole) == nil):
		w.record(r, b, s)
	case isNameCol && one && (b.cols[b.byCol[c]].split == splitNone || splits(text)):
		w.record(r, b, s)
	case isNameCol && !w.startsSection(s, l, b):
		w.record(r, b, s)
	case l.is(lookPlace | lookPerson), isNameCol, c <= b.from+1, k.cells[c].Spread:
		w.sectionLine(r, k, s)
	default:
		w.skip(skipNote)
	}
}

// opensVisit: a long line that begins with a date or names a square heads the
// rows below it: "13 June 2021 - Sallowmere (TF501120) - actinic".
func opensVisit(text string) bool {
	if len(text) > 120 {
		return false
	}
	if a, _ := gridRefIn(text); a >= 0 {
		return true
	}
	day, raw := dateInTitle(text)
	return day != "" && strings.HasPrefix(text, raw)
}

func splits(text string) bool {
	_, _, ok := splitNameCountText(text)
	return ok
}

// oneColumn reports whether the list uses one column only.
func (b *block) oneColumn() bool {
	n := 0
	for i := range b.cols {
		if b.cols[i].used() && b.cols[i].stats.n > 0 {
			n++
		}
	}
	return n <= 1
}

// startsSection weighs a lone text in the name column that is not known as a
// name: a place after a blank line, or where nothing else names the site.
func (w *walker) startsSection(s *listState, l look, b *block) bool {
	if l.is(lookPlace) {
		return true
	}
	return (s.blanks || !s.data) && b.find(Site, whole) == nil && b.find(Count, whole) != nil && b.filled[b.find(Count, whole).col] > 0.9
}

// sectionLine takes a line that holds for the rows below it.
func (w *walker) sectionLine(r *notebook.Row, k *keptRow, s *listState) {
	before := s.section.clone()
	w.out.Skip = skipSection
	var f facts
	f.year, f.month = s.section.year, s.section.month
	used := f.read(w.p.page, k, FromSection)
	if s.b.named() {
		f.dropSpecies()
	}
	c := k.single()
	any := len(f.values) > 0 || f.year != before.year || f.month != before.month
	marked := c >= 0 && k.looks[c].is(lookMarked) && !sureLabel(strings.TrimRight(k.text(c), " :"))
	if !any && c >= 0 {
		text, l := k.text(c), k.look(c)
		noPlace := !l.is(lookGroup|lookPerson|lookPlace) && (s.b.facts.has(Site) || s.b.facts.has(GridRef)) && s.b.find(Site, whole) == nil && !s.section.has(Site)
		if l.is(lookLong) || len(labelsIn(text)) > 0 && !marked || strings.Count(text, " ") > 5 || noPlace && strings.Contains(text, " ") {
			w.skip(skipNote) // the page names its site: a remark in passing is no other
			return
		}
		v := Value{Text: strings.TrimRight(text, " :"), Ref: notebook.Ref{Col: c + 1, Row: r.Number}, From: FromSection}
		switch {
		case l.is(lookGroup):
			v.Meaning = Group
		case l.is(lookPerson):
			v.Meaning = Recorder
		case l.is(lookPlace):
			v.Meaning = Site
		case methodIn(text) != "":
			v.Meaning = Method
			v.Doubt = reading.QueryOf("section-line", "“"+text+"” stands alone on row "+itoa(r.Number)+" and was taken for how the rows below it were recorded. Please check it.", text)
		case s.b.find(Site, whole) == nil:
			v.Meaning = Site
			v.Doubt = reading.QueryOf("section-line", "“"+text+"” stands alone on row "+itoa(r.Number)+" and was taken as the site of the rows below it. Please check it.", text)
		default:
			v.Meaning = Group
		}
		f.set(v)
		for i := range used {
			used[i] = k.looks[i] != 0
		}
	}
	if len(f.values) == 1 && f.values[0].Meaning == Method && f.values[0].Verbatim != "" {
		f.values[0].Text, f.values[0].Verbatim = f.values[0].Verbatim, "" // "2 actinics along ride 3", with all that it says
	}
	if c >= 0 && any {
		for i := range used {
			used[i] = k.looks[i] != 0
		}
	}
	s.enter(&f)
	for i := range k.looks {
		if k.looks[i] == 0 {
			continue
		}
		if used[i] {
			w.out.Used++
		} else {
			w.left[skipSection]++
		}
	}
	w.settle(skipSection)
}

// enter makes the facts of a section line hold from here on; what stood above
// it is no longer carried down.
func (s *listState) enter(f *facts) {
	s.otherMethod(f)
	if f.has(Date) {
		s.nextDay(f)
		for m := range ofVisit {
			s.section.drop(m) // of the visit before
		}
		s.siteOfDay(f)
	}
	for _, v := range f.values {
		s.section.set(v)
		for i := range s.plans {
			pl := &s.plans[i]
			if pl.column.meaning == v.Meaning || v.Meaning == Site && pl.place || v.Meaning == Date && pl.visit {
				pl.has = false
			}
		}
	}
	if f.year > 0 {
		s.section.year = f.year
	}
	if f.month > 0 && f.month != s.section.month {
		s.section.month = f.month
		for i := range s.plans {
			if pl := &s.plans[i]; pl.date || pl.visit {
				pl.has = false
			}
		}
		s.section.drop(Date)
	}
}
