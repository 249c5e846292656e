// Package gridline answers lines of places: grid references to latitude and
// longitude with their uncertainty, and back.
package gridline

import (
	"fmt"
	"math"
	"strings"

	"fieldfare/convert/lines"
	"fieldfare/convert/reading"
	"fieldfare/gridref"
)

// Options say which way to go and how far.
type Options struct {
	// ToGridref makes references of latitude and longitude.
	ToGridref bool
	// Size is the side of the squares wanted, in metres; 0 keeps what is known.
	Size int32
	// Point takes a full easting and northing as a point, not as the square
	// metre around it, and gives one back for latitude and longitude.
	Point bool
}

// The columns after the value's own, in order.
const (
	colState = iota
	colGrid
	colReference
	colEasting
	colNorthing
	colSize
	colLatitude
	colLongitude
	colUncertainty
	colMessage
)

const places = 7 // decimals of latitude and longitude

var header = []string{"value", "state", "grid", "reference", "easting", "northing", "size_m",
	"decimalLatitude", "decimalLongitude", "coordinateUncertaintyInMeters", "message"}

// Table returns the answers to lines of places.
func Table(o Options) lines.Table {
	return lines.Table{Header: header, Read: o.read, Say: o.say}
}

// answer is one place worked out.
type answer struct {
	state   reading.State
	square  gridref.Square
	plane   gridref.Plane // an exact position; its Grid is NoGrid for none
	point   gridref.Point
	message string
}

func (o Options) read(value string, row *lines.Row) {
	a, err := o.answer(value)
	row.Text(a.state.String())
	if err != nil {
		message := err.Error()
		if f, ok := err.(*gridref.Fault); ok && len(f.Suggestions) > 0 {
			message += " Perhaps " + strings.Join(f.Suggestions, " or ") + "?"
		}
		row.Text("")
		row.Text("")
		for range colMessage - colEasting {
			row.NoNumber()
		}
		row.Text(message)
		return
	}
	a.place(row)
	row.Decimal(a.point.Lat, places)
	row.Decimal(a.point.Lon, places)
	row.Metres(a.point.Uncertainty)
	row.Text(a.message)
}

// place fills the columns of the grid.
func (a *answer) place(row *lines.Row) {
	if a.square.Grid == gridref.NoGrid {
		row.Text("WGS84")
		row.Text("")
		row.NoNumber()
		row.NoNumber()
		row.NoNumber()
		return
	}
	row.Text(a.square.Grid.String())
	row.Append(a.square.Append)
	if a.plane.Grid != gridref.NoGrid {
		row.Metres(a.plane.Easting)
		row.Metres(a.plane.Northing)
		row.Metres(0)
		return
	}
	row.Metres(float64(a.square.Easting))
	row.Metres(float64(a.square.Northing))
	row.Metres(float64(a.square.Size))
}

func (o Options) say(dst []byte, value string, row *lines.Row) []byte {
	if value != "" {
		dst = append(append(dst, value...), ": "...)
	}
	state, message := row.Field(colState), row.Field(colMessage)
	if string(state) != reading.Fair.String() {
		dst = append(append(dst, state...), ": "...)
	}
	if lat := row.Field(colLatitude); len(lat) > 0 {
		if ref := row.Field(colReference); len(ref) > 0 {
			dst = append(append(dst, ref...), " is "...)
		}
		dst = append(append(dst, lat...), ", "...)
		dst = append(append(dst, row.Field(colLongitude)...), " within "...)
		dst = append(append(dst, row.Field(colUncertainty)...), " m"...)
		if len(message) > 0 {
			dst = append(dst, ". "...)
		}
	}
	return append(dst, message...)
}

// answer works one value out.
func (o Options) answer(value string) (answer, error) {
	text, stated, err := o.uncertainty(value)
	if err != nil {
		return answer{state: reading.Held}, err
	}
	r, err := gridref.Parse(text)
	if err != nil {
		return answer{state: reading.Held}, err
	}
	if stated > 0 && r.Geographic() {
		r.Place.Uncertainty, r.Stated = stated, stated
	}
	a := answer{square: r.Square, message: r.Note}
	if r.Doubt.Code != "" && !(o.Point && r.Doubt.Code == gridref.PairRounded) {
		a.state, a.message = reading.Query, r.Doubt.Message
	}
	switch {
	case r.Geographic() && (o.ToGridref || o.Size > 0):
		err = a.toGrid(r.Place, o)
	case o.Point && r.Pair.Grid != gridref.NoGrid:
		a.plane, a.point = r.Pair, r.Pair.Point()
		if a.state == reading.Fair {
			a.message = ""
		}
	default:
		a.point = r.Centre()
		err = a.coarsen(o.Size, r.Stated)
	}
	if err != nil {
		return answer{state: reading.Held}, err
	}
	return a, nil
}

// toGrid makes a reference of latitude and longitude.
func (a *answer) toGrid(p gridref.Point, o Options) error {
	grid := p.Serving()
	var err error
	if o.Size > 0 {
		a.square, err = p.Square(grid, o.Size)
	} else {
		a.square, err = p.Smallest(grid)
	}
	switch {
	case err == gridref.ErrTooRough:
		return &gridref.Fault{Code: "too-rough", Message: fmt.Sprintf("An uncertainty of %.0f m is larger than a square of 100 km; no reference can say that.", p.Uncertainty)}
	case err == gridref.ErrSize:
		return &gridref.Fault{Code: "no-such-size", Message: fmt.Sprintf("The %s grid has no squares of %d m.", grid, o.Size)}
	case err != nil:
		return &gridref.Fault{Code: "outside", Message: "The place lies outside the grid."}
	}
	if o.Point {
		a.plane, a.point = p.Plane(grid), p
		return nil
	}
	a.point = a.square.Point()
	if a.point.Uncertainty < p.Uncertainty {
		a.ask(fmt.Sprintf("The square of %d m claims more than is known: the place is uncertain by %s m.", o.Size, plain(p.Uncertainty)))
	}
	return nil
}

// coarsen widens a square to the size asked for. An uncertainty stated beside
// the smaller square still counts, from the centre of the larger one.
func (a *answer) coarsen(size int32, stated float64) error {
	if size == 0 || a.square.Grid == gridref.NoGrid {
		return nil
	}
	if size < a.square.Size {
		a.ask(fmt.Sprintf("%s is a square of %d m, and nothing is known of a smaller one.", a.square, a.square.Size))
		return nil
	}
	square, err := a.square.Coarsen(size)
	if err != nil {
		return &gridref.Fault{Code: "no-such-size", Message: fmt.Sprintf("%s does not lie in one square of %d m on its grid.", a.square, size)}
	}
	if square != a.square {
		from, to := a.square.Centre(), square.Centre()
		a.square, a.point = square, square.Point()
		if stated > 0 {
			moved := math.Hypot(from.Easting-to.Easting, from.Northing-to.Northing)
			a.point.Uncertainty = max(a.point.Uncertainty, math.Ceil(stated+moved))
		}
	}
	return nil
}

func (a *answer) ask(message string) {
	a.state = max(a.state, reading.Query)
	if a.message != "" {
		message = a.message + " " + message
	}
	a.message = message
}

// plain writes metres without needless zeros.
func plain(metres float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", metres), ".0") }
