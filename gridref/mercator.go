package gridref

import "math"

// mercator is a transverse Mercator projection by Krüger's series in the
// third flattening, to the fourth order (Karney 2011, equations 8 to 36). The
// terms left out are below a micrometre within 4 degrees of the central
// meridian, the area of every grid here.
type mercator struct {
	lon0    float64 // central meridian, radians
	e0, n0  float64 // false origin; n0 counts from the equator
	k0      float64 // scale on the central meridian
	radius  float64 // k0 times the rectifying radius, metres
	ecc     float64 // first eccentricity
	forward [4]float64
	inverse [4]float64
	lat     [4]float64 // conformal to geographic latitude
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
		ecc:    math.Sqrt(e.e2()),
		forward: [4]float64{
			n/2 - 2*n2/3 + 5*n3/16 + 41*n4/180,
			13*n2/48 - 3*n3/5 + 557*n4/1440,
			61*n3/240 - 103*n4/140,
			49561 * n4 / 161280,
		},
		inverse: [4]float64{
			n/2 - 2*n2/3 + 37*n3/96 - n4/360,
			n2/48 + n3/15 - 437*n4/1440,
			17*n3/480 - 37*n4/840,
			4397 * n4 / 161280,
		},
		lat: [4]float64{
			2*n - 2*n2/3 - 2*n3 + 116*n4/45,
			7*n2/3 - 8*n3/5 - 227*n4/45,
			56*n3/15 - 136*n4/35,
			4279 * n4 / 630,
		},
	}
	_, origin := m.project(lat0*degree, m.lon0)
	m.n0 += n0 - origin
	return m
}

// project turns latitude and longitude, in radians, into metres.
func (m *mercator) project(lat, lon float64) (east, north float64) {
	sin := math.Sin(lat)
	// Tangent of the conformal latitude.
	t := math.Sinh(math.Atanh(sin) - m.ecc*math.Atanh(m.ecc*sin))
	sinLon, cosLon := math.Sincos(lon - m.lon0)
	h := math.Hypot(t, cosLon)
	xi := math.Atan2(t, cosLon)
	sinhEta := sinLon / h
	coshEta := math.Sqrt(1 + sinhEta*sinhEta)
	eta := math.Asinh(sinhEta)

	sinXi, cosXi := t/h, cosLon/h
	sin2, cos2 := 2*sinXi*cosXi, cosXi*cosXi-sinXi*sinXi
	sinh2, cosh2 := 2*sinhEta*coshEta, 1+2*sinhEta*sinhEta
	dXi, dEta := series(&m.forward, sin2, cos2, sinh2, cosh2)
	return m.e0 + m.radius*(eta+dEta), m.n0 + m.radius*(xi+dXi)
}

// unproject turns metres into latitude and longitude, in radians.
func (m *mercator) unproject(east, north float64) (lat, lon float64) {
	xi, eta := (north-m.n0)/m.radius, (east-m.e0)/m.radius
	sin, cos := math.Sincos(xi)
	ex := math.Exp(eta)
	sinh, cosh := 0.5*(ex-1/ex), 0.5*(ex+1/ex)
	dXi, dEta := series(&m.inverse, 2*sin*cos, cos*cos-sin*sin, 2*sinh*cosh, 1+2*sinh*sinh)

	// The corrections are below 0.001, so turning by them needs no more
	// trigonometry: three terms are exact to the last bit.
	x2, y2 := dXi*dXi, dEta*dEta
	s, c := dXi*(1-x2/6*(1-x2/20)), 1-x2/2*(1-x2/12)
	sh, ch := dEta*(1+y2/6*(1+y2/20)), 1+y2/2*(1+y2/12)
	sin, cos = sin*c-cos*s, cos*c+sin*s
	sinh, cosh = sinh*ch-cosh*sh, cosh*ch-sinh*sh

	// Sine and cosine of the conformal latitude, then its angle.
	p := math.Sqrt(sinh*sinh + cos*cos)
	sinChi, cosChi := sin/cosh, p/cosh
	lat = math.Atan(sin / p)
	if cos > 0 {
		lon = m.lon0 + math.Atan(sinh/cos)
	} else { // beyond the pole
		lon = m.lon0 + math.Atan2(sinh, cos)
	}

	s2, c2 := 2*sinChi*cosChi, cosChi*cosChi-sinChi*sinChi
	d, two := &m.lat, 2*c2
	b4 := d[3]
	b3 := d[2] + two*b4
	b2 := d[1] + two*b3 - b4
	b1 := d[0] + two*b2 - b3
	return lat + s2*b1, lon
}

// series sums c[j] sin(2(j+1)(xi + i eta)) by Clenshaw's rule and returns its
// real and imaginary parts. The arguments are the sines and cosines of twice
// the angles; unproject subtracts what project adds.
func series(c *[4]float64, sin2, cos2, sinh2, cosh2 float64) (re, im float64) {
	// Twice the cosine of the complex angle.
	ar, ai := 2*cos2*cosh2, -2*sin2*sinh2
	r4 := c[3]
	r3, i3 := c[2]+ar*r4, ai*r4
	r2, i2 := c[1]+ar*r3-ai*i3-r4, ar*i3+ai*r3
	r1, i1 := c[0]+ar*r2-ai*i2-r3, ar*i2+ai*r2-i3
	sr, si := sin2*cosh2, cos2*sinh2
	return sr*r1 - si*i1, sr*i1 + si*r1
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
