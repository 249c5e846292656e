package convert

import (
	"slices"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/privacy"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// rest reads everything that is kept as text.
func (in *interpreter) rest(d *draft) {
	o := &d.o
	for _, i := range d.shape.others {
		v := &d.Values[i]
		switch v.Meaning {
		case layout.Habitat:
			o.Habitat = joinRemarks(o.Habitat, in.free(d, v))
		case layout.Remarks:
			o.OccurrenceRemarks = joinRemarks(o.OccurrenceRemarks, in.free(d, v))
		case layout.Weather:
			o.FieldNotes = joinRemarks(o.FieldNotes, labelled(v, in.free(d, v)))
		case layout.Specimen:
			o.OccurrenceRemarks = joinRemarks(o.OccurrenceRemarks, labelled(v, in.free(d, v)))
			d.facts.Specimen = d.facts.Specimen || yes(v.Text)
		case layout.Certainty:
			o.IdentificationQualifier = joinRemarks(o.IdentificationQualifier, v.Text)
		case layout.RecordID:
			o.OccurrenceID = v.Text
		case layout.Basis:
			in.basis(d, v)
		case layout.Term:
			if !d.sheet.stated { // else see restate
				in.term(d, v)
			}
		}
	}
	if o.BasisOfRecord == "" {
		o.BasisOfRecord = "HumanObservation"
	}
	o.Type = "Event"
}

// free reads a text that nothing is looked up in.
func (in *interpreter) free(d *draft, v *layout.Value) string {
	return in.scrub(d, v, in.text(v))
}

// scrub takes out of a text what must not leave: e-mail addresses, telephone
// numbers, home addresses.
func (in *interpreter) scrub(d *draft, v *layout.Value, text string) string {
	clean, found := in.memory.scrub(in.people, text)
	if len(found) > 0 {
		looks, is := " looks like ", "It is"
		if len(found) > 1 {
			looks, is = " look like ", "They are"
		}
		in.note(d, reading.QueryOf("contact-removed", "“"+strings.Join(found, "”, “")+"”"+looks+
			"an address, an e-mail address, a telephone number or the name of somebody who is not to be named. "+is+" left out of what is handed in."), v)
	}
	return clean
}

// labelled puts the column's heading before a text that needs it.
func labelled(v *layout.Value, text string) string {
	if v.Heading == "" || text == "" {
		return text
	}
	return v.Heading + ": " + text
}

// basisWords are Darwin Core's values of basisOfRecord by the words in which
// they are written.
var basisWords = map[string]string{
	"humanobservation": "HumanObservation", "observation": "HumanObservation", "field observation": "HumanObservation", "sighting": "HumanObservation",
	"preservedspecimen": "PreservedSpecimen", "specimen": "PreservedSpecimen", "collection": "PreservedSpecimen",
	"machineobservation": "MachineObservation", "camera": "MachineObservation",
	"materialsample": "MaterialSample", "livingspecimen": "LivingSpecimen", "fossilspecimen": "FossilSpecimen",
	"occurrence": "Occurrence", "materialcitation": "MaterialCitation", "literature": "MaterialCitation", "materialentity": "MaterialEntity",
}

func (in *interpreter) basis(d *draft, v *layout.Value) {
	word := strings.ToLower(in.text(v))
	value := basisWords[word]
	if value == "" {
		value = basisWords[strings.ReplaceAll(word, " ", "")]
	}
	if value == "" {
		in.note(d, reading.QueryOf("basis-unknown", "“"+v.Text+"” is no basis of record that Darwin Core knows. It is taken for an observation by a person.", "HumanObservation", "PreservedSpecimen"), v)
	}
	d.o.BasisOfRecord = value
}

// term keeps a Darwin Core term that the notebook states by its own name, if
// nothing has filled it yet.
func (in *interpreter) term(d *draft, v *layout.Value) {
	text := in.free(d, v)
	free := d.facts.Blur > 0 && slices.Contains(privacy.ListTerms, v.Heading)
	if v.Heading == "scientificNameID" && !free {
		d.o.ScientificNameID = text // the recorder's own goes before the list's
		return
	}
	if d.o.Get(v.Heading) == text || !free && d.o.Get(v.Heading) == "" && d.o.Set(v.Heading, text) {
		return
	}
	d.o.OccurrenceRemarks = joinRemarks(d.o.OccurrenceRemarks, labelled(v, in.free(d, v)))
}

// measurements are the values of measurement columns.
func (in *interpreter) measurements(d *draft) []spool.Measurement {
	var list []spool.Measurement
	for _, i := range d.shape.others {
		v := &d.Values[i]
		switch v.Meaning {
		case layout.AboutMeasurement:
			list[len(list)-1].Set(v.Heading, v.Text)
			continue
		case layout.Measurement, layout.Temperature:
		default:
			continue
		}
		kind, unit := headingUnit(v.Heading)
		if kind == "" {
			kind = string(v.Meaning)
		}
		list = append(list, spool.Measurement{
			Measurement: dwc.Measurement{MeasurementType: kind, MeasurementValue: in.text(v), MeasurementUnit: unit},
			Event:       v.Meaning == layout.Temperature,
		})
	}
	return list
}

// headingUnit takes the unit off a heading: "Forewing (mm)" measures the
// forewing in mm.
func headingUnit(heading string) (kind, unit string) {
	open := lastBracket(heading)
	if open < 0 {
		for _, u := range []string{" mm", " cm", " °C", " C", " mph", " %"} {
			if rest, found := strings.CutSuffix(heading, u); found {
				return strings.TrimSpace(rest), u[1:]
			}
		}
		return heading, ""
	}
	return strings.TrimSpace(heading[:open]), strings.TrimSpace(heading[open+1 : open+1+max(0, strings.LastIndexAny(heading[open+1:], ")]"))])
}

// lastBracket is where the last bracket of a heading opens that is closed
// again, with what is in brackets within it; -1 where there is none.
func lastBracket(heading string) int {
	depth := 0
	for i := len(heading) - 1; i >= 0; i-- {
		switch heading[i] {
		case ')', ']':
			depth++
		case '(', '[':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return -1
}

// fillDataset gives an occurrence what holds for the dataset as a whole.
func (s *settings) fillDataset(o *dwc.Occurrence) {
	set := func(field *string, value string) {
		if *field == "" {
			*field = value
		}
	}
	d := &s.project.Dataset
	set(&o.License, s.licence)
	set(&o.RightsHolder, d.RightsHolder)
	set(&o.DatasetName, d.Title)
	set(&o.DatasetID, d.ID)
	set(&o.InstitutionCode, d.Institution)
	set(&o.CollectionCode, d.Collection)
	set(&o.Language, d.Language)
}
