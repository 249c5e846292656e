package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"fieldfare/convert/report/coast"
	"fieldfare/gridref"

	"github.com/paulmach/orb"
	cut "github.com/paulmach/orb/clip"
	"github.com/paulmach/orb/simplify"
)

// shades are the classes of a map's squares: the least number of records in
// each, darkest last.
var shades = []int{1, 3, 10, 30, 100}

func shade(n int) int {
	class := 0
	for i, least := range shades {
		if n >= least {
			class = i
		}
	}
	return class
}

func shadeName(i int) string {
	if i == len(shades)-1 {
		return strconv.Itoa(shades[i]) + " or more"
	}
	if shades[i+1]-1 == shades[i] {
		return strconv.Itoa(shades[i])
	}
	return fmt.Sprintf("%d–%d", shades[i], shades[i+1]-1)
}

// smallMap is the extent in metres up to which tetrads are drawn; above it
// they would be too small to see.
const smallMap = 60_000

// mapPicture draws the squares with records on the coastline, zoomed to their
// extent.
func (s *Season) mapPicture() *picture {
	c := &s.squares
	if len(c.hectads) == 0 {
		return nil
	}
	frame := orb.Bound{Min: orb.Point{math.Inf(1), math.Inf(1)}, Max: orb.Point{math.Inf(-1), math.Inf(-1)}}
	for h := range c.hectads {
		for _, corner := range h.Corners() {
			frame = frame.Extend(orb.Point{corner.Lon, corner.Lat})
		}
	}
	const metresADegree = 111_200
	middle := frame.Center()
	narrow := math.Cos(middle[1] * math.Pi / 180)
	wide, tall := (frame.Max[0]-frame.Min[0])*narrow*metresADegree, (frame.Max[1]-frame.Min[1])*metresADegree
	squares, kind := c.hectads, "hectad"
	var outlines map[gridref.Square]*squareCount
	if max(wide, tall) <= smallMap {
		squares, outlines, kind = c.tetrads, c.coarse, "tetrad"
	}
	margin := max(8_000, 0.12*max(wide, tall))
	// A frame of sensible shape, however the squares lie.
	half := orb.Point{max(wide, tall*0.6)/2 + margin, max(tall, wide*0.5)/2 + margin}
	frame = orb.Bound{
		Min: orb.Point{middle[0] - half[0]/narrow/metresADegree, middle[1] - half[1]/metresADegree},
		Max: orb.Point{middle[0] + half[0]/narrow/metresADegree, middle[1] + half[1]/metresADegree},
	}
	scale := pictureWidth / (frame.Max[0] - frame.Min[0])
	d := &drawing{height: (frame.Max[1] - frame.Min[1]) * scale / narrow}
	at := func(lon, lat float64) (x, y float64) {
		return (lon - frame.Min[0]) * scale, (frame.Max[1] - lat) * scale / narrow
	}
	mapHeight := d.height
	d.add(`<rect class="sea" x="0" y="0" width="%d" height="%.1f"/>`, pictureWidth, mapHeight)
	for _, ring := range coast.Rings() {
		drawLand(d, ring, frame, at)
	}
	p := &picture{Title: fmt.Sprintf("Records by %s", kind), Columns: []string{"Square", "Records", "of them blurred"}}
	blurred := false
	var drawn []orb.Bound // what the inset must not hide
	polygon := func(class string, sq gridref.Square, n *squareCount) {
		d.add(`<polygon class="%s" points="`, class)
		box := orb.Bound{Min: orb.Point{math.Inf(1), math.Inf(1)}, Max: orb.Point{math.Inf(-1), math.Inf(-1)}}
		for _, corner := range sq.Corners() {
			x, y := at(corner.Lon, corner.Lat)
			d.add("%.1f,%.1f ", x, y)
			box = box.Extend(orb.Point{x, y})
		}
		drawn = append(drawn, box)
		blurred = blurred || n.blurred > 0
		hint := sq.String() + ": " + plural(n.records, "record")
		if n.blurred > 0 {
			hint += fmt.Sprintf(", %d of them blurred", n.blurred)
		}
		d.add(`"><title>%s</title></polygon>`, hint)
		p.Rows = append(p.Rows, []string{sq.String(), strconv.Itoa(n.records), strconv.Itoa(n.blurred)})
	}
	for _, sq := range sorted(squares) {
		class := "s" + strconv.Itoa(shade(squares[sq].records))
		if squares[sq].blurred > 0 {
			class += " blurred"
		}
		polygon(class, sq, squares[sq])
	}
	for _, sq := range sorted(outlines) {
		class := "vague"
		if outlines[sq].blurred > 0 {
			class += " blurred"
		}
		polygon(class, sq, outlines[sq])
	}
	hectads := sorted(c.hectads)
	for _, h := range hectads {
		if len(hectads) > 40 {
			break // names would hide the map
		}
		corners := h.Corners()
		x0, y0 := at(corners[0].Lon, corners[0].Lat)
		x1, y1 := x0, y0
		for _, corner := range corners[1:] {
			x, y := at(corner.Lon, corner.Lat)
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		}
		if kind == "tetrad" {
			d.add(`<polygon class="hectad" points="`)
			for _, corner := range corners {
				x, y := at(corner.Lon, corner.Lat)
				d.add("%.1f,%.1f ", x, y)
			}
			d.add(`"/>`)
		}
		d.add(`<text class="halo" x="%.1f" y="%.1f" text-anchor="middle">%s</text>`, (x0+x1)/2, y0-3, h.String())
		drawn = append(drawn, orb.Bound{Min: orb.Point{x0, y0 - 12}, Max: orb.Point{x1, y1}})
	}
	d.add(`<rect class="edge" x="0.3" y="0.3" width="%.1f" height="%.1f"/>`, pictureWidth-0.6, mapHeight-0.6)
	inset(d, frame, drawn, mapHeight)
	legend(d, len(outlines) > 0, blurred, mapHeight)
	p.SVG = d.done(fmt.Sprintf("Map of the %ss with records, shaded by number, on the coastline; the numbers are in the table", kind))
	if n := c.wide; n > 0 {
		p.Rows = append(p.Rows, []string{"placed less exactly than a hectad", strconv.Itoa(n), ""})
	}
	if n := c.unplaced; n > 0 {
		p.Rows = append(p.Rows, []string{"without a place on the map", strconv.Itoa(n), ""})
	}
	return p
}

func drawLand(d *drawing, ring []coast.Point, frame orb.Bound, at func(lon, lat float64) (x, y float64)) {
	land := make(orb.Ring, len(ring))
	for i, p := range ring {
		land[i] = orb.Point{p.Lon, p.Lat}
	}
	pad := (frame.Max[0] - frame.Min[0]) * 0.02 // so that no shore is drawn along the frame
	land = cut.Ring(frame.Pad(pad), land)
	if len(land) < 3 {
		return
	}
	d.add(`<polygon class="land" points="`)
	for _, p := range land {
		x, y := at(p[0], p[1])
		d.add("%.1f,%.1f ", x, y)
	}
	d.add(`"/>`)
}

// The inset: the whole of these islands, to show where the map is. Its bounds
// in degrees, its width and place in the drawing.
var islands = orb.Bound{Min: orb.Point{-11, 49}, Max: orb.Point{2.2, 61.2}}

const insetWidth, insetMargin = 52.0, 4.0

// inset draws the islands small in a corner, with the map's frame on them,
// unless the map shows most of them itself or every corner has a square.
func inset(d *drawing, frame orb.Bound, drawn []orb.Bound, mapHeight float64) {
	if frame.Max[1]-frame.Min[1] > 5 {
		return
	}
	scale := insetWidth / (islands.Max[0] - islands.Min[0])
	narrow := math.Cos(55 * math.Pi / 180)
	height := (islands.Max[1] - islands.Min[1]) * scale / narrow
	left, top, free := freeCorner(drawn, insetWidth, height, mapHeight)
	if !free {
		return
	}
	at := func(p orb.Point) (x, y float64) {
		return left + (p[0]-islands.Min[0])*scale, top + (islands.Max[1]-p[1])*scale/narrow
	}
	d.add(`<rect class="sea" x="%.1f" y="%.1f" width="%.1f" height="%.1f"/>`, left, top, insetWidth, height)
	for _, ring := range coast.Rings() {
		if len(ring) < 12 {
			continue
		}
		land := make(orb.Ring, len(ring))
		for i, p := range ring {
			land[i] = orb.Point{p.Lon, p.Lat}
		}
		d.add(`<polygon class="land" points="`)
		for _, p := range simplify.DouglasPeucker(0.07).Ring(land) {
			x, y := at(p)
			d.add("%.1f,%.1f ", x, y)
		}
		d.add(`"/>`)
	}
	x0, y0 := at(orb.Point{frame.Min[0], frame.Max[1]})
	x1, y1 := at(orb.Point{frame.Max[0], frame.Min[1]})
	d.add(`<rect class="edge" x="%.1f" y="%.1f" width="%.1f" height="%.1f"/>`, left, top, insetWidth, height)
	d.add(`<rect class="frame" x="%.1f" y="%.1f" width="%.1f" height="%.1f"/>`, x0, y0, max(x1-x0, 2), max(y1-y0, 2))
}

// freeCorner returns the corner of the map that has room for a picture: the
// upper right one, or the next that is free of squares.
func freeCorner(drawn []orb.Bound, width, height, mapHeight float64) (left, top float64, free bool) {
	right, bottom := pictureWidth-width-insetMargin, mapHeight-height-insetMargin
	for _, corner := range []orb.Point{{right, insetMargin}, {insetMargin, insetMargin}, {insetMargin, bottom}, {right, bottom}} {
		box := orb.Bound{Min: corner, Max: orb.Point{corner[0] + width, corner[1] + height}}
		if !slices.ContainsFunc(drawn, box.Intersects) {
			return corner[0], corner[1], true
		}
	}
	return 0, 0, false
}

// legend explains the shades below the map, and what else stands on it.
func legend(d *drawing, vague, blurred bool, top float64) {
	height := 52.0
	if !vague && !blurred {
		height = 28
	}
	d.height = top + height
	d.add(`<rect class="paper" x="0" y="%.1f" width="%d" height="%.0f"/>`, top, pictureWidth, height)
	for i := range shades {
		x := float64(i) * 57
		d.add(`<rect class="s%d" x="%.1f" y="%.1f" width="14" height="14"/>`, i, x+2, top+8)
		d.text(x+19, top+19, "start", shadeName(i))
	}
	left := 2.0
	for _, sign := range []struct {
		shown       bool
		class, says string
	}{{blurred, "s1 blurred", "with blurred records"}, {vague, "vague", "somewhere in the square"}} {
		if !sign.shown {
			continue
		}
		d.add(`<rect class="%s" x="%.1f" y="%.1f" width="14" height="14"/>`, sign.class, left, top+30)
		d.text(left+18, top+41, "start", sign.says)
		left += 160
	}
}

func sorted(m map[gridref.Square]*squareCount) []gridref.Square {
	list := make([]gridref.Square, 0, len(m))
	for s := range m {
		list = append(list, s)
	}
	slices.SortFunc(list, func(a, b gridref.Square) int { return cmp.Compare(a.String(), b.String()) })
	return list
}
