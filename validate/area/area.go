// Package area knows polygons that records should lie in: a vice-county, a
// reserve, a scheme's region. They are read from GeoJSON (RFC 7946: longitude
// before latitude, WGS84), and compared with a record's square or circle on the
// plane of longitude and latitude, in which the sides of a square of 10 km
// depart from the grid's by a few metres.
package area

import (
	"bytes"
	"errors"
	"fmt"
	"math"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/geojson"
	"github.com/paulmach/orb/planar"
)

// Area is a polygon, or several, with a name.
type Area struct {
	// Name is what the area is called in messages.
	Name string
	// ViceCounty is the number of the vice-county that the area is; 0 where it
	// is none.
	ViceCounty int
	parts      []part
}

// part is one polygon with the box around it, its sides laid out in bands of
// latitude so that large ones cost little.
type part struct {
	orb.Polygon
	box   orb.Bound
	bands [][]side
}

type side struct{ from, to orb.Point }

// Read reads the polygons of a GeoJSON text: a feature collection, a feature or
// a geometry. All polygons of the text together are the area. Which way round a
// ring runs does not matter; a ring that crosses itself encloses what lies
// within an odd number of its turns.
func Read(text []byte) (*Area, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if err := checkFrame(text); err != nil {
		return nil, err
	}
	geometries, err := geometriesOf(text)
	if err != nil {
		return nil, err
	}
	a := &Area{}
	for _, g := range geometries {
		if err := a.add(g); err != nil {
			return nil, err
		}
	}
	if len(a.parts) == 0 {
		return nil, errors.New("it holds no polygon. Save the boundary as polygons")
	}
	return a, a.checkOrder()
}

func geometriesOf(text []byte) ([]orb.Geometry, error) {
	if c, err := geojson.UnmarshalFeatureCollection(text); err == nil && c.Type == "FeatureCollection" {
		var list []orb.Geometry
		for _, f := range c.Features {
			if f != nil && f.Geometry != nil {
				list = append(list, f.Geometry)
			}
		}
		return list, nil
	}
	if f, err := geojson.UnmarshalFeature(text); err == nil && f.Geometry != nil {
		return []orb.Geometry{f.Geometry}, nil
	}
	if g, err := geojson.UnmarshalGeometry(text); err == nil && g.Geometry() != nil {
		return []orb.Geometry{g.Geometry()}, nil
	}
	return nil, errors.New("it is no GeoJSON. Export the boundary again, as GeoJSON")
}

func (a *Area) add(g orb.Geometry) error {
	switch g := g.(type) {
	case orb.Polygon:
		return a.polygon(g)
	case orb.MultiPolygon:
		for _, p := range g {
			if err := a.polygon(p); err != nil {
				return err
			}
		}
	case orb.Collection:
		for _, part := range g {
			if err := a.add(part); err != nil {
				return err
			}
		}
	}
	return nil // points and lines enclose nothing
}

func (a *Area) polygon(p orb.Polygon) error {
	for _, ring := range p {
		if len(ring) < 4 {
			return errors.New("one of its rings has fewer than four points. Export the boundary again")
		}
		for _, at := range ring {
			if !(math.Abs(at[0]) <= 180 && math.Abs(at[1]) <= 90) {
				return fmt.Errorf("its coordinates (%g, %g) are no longitude and latitude. Export the boundary again, in WGS84 (EPSG:4326)", at[0], at[1])
			}
		}
		if ring[0] != ring[len(ring)-1] {
			return errors.New("one of its rings is not closed. Export the boundary again")
		}
	}
	if len(p) > 0 {
		a.parts = append(a.parts, newPart(p))
	}
	return nil
}

// Relation says how a place lies to an area.
type Relation uint8

const (
	Outside   Relation = iota // wholly outside
	Straddles                 // partly inside
	Inside                    // wholly inside
)

// Outline is the ground that a record may come from, as a ring of longitudes
// and latitudes, closed.
type Outline struct {
	ring orb.Ring
	box  orb.Bound
}

// Square makes the outline of a square from its corners, each latitude and
// longitude in degrees, in order around it.
func Square(corners [4][2]float64) Outline {
	ring := make(orb.Ring, 0, 5)
	for _, c := range corners {
		ring = append(ring, orb.Point{c[1], c[0]})
	}
	ring = append(ring, ring[0])
	return Outline{ring, ring.Bound()}
}

// Circle makes the outline of a point with a radius in metres, as a polygon of
// sixteen corners.
func Circle(lat, lon, metres float64) Outline {
	const sides = 16
	up := max(metres, 0.1) / 111_200 // metres in a degree of latitude, at 52 degrees (WGS84)
	aside := up / max(math.Cos(lat*math.Pi/180), 0.01)
	ring := make(orb.Ring, 0, sides+1)
	for i := range sides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		ring = append(ring, orb.Point{lon + aside*cos, lat + up*sin})
	}
	ring = append(ring, ring[0])
	return Outline{ring, ring.Bound()}
}

// Of returns how the outline lies to the area. An outline that covers several
// touching polygons of the area, and lies wholly in none, straddles.
func (a *Area) Of(o Outline) Relation {
	relation := Outside
	for i := range a.parts {
		relation = max(relation, a.parts[i].of(o))
	}
	return relation
}

func (p *part) of(o Outline) Relation {
	if !p.box.Intersects(o.box) {
		return Outside
	}
	inside := 0
	for _, at := range o.ring[:len(o.ring)-1] {
		if p.contains(at) {
			inside++
		}
	}
	crossed := p.crosses(o)
	switch {
	case inside == len(o.ring)-1 && !crossed && !p.hole(o):
		return Inside
	case inside > 0 || crossed:
		return Straddles
	}
	// No corner inside and no side crossed: the area may lie within the square.
	if planar.RingContains(o.ring, p.Polygon[0][0]) {
		return Straddles
	}
	return Outside
}

// hole tells whether the outline has a hole of the polygon within it.
func (p *part) hole(o Outline) bool {
	for _, ring := range p.Polygon[1:] {
		if planar.RingContains(o.ring, ring[0]) {
			return true
		}
	}
	return false
}
