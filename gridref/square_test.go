package gridref

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func mustParse(t *testing.T, text string) Square {
	t.Helper()
	r, err := Parse(text)
	require.NoError(t, err, text)
	require.Empty(t, r.Doubt, text)
	return r.Square
}

// The letters of the tetrads in a hectad as recording handbooks print them,
// north at the top. Common practice, no source.
func TestDINTYTable(t *testing.T) {
	const table = `E J P U Z
D I N T Y
C H M S X
B G L R W
A F K Q V`
	for down, line := range strings.Split(table, "\n") {
		for across, letter := range strings.Fields(line) {
			want := Square{British, int32(540_000 + across*2000), int32(280_000 + (4-down)*2000), 2000}
			assert.Equal(t, want, mustParse(t, "TL48"+letter), letter)
			assert.Equal(t, "TL48"+letter, want.String())
		}
	}
}

func TestQuadrants(t *testing.T) {
	for ref, want := range map[string]Square{
		"TL48SW":   {British, 540_000, 280_000, 5000},
		"TL48SE":   {British, 545_000, 280_000, 5000},
		"TL48NW":   {British, 540_000, 285_000, 5000},
		"H12NE":    {Irish, 215_000, 325_000, 5000},
		"TL4881NE": {British, 548_500, 281_500, 500},
	} {
		assert.Equal(t, want, mustParse(t, ref), ref)
		assert.Equal(t, ref, want.String())
	}
}

// Origins of 100 km squares, from the index diagrams of the two grids (Ordnance
// Survey, "Using the National Grid"; Ordnance Survey Ireland, "Irish Grid").
// From memory.
func TestHundredKilometreSquares(t *testing.T) {
	for letters, km := range map[string][2]int32{
		"SV": {0, 0}, "SW": {1, 0}, "TQ": {5, 1}, "TV": {5, 0}, "TL": {5, 2}, "TF": {5, 3}, "TG": {6, 3}, "SE": {4, 4}, "NY": {3, 5},
		"OV": {5, 5}, "NN": {2, 7}, "NB": {1, 9}, "HY": {3, 10}, "HU": {4, 11}, "HP": {4, 12},
	} {
		assert.Equal(t, Square{British, km[0] * hundredKM, km[1] * hundredKM, hundredKM}, mustParse(t, letters), letters)
	}
	for letter, km := range map[string][2]int32{
		"V": {0, 0}, "W": {1, 0}, "Q": {0, 1}, "T": {3, 1}, "L": {0, 2}, "O": {3, 2}, "F": {0, 3}, "H": {2, 3}, "J": {3, 3}, "B": {1, 4}, "D": {3, 4},
	} {
		assert.Equal(t, Square{Irish, km[0] * hundredKM, km[1] * hundredKM, hundredKM}, mustParse(t, letter), letter)
	}
	// The two squares follow from the lettering of MGRS in zone 30, band U.
	for _, letters := range []string{"WA", "WV"} {
		channel, military := mustParse(t, letters), mustParse(t, "30U"+letters)
		channel.Grid = military.Grid
		assert.Equal(t, military, channel)
	}
}

func TestEveryLetteredSquareNamesItself(t *testing.T) {
	land := 0
	for north := int32(0); north < 15; north++ {
		for east := int32(0); east < 10; east++ {
			s := Square{British, east * hundredKM, north * hundredKM, hundredKM}
			r, err := Parse(s.String())
			require.NoError(t, err)
			assert.Equal(t, s, r.Square)
			if s.HasLand() {
				land++
			} else {
				assert.Contains(t, []string{OpenSea, MeantIrish}, r.Doubt.Code, s.String())
			}
		}
	}
	assert.Equal(t, 56, land)
}

func TestWiderSquares(t *testing.T) {
	s := mustParse(t, "TL48308120")
	for want, get := range map[string]func() (Square, bool){"TL48": s.Hectad, "TL48V": s.Tetrad, "TL4881": s.Monad} {
		got, ok := get()
		assert.True(t, ok)
		assert.Equal(t, want, got.String())
	}
	_, ok := mustParse(t, "TL48").Monad()
	assert.False(t, ok, "a hectad lies in no monad")
	_, ok = mustParse(t, "31UCT0412").Tetrad()
	assert.False(t, ok, "UTM has no tetrads")

	for size, want := range map[int32]string{10: "TL48308120", 100: "TL483812", 1000: "TL4881", 2000: "TL48V", 5000: "TL48SE", 10_000: "TL48", 100_000: "TL"} {
		got, err := s.Coarsen(size)
		require.NoError(t, err)
		assert.Equal(t, want, got.String())
	}
	got, err := s.Coarsen(1)
	require.NoError(t, err)
	assert.Equal(t, s, got, "nothing is known of a smaller square")
	_, err = s.Coarsen(3000)
	assert.ErrorIs(t, err, ErrSize)
	_, err = mustParse(t, "TL48M").Coarsen(5000)
	assert.ErrorIs(t, err, ErrNesting, "the middle tetrad lies in four quadrants")
}

func TestTruncation(t *testing.T) {
	for size, want := range map[int32]string{1: "TL4899981999", 10: "TL48998199", 100: "TL489819", 1000: "TL4881", 2000: "TL48V", 10_000: "TL48"} {
		s, err := Plane{British, 548_999.999, 281_999.999}.Square(size)
		require.NoError(t, err)
		assert.Equal(t, want, s.String())
	}
	for _, p := range []Plane{{British, -1, 0}, {British, 1e6, 0}, {Irish, 500_000, 0}, {ChannelIslands, 450_000, 5_450_000}, {NoGrid, 1, 1}} {
		_, err := p.Square(100)
		assert.ErrorIs(t, err, ErrOutside, "%v", p)
	}
}

func TestServingGrid(t *testing.T) {
	for _, tt := range []struct {
		place    string
		lat, lon float64
		grid     Grid
	}{
		{"Ely", 52.40, 0.26, British}, {"Scilly", 49.92, -6.30, British}, {"Unst", 60.75, -0.87, British}, {"Isle of Man", 54.23, -4.53, British},
		{"Islay", 55.75, -6.28, British}, {"Mull of Galloway", 54.64, -4.86, British}, {"Portpatrick", 54.84, -5.12, British},
		{"St David's Head", 51.90, -5.31, British}, {"Dover", 51.13, 1.31, British}, {"Lowestoft", 52.48, 1.75, British}, {"St Kilda", 57.81, -8.58, British},
		{"Dublin", 53.35, -6.26, Irish}, {"Belfast", 54.60, -5.93, Irish}, {"Donaghadee", 54.64, -5.53, Irish}, {"Rathlin", 55.30, -6.20, Irish},
		{"Malin Head", 55.38, -7.37, Irish}, {"Mizen Head", 51.45, -9.82, Irish}, {"Belmullet", 54.22, -9.99, Irish}, {"Carnsore Point", 52.17, -6.36, Irish},
		{"St Helier", 49.18, -2.10, ChannelIslands}, {"St Peter Port", 49.45, -2.54, ChannelIslands}, {"Alderney", 49.71, -2.20, ChannelIslands},
		{"Calais", 50.96, 1.85, UTM(31, false)}, {"Cherbourg", 49.63, -1.62, UTM(30, false)}, {"Bergen", 60.39, 5.32, UTM(32, false)},
		{"Longyearbyen", 78.22, 15.65, UTM(33, false)}, {"Sydney", -33.86, 151.21, UTM(56, true)}, {"North Pole", 90, 0, PolarNorth}, {"Vostok", -78.46, 106.84, UTM(48, true)},
		{"South Pole", -90, 0, PolarSouth},
	} {
		assert.Equal(t, tt.grid, Point{Lat: tt.lat, Lon: tt.lon}.Serving(), tt.place)
	}
}

func TestSmallestDoesNotClaimMore(t *testing.T) {
	for metres, want := range map[float64]string{
		0.5: "TL4830581205", 1.8: "TL4830581205", 2: "TL48308120", 8.2: "TL48308120", 10: "TL483812", 71.9: "TL483812", 75: "TL4881", 709: "TL4881", 710: "TL48V",
		1500: "TL48SE", 3600: "TL48", 7077: "TL48", 8000: "TL",
	} {
		p := Plane{British, 548_305.5, 281_205.5}.Point()
		p.Uncertainty = metres
		s, err := p.Smallest(British)
		require.NoError(t, err)
		assert.Equal(t, want, s.String(), "%v m", metres)
	}
	_, err := Point{Lat: 52.4, Lon: 0.18, Uncertainty: 80_000}.Smallest(British)
	assert.ErrorIs(t, err, ErrTooRough)
}

func TestBeyondOSTN15(t *testing.T) {
	r, err := Parse("JS1234")
	require.NoError(t, err)
	assert.Equal(t, HelmertOSGB36, r.Square.Transformation())
	assert.Equal(t, OpenSea, r.Doubt.Code)
	assert.Contains(t, r.Doubt.Message, "Helmert")
	assert.Contains(t, r.Protocol(), "EPSG:1314")
	assert.Equal(t, OSTN15, mustParse(t, "TL48").Transformation())
}

func TestFootprint(t *testing.T) {
	wkt := mustParse(t, "TL4881").WKT()
	require.True(t, strings.HasPrefix(wkt, "POLYGON (("))
	ring := strings.Split(strings.TrimSuffix(strings.TrimPrefix(wkt, "POLYGON (("), "))"), ", ")
	require.Len(t, ring, 5)
	assert.Equal(t, ring[0], ring[4], "closed")
	corners := mustParse(t, "TL4881").Corners()
	for i, c := range corners {
		lon, lat := scan(t, ring[i])
		assert.InDelta(t, c.Lat, lat, 1e-7)
		assert.InDelta(t, c.Lon, lon, 1e-7)
	}
	assert.Less(t, corners[0].Lon, corners[1].Lon, "the second corner lies east of the first: counter-clockwise")
	assert.Less(t, corners[1].Lat, corners[2].Lat)
	assert.Greater(t, strings.Count(mustParse(t, "TL").WKT(), ","), 40, "a large square's sides are curves")
}
