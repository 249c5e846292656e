package area

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/validate"
)

// Set is the areas of a project. It is not changed once it is made, so it may
// be used by several goroutines.
type Set struct {
	Areas []*Area
	// Wanted is the area that every record must lie in; nil where any of the
	// areas will do.
	Wanted *Area
}

// Checks are the checks of this package.
var Checks = []validate.Check{
	{Name: "outside-area", Asks: "Does the place lie wholly outside the area that the project file names?", State: reading.Held, Source: "the project's polygons", When: validate.WhileReading},
	{Name: "county-disagrees", Asks: "Does the stated county or vice-county disagree with the polygons?", State: reading.Query, Source: "the project's polygons", When: validate.WhileReading},
}

// Place asks about a place that lies wholly outside. Written is the place as it
// stands in the notebook.
func (s *Set) Place(o Outline, written string) reading.Verdict {
	switch {
	case len(s.Areas) == 0:
		return reading.Verdict{}
	case s.Wanted != nil:
		if s.Wanted.Of(o) > Outside {
			return reading.Verdict{}
		}
		return reading.HeldOf("outside-area", fmt.Sprintf("“%s” lies wholly outside %s. Check the reference; if it is right, answer keep to hand the record in all the same.", written, s.Wanted.Name))
	}
	var names []string
	for _, a := range s.Areas {
		if a.Of(o) > Outside {
			return reading.Verdict{}
		}
		if len(names) < 3 {
			names = append(names, a.Name)
		}
	}
	return reading.HeldOf("outside-area", fmt.Sprintf("“%s” lies wholly outside the areas of the project file (%s). Check the reference; if it is right, answer keep to hand the record in all the same.", written, strings.Join(names, ", ")))
}

// County asks about a stated county or vice-county that the polygons speak
// against: its own polygon lies elsewhere, or the place lies wholly in that of
// another vice-county.
func (s *Set) County(o Outline, stated, written string) reading.Verdict {
	if len(s.Areas) == 0 || stated == "" {
		return reading.Verdict{}
	}
	number := validate.ViceCountyNumber(stated)
	disagrees := func(why string) reading.Verdict {
		return reading.QueryOf("county-disagrees", fmt.Sprintf("“%s” is stated, but “%s” lies %s. Check which is right.", stated, written, why))
	}
	for _, a := range s.Areas {
		if a.is(stated, number) {
			if a.Of(o) == Outside {
				return disagrees("wholly outside " + a.Name)
			}
			return reading.Verdict{}
		}
	}
	if number == 0 {
		return reading.Verdict{}
	}
	for _, a := range s.Areas {
		if a.ViceCounty != 0 && a.Of(o) == Inside {
			return disagrees("wholly in " + a.Name)
		}
	}
	return reading.Verdict{}
}

// is tells whether a stated county means the area.
func (a *Area) is(stated string, number int) bool {
	if number != 0 && a.ViceCounty != 0 {
		return number == a.ViceCounty
	}
	return fold(stated) == fold(a.Name)
}

// fold leaves of a county's name what tells it from others.
func fold(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r < 'a' || r > 'z' })
	kept := words[:0]
	for _, w := range words {
		switch w {
		case "county", "of", "vice", "vc", "the":
		default:
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, " ")
}
