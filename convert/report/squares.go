package report

import (
	"strconv"

	"fieldfare/gridref"
)

// squareCounts counts records by the square in which they are shown.
type squareCounts struct {
	hectads, tetrads map[gridref.Square]*squareCount
	// coarse are squares that are larger than what they are counted in, drawn
	// as they are.
	coarse   map[gridref.Square]*squareCount
	unplaced int // without a place
	wide     int // placed less exactly than any square of the map
	drawn    recent[drawnPlace, drawnAs]
}

// drawnPlace is what a record's place on the map depends on.
type drawnPlace struct {
	lat, lon, radius string
	blurred          bool
}

// drawnAs is where a record is counted: in its hectad, and in its tetrad or as
// the rougher square that it is.
type drawnAs struct {
	unplaced, wide bool
	hectad, square *squareCount
}

type squareCount struct{ records, blurred int }

// Half the diagonal of a tetrad, a quadrant of 5 km and a hectad in metres, with some room for
// the grid's own error.
const (
	tetradRadius   = 1450
	quadrantRadius = 3560
	hectadRadius   = 7110
)

func (c *squareCounts) add(place *drawnPlace) {
	at := c.drawn.of(*place, c.place)
	switch {
	case at.unplaced:
		c.unplaced++
	case at.wide:
		c.wide++
	default:
		at.hectad.add(place.blurred)
		at.square.add(place.blurred)
	}
}

// place finds the squares in which a place is counted.
func (c *squareCounts) place(at drawnPlace) drawnAs {
	lat, errLat := strconv.ParseFloat(at.lat, 64)
	lon, errLon := strconv.ParseFloat(at.lon, 64)
	if errLat != nil || errLon != nil {
		return drawnAs{unplaced: true}
	}
	if c.hectads == nil {
		c.hectads, c.tetrads, c.coarse = map[gridref.Square]*squareCount{}, map[gridref.Square]*squareCount{}, map[gridref.Square]*squareCount{}
	}
	radius, _ := strconv.ParseFloat(at.radius, 64)
	p := gridref.Point{Lat: lat, Lon: lon, Uncertainty: radius}
	grid := p.Serving()
	hectad, err := p.Square(grid, 10_000)
	if err != nil || radius > hectadRadius {
		return drawnAs{wide: true}
	}
	drawn := drawnAs{hectad: countOf(c.hectads, hectad)}
	if quadrant, err := p.Square(grid, 5000); err == nil && at.blurred && radius > tetradRadius && radius <= quadrantRadius {
		drawn.square = countOf(c.coarse, quadrant)
	} else if radius > tetradRadius {
		drawn.square = countOf(c.coarse, hectad)
	} else if tetrad, err := p.Square(grid, 2000); err == nil {
		drawn.square = countOf(c.tetrads, tetrad)
	}
	return drawn
}

// countOf returns a square's count, which it starts where there is none.
func countOf(m map[gridref.Square]*squareCount, s gridref.Square) *squareCount {
	n := m[s]
	if n == nil {
		n = &squareCount{}
		m[s] = n
	}
	return n
}

func (n *squareCount) add(blurred bool) {
	if n == nil {
		return
	}
	n.records++
	if blurred {
		n.blurred++
	}
}
