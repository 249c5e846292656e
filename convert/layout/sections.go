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
