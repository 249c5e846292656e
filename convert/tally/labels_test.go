package tally_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/tally"

	"github.com/stretchr/testify/assert"
)

// TestReadSex and TestReadStage: common practice, no source, but for the
// values, which are those of Darwin Core's examples where it has any.
func TestReadSex(t *testing.T) {
	for written, want := range map[string]string{
		"m": "male", "M": "male", "m.": "male", "male": "male", "Males": "male", "♂": "male", "♂♂": "male",
		"f": "female", "F": "female", "Female": "female", "♀": "female", "fem.": "female",
		"hermaphrodite": "hermaphrodite",
	} {
		r := tally.ReadSex(written)
		assert.Equal(t, reading.Fair, r.State, "%q: %s", written, r.Message)
		if assert.Len(t, r.Parts, 1, written) {
			assert.Equal(t, want, r.Parts[0].Sex, written)
		}
	}
	r := tally.ReadSex("2 m, 1 f")
	assert.Equal(t, `[{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]`, r.JSON())
	r = tally.ReadSex("m & f")
	assert.Equal(t, `[{"sex":"male","occurrenceStatus":"present"},{"sex":"female","occurrenceStatus":"present"}]`, r.JSON())
	for _, nothing := range []string{"", "-", "?", "unknown", "n/a", "unsexed"} {
		r := tally.ReadSex(nothing)
		assert.Empty(t, r.Parts, nothing)
		assert.Equal(t, reading.Fair, r.State, nothing)
	}
	assert.Equal(t, reading.Query, tally.ReadSex("both").State)
	assert.Equal(t, reading.Query, tally.ReadSex("m?").State)
	for _, wrong := range []string{"larva", "12", "blah", "3 Elm Row"} {
		r := tally.ReadSex(wrong)
		assert.Equal(t, reading.Query, r.State, wrong)
		assert.Equal(t, []tally.Part{{Remarks: "sex: " + wrong}}, r.Parts)
	}
}

func TestReadStage(t *testing.T) {
	for written, want := range map[string]string{
		"adult": "adult", "Adults": "adult", "ad": "adult", "ad.": "adult", "A": "adult", "imago": "adult", "Imagines": "adult",
		"L": "larva", "l": "larva", "larva": "larva", "larvae": "larva", "Larval": "larva", "caterpillar": "larva", "final instar": "larva",
		"P": "pupa", "pupa": "pupa", "pupae": "pupa", "E": "egg", "ova": "egg", "egg": "egg", "eggs": "egg", "N": "nymph",
		"juv": "juvenile", "imm.": "juvenile", "mine": "larva", "larval case": "larva", "vacated mines": "larva", "pupal exuviae": "pupa",
	} {
		r := tally.ReadStage(written)
		assert.Equal(t, reading.Fair, r.State, "%q: %s", written, r.Message)
		if assert.Len(t, r.Parts, 1, written) {
			assert.Equal(t, want, r.Parts[0].LifeStage, written)
		}
	}
	assert.Equal(t, `[{"individualCount":"2","lifeStage":"adult","occurrenceStatus":"present"},{"individualCount":"1","lifeStage":"larva","occurrenceStatus":"present"}]`, tally.ReadStage("2 ad, 1 larva").JSON())
	for _, wrong := range []string{"male", "12", "blah"} {
		r := tally.ReadStage(wrong)
		assert.Equal(t, reading.Query, r.State, wrong)
		assert.Equal(t, []tally.Part{{Remarks: "life stage: " + wrong}}, r.Parts)
	}
}
