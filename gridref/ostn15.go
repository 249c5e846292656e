package gridref

import (
	"bytes"
	"compress/flate"
	_ "embed"
	"encoding/binary"
	"math"
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
	coverEast, coverNorth   = (shiftColumns - 1) * shiftCell, (shiftRows - 1) * shiftCell
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

// toBritish adds the OSTN15 shift to a point of the ETRS89 plane, in metres.
func toBritish(east, north float64) (e, n float64, ok bool) {
	if !covered(east, north) {
		return 0, 0, false
	}
	dE, dN := shiftAt(shifts(), east, north)
	return east + dE, north + dN, true
}

// fromBritish takes the shift off again. The shift is that of the point looked
// for, so it is found by iteration. It changes by less than 1 part in 2000, and
// the first guess is within 30 m, so two rounds leave 0.01 mm.
func fromBritish(east, north float64) (e, n float64, ok bool) {
	lattice := shifts()
	if math.IsNaN(east + north) {
		return 0, 0, false
	}
	// Near the rim the first guess may lie outside.
	e, n = min(max(east-90, 0), coverEast), min(max(north+65, 0), coverNorth)
	dE, dN := shiftAt(lattice, e, n)
	if e, n = east-dE, north-dN; !covered(e, n) {
		return 0, 0, false
	}
	dE, dN = shiftAt(lattice, e, n)
	e, n = east-dE, north-dN
	return e, n, covered(e, n)
}

// covered reports whether a point of the ETRS89 plane lies in the cover.
func covered(east, north float64) bool {
	return east >= 0 && east <= coverEast && north >= 0 && north <= coverNorth
}

// shiftAt returns the shift at a covered point of the ETRS89 plane, all in
// metres: the bilinear form between the four lattice points around it.
func shiftAt(lattice []shift, east, north float64) (e, n float64) {
	const mm, cells = 0.001, 1. / shiftCell
	col, row := min(int(east*cells), shiftColumns-2), min(int(north*cells), shiftRows-2)
	x, y := east*cells-float64(col), north*cells-float64(row)
	i := row*shiftColumns + col
	four := lattice[i : i+shiftColumns+2]
	sw, se, nw, ne := four[0], four[1], four[shiftColumns], four[shiftColumns+1]
	xy := x * y
	a, b, c := (1-x)-y+xy, x-xy, y-xy
	return leastEastShift + mm*(a*float64(sw.e)+b*float64(se.e)+(c*float64(nw.e)+xy*float64(ne.e))),
		leastNorthShift + mm*(a*float64(sw.n)+b*float64(se.n)+(c*float64(nw.n)+xy*float64(ne.n)))
}
