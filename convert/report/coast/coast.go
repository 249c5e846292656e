// Package coast has a small outline of Great Britain, Ireland and the islands
// about them, for maps. It is made from Natural Earth's land at 1:10 million,
// which is in the public domain; it is good to about half a kilometre.
package coast

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"
)

//go:generate go run ./make land-10m.json

//go:embed outline.txt
var outline string

// Point is a place in degrees (WGS84).
type Point struct{ Lon, Lat float64 }

// Rings returns the outlines of the islands, the longest first. The caller
// must not change them.
var Rings = sync.OnceValue(func() [][]Point {
	var rings [][]Point
	for line := range strings.Lines(outline) {
		var ring []Point
		var x, y int
		for pair := range strings.FieldsSeq(line) {
			dx, dy, _ := strings.Cut(pair, ",")
			nx, _ := strconv.Atoi(dx)
			ny, _ := strconv.Atoi(dy)
			x, y = x+nx, y+ny
			ring = append(ring, Point{float64(x) / 1e4, float64(y) / 1e4})
		}
		rings = append(rings, ring)
	}
	return rings
})
