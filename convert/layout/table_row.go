package layout

import (
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

const leaveNotSeen = "not seen"

func queryEmptyNight(date string) reading.Verdict {
	return reading.QueryOf("empty-night", fmt.Sprintf("Nothing stands under “%s”. It is taken for a night on which nothing was caught. If the trap was not run, leave the date out.", date))
}

// tableRow reads one row of a table: a draft for each count on it.
func (w *walker) tableRow(r *notebook.Row, b *block, s *listState) {
	k := w.p.page.view(r)
	for _, sp := range b.skip {
		if r.Number >= sp.from && (sp.to == 0 || r.Number <= sp.to) {
			w.skip(skipProject)
			return
		}
	}
	counts, nils := 0, 0
	for i := range b.axis.cols {
		ac := &b.axis.cols[i]
		if l := k.look(ac.col); l != 0 && ac.left == "" {
			if l.is(lookNil) {
				nils++
			} else {
				counts++
			}
		}
	}
	single := k.single()
	kind := w.sumOf(b, s, &k, s.nameOf(&k))
	switch {
	case w.p.repeats(b, &k):
		w.skip(skipHeadings)
		w.out.Used = w.cells
		clear(w.left)
	case kind == sumTotal, k.looks[k.first].is(lookTotal) && !w.tableTaxon(b, s, &k):
		w.skip(skipTotal)
		s.endSums()
	case counts == 0 && nils == 0:
		w.countless(r, b, s, &k, single)
	default:
		w.counts(r, b, s, &k)
	}
	if kind == sumAsked {
		for i := range w.out.Drafts {
			askSum(&w.out.Drafts[i])
		}
	}
}

// tableTaxon: the row's name is known as one, whatever it begins with.
func (w *walker) tableTaxon(b *block, s *listState, k *keptRow) bool {
	return b.known(k, s.nameAt)
}

// countless decides what a row of a table without counts is: a line for the
// rows below, a note, a species not seen, a night with nothing.
func (w *walker) countless(r *notebook.Row, b *block, s *listState, k *keptRow, single int) {
	behind := b.lastData > 0 && r.Number > b.lastData
	if b.axis.species {
		if k.saysNotRun() {
			w.skip(skipNoVisit)
			return
		}
		if single >= 0 {
			w.lineInTable(r, s, k, single, behind)
			return
		}
		w.base.Row, w.base.Values = r.Number, w.base.Values[:0]
		w.fill(r, b, s, &w.base)
		w.axisCells(r, b, s)
		d := w.newDraft(r)
		d.Values = append(d.Values, w.base.Values...)
		d.Empty, d.Night = true, true
		if v, ok := d.Get(Date); ok && !s.saysNothing(k) && !w.zeroTotal(b, k) {
			v.Doubt = v.Doubt.And(queryEmptyNight(v.Text))
		}
		return
	}
	if single >= 0 {
		l := k.look(single)
		inName := false
		for _, c := range s.nameAt {
			inName = inName || c == single
		}
		if !inName || behind || len(labelsIn(k.text(single))) > 0 || l.is(lookGroup|lookMarked|lookLong|lookMonth|lookDate|lookDay|lookGrid) || l.is(lookPlace) && !l.is(lookTaxon) {
			w.lineInTable(r, s, k, single, behind)
			return
		}
	}
	if k.first >= 0 && k.looks[k.first].is(lookMarked) {
		w.sectionLine(r, k, s)
		return
	}
	w.skip(leaveNotSeen)
}

// zeroTotal: a total of nothing on the row.
func (w *walker) zeroTotal(b *block, k *keptRow) bool {
	for i := range b.axis.cols {
		if ac := &b.axis.cols[i]; ac.left != "" && k.look(ac.col).is(lookNil) {
			return true
		}
	}
	for i := range b.cols {
		if c := &b.cols[i]; c.left == leaveTotal && k.look(c.col).is(lookNil) {
			return true
		}
	}
	return false
}

// lineInTable reads a lone text among a table's rows.
func (w *walker) lineInTable(r *notebook.Row, s *listState, k *keptRow, c int, behind bool) {
	l := k.look(c)
	if l.is(lookLong) || behind && !l.is(lookGroup) {
		w.skip(skipNote)
		return
	}
	w.sectionLine(r, k, s)
}

// counts makes the drafts of a row.
func (w *walker) counts(r *notebook.Row, b *block, s *listState, k *keptRow) {
	if !b.axis.species && len(s.nameAt) > 0 && s.nameOf(k) == "" {
		if k.first >= b.axis.cols[0].col && w.sumsUp(b, s, k) { // figures without a name
			w.skip(skipTotal)
			s.endSums()
			return
		}
	}
	if b.axis.species && b.bare(k) && w.sumsUp(b, s, k) {
		w.skip(skipTotal)
		s.endSums()
		return
	}
	w.base.Row, w.base.Values = r.Number, w.base.Values[:0]
	w.fill(r, b, s, &w.base)
	w.axisCells(r, b, s)
	if len(w.out.Drafts) > 0 {
		if b.axis.species && b.bare(k) {
			for i := range w.out.Drafts {
				askUnlabelled(&w.out.Drafts[i], r.Number)
			}
		}
		return
	}
	if b.axis.species { // zeros all along: a night with nothing
		d := w.newDraft(r)
		d.Values = append(d.Values, w.base.Values...)
		d.Empty, d.Night = true, true
		return
	}
	w.skip(leaveNotSeen)
}

// axisCells makes a draft for each cell with a count; columns of one group
// share one.
func (w *walker) axisCells(r *notebook.Row, b *block, s *listState) {
	drafts := w.groupDraft[:0]
	for range b.axis.cols {
		drafts = append(drafts, -1)
	}
	w.groupDraft = drafts
	for i := range b.axis.cols {
		ac := &b.axis.cols[i]
		if ac.col >= len(r.Cells) || !HasText(&r.Cells[ac.col]) {
			continue
		}
		cell := &r.Cells[ac.col]
		text, doubt := tidy(trim(cell.Text))
		switch {
		case ac.left != "":
			w.left[ac.left]++
			continue
		case cell.Struck:
			w.left[skipStruck]++
			continue
		case (ac.role == Count || ac.role == Date) && isNotSeen(text) && (!w.p.opts.ZeroIsAbsence || ac.role == Date):
			w.left[leaveNotSeen]++
			continue
		}
		w.out.Used++
		if ac.role == Count {
			s.axisSums[i].add(text)
		}
		at := drafts[ac.group]
		if at < 0 {
			d := w.newDraft(r)
			d.Night = (b.axis.nights(ac) || b.axis.species) && !b.transposed || b.axis.overnight
			d.Values = append(d.Values, w.base.Values...)
			d.Values = append(d.Values, ac.values...)
			if s.yearCol >= 0 {
				d.ofRowYear(s.yearCol)
			}
			at = len(w.out.Drafts) - 1
			drafts[ac.group] = at
		}
		d := &w.out.Drafts[at]
		v := Value{Meaning: ac.role, Text: text, Raw: cell.Raw, Kind: cell.Kind, Heading: ac.heading, Sex: ac.sex, Stage: ac.stage,
			Ref: cellRef(ac.col, r.Number), From: FromCell, Doubt: doubt}
		if said := trim(cell.Text); said != text {
			v.Verbatim = said
		}
		if ac.role == Date {
			ac.underYear(&v)
		}
		if w.p.page.hiddenColumns[ac.col] {
			v.Doubt = v.Doubt.And(reading.QueryOf("hidden-column", "This column is hidden in the workbook. It was read like the others."))
		}
		if text == "?" && ac.role == Count && b.axis.allTicks() {
			v.Doubt = v.Doubt.And(reading.HeldOf("seen-or-not", "A question mark stands among ticks and does not say whether the species was seen. Please put a tick or leave the cell blank."))
		}
		if isDitto(text) && ac.role == Count {
			v.Doubt = v.Doubt.And(reading.HeldOf("ditto-not-read", "“"+text+"” stands below a count. A mark that repeats what is above is not read for counts. Please write it out."))
		}
		if b.cover && ac.role == Count {
			v.asCover()
		}
		d.Values = append(d.Values, v)
		if ac.role == Count && w.p.opts.ZeroIsAbsence && isNotSeen(text) {
			d.Values[len(d.Values)-1].Text = "0"
			if text != "0" {
				d.Values[len(d.Values)-1].Verbatim = text
			}
		}
		if ac.role != Count || v.Meaning == Measurement {
			continue
		}
		w.damage(&w.countPlan, &d.Values[len(d.Values)-1], cell)
		if cell.Comment != "" {
			w.comment(d, cell, ac.col, r.Number)
		}
	}
}

// allTicks reports whether nothing but ticks and question marks stands in the
// columns of counts.
func (a *axis) allTicks() bool {
	ticks := 0
	for i := range a.cols {
		if a.cols[i].left == "" && a.cols[i].ticks < a.cols[i].filled {
			return false
		}
		ticks += a.cols[i].ticks
	}
	return ticks > 0
}

// nights reports whether the column is one night: its heading is a day.
func (a *axis) nights(ac *axisColumn) bool {
	v := ac.get(Date)
	return v != nil && (v.Kind == notebook.Date || scanDate(v.Text) >= dayMonth)
}
