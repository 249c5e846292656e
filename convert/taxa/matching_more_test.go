package taxa_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNamesTurnedRound: common practice, no source.
func TestNamesTurnedRound(t *testing.T) {
	m := starter()
	for name, want := range map[string]struct {
		state reading.State
		taxon string
	}{
		"Arches, Dark":                      {reading.Fair, "Apamea monoglypha"}, // as an index has it
		"Arches Dark":                       {reading.Query, "Apamea monoglypha"},
		"Satin Moth White":                  {reading.Query, "Leucoma salicis"},
		"Moth White Satin":                  {reading.Query, "Leucoma salicis"},
		"Brown-line Bright-eye":             {reading.Fair, "Mythimna conigera"},
		"Bright-line Brown-eye":             {reading.Fair, "Lacanobia oleracea"},
		"Dark Arches / Heart and Dart":      {reading.Fair, "Noctuidae"},
		"Dark Arches and/or Heart and Dart": {reading.Fair, "Noctuidae"},
		"Dark Arches / / Heart and Dart":    {reading.Fair, "Noctuidae"},
		"Noctua (worn)":                     {reading.Fair, "Noctua"},
		"Noctua (pronuba)":                  {reading.Held, "-"},
		"Noctua pronuba f. alba":            {reading.Fair, "Noctua pronuba"},
		"Noctua pronuba f.":                 {reading.Fair, "Noctua pronuba"},
		"Noctua pronuba Heart":              {reading.Query, "Noctua pronuba"},
	} {
		r := m.Match(taxa.Written{Name: name}, taxa.Context{})
		assert.Equal(t, want.state, r.State, "%s: %s", name, r.Message)
		assert.Equal(t, want.taxon, taxonName(r), name)
	}
}

// TestListInCapitals: a list may be in capitals throughout, and have its
// families between the names; only these end as the codes want it (ICZN 29.2,
// ICN 18.1).
func TestListInCapitals(t *testing.T) {
	l, problems := load(t, "list.csv", "Name,English\nNOCTUIDAE,\nNOCTUA PRONUBA,LARGE YELLOW UNDERWING\nAGROTIS PUTA,\nSPHINGIDAE,\nLAOTHOE POPULI,POPLAR HAWK-MOTH\nROSACEAE,\nROSA CANINA,\n")
	require.Empty(t, problems)
	m := taxa.NewIndex(l).NewMatcher()
	for name, family := range map[string]string{"Noctua pronuba": "Noctuidae", "Agrotis puta": "Noctuidae", "Laothoe populi": "Sphingidae", "Rosa canina": "Rosaceae"} {
		r := m.Match(taxa.Written{Name: name}, taxa.Context{})
		require.NotNil(t, r.Taxon, "%s: %s", name, r.Message)
		assert.Equal(t, family, r.Taxon.Family, name)
	}
}

// TestMonthColumns: each month may have a column, under its name in full.
func TestMonthColumns(t *testing.T) {
	l, problems := load(t, "list.csv", "Name,January,February,March,April,May,June,July,August,September,October,November,December\n"+
		"Noctua pronuba,,,,,,,,x,x,,,\nAgrotis puta,,0,,-,1,,,,no,yes,,\n")
	require.Empty(t, problems)
	m := taxa.NewIndex(l).NewMatcher()
	assert.Equal(t, "August to September", m.Match(taxa.Written{Name: "Noctua pronuba"}, taxa.Context{}).Taxon.Flight.String())
	assert.Equal(t, "May and October", m.Match(taxa.Written{Name: "Agrotis puta"}, taxa.Context{}).Taxon.Flight.String())
}

// TestSynonymOfAnotherList: what one list calls a synonym of a taxon, and
// another parts from it, stays two taxa.
func TestSynonymOfAnotherList(t *testing.T) {
	lumping, _ := load(t, "lumping.csv", "Name,Synonym\nNoctua comes,Noctua orbona\n")
	parting, _ := load(t, "parting.csv", "Name,Synonym\nNoctua comes,\nNoctua interjecta,Noctua orbona\n")
	m := taxa.NewIndex(lumping, parting).NewMatcher()
	assert.Equal(t, "Noctua comes", taxonName(m.Match(taxa.Written{Name: "Noctua comes"}, taxa.Context{})))
	assert.Equal(t, "Noctua interjecta", taxonName(m.Match(taxa.Written{Name: "Noctua interjecta"}, taxa.Context{})))
}
