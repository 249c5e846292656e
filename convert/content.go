package convert

import (
	"fieldfare/convert/identity"
	"fieldfare/convert/layout"
	"fieldfare/dwc"
)

// content returns the fingerprint of what the draft says: its values as
// written, whatever the order of the columns. What came from a file's name or
// the project file does not count, so that renaming changes nothing.
func (in *interpreter) content(d *draft) [16]byte {
	in.parts = in.parts[:0]
	for _, m := range contentMeanings {
		for i := range d.Values {
			v := &d.Values[i]
			if v.Meaning != m || v.From == layout.FromProject {
				continue
			}
			in.parts = append(in.parts, string(m), v.Text, v.Sex, v.Stage)
		}
	}
	return identity.Content(in.parts)
}

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
