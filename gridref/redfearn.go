package gridref

import "math"

// Ordnance Survey defines the ETRS89 plane of OSTN15 by Redfearn's series,
// which it cuts off after the sixth power of the longitude ("A guide to
// coordinate systems in Great Britain", annexe C). West of the Hebrides that
// is 2 mm away from the true projection. To agree with the published points
// there, the first terms left out are taken off the true one.

// redfearnReach is the distance from the central meridian, in metres, within
// which those terms are below 0.01 mm.
const redfearnReach = 180_000

// redfearnRest returns the terms of easting and northing that the published
// series leaves out, in metres, at the sine and cosine of a latitude and a
// longitude from the central meridian in radians.
func redfearnRest(sin, cos, lon float64) (east, north float64) {
	const secondEccentricity2 = 0.00673949677548
	nu := britishOnETRS.k0 * grs80.a / math.Sqrt(1-grs80.e2()*sin*sin)
	c2 := cos * cos
	t2 := sin * sin / c2
	eta2 := secondEccentricity2 * c2
	l2 := lon * lon
	c5l6 := c2 * c2 * cos * l2 * l2 * l2
	east = nu / 5040 * c5l6 * c2 * lon * (61 + t2*(-479+t2*(179-t2)))
	north = nu * sin * c5l6 * (eta2*(270-330*t2)/720 + c2*l2/40320*(1385+t2*(-3111+t2*(543-t2))))
	return east, north
}

// etrsPlane is the published projection to the ETRS89 plane.
func etrsPlane(lat, lon float64) (east, north float64) {
	m := &britishOnETRS
	east, north = m.project(lat, lon)
	if math.Abs(east-m.e0) > redfearnReach {
		sin, cos := math.Sincos(lat)
		e, n := redfearnRest(sin, cos, lon-m.lon0)
		return east - e, north - n
	}
	return east, north
}

// etrsGeographic is its exact reverse.
func etrsGeographic(east, north float64) (lat, lon float64) {
	m := &britishOnETRS
	lat, lon, sin, cos := m.unprojectTrig(east, north)
	if math.Abs(east-m.e0) > redfearnReach {
		e, n := redfearnRest(sin, cos, lon)
		// Millimetres, turned by the convergence of the meridians.
		turn := lon * sin
		e, n = e+turn*n, n-turn*e
		lat += n / grs80.a
		lon += e / (grs80.a * cos)
	}
	return lat, m.lon0 + lon
}
