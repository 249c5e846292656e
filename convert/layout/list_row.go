package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// listRow reads one row of a list.
func (w *walker) listRow(r *notebook.Row, b *block, s *listState) {
	if !b.dayLines && w.plainRow(r, s) {
		w.record(r, b, s)
		return
	}
	w.oddRow(r, b, s)
}

// plainRow tells a record from everything else without looking closely: its
// name column has text, other cells too, and nothing about it is a total, a
// heading or a mark for nothing.
func (w *walker) plainRow(r *notebook.Row, s *listState) bool {
	if w.cells < 2 || s.nameCol < 0 || len(s.b.skip) > 0 {
		return false
	}
	if len(s.b.sums) > 0 && s.b.sums[r.Number] != sumNone {
		return false
	}
	named := false
	for _, c := range s.nameAt {
		if c < len(r.Cells) && r.Cells[c].Text != "" {
			t := trim(r.Cells[c].Text)
			if len(t) < 3 || t == s.headTxt || strings.IndexByte(t, ':') > 0 || maybeSpecial(t) || r.Cells[c].Struck || r.Cells[c].Spread {
				return false
			}
			named = true
		}
	}
	if !named {
		return false
	}
	for i := range r.Cells {
		c := &r.Cells[i]
		if c.Text == "" {
			continue
		}
		// The first cell with text tells totals and labels.
		if c.Kind == notebook.Text && (maybeSpecial(c.Text) || c.Text[len(c.Text)-1] == ':') {
			return false
		}
		return true
	}
	return false
}

// maybeSpecial sieves texts that may be a total, or a word for nothing.
func maybeSpecial(t string) bool {
	if len(t) < 3 {
		return false
	}
	switch [3]byte{t[0] | 0x20, t[1] | 0x20, t[2] | 0x20} {
	case [3]byte{'t', 'o', 't'}, [3]byte{'s', 'u', 'm'}, [3]byte{'s', 'u', 'b'}, [3]byte{'g', 'r', 'a'}, [3]byte{'n', 'o', ' '},
		[3]byte{'n', 'o', '.' | 0x20}, [3]byte{'n', 'u', 'm'}, [3]byte{'c', 'u', 'm'}, [3]byte{'r', 'u', 'n'}, [3]byte{'m', 'e', 'a'},
		[3]byte{'a', 'v', 'e'}, [3]byte{'o', 'v', 'e'}, [3]byte{'s', 'p', 'e'}, [3]byte{'a', 'l', 'l'}, [3]byte{'n', 'i', 'l'},
		[3]byte{'n', 'o', 'n'}, [3]byte{'n', 'o', 't'}, [3]byte{'n', 'e', 'w'}, [3]byte{'b', 'r', 'o'}, [3]byte{'c', 'a', 'r'},
		[3]byte{'z', 'e', 'r'}, [3]byte{'i', 'n', 'd'}, [3]byte{'p', 'a', 'g'}, [3]byte{'s', 'e', 'a'}, [3]byte{'y', 'e', 'a'}, [3]byte{'m', 'o', 'n'},
		[3]byte{'n', 'i', 'g'}, [3]byte{'b', 'l', 'a'}, [3]byte{'d', 'i', 't'}, [3]byte{'e', 'm', 'p'}, [3]byte{'m', 'a', 'x'}, [3]byte{'k', 'e', 'y'},
		[3]byte{'m', 'a', 'c'}, [3]byte{'m', 'i', 'c'}, [3]byte{'m', 'o', 't'}, [3]byte{'l', 'e', 'p'}, [3]byte{'b', 'u', 't'}, [3]byte{'h', 'e', 't'}, [3]byte{'i', 'n', 's'},
		[3]byte{'t', 'r', 'a'}, [3]byte{'d', 'i', 'd'}, [3]byte{'a', 'w', 'a'}:
		return true
	}
	return len(t) > 6 && (t[len(t)-5:] == "total" || t[len(t)-6:] == "totals" || t[len(t)-5:] == "Total" || t[len(t)-5:] == "TOTAL")
}

// record turns the row into one draft.
func (w *walker) record(r *notebook.Row, b *block, s *listState) {
	s.data, s.recorded = true, true
	if s.tickCol >= 0 && (s.tickCol >= len(r.Cells) || !HasText(&r.Cells[s.tickCol])) {
		w.skip(leaveNotSeen)
		return
	}
	if s.itemsCol >= 0 {
		w.takeApart(r, b, s)
		return
	}
	if s.traps {
		w.perTrap(r, b, s)
		return
	}
	d := w.newDraft(r)
	w.fill(r, b, s, d)
}

// newDraft appends a draft to the outcome, reusing an old one's values.
func (w *walker) newDraft(r *notebook.Row) *Draft {
	n := len(w.out.Drafts)
	if n < cap(w.out.Drafts) {
		w.out.Drafts = w.out.Drafts[:n+1]
		w.out.Drafts[n] = Draft{Row: r.Number, Values: w.out.Drafts[n].Values[:0]}
	} else {
		w.out.Drafts = append(w.out.Drafts, Draft{Row: r.Number, Values: make([]Value, 0, 16)})
	}
	return &w.out.Drafts[n]
}

// fill puts the row's values into the draft.
func (w *walker) fill(r *notebook.Row, b *block, s *listState, d *Draft) {
	mask := s.axisMask
	for i := range s.plans {
		s.plans[i].seen, s.plans[i].explicit = false, false
	}
	s.visitOn, s.siteNew, s.whoNew, s.dateNew = false, false, false, false
	s.placeYear(r)
	for c := range r.Cells {
		cell := &r.Cells[c]
		if cell.Text == "" || !HasText(cell) {
			continue
		}
		if b.axis != nil && c < len(b.axis.byCol) && b.axis.byCol[c] >= 0 {
			continue
		}
		if c >= len(s.byCol) || s.byCol[c] < 0 {
			w.left[leaveNotUnderstood]++
			continue
		}
		i := s.byCol[c]
		pl := &s.plans[i]
		if cell.Comment != "" {
			w.comment(d, cell, c, r.Number)
			mask |= s.bits[Remarks]
		}
		switch {
		case pl.slave:
			continue // counted with its master
		case pl.left != "":
			w.left[pl.left]++
			continue
		case cell.Struck:
			w.left[skipStruck]++
			w.struckNote(pl, cell, c, r.Number)
			continue
		case len(pl.joined) > 0:
			continue
		}
		w.cell(r, s, d, pl, cell, c, &mask)
	}
	for i := range s.plans {
		if pl := &s.plans[i]; len(pl.joined) > 0 {
			w.joined(r, s, d, pl, &mask)
		}
	}
	w.carryDown(r, s, d, &mask)
	w.addFacts(b, s, d, mask)
}

// placeYear finds the year that stands in the row's place, behind its
// reference; a blank place repeats the one above.
func (s *listState) placeYear(r *notebook.Row) {
	if s.placeCol < 0 || s.placeCol >= len(r.Cells) {
		return
	}
	if t := trim(r.Cells[s.placeCol].Text); t != "" && !isDitto(t) {
		s.rowYear = 0
		if a, b := gridRefIn(t); a >= 0 {
			s.rowYear = yearIn(t[:a] + " " + t[b:])
		}
	}
}

// cell reads one plain cell.
func (w *walker) cell(r *notebook.Row, s *listState, d *Draft, pl *cellPlan, cell *notebook.Cell, c int, mask *uint64) {
	text := trim(cell.Text)
	if len(text) <= 12 && !isAlnum(text) && isDitto(text) || len(text) <= 6 && (text[0]|0x20 == 'd' || text[0]|0x20 == 's' || text[0]|0x20 == 'i') && cell.Kind == notebook.Text && isDitto(text) {
		w.ditto(r, s, d, pl, text, c, mask)
		return
	}
	d.Values = append(d.Values, pl.value)
	v := &d.Values[len(d.Values)-1]
	v.Text, v.Raw, v.Kind = text, cell.Raw, cell.Kind
	v.Ref = notebook.Ref{Col: c + 1, Row: r.Number}
	if !isASCII(text) {
		var doubt reading.Verdict
		if v.Text, doubt = tidy(text); v.Text != text {
			v.Verbatim = text
		}
		if doubt.State != reading.Fair {
			v.Doubt = v.Doubt.And(doubt)
		}
	}
	w.out.Used++
	*mask |= pl.bit
	pl.seen, pl.explicit = true, true
	switch {
	case pl.date:
		s.completeDate(v)
		s.dateNew = pl.differs(v)
	case pl.count:
		pl.sum.add(text)
	case pl.sections && len(text) <= 4:
		v.Text, v.Verbatim = pl.column.heading+" "+v.Text, text
	case pl.labelled:
		v.Text, v.Verbatim = pl.column.heading+": "+v.Text, text
	case pl.column.meaning == Site:
		s.siteNew = !pl.has || v.Text != pl.last.Text
	case pl.column.meaning == Recorder:
		s.whoNew = pl.differs(v)
	}
	if pl.damage != damageNone || cell.Kind == notebook.Error || text[0] == '#' {
		w.damage(pl, v, cell)
	}
	if len(s.b.marks) > 0 {
		if m, ok := s.b.marks[v.Ref]; ok {
			v.Doubt = v.Doubt.And(m)
		}
	}
	if pl.column.split != splitNone {
		w.split(s, d, pl, mask)
		v = &d.Values[len(d.Values)-1]
		if pl.column.split == splitSiteGrid {
			v = siteOf(d)
		}
	}
	if (pl.carry || pl.dittos || pl.ofBlock) && v != nil {
		pl.last, pl.has = *v, true
	}
}

// struckNote asks about one struck-through cell of a row that goes on.
func (w *walker) struckNote(pl *cellPlan, cell *notebook.Cell, c, row int) {
	text := trim(cell.Text)
	w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf("struck-cell",
		"“"+text+"” ("+string(pl.column.meaning)+") is struck through in cell "+cellRef(c, row).String()+" and is not used, but the rest of the row is. If the whole row is deleted, strike it all through."),
		Ref: cellRef(c, row), Text: text})
}

func siteOf(d *Draft) *Value {
	v, _ := d.Get(Site)
	return v
}

func isAlnum(s string) bool {
	for i := 0; i < len(s); i++ {
		if !isLetter(s[i]) && !isDigit(s[i]) {
			return false
		}
	}
	return true
}

// ditto reads a mark that repeats the cell above. It never repeats a name or
// a count.
func (w *walker) ditto(r *notebook.Row, s *listState, d *Draft, pl *cellPlan, text string, c int, mask *uint64) {
	w.out.Used++
	if pl.name || pl.count || !pl.has {
		v := pl.value
		v.Text, v.Kind, v.Ref = text, notebook.Text, notebook.Ref{Col: c + 1, Row: r.Number}
		what := "a " + string(pl.column.meaning)
		if pl.name || pl.count {
			v.Doubt = v.Doubt.And(reading.HeldOf("ditto-not-read", "“"+text+"” stands below "+what+". A mark that repeats what is above is not read for names or counts, as that is too easily meant otherwise. Please write it out."))
		} else {
			v.Doubt = v.Doubt.And(reading.HeldOf("ditto-of-nothing", "“"+text+"” repeats what is above, but nothing stands above it. Please write it out."))
		}
		d.Values = append(d.Values, v)
		*mask |= pl.bit
		pl.seen = true
		return
	}
	v := pl.last
	v.From = FromAbove
	d.Values = append(d.Values, v)
	*mask |= pl.bit
	pl.seen = true
	if pl.date {
		s.visitOn = true
	}
}

// addFacts adds what section lines, the table's headings and the page say,
// where the row has nothing of its own.
func (w *walker) addFacts(b *block, s *listState, d *Draft, mask uint64) {
	site := mask&s.siteBit != 0 || s.section.has(Site)
	for _, f := range [...]*facts{&s.section, &b.facts} {
		for i := range f.values {
			v := &f.values[i]
			bit := s.bits[v.Meaning]
			if bit != 0 && mask&bit != 0 || f == &b.facts && s.section.has(v.Meaning) {
				continue
			}
			if v.Meaning == Site && f == &b.facts && s.section.has(GridRef) && !s.section.has(Site) {
				continue // the section's reference is of another place
			}
			if f == &b.facts && s.section.has(Date) && ofFirstVisit(v, b) {
				continue
			}
			if v.Meaning == GridRef && site && f == &b.facts && (s.section.has(Site) || s.ownSiteDiffers(d, b)) {
				continue // the page's reference is of the page's site
			}
			d.Values = append(d.Values, *v)
			if v.Meaning == Date {
				s.completeDate(&d.Values[len(d.Values)-1])
			}
		}
	}
	if mask&s.dateBit == 0 && !hasValue(d, Date) {
		s.bareMonth(b, d)
	}
}

// ofFirstVisit: the fact stands on the line of the page's date, which a later
// line has replaced by its own.
func ofFirstVisit(v *Value, b *block) bool {
	if v.Meaning != Method && !ofVisit[v.Meaning] {
		return false
	}
	date := b.facts.get(Date)
	return date != nil && date.From == FromPage && date.Ref.Row == v.Ref.Row
}

// ownSiteDiffers: the row names a site, and it is neither the page's nor a
// numbered part of it.
func (s *listState) ownSiteDiffers(d *Draft, b *block) bool {
	own, ok := d.Get(Site)
	page := b.facts.get(Site)
	return ok && page != nil && own.Text != page.Text && !isSection(own.Text)
}

func hasValue(d *Draft, m Meaning) bool {
	_, ok := d.Get(m)
	return ok
}

// comment keeps a cell's comment as a remark.
func (w *walker) comment(d *Draft, cell *notebook.Cell, c, row int) {
	text, _ := tidy(trim(cell.Comment))
	if text == "" {
		return
	}
	v := Value{Meaning: Remarks, Text: text, Heading: "comment", Kind: notebook.Text, Ref: notebook.Ref{Col: c + 1, Row: row}, From: FromCell}
	if text != cell.Comment {
		v.Verbatim = cell.Comment
	}
	d.Values = append(d.Values, v)
}
