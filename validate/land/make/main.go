// Command make draws land.txt, the hectads of the British grid with land in
// them or within two kilometres, from the land polygons of Natural Earth (1:10
// million, public domain, https://www.naturalearthdata.com), in the TopoJSON of
// the npm package world-atlas 2.0.2:
//
//	go run ./make land-10m.json
//
// Islands too small for that map are added by their hectads, from memory.
package main

import (
	"encoding/json"
	"log"
	"os"
	"sort"
	"strings"

	"fieldfare/gridref"
)

const (
	columns, rows = 70, 130
	hectad        = 10_000
	step          = 500  // metres between the lines and points looked at
	near          = 2000 // metres around a hectad that count as in it
)

// small are hectads of islands that the map leaves out.
var small = strings.Fields("NA00 NA09 NF09 NA10 NA74 HW83 HW81 HX62 HZ27 HZ28 HT93 HT94 HU67 NF56 NF55 NU23 NU24 SM70 SM50 SM40 SH12 NX09 NT69 NT68 SS14 ST26 ST36 SX33 SV80 SV81 SV91 SV90 NM24 NM23 HP61 HY75 NG81 SC16 SC36")

type topology struct {
	Transform struct{ Scale, Translate [2]float64 }
	Arcs      [][][2]int
	Objects   struct {
		Land struct {
			Geometries []struct {
				Type string
				Arcs [][][]int
			}
		}
	}
}

type point struct{ lon, lat float64 }

func main() {
	log.SetFlags(0)
	text, err := os.ReadFile(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	var t topology
	if err := json.Unmarshal(text, &t); err != nil {
		log.Fatal(err)
	}
	arcs := make([][]point, len(t.Arcs))
	for i, arc := range t.Arcs {
		x, y := 0, 0
		for _, d := range arc {
			x, y = x+d[0], y+d[1]
			arcs[i] = append(arcs[i], point{
				float64(x)*t.Transform.Scale[0] + t.Transform.Translate[0],
				float64(y)*t.Transform.Scale[1] + t.Transform.Translate[1],
			})
		}
	}
	var land [rows][columns]bool
	mark := func(e, n float64) {
		for _, de := range []float64{-near, 0, near} {
			for _, dn := range []float64{-near, 0, near} {
				c, r := int(e+de), int(n+dn)
				if c >= 0 && r >= 0 && c/hectad < columns && r/hectad < rows {
					land[r/hectad][c/hectad] = true
				}
			}
		}
	}
	for _, g := range t.Objects.Land.Geometries {
		for _, polygon := range g.Arcs {
			scan(polygon, arcs, mark)
		}
	}
	for _, name := range small {
		r, err := gridref.Parse(name)
		if err != nil {
			log.Fatal(name, err)
		}
		land[r.Square.Northing/hectad][r.Square.Easting/hectad] = true
	}
	var b strings.Builder
	for r := rows - 1; r >= 0; r-- {
		for c := range columns {
			if land[r][c] {
				b.WriteByte('#')
			} else {
				b.WriteByte('.')
			}
		}
		b.WriteByte('\n')
	}
	if err := os.WriteFile("land.txt", []byte(b.String()), 0o644); err != nil {
		log.Fatal(err)
	}
}

// scan marks the points of a polygon on lines of the grid that run from west
// to east.
func scan(polygon [][]int, arcs [][]point, mark func(e, n float64)) {
	crossings := make([][]float64, rows*hectad/step)
	for _, ring := range polygon {
		var points []gridref.Plane
		for _, arc := range ring {
			line := arcs[max(arc, ^arc)]
			for i := range line {
				p := line[i]
				if arc < 0 {
					p = line[len(line)-1-i]
				}
				if p.lon < -20 || p.lon > 20 || p.lat < 40 || p.lat > 70 {
					// Far away: kept so that the ring closes.
					p.lon, p.lat = min(max(p.lon, -20), 20), min(max(p.lat, 40), 70)
				}
				points = append(points, gridref.Point{Lat: p.lat, Lon: p.lon}.Plane(gridref.British))
			}
		}
		for i := range points {
			a, b := points[i], points[(i+1)%len(points)]
			mark(a.Easting, a.Northing)
			if a.Northing > b.Northing {
				a, b = b, a
			}
			for k := max(int(a.Northing/step)+1, 0); k < len(crossings) && float64(k)*step <= b.Northing; k++ {
				f := (float64(k)*step - a.Northing) / (b.Northing - a.Northing)
				crossings[k] = append(crossings[k], a.Easting+f*(b.Easting-a.Easting))
			}
		}
	}
	for k, line := range crossings {
		sort.Float64s(line)
		for i := 0; i+1 < len(line); i += 2 {
			for e := max(line[i], -hectad); e < min(line[i+1], columns*hectad+hectad); e += step {
				mark(e, float64(k)*step)
			}
		}
	}
}
