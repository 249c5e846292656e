package gridref

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// GeoConvert of GeographicLib (Debian: geographiclib-tools) names random
// places all over the world in MGRS to a metre; we read the names and
// name the places.
func TestMGRSAgainstGeoConvert(t *testing.T) {
	random := rand.New(rand.NewPCG(19, 23))
	points := make([]Point, randomPoints)
	lines := make([]string, randomPoints)
	for i := range points {
		points[i] = Point{Lat: random.Float64()*180 - 90, Lon: random.Float64()*360 - 180}
		lines[i] = strconv.FormatFloat(points[i].Lat, 'f', 9, 64) + " " + strconv.FormatFloat(points[i].Lon, 'f', 9, 64)
	}
	names := tool(t, "geographiclib-tools", lines, "GeoConvert", "-m", "-p", "0")
	require.Len(t, names, randomPoints)
	centres := tool(t, "geographiclib-tools", names, "GeoConvert", "-g", "-p", "4")
	require.Len(t, centres, randomPoints)
	for i, name := range names {
		r, err := Parse(name)
		require.NoError(t, err, name)
		assert.Empty(t, r.Doubt, name)
		p := r.Centre()
		lat, lon := scan(t, centres[i])
		assert.Less(t, metresBetween(lat, lon, p.Lat, p.Lon), 0.001, name)
		if g := worldGrid(points[i].Lat, points[i].Lon); assert.Equal(t, r.Square.Grid, g, name) {
			s, err := points[i].Square(g, 1)
			require.NoError(t, err)
			if s != r.Square {
				// Nine decimals of a degree leave a tenth of a millimetre.
				d := points[i].Plane(g)
				near := func(v float64) bool { f := v - float64(int64(v)); return f < 0.001 || f > 0.999 }
				assert.True(t, near(d.Easting) || near(d.Northing), "%s, not %s", s, name)
				continue
			}
			assert.Equal(t, name, s.String())
		}
	}
}
