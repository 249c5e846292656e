package gridref

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Within the cover of OSTN15, where the true shift is known, the Helmert
// transformation keeps to the accuracy that is allowed for it outside.
func TestHelmertAccuracy(t *testing.T) {
	random := rand.New(rand.NewPCG(43, 47))
	worst := 0.0
	for range 20_000 {
		p := Plane{British, 1000 + random.Float64()*698_000, 1000 + random.Float64()*1_248_000}
		lat, lon, via := p.geographic()
		assert.Equal(t, OSTN15, via)
		roughLat, roughLon := britishOnAiry.unproject(p.Easting, p.Northing)
		roughLat, roughLon = degrees(osgbToWGS84.frame(airy, wgs84, roughLat, roughLon))
		worst = math.Max(worst, metresBetween(lat, lon, roughLat, roughLon))
	}
	assert.Less(t, worst, HelmertOSGB36.Accuracy())
	t.Logf("worst difference %.2f m", worst)
}

// The bound of the stretch holds for every pair of neighbours in the lattice.
func TestStretchOfShifts(t *testing.T) {
	lattice := shifts()
	var worst [4]float64
	apart := func(a, b uint16) float64 { return math.Abs(float64(a)-float64(b)) * 1e-6 }
	for i, s := range lattice {
		if (i+1)%shiftColumns > 0 {
			worst[0], worst[1] = max(worst[0], apart(s.e, lattice[i+1].e)), max(worst[1], apart(s.n, lattice[i+1].n))
		}
		if i+shiftColumns < len(lattice) {
			north := lattice[i+shiftColumns]
			worst[2], worst[3] = max(worst[2], apart(s.e, north.e)), max(worst[3], apart(s.n, north.n))
		}
	}
	assert.LessOrEqual(t, math.Sqrt(worst[0]*worst[0]+worst[1]*worst[1]+worst[2]*worst[2]+worst[3]*worst[3]), OSTN15.stretch())
}
