package places_test

import (
	"fmt"
	"testing"

	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/gridref"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func list(t testing.TB) *places.List {
	l, problems := places.NewList([]places.Place{
		{Name: "Sallowmere Reserve", Other: []string{"Sallowmere NR", "Sallowmere"}, Reference: "TL4881", ViceCounty: "29"},
		{Name: "Tinker's Row", Other: []string{"Garden at Tinker's Row"}, Reference: "TF491012", ViceCounty: "28", Private: true, BlurTo: 1000},
		{Name: "North Fen", Reference: "TL4682"},
		{Name: "South Fen", Reference: "TL4680"},
		{Name: "Ride 2"}, {Name: "Ride 3"},
		{Name: "Sedge Drove", Reference: "TL4781"},
		{Name: "Marsh Lane", Reference: "TF4901"},
		{Name: "Marsh Land", Reference: "TF4801"},
		{Name: "Reed Bed", Reference: "TL480812"},
		{Name: "Reed-bed", Reference: "TF4902"},
	})
	assert.Len(t, problems, 1, "the two reed beds share a folded name: %v", problems)
	return l
}

// TestFind: common practice, no source.
func TestFind(t *testing.T) {
	l := list(t)
	for _, c := range []struct {
		written string
		state   reading.State
		name    string
		listed  bool
	}{
		{"Sallowmere Reserve", reading.Fair, "Sallowmere Reserve", true},
		{" sallowmere  reserve ", reading.Fair, "Sallowmere Reserve", true},
		{"SALLOWMERE RESERVE.", reading.Fair, "Sallowmere Reserve", true},
		{"Sallowmere N.R.", reading.Fair, "Sallowmere Reserve", true},
		{"Tinkers Row", reading.Fair, "Tinker's Row", true},
		{"Tinker’s Row", reading.Fair, "Tinker's Row", true},
		{"The Sedge Drove", reading.Fair, "Sedge Drove", true},
		{"Salowmere Reserve", reading.Query, "Sallowmere Reserve", true},
		{"Sallowmere Resrve", reading.Query, "Sallowmere Reserve", true},
		{"Sallowmere Resevre", reading.Query, "Sallowmere Reserve", true},
		{"Tinkers Roe", reading.Query, "Tinker's Row", true},
		{"Segde Drove", reading.Query, "Sedge Drove", true},
		{"Marsh Lanf", reading.Query, "Marsh Lanf", false}, // as near to Lane as to Land
		{"Marsh Lane", reading.Fair, "Marsh Lane", true},
		{"Ride 4", reading.Fair, "Ride 4", false},
		{"Ride 2", reading.Fair, "Ride 2", true},
		{"North Fenn", reading.Query, "North Fen", true},
		{"Worth Fen", reading.Query, "North Fen", true},
		{"East Fen", reading.Fair, "East Fen", false},
		{"Reed bed", reading.Query, "Reed bed", false}, // two places
		{"Sallowmere Reserve, ride 2", reading.Fair, "Sallowmere Reserve, ride 2", true},
		{"Sallowmere Reserve (car park)", reading.Fair, "Sallowmere Reserve (car park)", true},
		{"Trap 2, Sallowmere", reading.Fair, "Trap 2, Sallowmere", true},
		{"Sallowmere Reserve car park", reading.Query, "Sallowmere Reserve car park", true},
		{"Field near Sallowmere Reserve", reading.Fair, "Field near Sallowmere Reserve", false},
		{"Field near Tinker's Row", reading.Query, "Field near Tinker's Row", true}, // private
		{"Tinkers Row back garden", reading.Query, "Tinkers Row back garden", true},
		{"Wicken", reading.Fair, "Wicken", false},
		{"Sallow Wood", reading.Fair, "Sallow Wood", false},
		{"", reading.Fair, "", false},
		{"!!", reading.Fair, "!!", false},
	} {
		r := l.Find(c.written)
		assert.Equal(t, c.state, r.State, "%q: %s", c.written, r.Message)
		assert.Equal(t, c.name, r.Name, c.written)
		assert.Equal(t, c.listed, r.Place != nil, c.written)
		assert.Equal(t, c.state != reading.Fair, r.Code != "", c.written)
	}
	var none *places.List
	assert.Equal(t, "Anywhere", none.Find("Anywhere").Name)
}

func TestListProblems(t *testing.T) {
	_, problems := places.NewList([]places.Place{{Name: "Home", Reference: "XX99"}, {Name: " "}, {Name: "Wood", Reference: "TL4881"}})
	assert.Len(t, problems, 2)
	assert.Contains(t, problems[0], "“XX99” for Home")
}

func TestAgree(t *testing.T) {
	l := list(t)
	for _, c := range []struct {
		site, reference string
		tolerance       int
		want            reading.State
	}{
		{"Sallowmere Reserve", "TL485815", 0, reading.Fair},  // inside the monad
		{"Sallowmere Reserve", "TL48", 0, reading.Fair},      // the hectad around it
		{"Sallowmere Reserve", "TL4981", 0, reading.Fair},    // touches it
		{"Sallowmere Reserve", "TL5081", 999, reading.Query}, // a monad between them
		{"Sallowmere Reserve", "TL5081", 1000, reading.Fair}, // exactly the tolerance
		{"Sallowmere Reserve", "TF491012", 5000, reading.Query},
		{"Sallowmere Reserve", "52.4075, 0.1735", 1000, reading.Fair},
		{"Sallowmere Reserve", "54.4075, 0.1735", 1000, reading.Query},
		{"Ride 2", "TF491012", 0, reading.Fair},    // the list has no reference
		{"Elsewhere", "TF491012", 0, reading.Fair}, // not on the list
	} {
		written, err := gridref.Parse(c.reference)
		require.NoError(t, err, c.reference)
		v := places.Agree(l.Find(c.site), written, c.tolerance)
		assert.Equal(t, c.want, v.State, "%s at %s: %s", c.site, c.reference, v.Message)
	}
}

// TestApart compares a gap worked out by hand: TL4881 and TL5284 lie three
// whole kilometres apart from west to east and two from south to north.
func TestApart(t *testing.T) {
	a, err := gridref.Parse("TL4881")
	require.NoError(t, err)
	b, err := gridref.Parse("TL5284")
	require.NoError(t, err)
	assert.InDelta(t, 3605.551, places.Apart(a, b), 0.001)
	assert.Equal(t, places.Apart(a, b), places.Apart(b, a))
	assert.Zero(t, places.Apart(a, a))
}

func TestSites(t *testing.T) {
	square := func(s string) gridref.Square {
		r, err := gridref.Parse(s)
		require.NoError(t, err)
		return r.Square
	}
	var s places.Sites
	for range 3 {
		s.Add("Sallowmere Reserve", square("TL4881"))
	}
	s.Add("sallowmere reserve", square("TL485815"))
	s.Add("Sallowmere Reserve", square("TM4881"))
	s.Add("Tie", square("TL48"))
	s.Add("Tie", square("TL4881"))
	u := s.Settle()
	assert.Equal(t, reading.Fair, u.Check("Sallowmere Reserve", square("TL4881"), 0).State)
	assert.Equal(t, reading.Fair, u.Check("Sallowmere Reserve", square("TL485815"), 0).State)
	assert.Equal(t, reading.Query, u.Check("SALLOWMERE RESERVE", square("TM4881"), 5000).State)
	assert.Equal(t, reading.Fair, u.Check("Tie", square("TL48"), 0).State)
	assert.Equal(t, reading.Fair, u.Check("Never heard of", square("TL48"), 0).State)
}

func TestFindColumns(t *testing.T) {
	assert.Equal(t, places.Columns{Name: 0, Other: 1, Reference: 2, ViceCounty: 3, County: -1, Private: 4, BlurTo: -1},
		places.FindColumns([]string{"Name", "Also written", "Grid reference", "Vice-county", "Private"}))
	assert.Equal(t, places.Columns{Name: 1, Other: -1, Reference: 0, ViceCounty: -1, County: 2, Private: -1, BlurTo: -1},
		places.FindColumns([]string{"Grid ref.", "Site", "County", "Site"}))
}

func ExampleList_Find() {
	l, _ := places.NewList([]places.Place{{Name: "Sallowmere Reserve", Reference: "TL4881"}})
	r := l.Find("Sallowmere Resrve")
	fmt.Println(r.State, r.Name, r.Where.Square)
	fmt.Println(r.Message)
	// Output:
	// query Sallowmere Reserve TL4881
	// “Sallowmere Resrve” is not on the places list and was read as “Sallowmere Reserve”. Please check; if it is another place, add it to the list.
}

func ExampleAgree() {
	l, _ := places.NewList([]places.Place{{Name: "Sallowmere Reserve", Reference: "TL4881"}})
	written, _ := gridref.Parse("TM4881")
	fmt.Println(places.Agree(l.Find("Sallowmere Reserve"), written, 2000).Message)
	// Output:
	// The reference lies 99.0 km from Sallowmere Reserve, which the places list has at TL4881. One letter may be wrong: TL4881 would lie there. Please check the reference and the site.
}

func FuzzFind(f *testing.F) {
	for _, s := range []string{"Sallowmere Reserve", "Sallowmere Resrve", "Ride 2", "Zoë’s Fen & Mere", "  ", "\xff\xfe"} {
		f.Add(s)
	}
	l := list(f)
	f.Fuzz(func(t *testing.T, s string) {
		r := l.Find(s)
		if r.State > reading.Query {
			t.Fatalf("%q is %s", s, r.State)
		}
		if (r.State == reading.Query) != (r.Code != "" && r.Message != "") {
			t.Fatalf("%q: %+v", s, r.Verdict)
		}
	})
}

func BenchmarkFind(b *testing.B) {
	l := list(b)
	for b.Loop() {
		l.Find("Sallowmere Resrve")
	}
}
