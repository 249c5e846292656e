package validate

import (
	"strings"

	"fieldfare/dwc"
)

// keys works out what records are compared by. Neighbours have much of it in
// common, so it remembers what it made of the last one. It is for one goroutine.
type keys struct {
	ofTaxon hash
	taxonOf taxonParts
	ofPlace uint64
	placeOf placeParts
	ofTrap  uint64
	trapOf  trapParts
	stays   []uint64
	staysOf stayParts
	started bool
}

type taxonParts struct{ name, verbatim string }

type placeParts struct {
	locality, reference string
	lat, lon            float64
	placed              bool
}

type trapParts struct {
	place  uint64
	method string
}

type stayParts struct {
	people string
	day    int32
	cell   uint64
}

// taxon is the taxon: its name, else what was written.
func (k *keys) taxon(o *dwc.Occurrence) hash {
	parts := taxonParts{name: o.ScientificName}
	if parts.name == "" {
		parts.verbatim = o.VerbatimIdentification
	}
	if k.ofTaxon == 0 || parts != k.taxonOf {
		k.taxonOf = parts
		if parts.name != "" {
			k.ofTaxon = newHash.text(parts.name)
		} else {
			k.ofTaxon = newHash.folded(parts.verbatim)
		}
	}
	return k.ofTaxon
}

// place is the place: its name, else its reference, else the hundredth of a
// degree around it.
func (k *keys) place(o *dwc.Occurrence, f *Facts) uint64 {
	parts := placeParts{locality: o.Locality}
	if parts.locality == "" {
		parts.reference = f.Reference
		if parts.reference == "" && f.Placed {
			parts.lat, parts.lon, parts.placed = f.Latitude, f.Longitude, true
		}
	}
	if k.started && parts == k.placeOf {
		return k.ofPlace
	}
	k.started, k.placeOf = true, parts
	h := newHash
	switch {
	case parts.locality != "":
		h = h.folded(parts.locality)
	case parts.reference != "":
		h = h.text(parts.reference)
	case parts.placed:
		h = h.number(int32(parts.lat * 100)).number(int32(parts.lon * 100))
	default:
		h = h.byte(0)
	}
	k.ofPlace = h.sum()
	return k.ofPlace
}

// same is alike for records of the same taxon, stage, sex, date and place.
func (k *keys) same(o *dwc.Occurrence, f *Facts) uint64 {
	h := k.taxon(o).text(o.LifeStage).text(o.Sex).text(o.Caste)
	if f.Dated {
		h = h.number(f.Start).number(f.End)
	} else {
		h = h.folded(o.VerbatimEventDate)
	}
	if o.OccurrenceStatus == "absent" {
		h = h.byte(1)
	}
	return h.value(k.place(o, f)).sum()
}

// history is alike for records of a taxon, but for its early stages, at a place.
func (k *keys) history(o *dwc.Occurrence, f *Facts) uint64 {
	return k.taxon(o).text(stageUnlessAdult(o.LifeStage)).value(k.place(o, f)).sum() >> countBits
}

// trap is the trap: a method at a place.
func (k *keys) trap(o *dwc.Occurrence, f *Facts) uint64 {
	parts := trapParts{k.place(o, f), o.SamplingProtocol}
	if k.ofTrap == 0 || parts != k.trapOf {
		k.trapOf = parts
		k.ofTrap = newHash.value(parts.place).folded(parts.method).sum()
	}
	return k.ofTrap
}

// visits are the values of the journeys of the people of a record that can be
// put on one day and one place, valid until the next call.
func (k *keys) visits(o *dwc.Occurrence, f *Facts) []uint64 {
	parts := stayParts{o.RecordedBy, f.Start, cellOf(f.Latitude, f.Longitude)}
	if len(k.stays) > 0 && parts == k.staysOf {
		return k.stays
	}
	k.staysOf, k.stays = parts, k.stays[:0]
	for person := range strings.SplitSeq(parts.people, " | ") {
		k.stays = append(k.stays, visitKey(person, parts.day)>>cellBits<<cellBits|parts.cell)
	}
	return k.stays
}
