package gridref

import (
	"math"
	"sync"
)

// Within the cover of OSTN15 the way from the ETRS89 plane to latitude and
// longitude, whose exact form is etrsGeographic, is taken from a table of
// polynomials: for each band of northings, one in the northing and the square of
// the easting. Both coordinates are analytic, and latitude is even and longitude
// odd in the distance from the central meridian, so that terms of the order
// below leave under a micrometre (a test holds them to it). It spares the sines,
// roots and divisions of the exact form.
const (
	seriesBand  = 25_000 // metres of northing
	seriesBands = coverNorth/seriesBand + 1
	seriesReach = 400_000 // metres of easting from the central meridian
	seriesTerms = 6
)

// bandSeries holds, for one band, the terms of latitude and of longitude from
// the central meridian over the easting, in degrees: by powers of the square of
// the easting, then of the northing from the band's middle, in units of
// seriesReach and of half a band.
type bandSeries struct {
	lat, lon [seriesTerms][5]float64
}

var etrsSeries = sync.OnceValue(func() *[seriesBands]bandSeries {
	var bands [seriesBands]bandSeries
	for i := range bands {
		bands[i] = newBandSeries(float64(i)*seriesBand + seriesBand/2)
	}
	return &bands
})

// newBandSeries interpolates the exact form at Chebyshev's nodes.
func newBandSeries(middle float64) (b bandSeries) {
	var squares [seriesTerms]float64
	var norths [5]float64
	for i := range squares {
		squares[i] = (1 + math.Cos(math.Pi*(float64(i)+0.5)/seriesTerms)) / 2
	}
	for j := range norths {
		norths[j] = math.Cos(math.Pi * (float64(j) + 0.5) / 5)
	}
	for i, square := range squares {
		x := math.Sqrt(square)
		for j, y := range norths {
			lat, lon := degrees(etrsGeographic(britishOnETRS.e0+x*seriesReach, middle+y*seriesBand/2))
			b.lat[i][j], b.lon[i][j] = lat, (lon-britishOnETRS.lon0*(180/math.Pi))/x
		}
		interpolate(norths[:], b.lat[i][:])
		interpolate(norths[:], b.lon[i][:])
	}
	for j := range norths {
		var lat, lon [seriesTerms]float64
		for i := range squares {
			lat[i], lon[i] = b.lat[i][j], b.lon[i][j]
		}
		interpolate(squares[:], lat[:])
		interpolate(squares[:], lon[:])
		for i := range squares {
			b.lat[i][j], b.lon[i][j] = lat[i], lon[i]
		}
	}
	return b
}

// interpolate puts the coefficients, from the constant up, of the polynomial
// that has the values at the nodes in their place (Newton's divided
// differences, multiplied out).
func interpolate(nodes, values []float64) {
	n := len(nodes)
	for order := 1; order < n; order++ {
		for i := n - 1; i >= order; i-- {
			values[i] = (values[i] - values[i-1]) / (nodes[i] - nodes[i-order])
		}
	}
	for at := n - 2; at >= 0; at-- {
		for i := at; i < n-1; i++ {
			values[i] -= nodes[at] * values[i+1]
		}
	}
}

// etrsDegrees turns a covered point of the ETRS89 plane, in metres, into latitude
// and longitude in degrees.
func etrsDegrees(east, north float64) (lat, lon float64) {
	const perBand, perReach = 1. / seriesBand, 1. / seriesReach
	band := int(north * perBand)
	b := &etrsSeries()[band]
	x, y := (east-400_000)*perReach, 2*(north*perBand-float64(band))-1
	y2, s := y*y, x*x
	for i := seriesTerms - 1; i >= 0; i-- {
		p, q := &b.lat[i], &b.lon[i]
		lat = lat*s + (p[0] + p[1]*y + y2*(p[2]+y*p[3]+y2*p[4]))
		lon = lon*s + (q[0] + q[1]*y + y2*(q[2]+y*q[3]+y2*q[4]))
	}
	return lat, x*lon - 2
}
