package dwc_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
	"fieldfare/testdata/need"
)

// The term list of the Darwin Core standard (TDWG, 2026; CC BY 4.0).
func publishedTerms(t testing.TB) [][]string {
	f, err := os.Open(need.ReferenceFile(t, "dwc/darwin_core_terms.csv"))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	return rows[1:]
}

func TestTermTableIsThePublishedOne(t *testing.T) {
	rows := publishedTerms(t)
	all := dwc.RecommendedTerms()
	require.Len(t, all, len(rows))
	for i, row := range rows {
		assert.Equal(t, row[0], all[i].IRI)
		assert.True(t, strings.HasSuffix(all[i].IRI, "/"+row[1]), all[i].IRI)
		assert.True(t, all[i].Known())
		byName, ok := dwc.Lookup(all[i].Name)
		assert.True(t, ok)
		assert.Equal(t, all[i], byName)
		byIRI, ok := dwc.Lookup(row[0])
		assert.True(t, ok)
		assert.Equal(t, all[i], byIRI)
	}
}

// Every field of every record is a term of the standard, and there once.
func TestRecordFieldsAreTerms(t *testing.T) {
	for _, row := range []string{dwc.RowOccurrence, dwc.RowEvent, dwc.RowMeasurement, dwc.RowTaxon} {
		terms := dwc.TermsOf(row)
		require.NotEmpty(t, terms)
		seen := map[string]bool{}
		for _, name := range terms {
			term, ok := dwc.Lookup(name)
			assert.True(t, ok && term.Known(), "%s of %s", name, row)
			assert.False(t, seen[name], "%s of %s is there twice", name, row)
			seen[name] = true
		}
		assert.True(t, seen[dwc.IDTerm(row)])
	}
	assert.Nil(t, dwc.TermsOf("http://rs.tdwg.org/dwc/terms/Organism"))
}

func TestIRIsOfBorrowedTerms(t *testing.T) {
	// Dublin Core terms as the term list has them.
	for name, iri := range map[string]string{
		"type":                   "http://purl.org/dc/elements/1.1/type",
		"language":               "http://purl.org/dc/elements/1.1/language",
		"modified":               "http://purl.org/dc/terms/modified",
		"license":                "http://purl.org/dc/terms/license",
		"references":             "http://purl.org/dc/terms/references",
		"bibliographicCitation":  "http://purl.org/dc/terms/bibliographicCitation",
		"dcterms:license":        "http://purl.org/dc/terms/license",
		"dc:type":                "http://purl.org/dc/elements/1.1/type",
		"dcterms:language":       "http://purl.org/dc/terms/language",
		"dwc:eventDate":          "http://rs.tdwg.org/dwc/terms/eventDate",
		"dwciri:habitat":         "http://rs.tdwg.org/dwc/iri/habitat",
		"ac:fundingAttribution":  "http://rs.tdwg.org/ac/terms/fundingAttribution",
		"isPreferredName":        "http://rs.gbif.org/terms/1.0/isPreferredName",
		"dwc:license":            "",
		"Habitat":                "",
		"":                       "",
		"http://example.org/own": "",
	} {
		assert.Equal(t, iri, dwc.IRI(name), name)
	}
}

func TestClosest(t *testing.T) {
	for _, c := range []struct {
		in, name string
		exact    bool
	}{
		{"eventDate", "eventDate", true},
		{"eventdate", "eventDate", false},
		{" EventDate ", "eventDate", false},
		{"DWC:EVENTDATE", "eventDate", false},
		{"https://rs.tdwg.org/dwc/terms/eventDate", "eventDate", false},
		{"http://rs.tdwg.org/dwc/terms/EventDate", "eventDate", false},
		{"http://rs.tdwg.org/dwc/terms/eventDate", "eventDate", true},
		{"http://purl.org/dc/terms/type", "type", false},
		{"http://purl.org/dc/terms/language", "language", false},
		{"http://rs.tdwg.org/dwc/iri/habitat", "dwciri:habitat", true},
	} {
		term, exact, ok := dwc.Closest(c.in)
		require.True(t, ok, c.in)
		assert.Equal(t, c.name, term.Name, c.in)
		assert.Equal(t, c.exact, exact, c.in)
	}
	for _, in := range []string{"", "event", "http://rs.tdwg.org/dwc/terms/", "http://example.org/eventDate"} {
		_, _, ok := dwc.Closest(in)
		assert.False(t, ok, in)
	}
}

func TestGetAndSetEveryField(t *testing.T) {
	var o dwc.Occurrence
	for i, term := range dwc.Terms() {
		require.True(t, o.Set(term, "value of "+term))
		assert.Equal(t, "value of "+term, *o.Field(i))
		j, ok := dwc.TermIndex(term)
		assert.True(t, ok)
		assert.Equal(t, i, j)
	}
	for _, term := range dwc.Terms() {
		assert.Equal(t, "value of "+term, o.Get(term))
	}
	assert.Equal(t, "value of type", o.Type)
	assert.Equal(t, "value of minimumElevationInMeters", o.MinimumElevation)
	assert.Equal(t, "value of taxonRemarks", o.TaxonRemarks)
	assert.False(t, o.Set("measurementType", "x"))
	assert.Equal(t, "", o.Get("measurementType"))
	assert.Panics(t, func() { o.Field(len(dwc.Terms())) })
	assert.Panics(t, func() { o.Field(-1) })
}

func TestOtherRecordsGetAndSet(t *testing.T) {
	type fields interface {
		dwc.Record
		Get(string) string
		Set(string, string) bool
	}
	for _, r := range []fields{&dwc.Event{}, &dwc.Measurement{}, &dwc.Taxon{}, &dwc.VernacularName{}} {
		terms := dwc.TermsOf(r.RowType())
		for i, term := range terms {
			require.True(t, r.Set(term, term+"!"))
			assert.Equal(t, term+"!", *r.Field(i))
			assert.Equal(t, term+"!", r.Get(term))
		}
		assert.False(t, r.Set("no such term", "x"))
	}
}

func ExampleOccurrence_Set() {
	var o dwc.Occurrence
	o.Set("scientificName", "Agrotis puta")
	o.Set("eventDate", "2021-06-12/2021-06-13")
	fmt.Println(o.ScientificName, o.Get("eventDate"))
	fmt.Println(o.Set("colour", "brown"))
	// Output:
	// Agrotis puta 2021-06-12/2021-06-13
	// false
}

func ExampleClosest() {
	term, exact, _ := dwc.Closest("decimallatitude")
	fmt.Println(term.Name, term.IRI, exact)
	// Output: decimalLatitude http://rs.tdwg.org/dwc/terms/decimalLatitude false
}

func BenchmarkOccurrenceField(b *testing.B) {
	o := dwc.Occurrence{Locality: "Sallowmere Reserve"}
	n := 0
	for b.Loop() {
		for i := range dwc.Terms() {
			n += len(*o.Field(i))
		}
	}
}
