package gridref

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// PROJ's grid of OSTN15, uk_os_OSTN15_NTv2_OSGBtoETRS.tif, has a node every
// minute of longitude and half minute of latitude on OSGB36 (its tags
// ModelPixelScale and ModelTiepoint), from 9 degrees west and 61 north.
const (
	nodeColumns, nodeRows = 661, 1441
	nodeWest, nodeNorth   = -9, 61
)

// apartAt is a difference from PROJ at a node, in metres.
type apartAt struct{ north, east float64 }

// At its own nodes nothing is interpolated in PROJ's grid. What parts it from
// the original lattice there is all its own:
//
//   - its values lie a constant 1.1 mm south and 0.6 mm west, as if millimetres
//     had been cut off and not rounded when it was made;
//   - in the far west the series to latitude and longitude that it was made by
//     was cut off early, as in the OSGB module (see
//     TestOSTN15AgainstOSGBModule), by up to 9 mm;
//   - some nodes in a thousand are out by 3 to 13 mm.
//
// Within 4.5 degrees of the central meridian 88 % of the nodes agree to 2 mm as
// they are, and 98.9 % with the constant taken off, both ways.
func TestOSTN15AgainstPROJAtNodes(t *testing.T) {
	plane := "+proj=longlat +ellps=airy +nadgrids=" + need.ReferenceFile(t, "ostn15/uk_os_OSTN15_NTv2_OSGBtoETRS.tif")
	const geographic = "+proj=longlat +ellps=GRS80 +towgs84=0,0,0"
	random := rand.New(rand.NewPCG(79, 83))
	var nodes []string
	var planes []Plane
	// PROJ reads its grid much faster row by row.
	for row := range nodeRows {
		for range 8 {
			lon, lat := nodeWest+float64(1+random.IntN(nodeColumns-1))/60, nodeNorth-float64(row)/120
			e, n := britishOnAiry.project(lat*degree, lon*degree)
			if _, _, ok := fromBritish(e, n); ok {
				nodes = append(nodes, fmt.Sprintf("%.12f %.12f", lon, lat))
				planes = append(planes, Plane{British, e, n})
			}
		}
	}
	require.GreaterOrEqual(t, len(nodes), randomPoints)
	there := cs2cs(t, nodes, plane, geographic)
	back := cs2cs(t, there, geographic, plane)
	var near [2][]apartAt
	note := func(way int, lon float64, d apartAt) {
		assert.LessOrEqual(t, math.Hypot(d.north, d.east), 0.02, "longitude %v", lon)
		if math.Abs(lon+2) < 4.5 {
			near[way] = append(near[way], d)
		}
	}
	for i, line := range there {
		if strings.Contains(line+back[i], "*") {
			continue // on the rim
		}
		lon, lat := scan(t, line)
		ourLat, ourLon, via := planes[i].geographic()
		require.Equal(t, OSTN15, via)
		meridian, normal := wgs84.radii(lat * degree)
		note(0, lon, apartAt{(lat - ourLat) * degree * meridian, (lon - ourLon) * degree * normal * math.Cos(lat*degree)})

		nodeLon, nodeLat := scan(t, back[i])
		e, n := britishOnAiry.project(nodeLat*degree, nodeLon*degree)
		ours := Point{Lat: lat, Lon: lon}.Plane(British)
		note(1, lon, apartAt{n - ours.Northing, e - ours.Easting})
	}
	for way, name := range []string{"latitude and longitude", "easting and northing"} {
		var mean apartAt
		for _, d := range near[way] {
			mean.north += d.north / float64(len(near[way]))
			mean.east += d.east / float64(len(near[way]))
		}
		assert.Less(t, math.Hypot(mean.north, mean.east), 0.0015, name)
		raw, left := 0, 0
		for _, d := range near[way] {
			if math.Hypot(d.north, d.east) > 0.002 {
				raw++
			}
			if math.Hypot(d.north-mean.north, d.east-mean.east) > 0.002 {
				left++
			}
		}
		assert.Less(t, left, len(near[way])*15/1000, name)
		assert.Less(t, raw, len(near[way])*15/100, name)
		t.Logf("%s of %d nodes: on average %.2f mm north and %.2f mm east; %d beyond 2 mm as they are, %d without that constant",
			name, len(near[way]), 1000*mean.north, 1000*mean.east, raw, left)
	}
}
