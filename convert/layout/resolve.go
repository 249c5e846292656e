package layout

import (
	"fmt"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// resolve settles what single columns cannot: which columns are parts of one
// value, which of two of the same meaning counts, which text column is left
// for the names.
func (b *block) resolve() {
	b.slashedCounts()
	b.dayMonthYear()
	b.unnamedDays()
	b.minAndMax()
	b.joinDates()
	b.joinGrid()
	b.joinNames()
	b.nameByElimination()
	b.misheadedNames()
	b.settleNames()
	b.bareRemarks()
	b.weekdayCounts()
	b.bareSexes()
	b.trapCounts()
	b.unnamedCounts()
	b.settleCounts()
	b.sectionsOfSite()
	b.settleSeconds()
	b.findSplits()
	b.holdSummaries()
	b.noteFractions()
	for i := range b.cols {
		c := &b.cols[i]
		if c.left == leaveNotUnderstood && c.stats.n > 0 && !c.fixed {
			b.notUnderstood(c)
		}
		if b.axis == nil && c.used() && c.meaning == Count && c.master == i && !c.trap && !c.fixed && c.heading != "" && len(headingSenses(c.heading, b.terms)) == 0 {
			b.note("count-by-content", "The column headed “"+c.heading+"” is taken for the count, since its cells are numbers. Please check that it is one; if not, say in the project file what column "+notebook.ColumnName(c.col+1)+" holds.", c.col)
		}
		if c.used() && c.heading != "" && c.weight < weightContained && c.master == i {
			if ms := headingSenses(c.heading, b.terms); len(ms) > 0 && ms[0].meaning != c.meaning && c.meaning != Ignored && ms[0].weight >= weightExact-5 && !related(ms, c.meaning) {
				b.note("heading-misleads", fmt.Sprintf("The column headed “%s” is taken for %s: %s. If that is wrong, say in the project file what column %s holds.",
					c.heading, withArticle(c.meaning), c.why, notebook.ColumnName(c.col+1)), c.col)
			}
		}
	}
}

func related(ms []match, m Meaning) bool {
	for _, x := range ms {
		if x.meaning == m {
			return true
		}
	}
	return false
}

func withArticle(m Meaning) string {
	s := m.String()
	if m == Remarks || m == Weather {
		return s
	}
	switch s[0] {
	case 'a', 'e', 'i', 'o':
		return "an " + s
	}
	return "a " + s
}

// String returns the meaning's plain words.
func (m Meaning) String() string { return string(m) }

func (b *block) note(code, message string, col int) {
	row := b.first
	if len(b.headRows) > 0 {
		row = b.headRows[len(b.headRows)-1]
	}
	heading := ""
	for i := range b.cols {
		if b.cols[i].col == col {
			heading = b.cols[i].heading
		}
	}
	b.notes = append(b.notes, Note{Verdict: reading.QueryOf(code, message), Ref: notebook.Ref{Col: col + 1, Row: row}, Text: heading})
}

// find returns the used column of a meaning and part, nil where there is none.
func (b *block) find(m Meaning, pt part) *column {
	for i := range b.cols {
		if c := &b.cols[i]; c.meaning == m && c.part == pt && c.used() && c.master == i {
			return c
		}
	}
	return nil
}

func (b *block) index(c *column) int {
	for i := range b.cols {
		if &b.cols[i] == c {
			return i
		}
	}
	return -1
}

// join puts columns, in the given order, into one value of the first.
func (b *block) join(cols ...*column) {
	m := b.index(cols[0])
	for _, c := range cols {
		c.master = m
		b.cols[m].joined = append(b.cols[m].joined, b.index(c))
	}
}

func (b *block) leave(c *column, why string) {
	c.left = why
}

func (b *block) joinDates() {
	day, month, year := b.find(Date, partDay), b.find(Date, partMonth), b.find(Date, partYear)
	date := b.find(Date, whole)
	if date != nil && date.stats.upTo(31) >= 0.8 && date.stats.n > 0 && day == nil {
		date.part = partDay // "Date" over the days of a month
		day, date = date, nil
	}
	switch {
	case date != nil:
		short := date.stats.shares(lookDay, lookPair) > 0.5 && date.stats.share(lookDate) < 0.5
		if year != nil && short {
			b.join(date, year)
			year = nil
		}
		for _, c := range []*column{day, month, year} {
			if c != nil {
				b.leave(c, "the date says it")
			}
		}
	case day != nil && month != nil && year != nil:
		b.join(day, month, year)
	case day != nil && month != nil:
		b.join(day, month)
	case month != nil && year != nil:
		b.join(month, year)
		if day != nil {
			b.leave(day, leaveNotUnderstood)
		}
	}
}

func (b *block) joinGrid() {
	east, north := b.find(GridRef, partEasting), b.find(GridRef, partNorthing)
	letters, figures := b.find(GridRef, partLetters), b.find(GridRef, partFigures)
	grid := b.find(GridRef, whole)
	if east != nil && north == nil {
		north = b.another(GridRef, partNorthing)
	} else if north != nil && east == nil {
		east = b.another(GridRef, partEasting)
	}
	if (east == nil) != (north == nil) {
		for _, c := range []*column{east, north} {
			if c != nil {
				b.leave(c, leaveNotUnderstood)
			}
		}
		east, north = nil, nil
	}
	if square, figures := b.squareAndFigures(); square != nil {
		b.join(square, figures)
		grid = square
	}
	full := grid != nil && grid.stats.share(lookGrid) >= 0.5
	switch {
	case full:
		for _, c := range []*column{east, north, letters, figures} {
			if c != nil {
				b.leave(c, "the grid reference says it")
			}
		}
	case letters != nil && east != nil:
		b.join(letters, east, north)
		if figures != nil {
			b.leave(figures, "the easting and northing say it")
		}
	case letters != nil && figures != nil:
		b.join(letters, figures)
	case letters != nil && grid != nil:
		b.join(letters, grid)
	case grid != nil && figures != nil && grid.stats.share(lookLetters) >= 0.5:
		b.join(grid, figures)
	case grid != nil && east != nil && grid.stats.share(lookLetters) >= 0.5:
		b.join(grid, east, north)
	case east != nil:
		b.join(east, north)
	case letters != nil && b.joinRef(letters):
	case grid != nil && grid.stats.share(lookLetters) >= 0.8 && b.joinRef(grid):
	case letters != nil:
		letters.part = whole
	case figures != nil:
		figures.part = whole
	}
}

// joinRef joins the letters of a square to a column of figures headed “Ref”.
func (b *block) joinRef(letters *column) bool {
	f := b.another(GridRef, whole)
	if f == nil || f.stats.refFigures() < 0.8 {
		return false
	}
	b.join(letters, f)
	return true
}

// another finds a column that was taken for something else though its heading
// may mean the part wanted, and gives it that meaning: "N" beside "E".
func (b *block) another(m Meaning, pt part) *column {
	for i := range b.cols {
		c := &b.cols[i]
		if c.master != i || c.fixed {
			continue
		}
		for _, x := range headingSenses(c.heading, b.terms) {
			if x.meaning == m && x.part == pt && x.weight >= weightExact-4*stepDown && agree(x.sense, &c.stats) > 0 {
				c.sense, c.left, c.why, c.weight = x.sense, "", x.why, x.weight
				return c
			}
		}
	}
	return nil
}

func (b *block) joinNames() {
	genus := b.find(Taxon, partGenus)
	epithet := b.find(Taxon, partEpithet)
	sub := b.find(Taxon, partSubspecies)
	name := b.find(Taxon, whole)
	if genus != nil && epithet == nil && name != nil && name.stats.epithets() >= 0.6 {
		epithet, name = name, nil
		epithet.part = partEpithet
	}
	if genus != nil && epithet == nil {
		if s := b.find(Scientific, whole); s != nil && s.stats.epithets() >= 0.6 {
			epithet = s
			epithet.meaning, epithet.part = Taxon, partEpithet
		}
	}
	switch {
	case genus != nil && epithet != nil:
		if name != nil || b.find(Scientific, whole) != nil {
			b.leave(genus, "the name says it")
			b.leave(epithet, "the name says it")
			if sub != nil {
				b.leave(sub, leaveNotUnderstood)
			}
			return
		}
		genus.meaning, epithet.meaning = Taxon, Taxon
		if sub != nil {
			b.join(genus, epithet, sub)
		} else {
			b.join(genus, epithet)
		}
	case genus != nil && name != nil:
		b.leave(genus, "the name says it")
	case genus != nil:
		genus.part = whole
	case epithet != nil && name == nil:
		epithet.part = whole
	}
	if sub != nil && sub.master == b.index(sub) && genus == nil {
		if base := b.find(Taxon, whole); base != nil && base.stats.share(lookBinomial) >= 0.5 {
			b.join(base, sub)
		} else {
			sub.meaning, sub.part = Remarks, whole
		}
	}
}

// epithets is the part of the cells that are one small-lettered word.
func (s *stats) epithets() float64 {
	return s.shareWhere(func(t string) bool { return t[0] >= 'a' && t[0] <= 'z' })
}

// nameByElimination finds the names where no column was recognised: the only
// unrecognised column of varied words.
func (b *block) nameByElimination() {
	if b.named() || b.axis != nil && b.axis.species {
		return
	}
	var best *column
	if b.from == b.to && len(b.cols) == 1 && b.cols[0].left == leaveNotUnderstood {
		b.nameLines()
		return
	}
	for i := range b.cols {
		c := &b.cols[i]
		if c.left != leaveNotUnderstood || c.stats.n == 0 || c.stats.share(lookWords) < 0.6 || c.stats.share(lookLong) > 0.4 {
			continue
		}
		if best == nil || len(c.stats.distinct) > len(best.stats.distinct) {
			best = c
		}
	}
	if best == nil || b.axis == nil && b.find(Count, whole) == nil && b.find(Date, whole) == nil {
		return
	}
	best.sense, best.left = sense{meaning: Taxon}, ""
	best.why = "the column left over beside the others"
	best.weight = accepted
	b.note("names-guessed", "No column is headed as names. Column "+notebook.ColumnName(best.col+1)+" was taken for them. Please check it.", best.col)
}

// bareRemarks keeps what stands behind the names without a heading: words are
// remarks, where no column is headed so.
func (b *block) bareRemarks() {
	if b.find(Remarks, whole) != nil || !b.named() {
		return
	}
	after := false
	for i := range b.cols {
		c := &b.cols[i]
		if c.used() && isName(c.meaning) {
			after = true
		}
		if after && c.left == leaveNotUnderstood && c.heading == "" && c.stats.share(lookWords) >= 0.6 && !c.fixed {
			c.sense, c.left, c.why = sense{meaning: Remarks}, "", "words behind the names, without a heading"
			b.note("column-without-heading", "Column "+notebook.ColumnName(c.col+1)+" has no heading. Its words are kept as remarks. Please check that they are.", c.col)
			return
		}
	}
}

// nameLines takes the only column of a page for names where lines read like
// names with counts.
func (b *block) nameLines() {
	c := &b.cols[0]
	fit := 0
	for t, n := range c.stats.distinct {
		if splits(t) {
			fit += n
		}
	}
	if fit >= 2 && fit*3 >= c.stats.n {
		c.sense, c.left, c.why, c.weight = sense{meaning: Taxon}, "", "its lines are names with counts", accepted
	}
}

// named reports whether some column holds names or checklist numbers.
func (b *block) named() bool {
	for _, m := range []Meaning{Taxon, Scientific, Vernacular} {
		for _, pt := range []part{whole, partGenus, partEpithet} {
			if b.find(m, pt) != nil {
				return true
			}
		}
	}
	return false
}

// settleNames makes one name column a Taxon, and two a Scientific and a
// Vernacular.
func (b *block) settleNames() {
	var names []*column
	for i := range b.cols {
		if c := &b.cols[i]; c.used() && c.master == i && (c.meaning == Taxon || c.meaning == Scientific || c.meaning == Vernacular) {
			names = append(names, c)
		}
	}
	switch len(names) {
	case 0:
		if n := b.find(TaxonNumber, whole); n != nil {
			return // numbers alone name the taxa
		}
	case 1:
		names[0].meaning = Taxon
	default:
		for i, c := range names {
			if c.meaning != Taxon || c.stats.n == 0 {
				continue
			}
			other := names[(i+1)%len(names)]
			switch bin := c.stats.share(lookBinomial); {
			case other.meaning == Vernacular && bin >= 0.4:
				c.meaning = Scientific
			case other.meaning == Scientific && bin < 0.4:
				c.meaning = Vernacular
			case other.meaning == Taxon && bin >= 0.5 && other.stats.share(lookBinomial) < 0.4:
				c.meaning, other.meaning = Scientific, Vernacular
			case other.meaning == Taxon && bin < 0.4 && other.stats.share(lookBinomial) >= 0.5:
				c.meaning, other.meaning = Vernacular, Scientific
			case other.meaning == Vernacular && other.stats.share(lookBinomial) < 0.4 && bin < 0.4 && i == 0:
				c.meaning = Scientific
			}
		}
	}
}

// bareSexes keeps males and females without a heading, beside the counts they
// make up, as remarks.
func (b *block) bareSexes() {
	if !b.named() {
		return
	}
	for i := range b.cols {
		c := &b.cols[i]
		if c.left == leaveNotUnderstood && c.heading == "" && !c.fixed && c.stats.n > 0 && c.stats.sexes() {
			c.sense, c.left, c.why = sense{meaning: Remarks}, "", "counts in words beside the counts, without a heading"
			b.note("column-without-heading", "Column "+notebook.ColumnName(c.col+1)+" has no heading. Its words are kept as remarks. Please check that they are.", c.col)
		}
	}
}

// sexes reports whether all cells are counts of males and females: "2m 3f".
func (s *stats) sexes() bool {
	for t := range s.distinct {
		if !isCount(t) || isTick(t) || !strings.ContainsAny(t, "0123456789") || !strings.ContainsAny(t, "mf♂♀") || daysIn(t) > 0 {
			return false
		}
	}
	return s.n > 0
}
