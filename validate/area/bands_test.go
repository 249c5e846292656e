package area

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// star is a ring of many corners, at random distances from the middle of TL48.
func star(r *rand.Rand, corners int, reach, rough float64) orb.Ring {
	var ring orb.Ring
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		d := reach * (0.9 + 0.1*math.Sin(9*math.Pi*float64(i)/float64(corners)) - rough*r.Float64())
		ring = append(ring, orb.Point{0.13 + 1.6*d*cos, 52.47 + d*sin})
	}
	return append(ring, ring[0])
}

// Points lie in polygons as orb's planar.PolygonContains has it, which tries
// every side, whichever way the rings run.
func TestContainsAgreesWithOrb(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for _, corners := range []int{3, 4, 17, 500, 5000} {
		polygon := orb.Polygon{star(r, corners, 0.3, 0.4), star(r, corners, 0.05, 0.1)}
		for turn := range 2 {
			if turn == 1 {
				polygon[0].Reverse()
			}
			p := newPart(polygon)
			for range 2000 {
				at := orb.Point{0.13 + 1.2*(r.Float64()-0.5), 52.47 + 0.8*(r.Float64()-0.5)}
				assert.Equal(t, planar.PolygonContains(polygon, at), p.contains(at), "%v", at)
			}
			for _, at := range polygon[0] {
				assert.True(t, p.contains(at), "a corner")
			}
		}
	}
}

func TestWhatIsSaidOfFiles(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"a byte order mark":     {"\ufeff" + `{"type":"Polygon","coordinates":[[[0,52],[1,52],[1,53],[0,52]]]}`, ""},
		"the winding of old":    {`{"type":"Polygon","coordinates":[[[0,52],[1,53],[1,52],[0,52]]]}`, ""},
		"heights":               {`{"type":"Polygon","coordinates":[[[0,52,3],[1,52,4],[1,53,5],[0,52,3]]]}`, ""},
		"WGS84 stated":          {`{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}},"features":[{"type":"Feature","properties":{},"geometry":{"type":"Polygon","coordinates":[[[0,52],[1,52],[1,53],[0,52]]]}}]}`, ""},
		"the British grid":      {`{"type":"Polygon","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::27700"}},"coordinates":[[[540000,280000],[550000,280000],[550000,290000],[540000,280000]]]}`, "states the reference system urn:ogc:def:crs:EPSG::27700"},
		"the datum of the maps": {`{"type":"Polygon","crs":{"type":"name","properties":{"name":"EPSG:4277"}},"coordinates":[[[0,52],[1,52],[1,53],[0,52]]]}`, "states the reference system EPSG:4277"},
		"latitude first":        {`{"type":"Polygon","coordinates":[[[52,0],[52,1],[53,1],[52,0]]]}`, "latitudes seem to stand before"},
		"a bow tie":             {`{"type":"Polygon","coordinates":[[[0,52],[1,53],[1,52],[0,53],[0,52]]]}`, ""},
	} {
		_, err := Read([]byte(c.text))
		if c.says == "" {
			assert.NoError(t, err, name)
		} else {
			assert.ErrorContains(t, err, c.says, name)
		}
	}
}

func BenchmarkLargeArea(b *testing.B) {
	r := rand.New(rand.NewPCG(7, 7))
	text, err := json.Marshal(map[string]any{"type": "Polygon", "coordinates": []orb.Ring{star(r, 200_000, 0.3, 1e-5)}})
	require.NoError(b, err)
	a, err := Read(text)
	require.NoError(b, err)
	for b.Loop() {
		a.Of(Circle(52.4+r.Float64()/5, 0.1+r.Float64()/5, 100))
	}
}
