package gridref

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The table of polynomials keeps to the exact form within 20 micrometres, most
// of it where the first terms left out of the published series begin to count
// (see redfearnReach), and within one elsewhere.
func TestSeriesOfETRSPlane(t *testing.T) {
	random := rand.New(rand.NewPCG(101, 103))
	worst, near := 0.0, 0.0
	for range 100_000 {
		e, n := random.Float64()*coverEast, random.Float64()*coverNorth
		lat, lon := etrsDegrees(e, n)
		exactLat, exactLon := degrees(etrsGeographic(e, n))
		d := metresBetween(lat, lon, exactLat, exactLon)
		worst = max(worst, d)
		if e > 300_000 && e < 500_000 {
			near = max(near, d)
		}
	}
	assert.Less(t, worst, 20e-6)
	t.Logf("worst difference %.9f m, within 100 km of the meridian %.9f m", worst, near)
}
