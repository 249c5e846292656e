// Command make derives the outline of these islands from Natural Earth's land
// at 1:10 million (public domain), as the npm package world-atlas has it:
//
//	npm pack world-atlas && tar xzf world-atlas-*.tgz
//	go run ./make package/land-10m.json
//
// It keeps the land that lies between 11° west and 2.2° east and between 49°
// and 61.2° north, leaves out what a small map cannot show, and writes
// outline.txt: one line a ring, of longitude and latitude in ten-thousandths
// of a degree, each after the first as the difference from the one before.
package main

import (
	"encoding/json"
	"fmt"
	"log"
	"math"
	"os"
	"sort"
	"strings"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"github.com/paulmach/orb/simplify"
)

// topology is what is needed of a TopoJSON file.
type topology struct {
	Transform struct{ Scale, Translate [2]float64 }
	Arcs      [][][2]int
	Objects   map[string]struct {
		Geometries []struct{ Arcs [][][]int }
	}
}

const (
	west, east, south, north = -11, 2.2, 49, 61.2
	// tolerance and smallest leave out detail, in degrees and square degrees.
	tolerance, smallest = 0.004, 0.0004
)

func main() {
	data, err := os.ReadFile(os.Args[1])
	check(err)
	var t topology
	check(json.Unmarshal(data, &t))
	var lines []string
	for _, g := range t.Objects["land"].Geometries {
		for _, polygon := range g.Arcs {
			ring := t.ring(polygon[0])
			b := ring.Bound()
			if b.Min[0] < west || b.Max[0] > east || b.Min[1] < south || b.Max[1] > north || math.Abs(planar.Area(ring)) < smallest {
				continue
			}
			lines = append(lines, line(simplify.DouglasPeucker(tolerance).Ring(ring)))
		}
	}
	sort.Slice(lines, func(i, j int) bool {
		return len(lines[i]) > len(lines[j]) || len(lines[i]) == len(lines[j]) && lines[i] < lines[j]
	})
	check(os.WriteFile("outline.txt", []byte(strings.Join(lines, "\n")+"\n"), 0o644))
}

// ring joins the arcs of a ring; a negative one runs backwards.
func (t *topology) ring(arcs []int) orb.Ring {
	var ring orb.Ring
	for _, n := range arcs {
		back := n < 0
		if back {
			n = ^n
		}
		var points []orb.Point
		var x, y int
		for _, d := range t.Arcs[n] {
			x, y = x+d[0], y+d[1]
			points = append(points, orb.Point{
				float64(x)*t.Transform.Scale[0] + t.Transform.Translate[0],
				float64(y)*t.Transform.Scale[1] + t.Transform.Translate[1],
			})
		}
		for i := range points {
			p := points[i]
			if back {
				p = points[len(points)-1-i]
			}
			if len(ring) == 0 || ring[len(ring)-1] != p {
				ring = append(ring, p)
			}
		}
	}
	return ring
}

func line(ring orb.Ring) string {
	var b strings.Builder
	var x, y int
	for i, p := range ring {
		nx, ny := int(math.Round(p[0]*1e4)), int(math.Round(p[1]*1e4))
		if i > 0 {
			b.WriteByte(' ')
		}
		fmt.Fprintf(&b, "%d,%d", nx-x, ny-y)
		x, y = nx, ny
	}
	return b.String()
}

func check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}
