package convert

import (
	"slices"

	"fieldfare/convert/identity"
	"fieldfare/convert/layout"
	"fieldfare/dwc"
)

// content returns the fingerprint of what the draft says: its values as
// written, whatever the order of the columns. What came from a file's name or
// the project file does not count, so that renaming changes nothing.
func (in *interpreter) content(d *draft) [16]byte {
	if !in.sameMeanings(d) {
		in.order, in.meanings = in.order[:0], in.meanings[:0]
		for i := range d.Values {
			m := meaningOf(&d.Values[i])
			in.meanings = append(in.meanings, m)
			if rank, counts := contentRanks[m]; counts {
				in.order = append(in.order, rank<<32|i)
			}
		}
		slices.Sort(in.order)
	}
	in.parts = in.parts[:0]
	for _, at := range in.order {
		v := &d.Values[at&(1<<32-1)]
		in.parts = append(in.parts, string(v.Meaning), v.Text, v.Sex, v.Stage)
		if d.o.InformationWithheld != "" {
			in.parts[len(in.parts)-3] = in.unnamed(d, v)
		}
	}
	return identity.Content(in.parts)
}

// unnamed is a value as it enters the fingerprint of a record with somebody
// who is not to be named: an id made from the name could be found by trying
// names.
func (in *interpreter) unnamed(d *draft, v *layout.Value) string {
	switch v.Meaning {
	case layout.Recorder:
		return d.o.RecordedBy
	case layout.Determiner:
		return d.o.IdentifiedBy
	}
	return in.cleaned(v.Text)
}

// meaningOf is the value's meaning for the fingerprint; none where it comes
// from the project file.
func meaningOf(v *layout.Value) layout.Meaning {
	if v.From == layout.FromProject || v.From == notSaid {
		return ""
	}
	return v.Meaning
}

// sameMeanings tells whether the draft's values are in the order of those of
// the draft before, as they are all down a list.
func (in *interpreter) sameMeanings(d *draft) bool {
	if len(d.Values) != len(in.meanings) {
		return false
	}
	for i, m := range in.meanings {
		if meaningOf(&d.Values[i]) != m {
			return false
		}
	}
	return true
}

// contentRanks are the places of the meanings in contentMeanings.
var contentRanks = func() map[layout.Meaning]int {
	ranks := map[layout.Meaning]int{}
	for i, m := range contentMeanings {
		ranks[m] = i
	}
	return ranks
}()

// partContent tells the occurrences of one row apart, which differ in sex,
// stage and the like.
func (in *interpreter) partContent(content [16]byte, o *dwc.Occurrence) [16]byte {
	in.parts = append(in.parts[:0], string(content[:]), o.Sex, o.LifeStage, o.Caste, o.Vitality, o.OccurrenceStatus)
	return identity.Content(in.parts)
}

// contentMeanings are the values that make a record what it is, in the fixed
// order in which they enter its fingerprint.
var contentMeanings = []layout.Meaning{
	layout.RecordID, layout.Date, layout.EndDate, layout.Time, layout.EndTime,
	layout.Taxon, layout.Scientific, layout.Vernacular, layout.Authorship, layout.TaxonNumber,
	layout.Count, layout.Sex, layout.Stage, layout.Status, layout.Recorder, layout.Determiner,
	layout.Site, layout.GridRef, layout.Latitude, layout.Longitude, layout.ViceCounty, layout.County,
	layout.Method, layout.Habitat, layout.Remarks, layout.Certainty, layout.Measurement, layout.Specimen,
}
