package gridref

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ostn15Points are test points of Ordnance Survey's OSTN15 developer pack
// (OSTN15_OSGM15_TestInput and TestOutput, 2016).
var ostn15Points = []struct {
	name              string
	lat, lon          float64
	easting, northing float64
}{
	{"TP01", 49.92226393730, -6.29977752014, 91492.146, 11318.804},
	{"TP03", 50.43885825610, -4.10864563561, 250359.811, 62016.569},
	{"TP05", 50.93127937910, -1.45051433700, 438710.920, 114792.250},
	{"TP07", 51.37447025550, 1.44454730409, 639821.835, 169565.858},
	{"TP09", 51.48936564950, -0.11992557180, 530624.974, 178388.464},
	{"TP11", 51.89436637350, 0.89724327012, 599445.590, 225722.826},
	{"TP13", 52.25160951230, -0.91248956970, 474335.969, 262047.755},
	{"TP15", 52.96219109410, -1.19747655922, 454002.834, 340834.943},
	{"TP17", 53.41628516040, -4.28918069756, 247958.971, 393492.909},
	{"TP19", 53.77911025760, -3.04045490691, 331534.564, 431920.794},
	{"TP21", 54.08666318080, -4.63452168212, 227778.330, 468847.388},
	{"TP23", 54.32919541010, -4.38849118133, 244780.636, 495254.887},
	{"TP25", 54.97912273660, -1.61657685184, 424639.355, 565012.703},
	{"TP27", 55.92478265510, -3.29479219337, 319188.434, 670947.534},
	{"TP29", 57.13902518960, -2.04856030746, 397160.491, 805349.736},
	{"TP31", 57.81351838410, -8.57854456076, 9587.909, 899448.996},
	{"TP33", 58.51560361300, -6.26091455533, 151968.652, 966483.780},
	{"TP35", 59.03743871190, -3.21454001115, 330398.323, 1017347.016},
	{"TP37", 59.09671617400, -5.82799339844, 180862.461, 1029604.114},
	{"TP39", 59.85409913890, -1.27486910356, 440725.073, 1107878.448},
}

// metresBetween measures short distances well enough to tell millimetres.
func metresBetween(latA, lonA, latB, lonB float64) float64 {
	m, n := wgs84.radii(latA * degree)
	return math.Hypot((latA-latB)*degree*m, (lonA-lonB)*degree*n*math.Cos(latA*degree))
}

func TestPublishedOSTN15Points(t *testing.T) {
	// Half a millimetre is the rounding of the published figures.
	const tolerance = 0.0007
	for _, p := range ostn15Points {
		t.Run(p.name, func(t *testing.T) {
			plane := Point{Lat: p.lat, Lon: p.lon}.Plane(British)
			assert.InDelta(t, p.easting, plane.Easting, tolerance)
			assert.InDelta(t, p.northing, plane.Northing, tolerance)

			lat, lon, via := Plane{British, p.easting, p.northing}.geographic()
			require.Equal(t, OSTN15, via)
			assert.Less(t, metresBetween(p.lat, p.lon, lat, lon), tolerance)
		})
	}
}

func BenchmarkSquarePoint(b *testing.B) {
	shifts()
	s := Square{British, 545_300, 281_200, 100}
	b.ReportAllocs()
	var sum float64
	for b.Loop() {
		s.Easting = (s.Easting + 7919) % 600_000
		sum += s.Point().Lat
	}
	_ = sum
}

func BenchmarkUnpackShifts(b *testing.B) {
	for b.Loop() {
		unpackShifts()
	}
}
