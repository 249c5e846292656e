package land_test

import (
	"testing"

	"fieldfare/gridref"
	"fieldfare/validate/land"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func near(t *testing.T, reference string) bool {
	r, err := gridref.Parse(reference)
	require.NoError(t, err, reference)
	return land.Near(r.Square.Centre(), float64(r.Square.Size)/2)
}

// The references are from memory of the maps.
func TestShores(t *testing.T) {
	for _, reference := range []string{
		"TL4588", "TF491012", "TF7445", "TG5207", "TM5493", "TR3241", "TV5895", "SY6768", "SW3425", "SW7011", "SS1444", "SV9010", "SV8807", "SM7308", "SH1222", "SC3875", "NX4605",
		"NX0199", "NU2438", "NT6599", "NF0999", "HP6117", "HT9738", "HZ2071", "HY7855", "NR7006", "TQ3080", "TL", "NY", "SM72", "TA4010",
	} {
		assert.True(t, near(t, reference), reference)
	}
}

func TestOpenSea(t *testing.T) {
	for _, reference := range []string{"TA9090", "TA7050", "TG8080", "TM9090", "SY1030", "SW1080", "SX8010", "NZ9090", "NO9010", "NK9090", "NF2090", "HY0090", "TV8090"} {
		assert.False(t, near(t, reference), reference)
	}
}

func TestBeyondTheGridNothingIsKnown(t *testing.T) {
	for _, p := range []gridref.Plane{{Easting: -5, Northing: 5000}, {Easting: 5e6, Northing: 5e5}, {Easting: 5e5, Northing: 13e5}, {Easting: 500, Northing: 500}} {
		assert.True(t, land.Near(p, 1000))
	}
}
