package gridref

import (
	"math"
	"strconv"
)

// Corners returns the square's corners on WGS84, from the south-west one
// counter-clockwise. Their uncertainty is not set.
func (s Square) Corners() [4]Point {
	e, n, size := float64(s.Easting), float64(s.Northing), float64(s.Size)
	var c [4]Point
	for i, at := range [4]Plane{{s.Grid, e, n}, {s.Grid, e + size, n}, {s.Grid, e + size, n + size}, {s.Grid, e, n + size}} {
		c[i].Lat, c[i].Lon, _ = at.geographic()
	}
	return c
}

// WKT returns the square's outline as a Well-Known Text polygon on WGS84,
// longitude before latitude, counter-clockwise and closed. The sides of a
// large square are curves on the ellipsoid, so each has a vertex wherever a
// straight side in degrees would leave it by over a metre. The longitudes of a
// square that lies across 180 degrees run on beyond it, so that the outline
// does not go round the world.
func (s Square) WKT() string {
	const places = 7
	b := []byte("POLYGON ((")
	// The departure grows with the square of the length: about 4 cm over 1 km
	// in these latitudes.
	steps := max(int(math.Ceil(math.Sqrt(float64(s.Size)*float64(s.Size)/2.5e7))), 1)
	e, n, size := float64(s.Easting), float64(s.Northing), float64(s.Size)
	_, middle, _ := s.Centre().geographic()
	vertex := func(de, dn float64) {
		lat, lon, _ := Plane{s.Grid, e + de*size, n + dn*size}.geographic()
		switch {
		case lon-middle > 180:
			lon -= 360
		case lon-middle < -180:
			lon += 360
		}
		b = strconv.AppendFloat(b, lon, 'f', places, 64)
		b = strconv.AppendFloat(append(b, ' '), lat, 'f', places, 64)
	}
	for i := range 4 * steps {
		along := float64(i%steps) / float64(steps)
		switch i / steps {
		case 0:
			vertex(along, 0)
		case 1:
			vertex(1, along)
		case 2:
			vertex(1-along, 1)
		case 3:
			vertex(0, 1-along)
		}
		b = append(b, ", "...)
	}
	vertex(0, 0)
	return string(append(b, "))"...))
}
