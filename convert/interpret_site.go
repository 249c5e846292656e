package convert

import (
	"fieldfare/convert/layout"
	"fieldfare/convert/places"
	"fieldfare/gridref"
)

// defaultPlaceMetres is how far a reference may lie from its named place
// without a question (common practice, no source).
const defaultPlaceMetres = 1000

// site reads the name of the place and what the places list knows of it.
func (in *interpreter) site(d *draft, v *layout.Value) places.Reading {
	text := v.Text
	if said, told := in.instead(v); told {
		text = said
		if name, placed := nameBeside(said); placed && name == "" {
			text = v.Text // it keeps its name
		} else if placed {
			text = name
		}
	}
	if v.From == notSaid && text == v.Text {
		return places.Reading{} // there is no name, and none was told
	}
	p := recall(in.memory.places, text, func() places.Reading { return in.places.Find(text) })
	in.note(d, p.Verdict, v)
	o := &d.o
	o.Locality = in.scrub(d, v, p.Name)
	if v.From == notSaid {
		// what the recorder answered; nothing is written
	} else if written := in.scrub(d, v, verbatim(v)); written != o.Locality {
		o.VerbatimLocality = written
	}
	if p.Place == nil {
		return p
	}
	if o.County = p.Place.County; o.County == "" && p.Place.ViceCounty != "" {
		o.County = viceCounty(p.Place.ViceCounty)
	}
	return p
}

// agree asks about a reference that lies too far from the named place.
func (in *interpreter) agree(d *draft, p places.Reading, r gridref.Reading, site, v *layout.Value) {
	in.note(d, places.Agree(p, r, in.placeMetres()), d.atSite(v), site)
}

// placeMetres is how far a reference may lie from its named place.
func (s *settings) placeMetres() int {
	if m := s.project.Reading.PlaceMetres; m > 0 {
		return m
	}
	return defaultPlaceMetres
}

// privateMetres is how close to a private place a square is taken to be part
// of it, whatever the site is called: a garden is larger than the reference of
// its trap (common practice, no source).
const privateMetres = 100

// private settles how far the record must be blurred for its place: one that
// is named as private, or one whose square touches such a place's, whatever
// it is called.
func (in *interpreter) private(d *draft, p places.Reading, r gridref.Reading) {
	if p.Place != nil {
		d.facts.Blur = max(d.facts.Blur, in.privacy.place(p.Place))
	}
	for i := range in.privacy.squares {
		s := &in.privacy.squares[i]
		if d.facts.Blur < s.blur && places.Apart(s.where, r) <= privateMetres {
			d.facts.Blur = s.blur
		}
	}
}
