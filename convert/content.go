package convert

import (
	"fieldfare/convert/identity"
	"fieldfare/convert/layout"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// content returns the fingerprint of what the draft says: its values as
// written, whatever the order of the columns. What came from a file's name or
// the project file does not count, so that renaming changes nothing.
func (in *interpreter) content(d *draft) [16]byte {
	said := identity.Begin(in.said)
	at := d.shape.content
	withheld := d.o.InformationWithheld != ""
	for len(at) > 0 {
		if f := d.facetOf(at[0].kind); f != nil && !withheld {
			said = append(said, f.written...)
			for kind := at[0].kind; len(at) > 0 && at[0].kind == kind; {
				at = at[1:]
			}
			continue
		}
		v := &d.Values[at[0].value]
		text := v.Text
		if withheld {
			text = in.unnamed(d, v)
		}
		said = appendSaid(said, v, text)
		at = at[1:]
	}
	in.said = said
	return identity.Of(said)
}

// written appends the values that a step reads as they enter the fingerprint,
// where they stand together.
func (in *interpreter) written(said []byte, d *draft, kind spool.Kind) []byte {
	for _, c := range d.shape.content {
		if c.kind == int(kind) {
			v := &d.Values[c.value]
			said = appendSaid(said, v, v.Text)
		}
	}
	return said
}

func appendSaid(said []byte, v *layout.Value, text string) []byte {
	said = identity.Append(said, string(v.Meaning))
	said = identity.Append(said, text)
	said = identity.Append(said, v.Sex)
	return identity.Append(said, v.Stage)
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
func partContent(content [16]byte, o *dwc.Occurrence) [16]byte {
	return identity.Content([]string{string(content[:]), o.Sex, o.LifeStage, o.Caste, o.Vitality, o.OccurrenceStatus})
}

// contentMeanings are the values that make a record what it is, in the fixed
// order in which they enter its fingerprint. Those that one step reads stand
// together.
var contentMeanings = []layout.Meaning{
	layout.RecordID, layout.Date, layout.EndDate, layout.Time, layout.EndTime,
	layout.Taxon, layout.Scientific, layout.Vernacular, layout.Authorship, layout.TaxonNumber,
	layout.Count, layout.Sex, layout.Stage, layout.Status, layout.Recorder, layout.Determiner,
	layout.Site, layout.GridRef, layout.Latitude, layout.Longitude, layout.ViceCounty, layout.County,
	layout.Method, layout.Habitat, layout.Remarks, layout.Certainty, layout.Measurement, layout.Specimen,
}
