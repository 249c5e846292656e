package layout

import (
	"regexp"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// item is one species of a sentence: "3 Heart and Dart".
type item struct{ name, count string }

// countedAnd is an "and" between two species, one of which has its count beside
// it: "Buff-tip 2 and Ghost Moth", "Flame and 2 Drinker".
var countedAnd = regexp.MustCompile(`([0-9]\)?) (?:and|&) ([A-Z])|([a-z]) (?:and|&) ([0-9]+ [A-Z])`)

// itemsIn takes a sentence apart at commas, semicolons and line ends. What is
// no species with a count, and no name known by its shape, is returned as
// rest.
func (e eyes) itemsIn(text string) (items []item, rest []string) {
	for part := range strings.FieldsFuncSeq(countedAnd.ReplaceAllString(strings.ReplaceAll(text, ". ", "; "), "$1$3; $2$4"), func(r rune) bool { return r == ',' || r == ';' || r == '\n' }) {
		part = trim(strings.Trim(part, " .:"))
		part = trim(strings.TrimPrefix(part, "and "))
		if part == "" {
			continue
		}
		if name, count, ok := splitNameCountText(part); ok && !e.lookText(name).is(lookLong|lookTotal) && strings.Count(name, " ") <= 5 {
			items = append(items, item{name, count})
			continue
		}
		if first, name, ok := strings.Cut(part, " "); ok && numberWord(first) && e.lookText(name).is(lookTaxon) {
			items = append(items, item{name, first})
			continue
		}
		if l := e.lookText(part); l.is(lookKnownTaxon|lookBinomial) || l.is(lookTaxon) && !l.is(lookLong) && strings.Count(part, " ") <= 4 {
			items = append(items, item{name: part})
			continue
		}
		rest = append(rest, part)
	}
	return items, rest
}

func numberWord(s string) bool {
	switch strings.ToLower(s) {
	case "a", "an", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "several", "many", "few":
		return true
	}
	return false
}

// dateBefore parts a line at the date it begins with: "12 June: 3 Heart and
// Dart", "14 June. Warm. Flame 2", "14 June 3 Heart and Dart".
func dateBefore(text string) (date, rest string, ok bool) {
	if date, rest, ok = dateUpToMark(text); ok {
		return date, rest, ok
	}
	words := strings.Fields(text)
	for n := min(4, len(words)-1); n >= 2; n-- {
		head := strings.Join(words[:n], " ")
		if f := scanDate(head); f != dayMonth && f != fullDate || !mayEndDate(words[n-1]) {
			continue
		}
		return head, strings.Join(words[n:], " "), true
	}
	return "", "", false
}

// mayEndDate: a month or a whole year, not the first figures of what follows.
func mayEndDate(word string) bool {
	n, ok := isInt(word)
	return monthOf(word) > 0 || ok && len(word) == 4 && n >= 1700
}

func dateUpToMark(text string) (date, rest string, ok bool) {
	for i := 0; i < len(text) && i < 40; i++ {
		c := text[i]
		if c != ':' && c != '-' && c != ',' && c != ';' && !strings.HasPrefix(text[i:], ". ") && !strings.HasPrefix(text[i:], "–") && !strings.HasPrefix(text[i:], "—") {
			continue
		}
		if c == ':' && i+1 < len(text) && isDigit(text[i+1]) {
			continue
		}
		head := trim(text[:i])
		if f := scanDate(head); f == dayMonth || f == fullDate || f == pairOnly && c == ':' {
			tail := strings.TrimLeft(text[i:], " :-–—,;.")
			if tail != "" && !isDigit(text[min(i+1, len(text)-1)]) {
				return head, trim(tail), true
			}
		}
	}
	return "", "", false
}

// isDiary reports whether a page without headings is lines that begin with a
// date and go on with species, and the index of the first of them.
func (p *Plan) isDiary() (first int, ok bool) {
	lines, fit := 0, 0
	first = -1
	for i := range p.page.rows {
		r := &p.page.rows[i]
		if r.n == 0 || r.n > 3 {
			continue
		}
		date, text := diaryLine(r.cells)
		items, _ := p.page.eyes.itemsIn(text)
		if date != "" && (len(items) > 0 || saysNone(text)) && p.diaryText(r, items) {
			fit++
			if first < 0 {
				first = i
			}
		}
		if first >= 0 {
			lines++
		}
	}
	return first, fit >= 1 && fit*2 >= lines
}

// diaryText keeps lists in columns apart from sentences: a row of date and
// name is no diary unless its text is more than one name.
func (p *Plan) diaryText(r *keptRow, items []item) bool {
	return r.n == 1 || len(items) > 1 || len(items) == 1 && items[0].count != "" && r.n == 2
}

// diaryLine returns the date and the text of a diary's row.
func diaryLine(cells []notebook.Cell) (date, text string) {
	var texts []string
	for i := range cells {
		if t, _ := tidy(trim(cells[i].Text)); t != "" {
			texts = append(texts, t)
		}
	}
	if len(texts) == 0 {
		return "", ""
	}
	if f := scanDate(strings.Trim(texts[0], ":-– ")); len(texts) > 1 && (f == dayMonth || f == fullDate || f == pairOnly) {
		return strings.Trim(texts[0], ":-– "), strings.Join(texts[1:], "; ")
	}
	if d, rest, ok := dateBefore(texts[0]); ok {
		return d, strings.Join(append([]string{rest}, texts[1:]...), "; ")
	}
	return "", strings.Join(texts, "; ")
}

// diaryRow reads one line of a diary.
func (w *walker) diaryRow(r *notebook.Row, b *block, s *listState) {
	date, text := diaryLine(r.Cells)
	items, rest := w.p.page.eyes.itemsIn(text)
	first := 0
	for first < len(r.Cells) && !HasText(&r.Cells[first]) {
		first++
	}
	ref := cellRef(first, r.Number)
	if date == "" && !s.dateLast.isSet() {
		k := w.p.page.view(r)
		if c := k.single(); c >= 0 && !k.looks[c].is(lookLong) && len(items) == 0 {
			w.sectionLine(r, &k, s)
		} else {
			w.skip(skipNote)
		}
		return
	}
	if len(items) == 0 && !saysNone(text) {
		if k := w.p.page.view(r); date == "" && k.single() >= 0 && !k.looks[k.first].is(lookLong) && (k.looks[k.first].is(lookPlace|lookMonth|lookYear) || len(labelsIn(text)) > 0) {
			w.sectionLine(r, &k, s)
			return
		}
		w.skip(skipNote)
		w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf("diary-line-not-understood", "“"+joinCells(r)+"” names no species that could be told. It is left out; please write it as a row of its own."), Ref: ref, Text: joinCells(r)})
		return
	}
	if date != "" {
		v := Value{Meaning: Date, Text: date, Kind: notebook.Text, Ref: ref, From: FromCell}
		if v.Text != trim(r.Cells[first].Text) {
			v.Verbatim = date
		}
		if r.Cells[first].Kind == notebook.Date {
			v.Kind, v.Raw = notebook.Date, r.Cells[first].Raw
		}
		s.completeDate(&v)
		s.dateLast = v
	} else {
		s.dateLast.From = FromAbove
	}
	w.out.Used = w.cells
	place := ""
	if len(rest) > 0 && strings.HasPrefix(text, rest[0]) && w.p.page.opensWithPlace(rest[0]) {
		place, rest = rest[0], rest[1:]
	}
	if len(items) == 0 {
		w.diaryDraft(r, b, s, item{}, place, rest, ref).Empty = true
		return
	}
	clear := understood(items, rest)
	for _, it := range items {
		d := w.diaryDraft(r, b, s, it, place, rest, ref)
		if !clear {
			askSentence(d, joinCells(r))
		}
	}
	if clear {
		w.noteSentences(s, ref)
	}
}

// understood reports whether all of a sentence is names with their counts.
func understood(items []item, rest []string) bool {
	for _, it := range items {
		if it.count == "" {
			return false
		}
	}
	return len(rest) == 0
}

func (v *Value) isSet() bool { return v.Text != "" }

func joinCells(r *notebook.Row) string {
	var out []string
	for i := range r.Cells {
		if t := trim(r.Cells[i].Text); t != "" {
			out = append(out, t)
		}
	}
	return strings.Join(out, " ")
}

// opensWithPlace: the name of a place, behind the date of a diary's line: "14 May.
// Osier Bed. Orange-tip 3".
func (p *page) opensWithPlace(text string) bool {
	return p.eyes.probe.KnownPlace(text) || looksPlace(text) && capitals(text) == strings.Count(text, " ")+1 && strings.Count(text, " ") <= 4
}

// diaryDraft makes the draft of one species of a line.
func (w *walker) diaryDraft(r *notebook.Row, b *block, s *listState, it item, place string, rest []string, ref notebook.Ref) *Draft {
	d := w.newDraft(r)
	d.Values = append(d.Values, s.dateLast)
	w.addItem(d, it, joinCells(r), ref)
	if len(rest) > 0 && !(it.name == "" && isNothing(strings.Join(rest, " "))) {
		d.Values = append(d.Values, Value{Meaning: Remarks, Text: strings.Join(rest, "; "), Verbatim: joinCells(r), Kind: notebook.Text, Ref: ref, From: FromCell})
	}
	mask := s.bit(Date)
	if place != "" {
		d.Values = append(d.Values, Value{Meaning: Site, Text: place, Verbatim: joinCells(r), Kind: notebook.Text, Ref: ref, From: FromCell})
		mask |= s.bit(Site) | s.bit(GridRef) // the page's square is the page's place's
	}
	w.addFacts(b, s, d, mask)
	return d
}

// askSentence asks about a species of a sentence that was not understood in
// full.
func askSentence(d *Draft, said string) {
	if v, ok := d.Get(Taxon); ok {
		v.Doubt = v.Doubt.And(reading.QueryOf("read-from-sentence", "“"+said+"” holds several records in one cell, and not all of it was understood. It was taken apart; please check that nothing is missed."))
	}
}

// noteSentences says once for the page that its sentences were taken apart.
func (w *walker) noteSentences(s *listState, ref notebook.Ref) {
	if s.sentences {
		return
	}
	s.sentences = true
	w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf("sentences-taken-apart",
		"Cells of this page hold several records each, as names with their numbers. They were taken apart at the commas. Please look over a few of them."), Ref: ref, Text: "(sentences)"})
}

// addItem adds the name and count of one species of a sentence.
func (w *walker) addItem(d *Draft, it item, said string, ref notebook.Ref) {
	if it.name == "" {
		return
	}
	d.Values = append(d.Values, Value{Meaning: Taxon, Text: it.name, Verbatim: said, Kind: notebook.Text, Ref: ref, From: FromCell})
	if it.count != "" {
		d.Values = append(d.Values, Value{Meaning: Count, Text: it.count, Verbatim: said, Kind: notebook.Text, Ref: ref, From: FromCell})
	}
}

// findItems finds a column whose cells name several species each: the name
// column, or the remarks of a list that has none.
func (b *block) findItems(p *Plan) {
	if b.kind != kindList {
		return
	}
	named := b.named()
	for i := range b.cols {
		c := &b.cols[i]
		if c.master != i || c.stats.n == 0 || c.left != "" && c.left != leaveNotUnderstood {
			continue
		}
		if named && c.meaning != Taxon || !named && c.meaning != Remarks && c.left != leaveNotUnderstood {
			continue
		}
		cells, several, items := 0, 0, 0
		for t, n := range c.stats.distinct {
			cells += n
			its, _ := p.page.eyes.itemsIn(t)
			counted := 0
			for _, it := range its {
				if it.count != "" {
					counted++
				}
			}
			if counted >= 2 || len(its) >= 2 && !named {
				several += n
			}
			if len(its) > 0 {
				items += n
			}
		}
		if several*4 >= cells && items*2 >= cells && several > 0 {
			c.sense, c.left, c.split = sense{meaning: Taxon}, "", splitItems
			c.why = "its cells name several species each"
			return
		}
	}
}

// takeApart makes a draft of each species of the cell that holds several.
func (w *walker) takeApart(r *notebook.Row, b *block, s *listState) {
	w.base.Row, w.base.Values, w.base.Empty = r.Number, w.base.Values[:0], false
	w.fill(r, b, s, &w.base)
	at := -1
	for i := range w.base.Values {
		if v := &w.base.Values[i]; v.Meaning == Taxon && v.Ref.Col == s.itemsCol+1 {
			at = i
		}
	}
	if at < 0 {
		d := w.newDraft(r)
		d.Values = append(d.Values, w.base.Values...)
		return
	}
	cell := w.base.Values[at]
	items, rest := w.p.page.eyes.itemsIn(cell.Text)
	if len(items) == 0 {
		d := w.newDraft(r)
		d.Values = append(d.Values, w.base.Values...)
		return
	}
	others := append(append([]Value{}, w.base.Values[:at]...), w.base.Values[at+1:]...)
	clear := understood(items, rest)
	for _, it := range items {
		d := w.newDraft(r)
		d.Values = append(d.Values, others...)
		said := cell.Text
		if cell.Verbatim != "" {
			said = cell.Verbatim
		}
		if len(items) == 1 && len(rest) == 0 {
			d.Values = append(d.Values, Value{Meaning: Taxon, Text: it.name, Verbatim: said, Kind: notebook.Text, Heading: cell.Heading, Ref: cell.Ref, From: FromCell})
			if it.count != "" {
				d.Values = append(d.Values, Value{Meaning: Count, Text: it.count, Verbatim: said, Kind: notebook.Text, Heading: cell.Heading, Ref: cell.Ref, From: FromCell})
			}
			continue
		}
		w.addItem(d, it, said, cell.Ref)
		if clear {
			w.noteSentences(s, cell.Ref)
		} else {
			askSentence(d, said)
		}
		if len(rest) > 0 {
			d.Values = append(d.Values, Value{Meaning: Remarks, Text: strings.Join(rest, "; "), Verbatim: said, Kind: notebook.Text, Ref: cell.Ref, From: FromCell})
		}
	}
}
