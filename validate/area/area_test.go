package area_test

import (
	"fmt"
	"testing"

	"fieldfare/gridref"
	"fieldfare/validate/area"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ring is the outline of a square of the British grid as a GeoJSON ring.
func ring(t *testing.T, reference string) string {
	r, err := gridref.Parse(reference)
	require.NoError(t, err)
	text := ""
	c := r.Square.Corners()
	for i := range 5 {
		text += fmt.Sprintf("[%.9f,%.9f],", c[i%4].Lon, c[i%4].Lat)
	}
	return "[" + text[:len(text)-1] + "]"
}

func outline(t *testing.T, reference string) area.Outline {
	r, err := gridref.Parse(reference)
	require.NoError(t, err)
	var corners [4][2]float64
	for i, c := range r.Square.Corners() {
		corners[i] = [2]float64{c.Lat, c.Lon}
	}
	return area.Square(corners)
}

func TestSquares(t *testing.T) {
	hectad := `{"type":"Polygon","coordinates":[` + ring(t, "TL48") + `]}`
	ringed := `{"type":"Polygon","coordinates":[` + ring(t, "TL48") + `,` + ring(t, "TL4585") + `]}`
	two := `{"type":"FeatureCollection","features":[
		{"type":"Feature","properties":{},"geometry":{"type":"Polygon","coordinates":[` + ring(t, "TL48") + `]}},
		{"type":"Feature","properties":null,"geometry":{"type":"MultiPolygon","coordinates":[[` + ring(t, "TF40") + `]]}}]}`
	for _, c := range []struct {
		name, geojson, reference string
		want                     area.Relation
	}{
		{"a monad within", hectad, "TL4488", area.Inside},
		{"a hundred metres within", hectad, "TL445885", area.Inside},
		{"the next hectad but one", hectad, "TL68", area.Outside},
		{"a monad far away", hectad, "NN1672", area.Outside},
		{"a square around the area", hectad, "TL", area.Straddles},
		{"a tetrad within", hectad, "TL48G", area.Inside},
		{"the hole", ringed, "TL452853", area.Outside},
		{"a square with the hole in it", ringed, "TL48M", area.Straddles},
		{"beside the hole", ringed, "TL4286", area.Inside},
		{"in the second polygon", two, "TF4503", area.Inside},
		{"in neither", two, "TF4513", area.Outside},
	} {
		a, err := area.Read([]byte(c.geojson))
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, a.Of(outline(t, c.reference)), c.name)
	}
}

func TestOverTheEdge(t *testing.T) {
	// The eastern half of TL48 and more.
	a, err := area.Read([]byte(`{"type":"Feature","properties":{},"geometry":{"type":"Polygon","coordinates":[[[0.13,52.2],[0.6,52.2],[0.6,52.6],[0.13,52.6],[0.13,52.2]]]}}`))
	require.NoError(t, err)
	assert.Equal(t, area.Straddles, a.Of(outline(t, "TL48")))
	assert.Equal(t, area.Inside, a.Of(outline(t, "TL4888")))
	assert.Equal(t, area.Outside, a.Of(outline(t, "TL4088")))
	assert.Equal(t, area.Outside, a.Of(area.Circle(52.4, 0.10, 500)))
	assert.Equal(t, area.Straddles, a.Of(area.Circle(52.4, 0.10, 5000)), "the circle reaches in")
	assert.Equal(t, area.Inside, a.Of(area.Circle(52.4, 0.3, 5000)))
}

func TestFilesThatCannotBeUsed(t *testing.T) {
	for name, text := range map[string]string{
		"nothing":         ``,
		"no GeoJSON":      `{"a":1}`,
		"a point":         `{"type":"Point","coordinates":[0.1,52.4]}`,
		"metres":          `{"type":"Polygon","coordinates":[[[540000,280000],[550000,280000],[550000,290000],[540000,280000]]]}`,
		"an open ring":    `{"type":"Polygon","coordinates":[[[0,52],[1,52],[1,53],[0,53]]]}`,
		"a line":          `{"type":"Polygon","coordinates":[[[0,52],[1,52],[0,52]]]}`,
		"no features":     `{"type":"FeatureCollection","features":[]}`,
		"half a document": `{"type":"Polygon","coordinates":[[[0,52]`,
	} {
		_, err := area.Read([]byte(text))
		assert.Error(t, err, name)
	}
}

func TestCountyAgreesWithItsPolygon(t *testing.T) {
	a, err := area.Read([]byte(`{"type":"Polygon","coordinates":[[[0.0,52.3],[0.5,52.3],[0.5,52.55],[0.0,52.55],[0.0,52.3]]]}`))
	require.NoError(t, err)
	a.Name, a.ViceCounty = "Cambridgeshire", 29
	s := area.Set{Areas: []*area.Area{a}}
	within, without := outline(t, "TL4588"), outline(t, "TG3030")
	for _, stated := range []string{"29", "VC29", "v.c. 29", "vice-county 29", "Cambridgeshire", "County of Cambridgeshire", "29 Cambridgeshire"} {
		assert.Empty(t, s.County(within, stated, "TL4588").Code, stated)
		assert.Equal(t, "county-disagrees", s.County(without, stated, "TG3030").Code, stated)
	}
	assert.Equal(t, "county-disagrees", s.County(within, "VC 28", "TL4588").Code)
	assert.Empty(t, s.County(within, "Isle of Ely", "TL4588").Code, "a county whose polygon is not given")
	assert.Empty(t, s.County(without, "27", "TG3030").Code)
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"type":"Polygon","coordinates":[[[0,52],[1,52],[1,53],[0,52]]]}`))
	f.Add([]byte(`{"type":"FeatureCollection","features":[null,{"type":"Feature","geometry":null}]}`))
	f.Add([]byte(`{"type":"GeometryCollection","geometries":[{"type":"MultiPolygon","coordinates":[[[[0,52],[1,52],[1,53],[0,52]]]]}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		a, err := area.Read(text)
		if err != nil {
			return
		}
		_ = a.Of(area.Circle(52.4, 0.1, 700)) // must not panic
	})
}
