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

// A matrix times its inverse changes nothing, however far it turns.
func TestInvert(t *testing.T) {
	random := rand.New(rand.NewPCG(53, 59))
	for range 1000 {
		m := [9]float64{2, 0, 0, 0, 2, 0, 0, 0, 2}
		for i := range m {
			m[i] += random.Float64() - 0.5
		}
		inverse := invert(m)
		for row := range 3 {
			for col := range 3 {
				sum, want := 0.0, 0.0
				if row == col {
					want = 1
				}
				for k := range 3 {
					sum += m[3*row+k] * inverse[3*k+col]
				}
				assert.InDelta(t, want, sum, 1e-12)
			}
		}
	}
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
