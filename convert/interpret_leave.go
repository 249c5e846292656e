package convert

import (
	"slices"
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
	for n, i := range writtenTerms {
		field := o.Field(i)
		if *field == "" || *field == d.harmless[n] {
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
	if len(list) > maxWritten {
		panic("convert: more written terms than maxWritten")
	}
	return list
}()

// maxWritten is how many writtenTerms there may be.
const maxWritten = 16

// harmless is the text of a term in which there is nothing to scrub: that of
// the at-th of the writtenTerms.
type harmless struct {
	at   int
	text string
}

// harmless lists the writtenTerms of a part that hold nothing to scrub.
func (in *interpreter) harmless(p *spool.Part) []harmless {
	var list []harmless
	for n, term := range p.Terms {
		at := slices.Index(writtenTerms, int(term))
		if at < 0 {
			continue
		}
		if clean, _ := in.memory.scrub(in.people, p.Values[n]); clean == p.Values[n] {
			list = append(list, harmless{at, clean})
		}
	}
	return list
}

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
