package places_test

import (
	"testing"

	"fieldfare/convert/places"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestMentioned: a private place is found among other words however its name is
// parted into words; other places, and names too short to tell, are not looked
// for. Common practice, no source.
func TestMentioned(t *testing.T) {
	l, problems := places.NewList([]places.Place{
		{Name: "Ines and Tom's Back Field", Private: true}, // longer than any other
		{Name: "Tinker's Row", Other: []string{"Calloways Garden"}, Private: true},
		{Name: "Badgerbank", Private: true},
		{Name: "Home", Private: true},
		{Name: "Sedge Drove"},
		{Name: "Pell Farm", Private: true},
		{Name: "Pell-Farm", Private: true},
	})
	require.Len(t, problems, 1, "two farms share a name")
	for text, want := range map[string][]string{
		"":                                      nil,
		"tea at Tinkers Row":                    {"Tinker's Row"},
		"behind Calloway's garden, by the gate": {"Tinker's Row"},
		"tinkers-row.jpg":                       {"Tinker's Row"},
		"IMG.Tinker's.Row.jpg":                  {"Tinker's Row"},
		"found on Badger Bank":                  {"Badgerbank"},
		"Badger Bank to Tinker's Row":           {"Tinker's Row", "Badgerbank"},
		"Tinker's Row, and Tinker's Row again":  {"Tinker's Row"},
		"by Ines and Tom's back field":          {"Ines and Tom's Back Field"},
		"home by ten":                           nil,
		"along Sedge Drove":                     nil,
		"the tinker's":                          nil,
		"Pell Farm yard":                        {"Pell Farm", "Pell-Farm"},
	} {
		var got []string
		for _, p := range l.Mentioned(text) {
			got = append(got, p.Name)
		}
		assert.ElementsMatch(t, want, got, text)
	}
	var none *places.List
	assert.Empty(t, none.Mentioned("Tinker's Row"))
	open, _ := places.NewList([]places.Place{{Name: "Sedge Drove"}})
	assert.Empty(t, open.Mentioned("Sedge Drove"))
}
