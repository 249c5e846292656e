package convert

import (
	"fmt"

	"fieldfare/convert/layout"
	"fieldfare/convert/plainfile"
	"fieldfare/convert/project"
	"fieldfare/convert/reading"
	"fieldfare/gridref"
	"fieldfare/validate"
	"fieldfare/validate/area"
)

// mostOfArea is how many bytes a file of areas may have.
const mostOfArea = 1 << 30

// loadAreas loads the polygons of the project file, and settles which of them
// the scheme asks for.
func (j Job) loadAreas(s *settings) error {
	fault := func(text string, values ...any) error {
		return &project.Error{File: s.project.Path, Problem: fmt.Sprintf(text, values...)}
	}
	for i := range s.project.Lists.Areas {
		entry := &s.project.Lists.Areas[i]
		if entry.File == "" {
			return fault("a [[lists.area]] has no file. Write file = \"its GeoJSON file\"")
		}
		path := s.project.Resolve(entry.File)
		text, err := plainfile.Read(path, mostOfArea)
		if plainfile.IsOurs(err) {
			return fault("the area's file %q cannot be used: %s", entry.File, err)
		}
		if err != nil {
			return fault("the area's file %q cannot be opened. Check its name in [[lists.area]]", entry.File)
		}
		a, err := area.Read(text)
		if err != nil {
			return fault("the area's file %q cannot be used: %s", entry.File, err)
		}
		a.Name = entry.Name
		if entry.ViceCounty != "" {
			if a.ViceCounty = validate.ViceCountyNumber(entry.ViceCounty); a.ViceCounty == 0 {
				return fault("vice_county = %q is no number of a vice-county; write 1 to 112, or H1 to H40 for Ireland", entry.ViceCounty)
			}
			if a.Name == "" {
				a.Name = viceCounty(entry.ViceCounty)
			}
		}
		if a.Name == "" {
			a.Name = entry.File
		}
		if lat, lon, found := a.Crossing(); found {
			s.listProblems = append(s.listProblems, fmt.Sprintf("The boundary in %s crosses itself near %.4f, %.4f, so that it is not clear what lies inside it there. Draw or export it again.", entry.File, lat, lon))
		}
		s.polygons.Areas = append(s.polygons.Areas, a)
		s.version(path)
	}
	asked := s.project.Asks.Area
	if asked == "" {
		return nil
	}
	for _, a := range s.polygons.Areas {
		if a.Name == asked {
			s.polygons.Wanted = a
			return nil
		}
	}
	return fault("asks.area = %q: there is no [[lists.area]] with that name", asked)
}

// inAreas asks about a place outside the project's areas, and a county that
// they speak against.
func (in *interpreter) inAreas(d *draft, r gridref.Reading, v *layout.Value) {
	if len(in.polygons.Areas) == 0 {
		return
	}
	o := in.outline(r)
	written := r.Square.String()
	if v != nil {
		written = verbatim(v)
	} else if r.Geographic() {
		written = d.o.Locality
	}
	key := areaKey{r.Square, r.Place, written, ""}
	ask := func(key areaKey, values []*layout.Value, read func() reading.Verdict) {
		if verdict := recall(in.memory.areas, key, read); verdict.State != reading.Fair {
			if key.county != "" {
				// In doubt beside this place alone.
				in.noteRecord(d, verdict, key.county+" beside "+written, values[0])
				return
			}
			in.note(d, verdict, values...)
		}
	}
	var at []*layout.Value
	if v != nil {
		at = append(at, v)
	} else if site, found := d.Get(layout.Site); found {
		at = append(at, site)
	}
	ask(key, at, func() reading.Verdict { return in.polygons.Place(o(), written) })
	for _, m := range [...]layout.Meaning{layout.ViceCounty, layout.County} {
		if stated, found := d.Get(m); found {
			key.county = in.text(stated)
			if m == layout.ViceCounty {
				key.county = viceCounty(key.county)
			}
			ask(key, []*layout.Value{stated}, func() reading.Verdict { return in.polygons.County(o(), key.county, written) })
		}
	}
}

// areaKey is what the verdict about a place in the areas depends on.
type areaKey struct {
	square          gridref.Square
	place           gridref.Point
	written, county string
}

// outline is the ground that the place may be on.
func (in *interpreter) outline(r gridref.Reading) func() area.Outline {
	return func() area.Outline {
		if p := r.Centre(); r.Geographic() || r.Stated > 0 {
			return area.Circle(p.Lat, p.Lon, p.Uncertainty)
		}
		var corners [4][2]float64
		for i, c := range r.Square.Corners() {
			corners[i] = [2]float64{c.Lat, c.Lon}
		}
		return area.Square(corners)
	}
}
