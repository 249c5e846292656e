package gridref

import (
	"errors"
	"strconv"
)

// Square is an area of a grid: its south-west corner and its side, in metres.
// The zero value is no square.
type Square struct {
	Grid              Grid
	Easting, Northing int32
	Size              int32
}

// Sizes are the sides of the standard squares in metres, smallest first.
var sizes = [...]int32{1, 10, 100, 1000, 2000, 5000, 10_000, hundredKM}

// Standard reports whether references are commonly written to squares of this
// side, in metres: 1, 10, 100, 1000, 2000, 5000, 10000 or 100000.
func Standard(size int32) bool {
	for _, s := range sizes {
		if s == size {
			return true
		}
	}
	return false
}

// writes reports whether references on the grid are written to squares of a
// side in metres.
func (g Grid) writes(size int32) bool {
	return Standard(size) && (g.lettered() || size != 2000 && size != 5000)
}

// Plane is an exact position on a grid, in metres east and north of its false
// origin.
type Plane struct {
	Grid              Grid
	Easting, Northing float64
}

// Errors of making and converting squares.
var (
	// ErrSize: no such square is written on the grid. Tetrads and quadrants,
	// of 2000 and 5000 metres, are written on the British and Irish grids and
	// in the Channel Islands only.
	ErrSize = errors.New("a square's size is one of 1, 10, 100, 1000, 2000, 5000, 10000 and 100000 metres")
	// ErrOutside: the grid has no reference there.
	ErrOutside = errors.New("the place lies outside the grid")
	// ErrTooRough: even a square of 100 km would claim more than is known.
	ErrTooRough = errors.New("the uncertainty is larger than any square's")
	// ErrNesting: the square is in no single square of that size, as some
	// tetrads are in no quadrant.
	ErrNesting = errors.New("the square lies across several squares of that size")
)

// Square returns the standard square of a side, in metres, that holds the
// position. It truncates and never rounds. The error is [ErrSize] or
// [ErrOutside].
func (p Plane) Square(size int32) (Square, error) {
	if !p.Grid.writes(size) {
		return Square{}, ErrSize
	}
	if !(p.Easting >= 0 && p.Easting < 1e7 && p.Northing >= 0 && p.Northing < 1e7) {
		return Square{}, ErrOutside
	}
	s := Square{Grid: p.Grid, Size: size}
	s.Easting = int32(p.Easting) / size * size
	s.Northing = int32(p.Northing) / size * size
	if !s.Valid() {
		return Square{}, ErrOutside
	}
	return s, nil
}

// Valid reports whether the square lies where its grid has references.
func (s Square) Valid() bool {
	if s.Size <= 0 {
		return false
	}
	switch s.Grid {
	case British:
		_, _, ok := britishLetters(s.Easting, s.Northing)
		return ok
	case Irish:
		_, ok := irishLetter(s.Easting, s.Northing)
		return ok
	case ChannelIslands:
		_, ok := channelLetter(s.Easting, s.Northing)
		return ok
	}
	_, ok := s.military()
	return ok
}

// Coarsen returns the standard square of a larger side, in metres, around s:
// the blurred place. A side no larger than the square's own gives s itself.
// The error is [ErrSize] or [ErrNesting], or [ErrOutside] where s is not
// [Square.Valid].
func (s Square) Coarsen(size int32) (Square, error) {
	if !s.Grid.writes(size) {
		return Square{}, ErrSize
	}
	if !s.Valid() {
		return Square{}, ErrOutside
	}
	if size <= s.Size {
		return s, nil
	}
	// Only sides that divide each other nest: some tetrads lie across two
	// quadrants.
	if size%s.Size != 0 {
		return Square{}, ErrNesting
	}
	return Square{s.Grid, s.Easting / size * size, s.Northing / size * size, size}, nil
}

// Hectad returns the 10 km square around s; ok is false where s is larger.
func (s Square) Hectad() (h Square, ok bool) { return s.within(10_000) }

// Tetrad returns the 2 km square around s; ok is false where s does not lie
// in one, or its grid has none.
func (s Square) Tetrad() (t Square, ok bool) { return s.within(2000) }

// Monad returns the 1 km square around s; ok is false where s is larger.
func (s Square) Monad() (m Square, ok bool) { return s.within(1000) }

func (s Square) within(size int32) (Square, bool) {
	if s.Size > size {
		return Square{}, false
	}
	c, err := s.Coarsen(size)
	return c, err == nil
}

// Centre returns the middle of the square on its grid.
func (s Square) Centre() Plane {
	half := float64(s.Size) / 2
	return Plane{s.Grid, float64(s.Easting) + half, float64(s.Northing) + half}
}

// Contains reports whether the position lies in the square; its south and west
// edges belong to it, the others to its neighbours.
func (s Square) Contains(p Plane) bool {
	e, n := p.Easting-float64(s.Easting), p.Northing-float64(s.Northing)
	return p.Grid == s.Grid && e >= 0 && n >= 0 && e < float64(s.Size) && n < float64(s.Size)
}

// String returns the reference: "TL48", "TL48J", "TL4881", "H123456",
// "31UCT0412". A square that its grid cannot name is given by its corner, and
// the zero Square is the empty string.
func (s Square) String() string { return string(s.Append(nil)) }

// Append appends the reference to b.
func (s Square) Append(b []byte) []byte {
	switch s.Grid {
	case British:
		if first, second, ok := britishLetters(s.Easting, s.Northing); ok {
			return s.appendFigures(append(b, first, second))
		}
	case Irish:
		if letter, ok := irishLetter(s.Easting, s.Northing); ok {
			return s.appendFigures(append(b, letter))
		}
	case ChannelIslands:
		if second, ok := channelLetter(s.Easting, s.Northing); ok {
			return s.appendFigures(append(b, 'W', second))
		}
	default:
		if name, ok := s.military(); ok {
			if name.zone > 0 {
				b = append(b, byte('0'+name.zone/10), byte('0'+name.zone%10))
			}
			return s.appendFigures(append(b, name.band, name.column, name.row))
		}
	}
	if s.Size == 0 {
		return b
	}
	b = append(b, s.Grid.String()...)
	b = strconv.AppendInt(append(b, ' '), int64(s.Easting), 10)
	return strconv.AppendInt(append(b, ' '), int64(s.Northing), 10)
}

// appendFigures appends what follows the 100 km letters.
func (s Square) appendFigures(b []byte) []byte {
	figures, unit := 0, int32(hundredKM)
	for side := unit / 10; side >= s.Size && side > 0; side /= 10 {
		figures, unit = figures+1, side
	}
	if s.Size == 0 {
		return b
	}
	east, north := s.Easting%hundredKM, s.Northing%hundredKM
	b = appendPadded(b, east/unit, figures)
	b = appendPadded(b, north/unit, figures)
	switch s.Size {
	case 2000:
		b = append(b, tetradLetter(east%10_000/2000, north%10_000/2000))
	case 5000, 500:
		b = appendQuadrant(b, east%unit >= s.Size, north%unit >= s.Size)
	}
	return b
}

// appendPadded appends v in just so many figures.
func appendPadded(b []byte, v int32, figures int) []byte {
	for range figures {
		b = append(b, '0')
	}
	for i := len(b) - 1; figures > 0; i, figures = i-1, figures-1 {
		b[i] = byte('0' + v%10)
		v /= 10
	}
	return b
}
