package validate_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSieveLetsNothingThrough: whatever has a finding, or is a repetition, is
// kept back by the sieve; most of what is sound is not. The records are looked
// at by several observers.
func TestSieveLetsNothingThrough(t *testing.T) {
	const n = 6000
	random := rand.New(rand.NewPCG(3, 4))
	record := records(n, n/8)
	entries := make([]validate.Entry, n)
	for i := range entries {
		e := record(i)
		e.Sheet, e.Locality = i*3/n, fmt.Sprintf("Site %d", i/8%20)
		switch random.IntN(60) {
		case 0:
			e.Content = entries[max(i-1, 0)].Content
		case 1:
			e.Facts.Count = 5000
		case 2:
			e.Facts.Latitude = 57
		case 3:
			e.Visit = true
		case 4:
			e.ScientificName = "Noctua pronuba"
		case 5:
			e.RecordedBy = "Recorder 1 | Recorder 2"
		case 6:
			e.Locality, e.Facts.Reference = "", ""
		}
		if e.Sheet == 1 && random.IntN(50) > 0 {
			e.IdentifiedBy = "Tom Achterberg"
		}
		if i >= 3000 && i < 3060 {
			e.Facts.Count = 17
		}
		if i == 1234 {
			e.ScientificName += "x"
		}
		entries[i] = e
	}
	set := validate.NewSet()
	past, facts := good()
	past.Locality, past.VerbatimCoordinates, facts.Reference, facts.Placed = "Site 7", "", "", false
	for range 20 {
		set.Past(&past, &facts, true)
	}
	observers := []*validate.Observer{set.Observer(), set.Observer(), set.Observer()}
	var glance validate.Glance
	for i := range entries {
		observers[i/7%3].Look(&entries[i], &glance)
		set.Take(i, &glance)
	}
	require.NoError(t, set.Settle())
	sieve := set.Sieve()
	fired, through := map[string]int{}, 0
	for i := range entries {
		e := &entries[i]
		concerns := sieve.Concerns(e)
		if !concerns {
			through++
		}
		if set.Ordinal(&e.Content) > 1 {
			assert.True(t, concerns, "the repetition %d", i)
		}
		for _, f := range set.Findings(e, func(sheet, row int) string { return "" }) {
			fired[f.Code]++
			assert.True(t, concerns, "%s of %d", f.Code, i)
		}
	}
	assert.Greater(t, through, n/3)
	for _, code := range []string{"near-duplicate", "two-places-at-once", "count-above-history", "first-for-site", "name-once", "counts-repeat", "determiner-missing", "trap-nights"} {
		assert.NotZero(t, fired[code], code)
	}
}
