package dwc_test

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

func sallowmere() *dwc.Dataset {
	ines := dwc.Party{GivenName: "Ines", Surname: "Calloway"}
	ines.ORCID = "https://orcid.org/0000-0002-1825-0097" // the example of ORCID's own documents
	return &dwc.Dataset{
		PackageID:         "urn:uuid:3f0c9a1e-6a1c-4f0e-9a53-0a4a1f7b2d10",
		AlternateIDs:      []string{"https://example.org/sallowmere"},
		Title:             "Moths of Sallowmere Reserve & the garden at Tinker's Row",
		Abstract:          "Moths at light.\n\nTwo traps, <one> of them actinic.",
		Language:          "en",
		PubDate:           "2024-03-01",
		Creators:          []dwc.Party{ines, {GivenName: "Tom", Surname: "Achterberg"}},
		MetadataProviders: []dwc.Party{ines},
		Contacts:          []dwc.Party{ines},
		Publisher:         dwc.Party{Organisation: "Sallowmere Recorders", OnlineURL: "https://example.org/"},
		Keywords:          []string{"moths", "light trap"},
		KeywordThesaurus:  "none",
		License:           "CC BY-NC 4.0",
		Rights:            "Free for study; ask before selling.",
		Citation:          "Calloway I, Achterberg T (2024) Moths of Sallowmere Reserve. Sallowmere Recorders.",
		Geographic:        dwc.GeographicCoverage{Description: "Fenland", West: -0.1234567, East: 0.25, South: 52.4, North: 52.9, HasBox: true},
		Temporal:          dwc.TemporalCoverage{Begin: "2003-05", End: "2023-10"},
		Taxonomic: dwc.TaxonomicCoverage{Description: "Larger moths", Taxa: []dwc.TaxonCoverage{
			{Rank: "family", Name: "Noctuidae", CommonName: "owlet moths"}, {Rank: "family", Name: "Geometridae"},
		}},
		Methods: dwc.Methods{
			Steps: []string{"The trap is lit at dusk.\n\nIt is read at dawn.", "Hard ones are dissected."}, Extent: "The reserve",
			Sampling: "Heath trap, 6 W actinic", QualityControl: "Every record is looked at twice.",
		},
		AdditionalInfo: "Nothing more.",
	}
}

func eml(t testing.TB, d *dwc.Dataset) string {
	var b bytes.Buffer
	require.NoError(t, d.WriteEML(&b))
	return b.String()
}

func TestWholeEMLIsValid(t *testing.T) {
	document := eml(t, sallowmere())
	requireValid(t, emlSchema, document)
	assert.Equal(t, document, eml(t, sallowmere()))
	assert.Contains(t, document, "http://creativecommons.org/licenses/by-nc/4.0/legalcode")
	assert.Contains(t, document, "<calendarDate>2003-05-01</calendarDate>")
	assert.Contains(t, document, "<calendarDate>2023-10-31</calendarDate>")
	assert.Empty(t, sallowmere().Missing())
}

func TestPartsOfEMLAreValid(t *testing.T) {
	for name, d := range map[string]dwc.Dataset{
		"nothing":          {},
		"only white space": {Title: " \n", Abstract: "\t", Creators: []dwc.Party{{}}, Keywords: []string{" "}, Methods: dwc.Methods{Steps: []string{" "}}},
		"control marks":    {Title: "A\x00B\x1bC", Abstract: "]]> &amp; <b>\r\n\r\nnext"},
		"odd licence":      {License: "ask Ines"},
		"other licence":    {License: "https://example.org/terms"},
		"one day":          {Temporal: dwc.TemporalCoverage{Begin: "2021-06-12", End: "2021-06-12"}},
		"only an end":      {Temporal: dwc.TemporalCoverage{End: "2021-06-12T22:45"}},
		"years":            {PubDate: "2024", Temporal: dwc.TemporalCoverage{Begin: "2003", End: "2021-02"}},
		"box":              {Geographic: dwc.GeographicCoverage{West: 170, East: -170, South: -90, North: 1e-7, HasBox: true}},
		"no box":           {Geographic: dwc.GeographicCoverage{Description: "Fenland"}},
		"sampling":         {Methods: dwc.Methods{Sampling: "Light trap"}},
		"extent":           {Methods: dwc.Methods{Extent: "The reserve"}},
		"quality":          {Methods: dwc.Methods{QualityControl: "Checked"}},
		"step":             {Methods: dwc.Methods{Steps: []string{"", "Lit at dusk"}}},
		"taxa":             {Taxonomic: dwc.TaxonomicCoverage{Taxa: []dwc.TaxonCoverage{{Name: "Lepidoptera"}}}},
		"taxa in words":    {Taxonomic: dwc.TaxonomicCoverage{Description: "Moths"}},
		"position":         {Creators: []dwc.Party{{Position: "Warden", Organisation: "Sallowmere Reserve"}}},
		"citation":         {Citation: "Calloway & Achterberg"},
	} {
		t.Run(name, func(t *testing.T) { requireValid(t, emlSchema, eml(t, &d)) })
	}
}

// Whatever the texts hold, the document is valid.
func TestAnyTextsGiveValidEML(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 2))
	text := func() string { return awkwardText(random) }
	party := func() dwc.Party {
		return dwc.Party{GivenName: text(), Surname: text(), Organisation: text(), Position: text(), OnlineURL: "https://example.org/" + text(), ORCID: text()}
	}
	for range 12 {
		d := dwc.Dataset{
			PackageID: text(), AlternateIDs: []string{text()}, Title: text(), Abstract: text(), Language: text(), PubDate: "2024",
			Creators: []dwc.Party{party(), party()}, MetadataProviders: []dwc.Party{party()}, Contacts: []dwc.Party{party()}, Publisher: party(),
			Keywords: []string{text(), text()}, KeywordThesaurus: text(), License: "https://example.org/" + text(), Rights: text(), Citation: text(),
			Geographic: dwc.GeographicCoverage{Description: text(), HasBox: true}, AdditionalInfo: text(),
			Taxonomic: dwc.TaxonomicCoverage{Description: text(), Taxa: []dwc.TaxonCoverage{{Rank: text(), Name: text(), CommonName: text()}}},
			Methods:   dwc.Methods{Steps: []string{text()}, Extent: text(), Sampling: text(), QualityControl: text()},
		}
		requireValid(t, emlSchema, eml(t, &d))
		_, err := dwc.ReadEML(strings.NewReader(eml(t, &d)))
		require.NoError(t, err)
	}
}

// The whole Earth is a place; each bound a little further is none.
func TestEMLBounds(t *testing.T) {
	whole := dwc.GeographicCoverage{West: -180, East: 180, South: -90, North: 90, HasBox: true}
	assert.Contains(t, eml(t, &dwc.Dataset{Geographic: whole}), "<westBoundingCoordinate>-180</westBoundingCoordinate>")
	for i := range 4 {
		further := whole
		*[]*float64{&further.West, &further.East, &further.South, &further.North}[i] *= 1.001
		assert.ErrorContains(t, (&dwc.Dataset{Geographic: further}).WriteEML(io.Discard), "no place on Earth")
	}
}

func TestEMLRefusesWhatIsNoDateOrPlace(t *testing.T) {
	for want, d := range map[string]dwc.Dataset{
		"the date of publication “May 2024”":     {PubDate: "May 2024"},
		"the first date “12/6/21”":               {Temporal: dwc.TemporalCoverage{Begin: "12/6/21"}},
		"the last date “2021-02-30”":             {Temporal: dwc.TemporalCoverage{Begin: "2021", End: "2021-02-30"}},
		"the area's bounds are no place":         {Geographic: dwc.GeographicCoverage{North: 91, HasBox: true}},
		"bounds are no place on Earth: west 0, ": {Geographic: dwc.GeographicCoverage{South: 2, North: 1, HasBox: true}},
	} {
		assert.ErrorContains(t, d.WriteEML(&bytes.Buffer{}), want)
	}
}

func TestPackageIDFollowsContent(t *testing.T) {
	a, b := dwc.Dataset{Title: "A"}, dwc.Dataset{Title: "B"}
	assert.Equal(t, eml(t, &a), eml(t, &a))
	assert.Contains(t, eml(t, &a), `packageId="urn:uuid:`)
	id := func(s string) string { return s[:len(`<?xml version="1.0" encoding="UTF-8"?>`)+180] }
	assert.NotEqual(t, id(eml(t, &a)), id(eml(t, &b)))
}

func TestMissingNamesEverything(t *testing.T) {
	assert.Len(t, new(dwc.Dataset).Missing(), 13)
	d := sallowmere()
	d.License = "as agreed"
	d.PubDate = "soon"
	d.Publisher.OnlineURL = "sallowmere.example"
	assert.Equal(t, []string{
		"a licence that is one of CC0, CC BY and CC BY-NC: “as agreed” is none of them",
		"a date of publication as year-month-day, such as 2024-03-01: “soon” is none",
		"a web address of Sallowmere Recorders that begins with https://: “sallowmere.example” does not",
	}, d.Missing())
}

func TestLicenseURL(t *testing.T) {
	const (
		zero = "http://creativecommons.org/publicdomain/zero/1.0/legalcode" // example of the term license
		by   = "http://creativecommons.org/licenses/by/4.0/legalcode"       // example of the term license
		byNC = "http://creativecommons.org/licenses/by-nc/4.0/legalcode"    // Creative Commons, from memory
	)
	for in, want := range map[string]string{
		"CC0": zero, "cc0-1.0": zero, "CC0 1.0 Universal": zero, zero: zero, "Public Domain": zero,
		"https://creativecommons.org/publicdomain/zero/1.0/": zero,
		"CC BY": by, "CC-BY": by, "cc_by_4.0": by, by: by, "https://creativecommons.org/licenses/by/4.0/deed.en": by,
		"CC BY 4.0 International": by,
		"CC BY-NC":                byNC, "CC-BY-NC-4.0": byNC, byNC: byNC, "http://www.creativecommons.org/licenses/by-nc/4.0": byNC,
		"": "", "CC BY 3.0": "", "CC BY-SA": "", "CC BY-NC-ND": "", "https://creativecommons.org/licenses/by-sa/4.0/": "",
		"https://example.org/publicdomain/zero/1.0/": "", "mine": "",
	} {
		url, ok := dwc.LicenseURL(in)
		assert.Equal(t, want, url, in)
		assert.Equal(t, want != "", ok, in)
	}
}

func ExampleDataset_Missing() {
	d := dwc.Dataset{Title: "Moths of Sallowmere Reserve", License: "CC0"}
	for _, what := range d.Missing()[:3] {
		fmt.Println(what)
	}
	// Output:
	// an abstract: a few sentences on what the records are
	// a creator: who made the dataset
	// a contact: who answers questions about it
}

func ExampleDataset_WriteEML() {
	d := dwc.Dataset{
		PackageID: "sallowmere-2024",
		Title:     "Moths of Sallowmere Reserve",
		Creators:  []dwc.Party{{GivenName: "Ines", Surname: "Calloway"}},
		Contacts:  []dwc.Party{{GivenName: "Tom", Surname: "Achterberg"}},
	}
	if err := d.WriteEML(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <?xml version="1.0" encoding="UTF-8"?>
	// <eml:eml xmlns:eml="https://eml.ecoinformatics.org/eml-2.2.0" packageId="sallowmere-2024" system="fieldfare" xml:lang="en">
	//   <dataset>
	//     <title>Moths of Sallowmere Reserve</title>
	//     <creator>
	//       <individualName>
	//         <givenName>Ines</givenName>
	//         <surName>Calloway</surName>
	//       </individualName>
	//     </creator>
	//     <contact>
	//       <individualName>
	//         <givenName>Tom</givenName>
	//         <surName>Achterberg</surName>
	//       </individualName>
	//     </contact>
	//   </dataset>
	// </eml:eml>
}
