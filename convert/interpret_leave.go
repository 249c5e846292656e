package convert

import (
	"strconv"

	"fieldfare/convert/layout"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// outgoing settles, of one record of a draft, what may leave: the last step
// before it is checked. Part is its number among the draft's records, from 0.
func (in *interpreter) outgoing(d *draft, part int, r *spool.Record) {
	r.Facts.Blur = max(r.Facts.Blur, in.privacy.least)
	o := &r.Occurrence
	if part > 0 && o.OccurrenceID != "" {
		o.OccurrenceID += "-" + strconv.Itoa(part+1) // the notebook's id is the row's
	}
	if d.sheet.stated {
		in.restate(d, r)
	}
	for _, i := range writtenTerms {
		field := o.Field(i)
		if *field == "" {
			continue
		}
		if clean, _ := in.memory.scrub(in.people, *field); clean == *field {
			continue
		}
		v := layout.Value{Meaning: "record", Text: *field}
		*field = in.scrub(d, d.from(&v), *field)
	}
	kept := r.Measurements[:0]
	for _, m := range r.Measurements {
		v := layout.Value{Meaning: layout.Measurement, Text: m.MeasurementValue, Heading: m.MeasurementType}
		m.MeasurementValue = in.scrub(d, &v, m.MeasurementValue)
		for _, field := range []*string{&m.MeasurementType, &m.MeasurementUnit, &m.VerbatimMeasurementType, &m.MeasurementMethod, &m.MeasurementDeterminedBy, &m.MeasurementRemarks} {
			if *field != "" {
				*field = in.cleaned(*field)
			}
		}
		if m.MeasurementValue != "" {
			kept = append(kept, m)
		}
	}
	r.Measurements = kept
}

// writtenTerms are the terms that hold what somebody wrote and that are not
// searched while they are read, by their places in dwc.Terms.
var writtenTerms = func() []int {
	var list []int
	for _, term := range []string{
		"verbatimEventDate", "verbatimIdentification", "verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "verbatimElevation",
		"identificationQualifier", "identificationRemarks", "taxonRemarks", "county", "country", "higherGeography", "fieldNotes", "occurrenceRemarks",
		"organismQuantity", "identificationVerificationStatus",
	} {
		if i, ok := dwc.TermIndex(term); ok {
			list = append(list, i)
		}
	}
	return list
}()

// from finds the value with the text, for the question about it; otherwise is
// returned where there is none.
func (d *draft) from(otherwise *layout.Value) *layout.Value {
	for i := range d.Values {
		if v := &d.Values[i]; v.Text == otherwise.Text {
			return v
		}
	}
	return otherwise
}
