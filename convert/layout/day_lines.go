package layout

import (
	"slices"

	"fieldfare/convert/reading"
)

// headsDay reports whether a row begins with a day and goes on with words:
// "10/11 April | cold, clear". No other date, count or name stands on it.
func (r *keptRow) headsDay() bool {
	if r.struck || r.n < 2 || r.n > 5 || r.single() >= 0 || !r.looks[r.first].is(lookDate|lookDay|lookRealDate) || r.looks[r.first].is(lookKnownTaxon) {
		return false
	}
	for c := r.first + 1; c < len(r.looks); c++ {
		l := r.looks[c]
		if l.is(lookDate|lookDay|lookRealDate|lookInt|lookCount|lookTick|lookNil|lookDitto|lookKnownTaxon|lookBinomial) || isNothing(r.text(c)) {
			return false
		}
	}
	return true
}

// dayLine reports whether the row at an index heads the names below it, which
// stand in its own column.
func (p *page) dayLine(i int) bool {
	r := &p.rows[i]
	if !r.headsDay() {
		return false
	}
	for j := i + 1; j < len(p.rows); j++ {
		next := &p.rows[j]
		if next.n == 0 || next.headsDay() && next.first == r.first {
			continue
		}
		l := next.look(r.first)
		return l.is(lookTaxon) && !l.is(lookDate|lookDay|lookRealDate)
	}
	return false
}

// bodyRows returns the kept rows of a block's body, without the lines that say
// of which day those below them are.
func (p *Plan) bodyRows(b *block) []keptRow {
	from, to := -1, 0
	for i := range p.page.rows {
		if !b.holds(p.page.rows[i].number) {
			continue
		}
		if from < 0 {
			from = i
		}
		to = i + 1
		b.dayLines = b.dayLines || b.kind == kindList && p.page.dayLine(i)
	}
	if from < 0 {
		return nil
	}
	rows := p.page.rows[from:to]
	if b.dayLines {
		rows = slices.DeleteFunc(slices.Clone(rows), func(r keptRow) bool { return r.headsDay() })
	}
	return rows
}

// heldFor keeps what stands beside the day of a line, and says nothing that is
// looked up, as what was noted of that night.
func (f *facts) heldFor(r *keptRow, c int, v Value) bool {
	if c <= r.first || !r.headsDay() {
		return false
	}
	v.Meaning, v.Text = Weather, r.text(c)
	f.values = append(f.values, v)
	return true
}

// SiteOfDay is the doubt about the place of a day that names none.
const SiteOfDay = "site-of-day"

// siteOfDay asks where days without a place of their own were, below one whose
// line named a place other than the page's: the page's is taken.
func (s *listState) siteOfDay(f *facts) {
	site, day, page := s.section.get(Site), s.section.get(Date), s.b.facts.get(Site)
	if f.has(Site) || f.has(GridRef) || site == nil || day == nil || page == nil || site.Ref.Row != day.Ref.Row || site.Text == page.Text {
		return
	}
	s.section.drop(GridRef)
	v := *page
	v.Doubt = v.Doubt.And(reading.QueryOf(SiteOfDay, "“"+site.Text+"” stands beside “"+day.Text+"”. The days below it that name no place were taken to be at “"+page.Text+
		"”, as the page says. If that is wrong, write the place beside each day."))
	s.section.set(v)
}
