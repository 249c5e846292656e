package gridref

import "math"

// Point is a place on WGS84: latitude and longitude in degrees, and the radius
// in metres within which the place lies (Darwin Core's
// coordinateUncertaintyInMeters).
type Point struct {
	Lat, Lon, Uncertainty float64
}

// Point returns the centre of the square with the radius of the point-radius
// method: it reaches the farthest corner, and includes the accuracy of the
// transformation. The radius is rounded up to 0.1 m below 100 m, and to a
// metre from there.
func (s Square) Point() Point {
	lat, lon, via := s.Centre().geographic()
	return Point{lat, lon, s.radius(via)}
}

// Transformation returns how the square's centre comes to WGS84.
func (s Square) Transformation() Transformation {
	switch s.Grid {
	case British:
		c := s.Centre()
		if _, _, ok := fromBritish(c.Easting, c.Northing); ok {
			return OSTN15
		}
		return HelmertOSGB36
	case Irish:
		return HelmertIrish
	}
	return NoDatumChange
}

// radius bounds the distance on the ellipsoid from the centre to any point of
// the square. The straight line on the grid is at least as long on the
// ground as the geodesic, and its length there is the integral of 1/scale.
func (s Square) radius(via Transformation) float64 {
	size := float64(s.Size)
	west := float64(s.Easting)
	reach := size * (math.Sqrt2 / 2) / s.Grid.leastScale(west, west+size)
	accuracy := via.Accuracy()
	if via == OSTN15 && s.leavesCover() {
		accuracy += HelmertOSGB36.Accuracy()
	}
	return roundUp(reach*(1+via.stretch()) + accuracy)
}

// leavesCover reports whether a part of a British square may lie outside the
// cover of OSTN15, whose shifts run from 82 to 111 m east and from -84 to
// -43 m north.
func (s Square) leavesCover() bool {
	return s.Easting < 112 || s.Easting+s.Size > 700_082 || s.Northing+s.Size > 1_249_915
}

// Point returns the position on WGS84. Its uncertainty is that of the
// transformation alone, at least 0.1 m.
func (p Plane) Point() Point {
	lat, lon, via := p.geographic()
	return Point{lat, lon, roundUp(max(via.Accuracy(), 0.1))}
}

// roundUp rounds metres up to what is worth stating.
func roundUp(m float64) float64 {
	if m < 100 {
		return math.Ceil(m*10-1e-9) / 10
	}
	return math.Ceil(m - 1e-9)
}

// Plane returns the point's position on a grid, in metres, whether or not the
// grid serves that part of the world. UTM and UPS grow inexact far from their
// own zone.
func (p Point) Plane(g Grid) Plane { return g.plane(p.Lat, p.Lon) }

// Square returns the standard square of a side, in metres, on a grid that
// holds the point. The error is [ErrSize] or [ErrOutside].
func (p Point) Square(g Grid, size int32) (Square, error) {
	return p.Plane(g).Square(size)
}

// Smallest returns the smallest standard square on a grid that holds the
// point and does not claim more than its uncertainty: the square's own radius
// is at least as large. A point made from a square gives that square again; an
// uncertainty of 0 counts as exact. The error is [ErrOutside] or [ErrTooRough].
func (p Point) Smallest(g Grid) (Square, error) {
	plane := p.Plane(g)
	for _, size := range sizes {
		if !g.writes(size) {
			continue
		}
		s, err := plane.Square(size)
		if err != nil {
			return Square{}, err
		}
		if s.radius(s.Transformation()) >= p.Uncertainty {
			return s, nil
		}
	}
	return Square{}, ErrTooRough
}

// distance is that on the ellipsoid in metres, for places some kilometres
// apart: the radii of curvature are those midway.
func (p Point) distance(q Point) float64 {
	lat := (p.Lat + q.Lat) / 2 * degree
	meridian, normal := wgs84.radii(lat)
	return math.Hypot(meridian*(p.Lat-q.Lat)*degree, normal*math.Cos(lat)*(p.Lon-q.Lon)*degree)
}
