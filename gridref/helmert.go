package gridref

import "math"

// helmert is a seven-parameter change of frame, EPSG method 9606 (position
// vector): p' = shift + scale (turn p). back is the exact inverse matrix.
type helmert struct {
	shift      [3]float64
	turn, back [9]float64
}

// newHelmert takes EPSG's units: metres, arc-seconds, parts per million.
func newHelmert(tx, ty, tz, rx, ry, rz, ppm float64) helmert {
	const second = degree / 3600
	m := 1 + ppm*1e-6
	rx, ry, rz = rx*second, ry*second, rz*second
	h := helmert{
		shift: [3]float64{tx, ty, tz},
		turn:  [9]float64{m, -m * rz, m * ry, m * rz, m, -m * rx, -m * ry, m * rx, m},
	}
	h.back = invert(h.turn)
	return h
}

func (h *helmert) apply(x, y, z float64) (float64, float64, float64) {
	m := &h.turn
	return h.shift[0] + m[0]*x + m[1]*y + m[2]*z,
		h.shift[1] + m[3]*x + m[4]*y + m[5]*z,
		h.shift[2] + m[6]*x + m[7]*y + m[8]*z
}

func (h *helmert) reverse(x, y, z float64) (float64, float64, float64) {
	m := &h.back
	x, y, z = x-h.shift[0], y-h.shift[1], z-h.shift[2]
	return m[0]*x + m[1]*y + m[2]*z, m[3]*x + m[4]*y + m[5]*z, m[6]*x + m[7]*y + m[8]*z
}

// invert returns the inverse of a 3 by 3 matrix by cofactors.
func invert(m [9]float64) [9]float64 {
	c := [9]float64{
		m[4]*m[8] - m[5]*m[7], m[2]*m[7] - m[1]*m[8], m[1]*m[5] - m[2]*m[4],
		m[5]*m[6] - m[3]*m[8], m[0]*m[8] - m[2]*m[6], m[2]*m[3] - m[0]*m[5],
		m[3]*m[7] - m[4]*m[6], m[1]*m[6] - m[0]*m[7], m[0]*m[4] - m[1]*m[3],
	}
	det := m[0]*c[0] + m[1]*c[3] + m[2]*c[6]
	for i := range c {
		c[i] /= det
	}
	return c
}

// frame moves latitude and longitude, in radians, from an old datum to WGS84.
func (h *helmert) frame(from, to ellipsoid, lat, lon float64) (float64, float64) {
	return to.geographic(h.apply(from.geocentric(lat, lon)))
}

// unframe moves them back, as published: at height zero on the new datum. With
// frame, which starts from height zero on the old one, it closes to a
// millimetre, not to nothing.
func (h *helmert) unframe(from, to ellipsoid, lat, lon float64) (float64, float64) {
	return from.geographic(h.reverse(to.geocentric(lat, lon)))
}

// radians and degrees of a pair.
func radians(lat, lon float64) (float64, float64) { return lat * degree, lon * degree }
func degrees(lat, lon float64) (float64, float64) {
	return lat * (180 / math.Pi), lon * (180 / math.Pi)
}
