package gridref

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// dms is degrees, minutes and seconds in radians.
func dms(d, m, s float64) float64 { return (d + m/60 + s/3600) * degree }

// The worked examples are from IOGP Publication 373-7-2, Guidance Note 7-2,
// unless another source is named; the figures are from memory.

func TestTransverseMercatorExamples(t *testing.T) {
	t.Run("Guidance Note 7-2, 9807: OSGB 1936 / British National Grid", func(t *testing.T) {
		lat, lon := dms(50, 30, 0), dms(0, 30, 0)
		e, n := britishOnAiry.project(lat, lon)
		assert.InDelta(t, 577274.99, e, 0.01)
		assert.InDelta(t, 69740.50, n, 0.01)
		backLat, backLon := britishOnAiry.unproject(577274.99, 69740.50)
		assert.InDelta(t, lat, backLat, 2e-9)
		assert.InDelta(t, lon, backLon, 2e-9)
	})
	t.Run("Ordnance Survey, A guide to coordinate systems in Great Britain, annexe C", func(t *testing.T) {
		lat, lon := dms(52, 39, 27.2531), dms(1, 43, 4.5177)
		e, n := britishOnAiry.project(lat, lon)
		assert.InDelta(t, 651409.903, e, 0.002)
		assert.InDelta(t, 313177.270, n, 0.002)
	})
}

func TestGeographicGeocentricExample(t *testing.T) {
	// 9602, WGS 84: 53°48'33.820"N, 2°07'46.380"E, 73.0 m.
	const height = 73.0
	lat, lon := dms(53, 48, 33.820), dms(2, 7, 46.380)
	x, y, z := wgs84.geocentric(lat, lon)
	x += height * math.Cos(lat) * math.Cos(lon)
	y += height * math.Cos(lat) * math.Sin(lon)
	z += height * math.Sin(lat)
	assert.InDelta(t, 3771793.968, x, 0.001)
	assert.InDelta(t, 140253.342, y, 0.001)
	assert.InDelta(t, 5124304.349, z, 0.001)
	backLat, backLon := wgs84.geographic(3771793.968, 140253.342, 5124304.349)
	assert.InDelta(t, lat, backLat, 1e-10)
	assert.InDelta(t, lon, backLon, 1e-10)
}

func TestPositionVectorExample(t *testing.T) {
	// 9606, WGS 72 to WGS 84: dZ 4.5 m, rZ 0.554", dS 0.219 ppm.
	h := newHelmert(0, 0, 4.5, 0, 0, 0.554, 0.219)
	x, y, z := h.apply(3657660.66, 255768.55, 5201382.11)
	assert.InDelta(t, 3657660.78, x, 0.01)
	assert.InDelta(t, 255778.43, y, 0.01)
	assert.InDelta(t, 5201387.75, z, 0.01)
	x, y, z = h.reverse(x, y, z)
	assert.InDelta(t, 3657660.66, x, 1e-6)
	assert.InDelta(t, 255768.55, y, 1e-6)
	assert.InDelta(t, 5201382.11, z, 1e-6)
}

func TestPolarStereographicExample(t *testing.T) {
	// 9810 variant A, WGS 84 / UPS North: 73°N, 44°E.
	e, n := polarProject(dms(73, 0, 0), dms(44, 0, 0), false)
	assert.InDelta(t, 3320416.75, e, 0.01)
	assert.InDelta(t, 632668.43, n, 0.01)
	lat, lon := polarUnproject(3320416.75, 632668.43, false)
	assert.InDelta(t, dms(73, 0, 0), lat, 1e-8)
	assert.InDelta(t, dms(44, 0, 0), lon, 1e-8)
}

func TestUncertaintyOfFiguresGiven(t *testing.T) {
	// Wieczorek and others 2004, table of the uncertainty in metres that the
	// precision of coordinates alone causes, on WGS84; from memory.
	for _, tt := range []struct{ lat, precision, metres float64 }{
		{0, 1, 156904}, {0, 0.1, 15691}, {0, 0.01, 1570}, {0, 0.001, 157},
		{30, 1, 146962}, {60, 1, 124605}, {85, 1, 112109},
	} {
		assert.InEpsilon(t, tt.metres, uncertainty(tt.lat, tt.precision, tt.precision), 0.001, "%v", tt)
	}
	assert.Equal(t, 1.0, uncertainty(52, 1e-8, 1e-8), "never less than a metre")
}
