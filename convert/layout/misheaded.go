package layout

import (
	"strings"

	"fieldfare/convert/notebook"
)

// misheadedNames settles a page on which a column headed as names holds
// people and another, headed as notes or not understood, the species.
func (b *block) misheadedNames() {
	people := b.find(Taxon, whole)
	if people == nil || people.fixed || people.stats.share(lookTaxon) > 0 || !people.stats.people() {
		return
	}
	for i := range b.cols {
		c := &b.cols[i]
		if c == people || c.fixed || c.left != leaveNotUnderstood && !(c.used() && c.meaning == Remarks) {
			continue
		}
		if c.stats.n < 2 || c.stats.share(lookTaxon) < 0.5 || c.stats.share(lookLong) > 0 {
			continue
		}
		c.sense, c.left, c.why = sense{meaning: Taxon}, "", "its cells are written like names of animals or plants"
		people.sense, people.why = sense{meaning: Recorder}, "its cells are written like people's names"
		if b.find(Recorder, whole) != people {
			people.sense = sense{meaning: Remarks}
		}
		c.weight, people.weight = accepted, accepted
		b.note("names-and-people", "Column "+notebook.ColumnName(c.col+1)+", headed “"+c.heading+"”, is taken for the names of species, and column "+
			notebook.ColumnName(people.col+1)+", headed “"+people.heading+"”, for people. Please check it.", c.col)
		return
	}
}

// people reports whether the cells are written like people's full names, some
// of them several times: "Ines Calloway".
func (s *stats) people() bool {
	for t := range s.distinct {
		words := strings.Fields(t)
		if len(words) < 2 || len(words) > 6 || capitals(t) < 2 || strings.ContainsAny(t, "0123456789()") || looksPlace(t) {
			return false
		}
	}
	return s.n > len(s.distinct)
}
