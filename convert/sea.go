package convert

import "fieldfare/gridref"

// atSea tells whether a latitude and longitude lie in the sea around Britain
// and Ireland, by the 100 km squares of the two grids that have no land, or at
// the origin of all coordinates, where a missing value ends up. A reference in
// such a square is held while it is read.
func atSea(r gridref.Reading) bool {
	if !r.Geographic() {
		return false
	}
	p := r.Place
	if p.Lat > -1 && p.Lat < 1 && p.Lon > -1 && p.Lon < 1 {
		return true
	}
	// The continent begins south-east of a line through the Strait of Dover,
	// and the Channel Islands lie south of 50 degrees.
	if p.Lat < 50 || p.Lat > 61.5 || p.Lon < -11.5 || p.Lon > 3 || p.Lat < 51.5 && p.Lon > 1.6 {
		return false
	}
	for _, grid := range [...]gridref.Grid{gridref.British, gridref.Irish} {
		if square, err := p.Square(grid, 1000); err == nil && square.HasLand() {
			return false
		}
	}
	return true
}
