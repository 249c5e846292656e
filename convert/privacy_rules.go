package convert

import (
	"slices"
	"strings"

	"fieldfare/convert/places"
	"fieldfare/convert/privacy"
	"fieldfare/convert/project"
	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"
	"fieldfare/gridref"
)

// privacyRules say how far a record must be blurred, from the project file
// and the lists.
type privacyRules struct {
	taxa    map[string]int32 // side in metres, by folded name
	places  map[string]int32
	squares []privateSquare
	least   int32    // for every record
	names   []string // of private places, as written
	byPlace int32    // for a private place where its line does not say
}

// privateSquare is where a private place lies.
type privateSquare struct {
	where gridref.Reading
	blur  int32
}

func newPrivacyRules(p *project.Privacy, list []places.Place) privacyRules {
	r := privacyRules{taxa: map[string]int32{}, places: map[string]int32{}, least: int32(p.Square), byPlace: privacy.DefaultPlace}
	for _, t := range p.Taxa {
		r.taxa[strings.ToLower(t.Name)] = orDefault(t.Square, privacy.DefaultTaxon)
	}
	for _, pl := range p.Places {
		r.places[strings.ToLower(pl.Name)] = orDefault(pl.Square, privacy.DefaultPlace)
	}
	for i := range list {
		blur := r.place(&list[i])
		if blur > 0 {
			r.names = append(append(r.names, list[i].Name), list[i].Other...)
		}
		if blur == 0 || list[i].Reference == "" {
			continue
		}
		if where, err := gridref.Parse(list[i].Reference); err == nil {
			r.squares = append(r.squares, privateSquare{where, blur})
		}
	}
	return r
}

// withPrivatePlaces marks the places that the project file says are private,
// and adds those that the list lacks, so that their names are known however
// they are spelt, and as parts of others. Unlisted are these, where there is a
// list.
func withPrivatePlaces(list []places.Place, private []project.PrivatePlace) (all []places.Place, unlisted []string) {
	listed := len(list)
	known, _ := places.NewList(list)
	for _, p := range private {
		named := known.Named(p.Name)
		for i := range list {
			if slices.ContainsFunc(named, func(of *places.Place) bool {
				return slices.Equal(strings.Fields(of.Name), strings.Fields(list[i].Name)) && of.Reference == strings.TrimSpace(list[i].Reference)
			}) {
				list[i].Private, list[i].BlurTo = true, max(list[i].BlurTo, p.Square)
			}
		}
		if len(named) == 0 {
			if listed > 0 {
				unlisted = append(unlisted, p.Name)
			}
			list = append(list, places.Place{Name: p.Name, Private: true, BlurTo: p.Square})
		}
	}
	return list, unlisted
}

// learn takes in the sensitive taxa of the lists, and finds those of the
// project file on them, however they are written there. It returns those that
// are on none.
func (r *privacyRules) learn(ix *taxa.Index, p *project.Privacy) (unknown []string) {
	names := ix.NewMatcher()
	for _, t := range p.Taxa {
		found := names.Match(taxa.Written{Name: t.Name}, taxa.Context{})
		if found.Taxon == nil || found.State == reading.Held {
			unknown = append(unknown, t.Name)
			continue
		}
		r.add(found.Taxon.ScientificName, orDefault(t.Square, privacy.DefaultTaxon))
	}
	for t := range ix.Taxa {
		if t.SensitiveTo > 0 {
			r.add(t.ScientificName, int32(t.SensitiveTo))
		}
	}
	return unknown
}

func (r *privacyRules) add(name string, blur int32) {
	key := strings.ToLower(name)
	r.taxa[key] = max(r.taxa[key], blur)
}

// taxon returns the side in metres to which records of the taxon are blurred,
// 0 for not at all. What is sensitive is so with all that belongs to it: a
// species with its subspecies, a genus with its species.
func (r *privacyRules) taxon(t *taxa.Taxon) int32 {
	blur := max(r.least, int32(t.SensitiveTo))
	if len(r.taxa) == 0 {
		return blur
	}
	l := &t.Lineage
	for _, name := range [...]string{
		t.ScientificName, t.Vernacular, strings.TrimSuffix(t.ScientificName, " agg."), t.Genus + " " + t.SpecificEpithet(),
		l.Genus, l.Tribe, l.Subfamily, l.Family, l.Superfamily, l.Order, l.Class, l.Phylum, l.Kingdom,
	} {
		blur = max(blur, r.taxa[strings.ToLower(name)])
	}
	return blur
}

// named returns the same for a name that is on no list.
func (r *privacyRules) named(name string) int32 { return max(r.least, r.taxa[strings.ToLower(name)]) }

// place returns the same for records of the place.
func (r *privacyRules) place(p *places.Place) int32 {
	blur := r.places[strings.ToLower(p.Name)]
	for _, other := range p.Other {
		blur = max(blur, r.places[strings.ToLower(other)])
	}
	if p.Private {
		blur = max(blur, orDefault(p.BlurTo, r.byPlace))
	}
	return max(blur, int32(p.BlurTo))
}

func orDefault(metres int, otherwise int32) int32 {
	if metres > 0 {
		return int32(metres)
	}
	return otherwise
}
