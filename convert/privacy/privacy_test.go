package privacy_test

import (
	"slices"
	"strings"
	"testing"

	"fieldfare/convert/privacy"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/gridref"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
)

// garden is a record of a private garden, blurred to a tetrad.
func garden() spool.Record {
	r := spool.Record{
		Occurrence: dwc.Occurrence{
			Type: "Event", BasisOfRecord: "HumanObservation", OccurrenceStatus: "present", ScientificName: "Agrotis exclamationis", VernacularName: "Heart and Dart",
			TaxonRank: "species", Kingdom: "Animalia", NomenclaturalCode: "ICZN", IndividualCount: "12", LifeStage: "adult", Sex: "male | female",
			OrganismQuantity: "about 12", OrganismQuantityType: "individuals", EventDate: "2021-06-12/2021-06-13", EventTime: "22:45", Year: "2021", Month: "6", Day: "12",
			RecordedBy: "Ines Calloway | Tom Achterberg", IdentifiedBy: "Tom Achterberg", CountryCode: "GB", Country: "United Kingdom",
			License: "http://creativecommons.org/licenses/by/4.0/legalcode", Language: "en", Locality: "Tinker's Row", VerbatimCoordinates: "TL458881",
		},
		Facts: validate.Facts{Placed: true, Reference: "TL458881", Blur: privacy.DefaultPlace, Taxon: validate.TaxonFacts{Listed: true}},
	}
	return r
}

func blurred(r spool.Record) dwc.Occurrence {
	var o dwc.Occurrence
	privacy.Blur(&o, &r)
	return o
}

func TestNothingToBlur(t *testing.T) {
	r := garden()
	r.Facts.Blur = 0
	assert.Equal(t, r.Occurrence, blurred(r))
}

func TestWhatABlurredRecordTells(t *testing.T) {
	r := garden()
	got := blurred(r)
	want := r.Occurrence
	want.Locality, want.EventTime = "", ""
	want.InformationWithheld = privacy.Withheld
	want.DataGeneralizations = "the place is given as a square of 2 km"
	square, err := gridref.Parse("TL48P")
	assert.NoError(t, err)
	privacy.Fill(&want, square.Square)
	assert.Equal(t, want, got)
	assert.Equal(t, "TL48P", got.VerbatimCoordinates)
	assert.Equal(t, "1415", got.CoordinateUncertainty[:3]+"5", "the half diagonal of a tetrad is 1414.2 m; more only for the projection")
}

// Whatever a notebook writes into whichever term, no word of its own leaves: a
// blurred record is built up from values that vocabularies, dates, figures and
// lists have.
func TestNoWordOfTheRecordersOwnLeaves(t *testing.T) {
	for _, secret := range []string{"Tinker's Row 12", "tinkers", "TL4588", "garden at Tinker's Row, by Ines", "https://example.org/tinkers-row"} {
		for _, listed := range []bool{true, false} {
			r := garden()
			for i := range dwc.Terms() {
				*r.Occurrence.Field(i) = secret
			}
			r.Facts.Taxon.Listed = listed
			o := blurred(r)
			for i, term := range dwc.Terms() {
				switch term {
				case "verbatimCoordinates", "decimalLatitude", "decimalLongitude", "footprintWKT":
					assert.NotContains(t, *o.Field(i), "TL4588 ", term) // those of the square
					continue
				}
				if listed && slices.Contains(privacy.ListTerms, term) {
					continue // the list's, which nothing written stands in place of
				}
				assert.NotContains(t, *o.Field(i), secret, term)
			}
			assert.Equal(t, "TL48P", o.VerbatimCoordinates)
			assert.True(t, strings.HasSuffix(o.InformationWithheld, privacy.PersonWithheld), "somebody may be meant")
		}
	}
}

func TestValuesThatSayMoreStayAtHome(t *testing.T) {
	for term, values := range map[string]struct{ told, kept string }{ // told leave, kept do not
		"individualCount":         {"12;0", "about 12;-1;12 in the shed;1234567890"},
		"organismQuantity":        {"several;10-20;>100;a few;up to 12", "several by the shed;lots in Mill Lane"},
		"organismQuantityType":    {"individuals;signs", "boxes"},
		"sex":                     {"male;male | female", "male | neighbour;cock"},
		"lifeStage":               {"adult;egg | larva", "adult in the porch"},
		"caste":                   {"queen", "queen at no. 12"},
		"vitality":                {"dead", "dead in the pond"},
		"eventDate":               {"2021-06-12;2021-06-12/2021-06-13", "12 June;2021-06-12 at home"},
		"eventTime":               {"", "22:45;22:45Z/23:00Z;when we got home"},
		"taxonRank":               {"species;species aggregate", "Species;species of ours"},
		"license":                 {"http://creativecommons.org/publicdomain/zero/1.0/legalcode", "CC0;ask at the house"},
		"language":                {"en;en-GB", "English"},
		"country":                 {"Jersey", "Elm"},
		"countryCode":             {"GB", "gb;Elm"},
		"identificationQualifier": {"cf.;agg.", "cf. neighbour's"},
		"basisOfRecord":           {"HumanObservation;PreservedSpecimen", "Shed;human"},
		"establishmentMeans":      {"native", "planted"},
		"type":                    {"Event;Sound", "Garden"},
		"nomenclaturalCode":       {"ICZN;ICN;ICNP", "Tinkers"},
		"dateIdentified":          {"2021", "next morning"},
		"genus":                   {"Agrotis", "agrotis;Agrotis of Elm"},
		"specificEpithet":         {"exclamationis;c-nigrum", "Elm"},
		"scientificName":          {"Agrotis exclamationis;" + strings.Repeat("a", 120), strings.Repeat("a", 121)},
		"taxonID":                 {"elm-1;http://example.org/list/1", ""},
	} {
		for _, value := range strings.Split(values.told, ";") {
			r := garden()
			r.Occurrence.Set(term, value)
			o := blurred(r)
			assert.Equal(t, value, o.Get(term), "%s %q", term, value)
		}
		for _, value := range strings.Split(values.kept, ";") {
			r := garden()
			r.Occurrence.Set(term, value)
			o := blurred(r)
			assert.Empty(t, o.Get(term), "%s %q", term, value)
		}
	}
	r := garden()
	r.Occurrence.OrganismQuantityType = ""
	assert.Empty(t, blurred(r).OrganismQuantity, "a quantity is of something")
}

// Of a taxon that is on no list only a name that looks like one is told.
func TestTaxonOnNoList(t *testing.T) {
	for name, told := range map[string]bool{"Agrotis exclamationis": true, "Agrotis": true, "Agrotis exclamationis minor": true, "Heart and Dart": false, "Agrotis sp. at Elm": false} {
		r := garden()
		r.Facts.Taxon.Listed = false
		r.Occurrence.ScientificName, r.Occurrence.TaxonID = name, "elm-1"
		o := blurred(r)
		assert.Equal(t, told, o.ScientificName == name, name)
		assert.Empty(t, o.VernacularName+o.Kingdom+o.TaxonID, name)
		assert.Equal(t, "species", o.TaxonRank)
	}
}

func TestPeopleOfABlurredRecord(t *testing.T) {
	for _, c := range []struct{ recorded, locality, want string }{
		{"Ines Calloway | Tom Achterberg", "Tinker's Row", "Ines Calloway | Tom Achterberg"},
		{"Ines Calloway | Tom Achterberg", "Calloway garden", "Tom Achterberg"}, // her garden is named after her
		{"Ines Calloway", "CALLOWAY'S", ""},
		{"Ian Row", "Tinker's Row", "Ian Row"}, // three letters are any word's
		{"Tinker Achterberg", "Tinker's Row", ""},
		{"12 Mill Lane", "Elm", ""}, {"ines", "Elm", ""}, {"Ines Calloway (garden)", "Elm", ""},
		{"Sallowmere Moth Group", "Elm", "Sallowmere Moth Group"}, {"", "Elm", ""},
	} {
		r := garden()
		r.Occurrence.RecordedBy, r.Occurrence.Locality = c.recorded, c.locality
		o := blurred(r)
		assert.Equal(t, c.want, o.RecordedBy, c)
		assert.Equal(t, c.want != c.recorded, strings.HasSuffix(o.InformationWithheld, "; "+privacy.PersonWithheld), c)
	}
	for said, want := range map[string]bool{privacy.PersonWithheld: true, "wording; " + privacy.PersonWithheld: true, "wording": false, "not " + privacy.PersonWithheld: false} {
		r := garden()
		r.Occurrence.InformationWithheld = said
		assert.Equal(t, want, strings.Contains(blurred(r).InformationWithheld, privacy.PersonWithheld), said)
	}
}

// The square is the smallest standard one that is as large as asked for and
// holds all that was recorded.
func TestSquareOfABlurredRecord(t *testing.T) {
	for _, c := range []struct {
		reference string
		blur      int32
		want      string
	}{
		{"TL458881", 100, "TL458881"}, {"TL458881", 101, "TL4588"}, {"TL458881", 1000, "TL4588"}, {"TL458881", 1001, "TL48P"}, {"TL458881", 2000, "TL48P"},
		{"TL458881", 2001, "TL48NE"}, {"TL458881", 5000, "TL48NE"}, {"TL458881", 5001, "TL48"}, {"TL458881", 10_000, "TL48"}, {"TL458881", 10_001, "TL"},
		{"TL458881", 100_001, ""}, {"TL", 10_000, "TL"}, {"TL48", 2000, "TL48"}, {"TL48P", 1000, "TL48P"}, {"TL48P", 5000, "TL48"}, {"O1234", 10_000, "O13"},
		{"TL4588088102", 1, "TL4588088102"}, {"TL4588088102", 2, "TL458881"}, {"not a reference", 2000, ""},
	} {
		r := garden()
		r.Facts.Reference, r.Facts.Blur = c.reference, c.blur
		o := blurred(r)
		assert.Equal(t, c.want, o.VerbatimCoordinates, c)
		assert.Equal(t, c.want == "", o.DataGeneralizations == "the place is withheld", c)
		assert.Equal(t, c.want == "", o.DecimalLatitude+o.FootprintWKT+o.GeodeticDatum+o.CoordinateUncertainty == "", c)
	}
	// A point, the centre of TL458881.
	for _, c := range []struct {
		radius float32
		blur   int32
		want   string
	}{
		{10, 100, "TL458881"}, {70, 100, "TL458881"}, {71, 100, "TL4588"}, {707, 1000, "TL4588"}, {708, 1000, "TL48P"}, {10, 10_000, "TL48"}, {71_000, 100, ""}, {10, 200_000, ""},
	} {
		r := garden()
		r.Facts.Reference, r.Facts.Latitude, r.Facts.Longitude, r.Facts.Radius, r.Facts.Blur = "", 52.4718222, 0.1458325, c.radius, c.blur
		assert.Equal(t, c.want, blurred(r).VerbatimCoordinates, c)
	}
	r := garden()
	r.Facts.Placed = false
	assert.Equal(t, "the place is withheld", blurred(r).DataGeneralizations)
	r = garden()
	r.Facts.Blur = 100
	r.Facts.Reference = "TL458881"
	assert.Equal(t, "the place is given as a square of 100 m", blurred(r).DataGeneralizations)
}
