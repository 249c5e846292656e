package gridref

import "strconv"

// Grid names a plane grid. The zero value is none.
type Grid uint8

// The named grids. UTM zones are made by [UTM].
const (
	NoGrid Grid = 0
	// British is the British National Grid, EPSG:27700.
	British Grid = 200
	// Irish is the Irish Grid, EPSG:29903.
	Irish Grid = 201
	// ChannelIslands is the WA and WV squares of UTM zone 30 north on WGS84,
	// EPSG:32630, written without the zone.
	ChannelIslands Grid = 202
	// PolarNorth and PolarSouth are the Universal Polar Stereographic grids,
	// EPSG:32661 and EPSG:32761.
	PolarNorth Grid = 203
	PolarSouth Grid = 204
)

// UTM returns the grid of a UTM zone, 1 to 60, on WGS84: EPSG:326zz in the
// north and EPSG:327zz in the south. Any other zone gives NoGrid.
func UTM(zone int, south bool) Grid {
	if zone < 1 || zone > 60 {
		return NoGrid
	}
	if south {
		zone += 60
	}
	return Grid(zone)
}

// Zone returns the UTM zone, 1 to 60, or 0 where the grid has none.
func (g Grid) Zone() int {
	switch {
	case g >= 1 && g <= 60:
		return int(g)
	case g >= 61 && g <= 120:
		return int(g) - 60
	case g == ChannelIslands:
		return 30
	}
	return 0
}

// South reports whether the grid belongs to the southern hemisphere.
func (g Grid) South() bool { return g >= 61 && g <= 120 || g == PolarSouth }

// lettered reports whether references on the grid begin with letters of its
// own, and so have tetrads and quadrants.
func (g Grid) lettered() bool { return g >= British && g <= ChannelIslands }

// String returns a short name: "British", "Irish", "Channel Islands",
// "UTM 31N", "UPS north"; it is empty for NoGrid.
func (g Grid) String() string {
	switch g {
	case British:
		return "British"
	case Irish:
		return "Irish"
	case ChannelIslands:
		return "Channel Islands"
	case PolarNorth:
		return "UPS north"
	case PolarSouth:
		return "UPS south"
	}
	if zone := g.Zone(); zone > 0 {
		if g.South() {
			return "UTM " + strconv.Itoa(zone) + "S"
		}
		return "UTM " + strconv.Itoa(zone) + "N"
	}
	return ""
}

// SRS returns the grid's EPSG code in the form that Darwin Core's verbatimSRS
// takes: "EPSG:27700".
func (g Grid) SRS() string {
	switch g {
	case British:
		return "EPSG:27700"
	case Irish:
		return "EPSG:29903"
	case PolarNorth:
		return "EPSG:32661"
	case PolarSouth:
		return "EPSG:32761"
	}
	zone := g.Zone()
	switch {
	case zone == 0:
		return ""
	case g.South():
		return "EPSG:" + strconv.Itoa(32700+zone)
	}
	return "EPSG:" + strconv.Itoa(32600+zone)
}

// CoordinateSystem returns words for Darwin Core's verbatimCoordinateSystem.
func (g Grid) CoordinateSystem() string {
	switch {
	case g == British:
		return "British National Grid"
	case g == Irish:
		return "Irish Grid"
	case g == PolarNorth || g == PolarSouth:
		return "UPS"
	case g.Zone() > 0:
		return "UTM"
	}
	return ""
}
