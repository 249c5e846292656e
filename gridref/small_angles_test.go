package gridref

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The short series agree with the standard library's functions over the ranges
// that they are used in.
func TestSmallAngles(t *testing.T) {
	const bits = 1e-15
	for i := range 2001 {
		part := float64(i)/1000 - 1
		x := part * 0.005
		sin, cos := smallSincos(x)
		assert.InDelta(t, math.Sin(x), sin, bits*0.005)
		assert.InDelta(t, math.Cos(x), cos, bits)
		sinh, cosh := smallSinhCosh(x)
		assert.InDelta(t, math.Sinh(x), sinh, bits*0.005)
		assert.InDelta(t, math.Cosh(x), cosh, bits)
		assert.InDelta(t, math.Asin(part*0.02), smallAsin(part*0.02), bits*0.02)
		assert.InDelta(t, math.Atan(part*0.12), smallAtan(part*0.12), bits*0.12)
		assert.InDelta(t, math.Atanh(part*0.12), smallAtanh(part*0.12), bits*0.12)
		sinh, cosh = sinhCosh(part * 0.3)
		assert.InDelta(t, math.Sinh(part*0.3), sinh, bits)
		assert.InDelta(t, math.Cosh(part*0.3), cosh, bits)
	}
}

// The closed form of the conformal latitude (Karney 2011, equation 7) and of
// the spherical transverse Mercator, with the standard library's functions,
// gives the same as the short series; both sides of every limit are taken.
func TestMercatorAgainstClosedForm(t *testing.T) {
	random := rand.New(rand.NewPCG(61, 67))
	for _, m := range []*mercator{&britishOnETRS, &irishOnAiry, &utm} {
		ecc := math.Sqrt(wgs84.e2())
		switch m {
		case &britishOnETRS:
			ecc = math.Sqrt(grs80.e2())
		case &irishOnAiry:
			ecc = math.Sqrt(airyModified.e2())
		}
		for range randomPoints {
			lat, lon := (random.Float64()*2-1)*84*degree, (random.Float64()*2-1)*10*degree
			sin := math.Sin(lat)
			t0 := math.Sinh(math.Atanh(sin) - ecc*math.Atanh(ecc*sin))
			h := math.Hypot(t0, math.Cos(lon))
			xi, eta := math.Atan2(t0, math.Cos(lon)), math.Asinh(math.Sin(lon)/h)
			sin2, cos2 := math.Sincos(2 * xi)
			dXi, dEta := m.forward.sum(sin2, cos2, math.Sinh(2*eta), math.Cosh(2*eta))
			east, north := m.project(lat, m.lon0+lon)
			assert.InDelta(t, m.e0+m.radius*(eta+dEta), east, 1e-6)
			assert.InDelta(t, m.n0+m.radius*(xi+dXi), north, 1e-6)
			backLat, backLon := m.unproject(east, north)
			assert.InDelta(t, lat, backLat, 1e-11)
			assert.InDelta(t, lon, backLon-m.lon0, 1e-11)
		}
	}
}

// Nothing on the Irish side of the sea lies east of the quick bound.
func TestIrishEast(t *testing.T) {
	random := rand.New(rand.NewPCG(71, 73))
	for range 200_000 {
		p := Plane{British, random.Float64() * 300_000, random.Float64() * 800_000}
		q := p.Point()
		if !inIreland(q.Lat, q.Lon) {
			continue
		}
		band := int(p.Northing) / irishBand
		if assert.Less(t, band, len(irishEast), "%v", p) {
			assert.Less(t, p.Easting, float64(irishEast[band]), "%v", p)
		}
	}
}
