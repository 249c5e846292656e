package notebook

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestGeoJSON(t *testing.T) {
	// The form is that of RFC 7946, sections 3.1.2, 3.2 and 3.3.
	b := opened(t, write(t, "map.geojson", `{"type":"FeatureCollection","name":"walk","features":[
{"type":"Feature","geometry":{"type":"Point","coordinates":[0.1336969,52.4796848]},"properties":{"species":"Peacock","count":3,"sure":true}},
{"type":"Feature","geometry":null,"properties":{"species":"Comma","note":"a \"tail\"\n\tend 🦋"}}]}`), Options{})
	assert.Equal(t, []string{
		"count|note|species|sure|decimalLatitude|decimalLongitude",
		"3||Peacock|true|52.4796848|0.1336969",
		"|a \"tail\"\n\tend 🦋|Comma",
	}, texts(rowsOf(t, b.Sheets()[0])))
}

func TestGeoJSONTroubles(t *testing.T) {
	for name, text := range map[string]string{
		"other JSON":   `{"type":"Topology","objects":{}}`,
		"broken off":   `{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"a":"b"}`,
		"no features":  `{"type":"FeatureCollection","features":[]}`,
		"no list":      `{"type":"FeatureCollection","features":{}}`,
		"wrong values": `{"type":"FeatureCollection","features":[{"type":"Feature","properties":[1]}]}`,
	} {
		t.Run(name, func(t *testing.T) { sentences(t, failure(t, write(t, "map.geojson", text), Options{})) })
	}
}
