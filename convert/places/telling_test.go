package places_test

import (
	"testing"

	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/gridref"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNamesThatDiffer: two names that differ on purpose are two places, however
// like they are. Common practice, no source.
func TestNamesThatDiffer(t *testing.T) {
	l, problems := places.NewList([]places.Place{
		{Name: "Long Meadow"}, {Name: "Sallowmere Drain Dam"}, {Name: "Sallowmere Pit Wood"}, {Name: "Home", Private: true},
	})
	require.Empty(t, problems)
	for written, want := range map[string]struct{ code, name, place string }{
		"Sallowmere Drain Dip": {"", "Sallowmere Drain Dip", ""},                                // two of three letters are another word
		"Sallowmere Pot Wood":  {"site-misspelt", "Sallowmere Pit Wood", "Sallowmere Pit Wood"}, // one may be a slip
		"Long Meadow A":        {"site-part", "Long Meadow A", "Long Meadow"},                   // a letter by itself is a label
		"Home pond":            {"site-part", "Home pond", "Home"},                              // private, though short
	} {
		r := l.Find(written)
		assert.Equal(t, want.code, r.Code, written)
		assert.Equal(t, want.name, r.Name, written)
		place := ""
		if r.Place != nil {
			place = r.Place.Name
		}
		assert.Equal(t, want.place, place, written)
	}
	open, _ := places.NewList([]places.Place{{Name: "Home"}})
	assert.Nil(t, open.Find("Home pond").Place, "a short name that is not private turns up by chance")
}

// TestSharedNames: of places that share a name each is offered with where it is.
func TestSharedNames(t *testing.T) {
	r := list(t).Find("Reed bed")
	assert.Equal(t, []string{"Reed Bed (TL480812)", "Reed-bed (TF4902)"}, r.Candidates)
	assert.Len(t, r.Possible, 2)
}

// TestSlipsOfDegrees: one figure of a latitude or longitude, whichever it is,
// and the side of Greenwich are named where they explain the distance.
func TestSlipsOfDegrees(t *testing.T) {
	l, _ := places.NewList([]places.Place{{Name: "Sallowmere Reserve", Reference: "52.4075, 0.1735"}})
	place := l.Find("Sallowmere Reserve")
	for _, written := range []string{"62.4075, 0.1735", "54.4075, 0.1735", "52.6075, 0.1735", "52.4575, 0.1735", "52.4075, 0.9735", "52.4075, -0.1735"} {
		reference, err := gridref.Parse(written)
		require.NoError(t, err, written)
		v := places.Agree(place, reference, 100)
		assert.Equal(t, reading.Query, v.State, written)
		assert.Equal(t, []string{"52.40750, 0.17350"}, v.Candidates, "%s: %s", written, v.Message)
	}
	reference, err := gridref.Parse("62.4575, 0.1735") // two figures
	require.NoError(t, err)
	assert.Empty(t, places.Agree(place, reference, 100).Candidates)
}

func TestUnusableLines(t *testing.T) {
	l, problems := places.NewList([]places.Place{{Name: " "}, {Name: "Sedge Drove", Reference: "TL4781"}})
	assert.Len(t, problems, 1)
	assert.True(t, l.Find("Sedge Drove").Placed, "a line without a name does not end the list")

	assert.Equal(t, 0, places.FindColumns([]string{"Site", "Grid ref", "Site"}).Name, "the first of two like columns counts")

	var s places.Sites
	s.Add("", gridref.Square{})
	s.Add("Sedge Drove", gridref.Square{})
	assert.Equal(t, reading.Fair, s.Settle().Check("Sedge Drove", gridref.Square{}, 0).State)
}
