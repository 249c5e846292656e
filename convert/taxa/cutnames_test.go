package taxa_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Names as they stand in the columns of trap lists, cut to fit (common
// practice, no source): what they may be short for is offered, not taken.
func TestNamesCutShortAreOffered(t *testing.T) {
	m := taxa.NewIndex(taxa.Starter()).NewMatcher()
	for written, want := range map[string][]string{
		"Small Tort":          {"Aglais urticae"},
		"S. Tort":             {"Aglais urticae"},
		"Tortoiseshell":       {"Aglais urticae"},
		"Speck Wood":          {"Pararge aegeria"},
		"Mdw Brown":           {"Maniola jurtina"},
		"Pop Hawk":            {"Laothoe populi"},
		"Azure Damsel":        {"Coenagrion puella"},
		"Twin spot Quaker":    {"Anorthoa munda"},
		"Cl Bordered Brindle": {"Apamea crenata"},
		"Lesser YU":           {"Noctua comes"},
		"LBBYU":               {"Noctua janthe"},
		"SHC":                 {"Xestia c-nigrum"},
		"H&D":                 {"Agrotis exclamationis", "Brachytron pratense"},
		"SHC (worn)":          {"Xestia c-nigrum"},
		"EHM":                 {"Smerinthus ocellata", "Deilephila elpenor"},
		"LYU":                 {"Noctua pronuba", "Noctua orbona", "Noctua interjecta", "Noctua comes"},
		"Dec Moth":            {"Poecilocampa populi", "Melanchra persicariae"},
		"Vapourer Mth":        {"Orgyia antiqua"},
		"Merveille":           {"Griposia aprilina"},
		"Dagger agg":          {"Acronicta psi/tridens", "Acronicta", "Acronicta tridens", "Acronicta psi"},
		"Hawkmoth sp":         {"Sphingidae", "Mimas tiliae", "Smerinthus ocellata", "Laothoe populi", "Agrius convolvuli", "Acherontia atropos"},
		"White sp.":           {"Lepidoptera", "Bupalus piniaria", "Leptidea sinapis", "Pieris brassicae", "Pieris rapae", "Pieris napi"},
	} {
		r := m.Match(taxa.Written{Name: written}, taxa.Context{})
		assert.Equal(t, reading.Held, r.State, written)
		var got []string
		for _, p := range r.Possible {
			got = append(got, p.ScientificName)
		}
		assert.Equal(t, want, got, "%s: %s", written, r.Message)
	}
}

func TestNamesWithOneWayToWriteThemOut(t *testing.T) {
	m := taxa.NewIndex(taxa.Starter()).NewMatcher()
	for written, want := range map[string]string{
		"L White": "Pieris brassicae", "Painted L": "Vanessa cardui", "A. Shades": "Phlogophora meticulosa",
		"C Quaker": "Orthosia cerasi", "Hummingbird HM": "Macroglossum stellatarum", "G-v White": "Pieris napi",
	} {
		r := m.Match(taxa.Written{Name: written}, taxa.Context{})
		assert.Equal(t, reading.Query, r.State, written)
		require.NotNil(t, r.Taxon, written)
		assert.Equal(t, want, r.Taxon.ScientificName, written)
	}
}

// A word in a cell that is no name is not taken for the first letters of one.
func TestWordsThatAreNoFirstLetters(t *testing.T) {
	m := taxa.NewIndex(taxa.Starter()).NewMatcher()
	for _, written := range []string{"see", "bat", "same", "frog", "total", "XQ", "trap failed"} {
		r := m.Match(taxa.Written{Name: written}, taxa.Context{})
		assert.Equal(t, reading.Held, r.State, written)
		assert.Empty(t, r.Candidates, "%s: %s", written, r.Message)
	}
}
