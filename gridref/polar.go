package gridref

import "math"

// polar is the polar stereographic projection of UPS, EPSG method 9810
// (variant A), with UPS's scale 0.994 at the pole and false origin of
// 2000 km both ways. Its north form serves both poles.
const (
	polarScale  = 0.994
	polarOrigin = 2_000_000
)

// polarFactor is 2 a k0 / sqrt((1+e)^(1+e) (1-e)^(1-e)).
func polarFactor() (factor, ecc float64) {
	ecc = math.Sqrt(wgs84.e2())
	return 2 * wgs84.a * polarScale / math.Sqrt(math.Pow(1+ecc, 1+ecc)*math.Pow(1-ecc, 1-ecc)), ecc
}

// polarProject takes radians; south says which pole.
func polarProject(lat, lon float64, south bool) (east, north float64) {
	sign := 1.0
	if south {
		sign = -1
	}
	factor, ecc := polarFactor()
	sin := math.Sin(sign * lat)
	rho := factor * math.Exp(-(math.Atanh(sin) - ecc*math.Atanh(ecc*sin)))
	if sin >= 1 {
		rho = 0
	}
	sinLon, cosLon := math.Sincos(lon)
	return polarOrigin + rho*sinLon, polarOrigin - sign*rho*cosLon
}

func polarUnproject(east, north float64, south bool) (lat, lon float64) {
	sign := 1.0
	if south {
		sign = -1
	}
	factor, _ := polarFactor()
	x, y := east-polarOrigin, -sign*(north-polarOrigin)
	chi := math.Pi/2 - 2*math.Atan(math.Hypot(x, y)/factor)
	lat = chi + utm.geographic.real(math.Sincos(2*chi))
	if x == 0 && y == 0 {
		return sign * lat, 0
	}
	return sign * lat, math.Atan2(x, y)
}
