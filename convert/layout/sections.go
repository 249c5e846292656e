package layout

import (
	"strings"

	"fieldfare/convert/notebook"
)

// isSection reports whether a heading over counts numbers a part of the page's
// place: "S1", "Section 4", "Plot 2b", "C".
func isSection(text string) bool {
	low := strings.ToLower(trim(text))
	word := firstWord(low)
	rest := strings.Trim(low[len(word):], " .")
	switch word {
	case "section", "sect", "sec", "plot", "quadrat", "stop", "station", "stretch", "point", "compartment", "cpt":
		if rest == "" {
			return false
		}
	default:
		if len(word) != 1 {
			return false
		}
	}
	digits := strings.TrimRight(rest, "abcdefgh")
	return len(rest)-len(digits) <= 1 && len(digits) <= 2 && (digits == "" || allDigits(digits))
}

// sectionHeadings head a column of parts of a site.
var sectionHeadings = wordSet("section sections sect sec plot quadrat stop compartment cpt subsite stretch point")

// sectionHeading reports whether a column is headed as parts of a site:
// "Section", "Transect section", "Plot no".
func sectionHeading(heading string) bool {
	for w := range strings.FieldsSeq(normHeading(heading)) {
		if sectionHeadings[w] {
			return true
		}
	}
	return normHeading(heading) == "sub site"
}

// numbersOfParts reports whether the cells only number parts of a place, and
// name none: "1", "S2", "3b".
func (s *stats) numbersOfParts() bool {
	for t := range s.distinct {
		if n, ok := isInt(t); !(ok && n < 1000) && !(len(t) <= 4 && (isSection(t) || isSection("section "+t))) {
			return false
		}
	}
	return s.n > 0
}

// sectionsOfSite keeps a column of sections as remarks where the page or
// another column names the site that they are of, or where they are only
// numbered.
func (b *block) sectionsOfSite() {
	for i := range b.cols {
		c := &b.cols[i]
		if c.meaning != Site || !c.used() || c.fixed || !sectionHeading(c.heading) {
			continue
		}
		other := b.facts.has(Site) || c.stats.numbersOfParts()
		for j := range b.cols {
			other = other || j != i && b.cols[j].meaning == Site && b.cols[j].used()
		}
		if other {
			c.sense, c.why, c.weight = sense{meaning: Remarks}, "the heading “"+c.heading+"”: parts of the site", weightExact
		}
	}
}

// namesAreNotes keeps names beside a table whose species stand across as
// remarks: the headings over the counts name what was counted.
func (b *block) namesAreNotes() {
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.fixed || c.meaning != Taxon && c.meaning != Scientific && c.meaning != Vernacular {
			continue
		}
		c.sense, c.split, c.why = sense{meaning: Remarks}, splitNone, "the species stand across"
		b.note("names-beside-names", "Column "+notebook.ColumnName(c.col+1)+" holds names beside counts that stand under names. It is kept as remarks. Please check that it is.", c.col)
	}
}

// sectionsAcross tells a row of section numbers, S1 to S12, from references to
// squares of the Irish grid.
func (r *keptRow) sectionsAcross() {
	grid, last, run := false, 0, 0
	for c := range r.looks {
		l := r.looks[c]
		if l == 0 || len(r.cells[c].Text) > 4 {
			continue
		}
		text := r.text(c)
		if len(text) < 2 || text[0]|0x20 != 's' {
			continue
		}
		if n, ok := isInt(text[1:]); ok && n == last+1 {
			last, run = n, run+1
			grid = grid || l.is(lookGrid)
		}
	}
	if !grid || run < 3 {
		return
	}
	for c := range r.looks {
		if text := r.text(c); len(text) <= 3 && r.looks[c].is(lookGrid) && text[0]|0x20 == 's' {
			r.looks[c] = lookText
		}
	}
}
