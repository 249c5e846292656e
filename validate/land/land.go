// Package land knows which hectads of the British grid have land, by the map of
// Natural Earth (1:10 million, public domain). A hectad counts where there is
// land in it or within two kilometres, so that no shore is missed; those of
// small outlying islands were added from memory.
package land

import (
	_ "embed"

	"fieldfare/gridref"
)

//go:generate go run ./make land-10m.json

// picture has a line for each row of hectads, the northernmost first, and a
// character for each hectad from west to east: # for land.
//
//go:embed land.txt
var picture string

const (
	columns, rows = 70, 130
	hectad        = 10_000
)

// Near tells whether there is land in any hectad that the place touches: the
// ground within so many metres of a position on the British grid. Ireland's
// land counts as well. Outside the grid the answer is true, since nothing is
// known.
func Near(p gridref.Plane, metres float64) bool {
	west, east := int((p.Easting-metres)/hectad), int((p.Easting+metres)/hectad)
	south, north := int((p.Northing-metres)/hectad), int((p.Northing+metres)/hectad)
	if p.Easting < metres || p.Northing < metres || east >= columns || north >= rows {
		return true
	}
	for row := south; row <= north; row++ {
		for column := west; column <= east; column++ {
			if picture[(rows-1-row)*(columns+1)+column] == '#' {
				return true
			}
		}
	}
	return false
}
