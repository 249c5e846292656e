package places

import (
	"fmt"
	"math"

	"fieldfare/gridref"
)

// slip is a reference that lies where the place is said to be, and differs
// from the one written by a single slip of the pen.
type slip struct {
	meant gridref.Reading
	// how says what was mistaken, as a sentence without its end.
	how string
}

const (
	oneFigure  = "One figure may be wrong"
	twoFigures = "Two neighbouring figures may be exchanged"
	twoHalves  = "The easting and the northing may be exchanged"
	oneLetter  = "One letter may be wrong"
	wrongSign  = "East and west may be exchanged"
)

// slipTo finds the reference within the tolerance of the place, in metres,
// that a single slip would have turned into the written one; the nearest,
// where there are several. Which slips are made is common practice, no source.
func slipTo(place, written gridref.Reading, tolerance int) (slip, bool) {
	var best slip
	nearest := math.Inf(1)
	try := func(meant gridref.Reading, how string) {
		apart := Apart(place, meant)
		if apart > float64(tolerance) {
			return
		}
		// Of those that touch the place the one at its middle is the likeliest.
		if d := onSphere(place.Centre(), meant.Centre()); d < nearest {
			best, nearest = slip{meant, how}, d
		}
	}
	if written.Geographic() {
		slipsOfDegrees(written, try)
	} else {
		slipsOfSquare(place, written.Square, func(q gridref.Square, how string) {
			if q != written.Square && q.Valid() {
				try(gridref.Reading{Square: q}, how)
			}
		})
	}
	return best, !math.IsInf(nearest, 1)
}

// sentence says what the slip may have been.
func (s slip) sentence() string {
	return fmt.Sprintf("%s: %s would lie there.", s.how, s)
}

// String is the reference that may have been meant.
func (s slip) String() string {
	if s.meant.Geographic() {
		return fmt.Sprintf("%.5f, %.5f", s.meant.Place.Lat, s.meant.Place.Lon)
	}
	return s.meant.Square.String()
}

// hundred is the side in metres of the squares that have letters.
const hundred = 100_000

func slipsOfSquare(place gridref.Reading, q gridref.Square, try func(gridref.Square, string)) {
	finest := q.Size
	switch q.Size {
	case 2_000, 5_000: // written with letters behind the figures of the hectad
		finest = 10_000
	}
	axes := [2]func(gridref.Square, int32) gridref.Square{
		func(q gridref.Square, d int32) gridref.Square { q.Easting += d; return q },
		func(q gridref.Square, d int32) gridref.Square { q.Northing += d; return q },
	}
	for i, at := range [2]int32{q.Easting, q.Northing} {
		for p := finest; p < hundred; p *= 10 {
			have := at / p % 10
			for figure := range int32(10) {
				try(axes[i](q, (figure-have)*p), oneFigure)
			}
			if before := at / (10 * p) % 10; 10*p < hundred {
				try(axes[i](q, (before-have)*p+(have-before)*10*p), twoFigures)
			}
		}
	}
	half := (q.Northing - q.Easting) % hundred
	try(axes[1](axes[0](q, half), -half), twoHalves)
	if place.Geographic() || place.Square.Grid != q.Grid {
		return
	}
	east, north := place.Square.Easting-place.Square.Easting%hundred, place.Square.Northing-place.Square.Northing%hundred
	there := gridref.Square{Grid: q.Grid, Easting: east + q.Easting%hundred, Northing: north + q.Northing%hundred, Size: q.Size}
	if there.Valid() && lettersApart(there.String(), q.String()) == 1 {
		try(there, oneLetter)
	}
	if q.Size == 2_000 { // another tetrad of the hectad
		there := q
		there.Easting += place.Square.Easting%10_000/q.Size*q.Size - q.Easting%10_000
		there.Northing += place.Square.Northing%10_000/q.Size*q.Size - q.Northing%10_000
		try(there, oneLetter)
	}
}

// lettersApart counts the places in which the letters before the figures
// differ.
func lettersApart(a, b string) int {
	n := 0
	for i := 0; i < min(len(a), len(b)) && a[i] >= 'A'; i++ {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}

// slipsOfDegrees tries a longitude on the other side of Greenwich, and other
// figures, down to the third decimal: what comes behind it makes no hundred
// metres.
func slipsOfDegrees(written gridref.Reading, try func(gridref.Reading, string)) {
	moved := func(lat, lon float64) gridref.Reading {
		r := written
		r.Place.Lat, r.Place.Lon = lat, lon
		return r
	}
	lat, lon := written.Place.Lat, written.Place.Lon
	try(moved(lat, -lon), wrongSign)
	for _, p := range []float64{10, 1, 0.1, 0.01, 0.001} {
		for figure := range 10 {
			try(moved(otherFigure(lat, p, figure), lon), oneFigure)
			try(moved(lat, otherFigure(lon, p, figure)), oneFigure)
		}
	}
}

// otherFigure is the number of degrees with the figure at place p.
func otherFigure(degrees, p float64, figure int) float64 {
	have := math.Mod(math.Floor(math.Abs(degrees)/p+1e-9), 10)
	return degrees + math.Copysign(1, degrees)*(float64(figure)-have)*p
}
