package convert

import (
	"fieldfare/gridref"
	"fieldfare/validate/land"
)

// atSea tells whether a place lies in the sea around Britain and Ireland, with
// no land in its hectad, or at the origin of all coordinates, where a missing
// value ends up. (A reference whose 100 km square has no land at all is held
// while it is read.)
func atSea(r gridref.Reading) bool {
	if !r.Geographic() {
		return r.Square.Grid == gridref.British && !land.Near(r.Square.Centre(), float64(r.Square.Size)/2)
	}
	p := r.Place
	if p.Lat > -1 && p.Lat < 1 && p.Lon > -1 && p.Lon < 1 {
		return true
	}
	if p.Lat < 49.5 || p.Lat > 61 || p.Lon < -9 || p.Lon > 2.5 {
		return false // beyond what the map was drawn for
	}
	return !land.Near(p.Plane(gridref.British), min(p.Uncertainty, 50_000))
}
