package taxa

import (
	"testing"

	"fieldfare/convert/reading"

	"github.com/stretchr/testify/assert"
)

// without is the starter list less every taxon whose place leaves a remainder
// of n.
func without(l *List, n, of int) (kept *List, left []int) {
	kept = &List{Name: "part"}
	place := map[int32]int32{}
	for i := range l.taxa {
		if i%of == n && l.taxa[i].Rank == RankSpecies {
			left = append(left, i)
			continue
		}
		place[int32(i)] = int32(len(kept.taxa))
		t := l.taxa[i]
		t.parent = none
		kept.taxa = append(kept.taxa, t)
	}
	for _, name := range l.names {
		if at, there := place[name.taxon]; there {
			name.taxon = at
			kept.names = append(kept.names, name)
		}
	}
	return kept, left
}

// Names of real species that are taken from the list are not read as another
// species, even where nothing else is known of them: the built-in neighbours
// are left out.
func TestNamesTakenFromTheListAreNotCorrected(t *testing.T) {
	full := Starter()
	asked := 0
	for fold := range 8 {
		part, left := without(full, fold, 8)
		ix := NewIndex(part)
		ix.known = &lexicon{}
		m := ix.NewMatcher()
		gone := map[int32]bool{}
		for _, i := range left {
			gone[int32(i)] = true
		}
		for _, name := range full.names {
			if !gone[name.taxon] {
				continue
			}
			asked++
			r := m.Match(Written{Name: name.text}, Context{})
			if r.State < reading.Held && r.Taxon.IsSpeciesOrBelow() {
				assert.Fail(t, "corrected", "%q, unlisted, was read %s as %s: %s", name.text, r.State, r.Taxon, r.Message)
			}
		}
	}
	assert.Greater(t, asked, 1000)
}
