package area

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"github.com/paulmach/orb"
)

// checkFrame asks for the reference system of GeoJSON. Older files may state
// another one in a member crs (GeoJSON 2008, section 3); RFC 7946 allows only
// WGS84, from which ETRS89 lies less than a metre apart.
func checkFrame(text []byte) error {
	var file struct {
		CRS *struct {
			Properties struct {
				Name string `json:"name"`
			} `json:"properties"`
		} `json:"crs"`
	}
	if json.Unmarshal(text, &file) != nil || file.CRS == nil || file.CRS.Properties.Name == "" {
		return nil
	}
	name := file.CRS.Properties.Name
	code := name[strings.LastIndexAny(name, ":/")+1:]
	switch strings.ToUpper(code) {
	case "CRS84", "4326", "4258", "WGS84", "WGS 84":
		return nil
	}
	return fmt.Errorf("it states the reference system %s. Export the boundary again, in WGS84 (EPSG:4326)", name)
}

// islands is a generous box around Britain, Ireland and the Channel Islands.
var islands = orb.Bound{Min: orb.Point{-15, 48}, Max: orb.Point{4, 62}}

// checkOrder finds latitudes that stand before their longitudes, by polygons
// that lie nowhere near these islands and would with the two turned round.
func (a *Area) checkOrder() error {
	for i := range a.parts {
		b := a.parts[i].box
		turned := orb.Bound{Min: orb.Point{b.Min[1], b.Min[0]}, Max: orb.Point{b.Max[1], b.Max[0]}}
		if b.Intersects(islands) || !turned.Intersects(islands) {
			return nil
		}
	}
	return errors.New("its latitudes seem to stand before its longitudes. GeoJSON has the longitude first: export the boundary again")
}
