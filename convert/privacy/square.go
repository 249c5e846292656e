package privacy

import (
	"math"
	"strconv"

	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/gridref"
)

// coarser are the sides of standard squares in metres, of which a record is
// blurred to the first that hides its place.
var coarser = [...]int32{100, 1000, 2000, 5000, 10_000, 100_000}

// square returns the square to which the record is blurred: the smallest
// standard square that is no smaller than asked for, and that holds the whole
// of what was recorded. A record that is rougher already stays as rough as it
// is.
func square(r *spool.Record) (gridref.Square, bool) {
	f := &r.Facts
	if !f.Placed {
		return gridref.Square{}, false
	}
	if f.Reference == "" {
		return around(gridref.Point{Lat: f.Latitude, Lon: f.Longitude, Uncertainty: float64(f.Radius)}, f.Blur)
	}
	reading, err := gridref.Parse(f.Reference)
	if err != nil {
		return gridref.Square{}, false
	}
	if reading.Square.Size >= f.Blur && gridref.Standard(reading.Square.Size) {
		return reading.Square, true
	}
	for _, size := range coarser {
		if size < f.Blur {
			continue
		}
		// Some sides do not nest in others, and some grids lack some sides.
		if s, err := reading.Square.Coarsen(size); err == nil {
			return s, true
		}
	}
	return gridref.Square{}, false
}

// around returns the square for a place given as a point.
func around(p gridref.Point, blur int32) (gridref.Square, bool) {
	grid := p.Serving()
	for _, size := range coarser {
		// A square smaller than the point's own uncertainty would claim more
		// than was recorded.
		if size < blur || float64(size)*math.Sqrt2/2 < p.Uncertainty {
			continue
		}
		if s, err := p.Square(grid, size); err == nil {
			return s, true
		}
	}
	return gridref.Square{}, false
}

// Fill gives an occurrence the place of a square.
func Fill(o *dwc.Occurrence, s gridref.Square) {
	p := s.Point()
	o.DecimalLatitude, o.DecimalLongitude = Degrees(p.Lat), Degrees(p.Lon)
	o.GeodeticDatum = "EPSG:4326"
	o.CoordinateUncertainty = strconv.FormatFloat(math.Ceil(p.Uncertainty), 'f', -1, 64)
	o.FootprintWKT, o.FootprintSRS = s.WKT(), "EPSG:4326"
	o.VerbatimCoordinates = s.String()
	o.VerbatimCoordSystem, o.VerbatimSRS = s.Grid.CoordinateSystem(), s.Grid.SRS()
}

// Degrees writes degrees with seven decimals, about a centimetre.
func Degrees(d float64) string { return strconv.FormatFloat(d, 'f', 7, 64) }
