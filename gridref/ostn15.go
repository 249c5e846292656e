package gridref

import (
	"bytes"
	"compress/flate"
	_ "embed"
	"encoding/binary"
	"sync"
)

//go:generate go run ./internal/packshifts -in /usr/share/perl5/auto/share/dist/Geo-Coordinates-OSGB -out ostn15.bin

// ostn15Packed is the OSTN15 shift grid, made by internal/packshifts.
//
// Copyright Ordnance Survey; the licence is in LICENCE-OSTN15.txt.
//
//go:embed ostn15.bin
var ostn15Packed []byte

// The lattice has a point every kilometre, and its values are millimetres
// above the least shift.
const (
	shiftColumns, shiftRows = 701, 1251
	shiftCell               = 1000
	leastEastShift          = 82.140
	leastNorthShift         = -84.180
)

// shift is one lattice point: east and north, millimetres above the least.
type shift struct{ e, n uint16 }

// shifts unpacks the lattice on first use.
var shifts = sync.OnceValue(unpackShifts)

func unpackShifts() []shift {
	packed := ostn15Packed
	var planes [2][]uint16
	var both sync.WaitGroup
	for i := range planes {
		n := binary.LittleEndian.Uint32(packed)
		plane := packed[4 : 4+n]
		packed = packed[4+n:]
		both.Go(func() { planes[i] = unpackPlane(plane) })
	}
	both.Wait()
	lattice := make([]shift, shiftColumns*shiftRows)
	north := planes[1][:len(planes[0])]
	for i, east := range planes[0] {
		lattice[i] = shift{east, north[i]}
	}
	return lattice
}

// unpackPlane inflates one plane and undoes the planar prediction.
func unpackPlane(packed []byte) []uint16 {
	// A varint longer than a byte is rare, so this is room enough.
	raw := bytes.NewBuffer(make([]byte, 0, shiftColumns*shiftRows+1<<15))
	if _, err := raw.ReadFrom(flate.NewReader(bytes.NewReader(packed))); err != nil {
		panic("gridref: the embedded OSTN15 data are damaged: " + err.Error())
	}
	b := raw.Bytes()
	plane := make([]uint16, shiftColumns*shiftRows)
	south := make([]uint16, shiftColumns)
	for y := range shiftRows {
		row := plane[y*shiftColumns : (y+1)*shiftColumns]
		south = south[:len(row)]
		west, corner := south[0], south[0]
		for x := range row {
			v, n := uint64(b[0]), 1
			if v >= 0x80 {
				v, n = binary.Uvarint(b)
			}
			b = b[n:]
			residual := uint16(v>>1 ^ -(v & 1))
			west += south[x] - corner + residual
			corner, row[x] = south[x], west
		}
		south = row
	}
	return plane
}

// cell is one square kilometre of the lattice as a bilinear form:
// shift = c0 + cx x + cy y + cxy x y, in metres, x and y from 0 to 1.
type cell struct {
	x, y                           float64 // south-west corner, in cells
	e, ex, ey, exy, n, nx, ny, nxy float64
}

// load finds the cell with a point of the ETRS89 plane, in cells; ok is false
// outside the cover.
func (c *cell) load(lattice []shift, x, y float64) (ok bool) {
	if !(x >= 0 && x <= shiftColumns-1 && y >= 0 && y <= shiftRows-1) {
		return false
	}
	col, row := min(int(x), shiftColumns-2), min(int(y), shiftRows-2)
	i := row*shiftColumns + col
	south, north := lattice[i:i+2:i+2], lattice[i+shiftColumns:i+shiftColumns+2:i+shiftColumns+2]
	e, n := float64(south[0].e), float64(south[0].n)
	ex, nx := float64(south[1].e)-e, float64(south[1].n)-n
	ey, ny := float64(north[0].e)-e, float64(north[0].n)-n
	const mm = 0.001
	*c = cell{
		x: float64(col), y: float64(row),
		e: leastEastShift + mm*e, ex: mm * ex, ey: mm * ey, exy: mm * (float64(north[1].e) - e - ex - ey),
		n: leastNorthShift + mm*n, nx: mm * nx, ny: mm * ny, nxy: mm * (float64(north[1].n) - n - nx - ny),
	}
	return true
}

func (c *cell) holds(x, y float64) bool {
	x, y = x-c.x, y-c.y
	return x >= 0 && x <= 1 && y >= 0 && y <= 1
}

func (c *cell) at(x, y float64) (e, n float64) {
	x, y = x-c.x, y-c.y
	return c.e + c.ex*x + (c.ey+c.exy*x)*y, c.n + c.nx*x + (c.ny+c.nxy*x)*y
}

// toBritish adds the OSTN15 shift to a point of the ETRS89 plane, in metres.
func toBritish(east, north float64) (e, n float64, ok bool) {
	var c cell
	x, y := east/shiftCell, north/shiftCell
	if !c.load(shifts(), x, y) {
		return 0, 0, false
	}
	dE, dN := c.at(x, y)
	return east + dE, north + dN, true
}

// fromBritish takes the shift off again. The shift is that of the point looked
// for, so it is found by iteration. It changes by less than 1 part in 2000, and
// the first guess is within 30 m, so two rounds leave 0.01 mm.
func fromBritish(east, north float64) (e, n float64, ok bool) {
	const rounds = 2
	lattice := shifts()
	var c cell
	x, y := (east-90)/shiftCell, (north+65)/shiftCell
	// Near the rim the first guess may lie outside.
	x, y = min(max(x, 0), shiftColumns-1), min(max(y, 0), shiftRows-1)
	if !c.load(lattice, x, y) {
		return 0, 0, false
	}
	for range rounds {
		dE, dN := c.at(x, y)
		e, n = east-dE, north-dN
		x, y = e/shiftCell, n/shiftCell
		if !c.holds(x, y) && !c.load(lattice, x, y) {
			return 0, 0, false
		}
	}
	return e, n, true
}
