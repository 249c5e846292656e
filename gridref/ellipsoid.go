package gridref

import "math"

const degree = math.Pi / 180

// ellipsoid is a figure of the earth: semi-major axis in metres, flattening.
type ellipsoid struct{ a, f float64 }

var (
	// EPSG ellipsoids 7030, 7019, 7001 and 7002. Airy's figures are defined by
	// both axes: 6377563.396 and 6356256.909 m.
	wgs84        = ellipsoid{6378137, 1 / 298.257223563}
	grs80        = ellipsoid{6378137, 1 / 298.257222101}
	airy         = ellipsoid{6377563.396, (6377563.396 - 6356256.909) / 6377563.396}
	airyModified = ellipsoid{6377340.189, 1 / 299.3249646}
)

func (e ellipsoid) b() float64  { return e.a * (1 - e.f) }
func (e ellipsoid) e2() float64 { return e.f * (2 - e.f) }
func (e ellipsoid) n() float64  { return e.f / (2 - e.f) }

// radii returns the radii of curvature in the meridian and in the prime
// vertical at a latitude in radians, in metres.
func (e ellipsoid) radii(lat float64) (meridian, normal float64) {
	s := math.Sin(lat)
	w2 := 1 - e.e2()*s*s
	normal = e.a / math.Sqrt(w2)
	return normal * (1 - e.e2()) / w2, normal
}

// geocentric is EPSG method 9602 at ellipsoidal height zero.
func (e ellipsoid) geocentric(lat, lon float64) (x, y, z float64) {
	sinLat, cosLat := math.Sincos(lat)
	sinLon, cosLon := math.Sincos(lon)
	nu := e.a / math.Sqrt(1-e.e2()*sinLat*sinLat)
	return nu * cosLat * cosLon, nu * cosLat * sinLon, nu * (1 - e.e2()) * sinLat
}

// geographic is the reverse of EPSG method 9602 after Bowring (1976), which
// is exact to a nanometre for points near the ellipsoid.
func (e ellipsoid) geographic(x, y, z float64) (lat, lon float64) {
	a, b, e2 := e.a, e.b(), e.e2()
	p := math.Sqrt(x*x + y*y)
	// The parametric latitude's sine and cosine, without an angle.
	s, c := z*a, p*b
	h := 1 / math.Sqrt(s*s+c*c)
	s, c = s*h, c*h
	lat = math.Atan2(z+e2/(1-e2)*b*s*s*s, p-e2*a*c*c*c)
	return lat, math.Atan2(y, x)
}
