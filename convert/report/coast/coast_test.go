package coast_test

import (
	"testing"

	"fieldfare/convert/report/coast"

	"github.com/stretchr/testify/assert"
)

// inside tells whether a place lies on an island of the outline.
func inside(lon, lat float64) bool {
	in := false
	for _, ring := range coast.Rings() {
		for i := range ring {
			a, b := ring[i], ring[(i+1)%len(ring)]
			if (a.Lat > lat) != (b.Lat > lat) && lon < (b.Lon-a.Lon)*(lat-a.Lat)/(b.Lat-a.Lat)+a.Lon {
				in = !in
			}
		}
	}
	return in
}

// Positions of towns and waters: from memory, to a hundredth of a degree.
func TestTownsAreOnLandAndSeasAreNot(t *testing.T) {
	for _, p := range []struct {
		name     string
		lon, lat float64
		land     bool
	}{
		{"Ely", 0.26, 52.40, true}, {"Birmingham", -1.90, 52.48, true}, {"Athlone", -7.94, 53.42, true},
		{"Douglas", -4.50, 54.16, true}, {"Stornoway", -6.39, 58.22, true}, {"Guernsey", -2.58, 49.46, true}, {"St Anne, Alderney", -2.20, 49.71, true},
		{"the Irish Sea", -5.0, 53.8, false}, {"the middle of the Wash", 0.35, 52.95, false}, {"the North Sea", 2.0, 55.0, false},
		{"the Channel", -1.0, 50.2, false},
	} {
		assert.Equal(t, p.land, inside(p.lon, p.lat), p.name)
	}
}
