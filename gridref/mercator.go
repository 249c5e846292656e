package gridref

import "math"

// mercator is a transverse Mercator projection by Krüger's series in the
// third flattening, to the fourth order (Karney 2011, equations 7 to 36; the
// series from geographic to conformal latitude is that of Snyder, "Map
// Projections: A Working Manual", equation 3-5, in the same form). The terms
// left out are below a micrometre within 4 degrees of the central meridian,
// the area of every grid here.
//
// Its speed comes from one sine and cosine of each angle given: every other
// angle is a small distance from one that is known, and has a short series.
type mercator struct {
	lon0      float64 // central meridian, radians
	e0, n0    float64 // false origin; n0 counts from the equator
	k0        float64 // scale on the central meridian
	radius    float64 // k0 times the rectifying radius, metres
	perRadius float64

	forward, inverse      sines
	conformal, geographic sines // from one latitude to the other
}

// newMercator makes the projection from its EPSG parameters (method 9807):
// degrees, scale, metres.
func newMercator(e ellipsoid, lat0, lon0, k0, e0, n0 float64) mercator {
	n := e.n()
	n2, n3, n4 := n*n, n*n*n, n*n*n*n
	m := mercator{
		lon0:   lon0 * degree,
		e0:     e0,
		n0:     n0,
		k0:     k0,
		radius: k0 * e.a / (1 + n) * (1 + n2/4 + n4/64 + n2*n4/256),
		forward: newSines(
			n/2-2*n2/3+5*n3/16+41*n4/180,
			13*n2/48-3*n3/5+557*n4/1440,
			61*n3/240-103*n4/140,
			49561*n4/161280,
		),
		inverse: newSines(
			n/2-2*n2/3+37*n3/96-n4/360,
			n2/48+n3/15-437*n4/1440,
			17*n3/480-37*n4/840,
			4397*n4/161280,
		),
		conformal: newSines(
			-2*n+2*n2/3+4*n3/3-82*n4/45,
			5*n2/3-16*n3/15-13*n4/9,
			-26*n3/15+34*n4/21,
			1237*n4/630,
		),
		geographic: newSines(
			2*n-2*n2/3-2*n3+116*n4/45,
			7*n2/3-8*n3/5-227*n4/45,
			56*n3/15-136*n4/35,
			4279*n4/630,
		),
	}
	m.perRadius = 1 / m.radius
	_, origin := m.project(lat0*degree, m.lon0)
	m.n0 += n0 - origin
	return m
}

// project turns latitude and longitude, in radians, into metres.
func (m *mercator) project(lat, lon float64) (east, north float64) {
	sin, cos := math.Sincos(lat)
	turn := m.conformal.real(2*sin*cos, cos*cos-sin*sin)
	s, c := smallSincos(turn)
	sinChi, cosChi := sin*c+cos*s, cos*c-sin*s
	sinLon, cosLon := math.Sincos(lon - m.lon0)
	tanhEta := cosChi * sinLon
	cosh := 1 / math.Sqrt(sinChi*sinChi+cosChi*cosLon*cosChi*cosLon)
	sinh, sinXi, cosXi := tanhEta*cosh, sinChi*cosh, cosChi*cosLon*cosh

	var xi, eta float64
	if beside := sinXi * cosChi * sinLon * sinLon / (1 + cosLon); cosLon > 0 && math.Abs(beside) < 0.02 && math.Abs(tanhEta) < 0.12 {
		// The sine of the angle between chi and xi.
		xi, eta = lat+turn+smallAsin(beside), smallAtanh(tanhEta)
	} else { // far from the central meridian
		xi, eta = math.Atan2(sinChi, cosChi*cosLon), math.Asinh(sinh)
	}
	dXi, dEta := m.forward.sum(2*sinXi*cosXi, cosXi*cosXi-sinXi*sinXi, 2*sinh*cosh, 1+2*sinh*sinh)
	return m.e0 + m.radius*(eta+dEta), m.n0 + m.radius*(xi+dXi)
}

// unproject turns metres into latitude and longitude, in radians.
func (m *mercator) unproject(east, north float64) (lat, lon float64) {
	lat, lon, _, _ = m.unprojectTrig(east, north)
	return lat, m.lon0 + lon
}

// unprojectTrig returns the latitude, the longitude from the central meridian,
// and the sine and cosine of the latitude to a few parts in a million.
func (m *mercator) unprojectTrig(east, north float64) (lat, lon, sinLat, cosLat float64) {
	xi, eta := (north-m.n0)*m.perRadius, (east-m.e0)*m.perRadius
	sin, cos := math.Sincos(xi)
	sinh, cosh := sinhCosh(eta)
	dXi, dEta := m.inverse.sum(2*sin*cos, cos*cos-sin*sin, 2*sinh*cosh, 1+2*sinh*sinh)
	s, c := smallSincos(dXi)
	sh, ch := smallSinhCosh(dEta)
	sin, cos = sin*c-cos*s, cos*c+sin*s
	sinh, cosh = sinh*ch-cosh*sh, cosh*ch-sinh*sh

	// Sine and cosine of the conformal latitude chi.
	p, perCosh := math.Sqrt(sinh*sinh+cos*cos), 1/cosh
	sinChi, cosChi := sin*perCosh, p*perCosh
	if beside := sinChi * sinh * sinh / (p + cos); cos > 0 && math.Abs(beside) < 0.02 && math.Abs(sinh) < 0.12*cos {
		// The sine of the angle between xi and chi.
		lat = xi - dXi - smallAsin(beside)
		lon = smallAtan(sinh / cos)
	} else { // far from the central meridian, or beyond the pole
		lat = math.Atan(sin / p)
		lon = math.Atan2(sinh, cos)
	}
	turn := m.geographic.real(2*sinChi*cosChi, cosChi*cosChi-sinChi*sinChi)
	return lat + turn, lon, sinChi + turn*cosChi, cosChi - turn*sinChi
}

// leastScale is a lower bound of the scale over a strip of eastings. The
// largest radius of curvature of the ellipsoid makes it one.
func (m *mercator) leastScale(west, east float64) float64 {
	const polarRadius = 6399600
	x := 0.0
	if west > m.e0 {
		x = west - m.e0
	} else if east < m.e0 {
		x = m.e0 - east
	}
	x /= polarRadius
	return m.k0 * (1 + x*x/2)
}
