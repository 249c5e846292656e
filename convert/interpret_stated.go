package convert

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/privacy"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// On a page of terms a value stands under the very name of the term that it
// fills, so it is kept as it stands, and what would be made afresh gives way:
// a submission that is read again says the same again. Only what carries the
// record's meaning is read like anything else.

// readTerms are the terms whose value is what the reading made of it.
var readTerms = []string{
	"eventDate", "year", "month", "day", "individualCount", "sex", "lifeStage", "occurrenceStatus", "basisOfRecord", "recordedBy", "identifiedBy",
	"identificationVerificationStatus", "locality", "decimalLatitude", "decimalLongitude", "coordinateUncertaintyInMeters", "informationWithheld",
}

// placeTerms follow from the coordinates.
var placeTerms = []string{
	"geodeticDatum", "coordinatePrecision", "verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "verbatimCoordinateSystem", "verbatimSRS",
	"footprintWKT", "footprintSRS", "georeferenceProtocol", "georeferenceSources", "georeferenceRemarks",
}

// restate gives a record of a page of terms what the page states.
func (in *interpreter) restate(d *draft, r *spool.Record) {
	o := &r.Occurrence
	stated := dwc.Occurrence{}
	for i := range d.Values {
		v := &d.Values[i]
		if v.Meaning == layout.Measurement || v.Meaning == layout.Temperature || v.Meaning == layout.AboutMeasurement {
			continue
		}
		stated.Set(v.Heading, v.Text)
		switch {
		case v.Heading == "occurrenceID" || slices.Contains(readTerms, v.Heading) || slices.Contains(placeTerms, v.Heading) || slices.Contains(privacy.ListTerms, v.Heading):
		case strings.HasSuffix(v.Heading, "ID"): // its figures are no telephone number
			o.Set(v.Heading, v.Text)
		default:
			o.Set(v.Heading, in.scrub(d, v, v.Text))
		}
	}
	in.restateDate(d, o, &stated)
	restatePlace(o, &stated)
	in.restateTaxon(d, r, &stated)
	if stated.DataGeneralizations != "" { // the rougher place may lie in two countries
		o.Country, o.CountryCode = in.cleaned(stated.Country), in.cleaned(stated.CountryCode)
	}
	if o.InformationWithheld == "" || strings.HasPrefix(stated.InformationWithheld, o.InformationWithheld) {
		o.InformationWithheld = stated.InformationWithheld
	} else if stated.InformationWithheld != "" && !strings.Contains(o.InformationWithheld, stated.InformationWithheld) {
		o.InformationWithheld = joinRemarks(stated.InformationWithheld, o.InformationWithheld)
	}
	if o.VerificationStatus == "" {
		o.VerificationStatus = in.cleaned(stated.VerificationStatus)
	}
	if stated.Locality != "" && o.Locality == stated.Locality {
		o.VerbatimLocality = stated.VerbatimLocality
	}
}

// stated returns the value under a term's name; nil where there is none.
func (d *draft) stated(term string) *layout.Value {
	if i := slices.IndexFunc(d.Values, func(v layout.Value) bool { return v.Heading == term }); i >= 0 {
		return &d.Values[i]
	}
	return nil
}

// states tells whether a record of a page of terms states the term.
func (d *draft) states(term string) bool {
	return d.sheet.stated && d.stated(term) != nil
}

// cleaned takes out of a text what must not leave. Whoever wrote the page is
// told of it where its text is read.
func (in *interpreter) cleaned(text string) string {
	clean, _ := in.memory.scrub(in.people, text)
	return clean
}

func (in *interpreter) restateDate(d *draft, o, stated *dwc.Occurrence) {
	if parts := disagreeing(o, stated); parts != "" && stated.EventDate != "" {
		if v := d.stated("eventDate"); v != nil && !slices.ContainsFunc(d.findings, func(f reading.Finding) bool { return f.Code == "date-parts-disagree" }) {
			in.noteRecord(d, reading.QueryOf("date-parts-disagree", "The date is "+stated.EventDate+", but the record states "+parts+". The date is handed in; check which of the two is right."), stated.EventDate+", "+parts, v)
		}
		stated.Year, stated.Month, stated.Day = "", "", ""
	}
	if stated.EventDate != "" && o.EventDate != "" && len(dwc.Check(&dwc.Occurrence{OccurrenceID: "x", EventDate: stated.EventDate})) == 0 {
		o.EventDate, o.EventTime = stated.EventDate, stated.EventTime
		if stated.Year != "" {
			o.Year, o.Month, o.Day = stated.Year, stated.Month, stated.Day
		}
	}
	if stated.VerbatimEventDate == "" && o.VerbatimEventDate == stated.EventDate {
		o.VerbatimEventDate = ""
	}
}

// disagreeing names the year, month and day that a record states and that are
// not those of its date: "year 2020". An interval has no single one.
func disagreeing(o, stated *dwc.Occurrence) string {
	var parts []string
	for _, p := range []struct{ name, stated, read string }{{"year", stated.Year, o.Year}, {"month", stated.Month, o.Month}, {"day", stated.Day, o.Day}} {
		if p.stated != "" && p.read != "" && strings.TrimLeft(p.stated, "0") != p.read {
			parts = append(parts, p.name+" "+p.stated)
		}
	}
	return strings.Join(parts, ", ")
}

// restatePlace keeps the coordinates as stated where they are those that were
// read.
func restatePlace(o, stated *dwc.Occurrence) {
	if stated.DecimalLatitude == "" && stated.DecimalLongitude == "" {
		if o.DecimalLatitude == "" { // not placed: as written
			for _, term := range placeTerms {
				if value := stated.Get(term); value != "" {
					o.Set(term, value)
				}
			}
		}
		return
	}
	if o.DecimalLatitude == "" || !near(o.DecimalLatitude, stated.DecimalLatitude, 5e-6) || !near(o.DecimalLongitude, stated.DecimalLongitude, 5e-6) {
		return
	}
	o.DecimalLatitude, o.DecimalLongitude = stated.DecimalLatitude, stated.DecimalLongitude
	if stated.CoordinateUncertainty != "" {
		o.CoordinateUncertainty = stated.CoordinateUncertainty
	}
	for _, term := range placeTerms {
		if value := stated.Get(term); value != "" || term != "geodeticDatum" {
			o.Set(term, value)
		}
	}
}

func near(a, b string, within float64) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	return errX == nil && errY == nil && math.Abs(x-y) < within
}

// restateTaxon keeps what the page states of the taxon where the list says
// nothing. What the list says otherwise stays, with the page's own word
// beside it.
func (in *interpreter) restateTaxon(d *draft, r *spool.Record, stated *dwc.Occurrence) {
	o := &r.Occurrence
	if stated.ScientificName != "" && stated.VerbatimIdentification == "" && (o.VerbatimIdentification == stated.ScientificName || o.VerbatimIdentification == stated.ScientificName+" / "+stated.VernacularName) && o.ScientificName == stated.ScientificName {
		o.VerbatimIdentification = ""
	}
	if r.EmptyVisit {
		return
	}
	unlisted := o.ScientificName == "" && stated.ScientificName != ""
	if unlisted && !in.accept(d, stated) {
		return
	}
	for _, term := range privacy.ListTerms {
		value, now := in.cleaned(stated.Get(term)), o.Get(term)
		switch {
		case value == "" || value == now || term == "scientificName" && now != "":
		case unlisted || now == "" && r.Facts.Blur == 0, term == "scientificNameID" && stated.ScientificName == o.ScientificName && r.Facts.Blur == 0:
			o.Set(term, value)
		default:
			o.TaxonRemarks = joinRemarks(o.TaxonRemarks, term+" stated as "+value)
		}
	}
	if unlisted {
		r.Facts.Blur = max(r.Facts.Blur, in.privacy.named(stated.ScientificName), in.privacy.named(stated.VernacularName))
	}
}

// accept lets a name that the list does not have stand, where the page itself
// gives its rank: it comes from a submission that was checked once, by another
// list. It is asked about and not held.
func (in *interpreter) accept(d *draft, stated *dwc.Occurrence) bool {
	if stated.TaxonRank == "" || stated.OccurrenceID == "" {
		return false
	}
	accepted := false
	for i := range d.findings {
		f := &d.findings[i]
		if f.State == reading.Held && (f.About == string(layout.Scientific) || f.About == string(layout.Vernacular)) {
			f.Verdict = reading.QueryOf("name-as-stated", "“"+stated.ScientificName+"” could not be found on the taxon list. It is handed in as the submission states it. Give the list that it was made with after --taxa.")
			accepted = true
		}
	}
	return accepted
}
