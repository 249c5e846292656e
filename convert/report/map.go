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

// squareMap is a map being drawn: the drawing, the part of the world that it
// shows in degrees, and how many units of it a degree of longitude takes.
type squareMap struct {
	*drawing
	frame         orb.Bound
	scale, narrow float64     // narrow: degrees of latitude are longer by 1/narrow
	drawn         []orb.Bound // what the inset must not hide
}

// mapPicture draws the squares with records on the coastline, zoomed to their
// extent.
func (s *Season) mapPicture() *picture {
	c := &s.squares
	if len(c.hectads) == 0 {
		return nil
	}
	m, extent := newSquareMap(c.hectads)
	squares, kind := c.hectads, "hectad"
	var outlines map[gridref.Square]*squareCount
	if extent <= smallMap {
		squares, outlines, kind = c.tetrads, c.coarse, "tetrad"
	}
	mapHeight := m.height
	m.add(`<rect class="sea" x="0" y="0" width="%d" height="%.1f"/>`, pictureWidth, mapHeight)
	for _, ring := range coast.Rings() {
		m.land(ring)
	}
	p := &picture{Title: fmt.Sprintf("Records by %s", kind), Columns: []string{"Square", "Records", "of them blurred"}}
	blurred := false
	add := func(class string, sq gridref.Square, n *squareCount) {
		hint := sq.String() + ": " + plural(n.records, "record")
		if n.blurred > 0 {
			blurred = true
			class += " blurred"
			hint += fmt.Sprintf(", %d of them blurred", n.blurred)
		}
		m.drawn = append(m.drawn, m.polygon(class, sq, hint))
		p.Rows = append(p.Rows, []string{sq.String(), strconv.Itoa(n.records), strconv.Itoa(n.blurred)})
	}
	for _, sq := range sorted(squares) {
		add("s"+strconv.Itoa(shade(squares[sq].records)), sq, squares[sq])
	}
	for _, sq := range sorted(outlines) {
		add("vague", sq, outlines[sq])
	}
	if len(c.hectads) <= mostNames {
		m.nameHectads(sorted(c.hectads), kind == "tetrad")
	}
	m.add(`<rect class="edge" x="0.3" y="0.3" width="%.1f" height="%.1f"/>`, pictureWidth-0.6, mapHeight-0.6)
	inset(m.drawing, m.frame, m.drawn, mapHeight)
	legend(m.drawing, len(outlines) > 0, blurred, mapHeight)
	p.SVG = m.done(fmt.Sprintf("Map of the %ss with records, shaded by number, on the coastline; the numbers are in the table", kind))
	if n := c.wide; n > 0 {
		p.Rows = append(p.Rows, []string{"placed less exactly than a hectad", strconv.Itoa(n), ""})
	}
	if n := c.unplaced; n > 0 {
		p.Rows = append(p.Rows, []string{"without a place on the map", strconv.Itoa(n), ""})
	}
	return p
}

// mostNames is how many hectads are named; more names would hide the map.
const mostNames = 40

// newSquareMap frames hectads with a margin, in a sensible shape however they
// lie; extent is their longer side in metres.
func newSquareMap(hectads map[gridref.Square]*squareCount) (m *squareMap, extent float64) {
	frame := nothing
	for h := range hectads {
		for _, corner := range h.Corners() {
			frame = frame.Extend(orb.Point{corner.Lon, corner.Lat})
		}
	}
	const metresADegree = 111_200
	middle := frame.Center()
	narrow := math.Cos(middle[1] * math.Pi / 180)
	wide, tall := (frame.Max[0]-frame.Min[0])*narrow*metresADegree, (frame.Max[1]-frame.Min[1])*metresADegree
	margin := max(8_000, 0.12*max(wide, tall))
	half := orb.Point{max(wide, tall*0.6)/2 + margin, max(tall, wide*0.5)/2 + margin}
	frame = orb.Bound{
		Min: orb.Point{middle[0] - half[0]/narrow/metresADegree, middle[1] - half[1]/metresADegree},
		Max: orb.Point{middle[0] + half[0]/narrow/metresADegree, middle[1] + half[1]/metresADegree},
	}
	scale := pictureWidth / (frame.Max[0] - frame.Min[0])
	d := &drawing{height: (frame.Max[1] - frame.Min[1]) * scale / narrow}
	return &squareMap{drawing: d, frame: frame, scale: scale, narrow: narrow}, max(wide, tall)
}

// nothing is what extends to a bound of points.
var nothing = orb.Bound{Min: orb.Point{math.Inf(1), math.Inf(1)}, Max: orb.Point{math.Inf(-1), math.Inf(-1)}}

// at is where a place stands in the drawing.
func (m *squareMap) at(lon, lat float64) (x, y float64) {
	return (lon - m.frame.Min[0]) * m.scale, (m.frame.Max[1] - lat) * m.scale / m.narrow
}

// polygon draws a square, with a hint to be shown where one is given, and
// returns the box around it.
func (m *squareMap) polygon(class string, sq gridref.Square, hint string) orb.Bound {
	m.add(`<polygon class="%s" points="`, class)
	for _, corner := range sq.Corners() {
		x, y := m.at(corner.Lon, corner.Lat)
		m.add("%.1f,%.1f ", x, y)
	}
	if hint == "" {
		m.add(`"/>`)
	} else {
		m.add(`"><title>%s</title></polygon>`, hint)
	}
	return m.box(sq)
}

func (m *squareMap) box(sq gridref.Square) orb.Bound {
	box := nothing
	for _, corner := range sq.Corners() {
		x, y := m.at(corner.Lon, corner.Lat)
		box = box.Extend(orb.Point{x, y})
	}
	return box
}

// nameHectads writes the hectads' names above them, and where the map's squares
// are smaller, their outlines too.
func (m *squareMap) nameHectads(hectads []gridref.Square, outlined bool) {
	for _, h := range hectads {
		box := m.box(h)
		if outlined {
			m.polygon("hectad", h, "")
		}
		m.add(`<text class="halo" x="%.1f" y="%.1f" text-anchor="middle">%s</text>`, (box.Min[0]+box.Max[0])/2, box.Min[1]-3, h.String())
		box.Min[1] -= 12
		m.drawn = append(m.drawn, box)
	}
}

// land draws what the map shows of an island.
func (m *squareMap) land(ring []coast.Point) {
	land := make(orb.Ring, len(ring))
	for i, p := range ring {
		land[i] = orb.Point{p.Lon, p.Lat}
	}
	pad := (m.frame.Max[0] - m.frame.Min[0]) * 0.02 // so that no shore is drawn along the frame
	land = cut.Ring(m.frame.Pad(pad), land)
	if len(land) < 3 {
		return
	}
	m.add(`<polygon class="land" points="`)
	for _, p := range land {
		x, y := m.at(p[0], p[1])
		m.add("%.1f,%.1f ", x, y)
	}
	m.add(`"/>`)
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
