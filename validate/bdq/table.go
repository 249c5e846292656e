package bdq

import "strings"

// Type is what kind of answer a test gives.
type Type string

// The types of test.
const (
	// Validation: COMPLIANT or NOT_COMPLIANT.
	Validation Type = "Validation"
	// Issue: POTENTIAL_ISSUE or NOT_ISSUE.
	Issue Type = "Issue"
	// Measure: a number.
	Measure Type = "Measure"
	// Amendment: a proposed value.
	Amendment Type = "Amendment"
)

// Test is one test of the standard, as its list of tests states it.
type Test struct {
	// Label is the test's name, as in "VALIDATION_DAY_STANDARD".
	Label string
	// GUID identifies the test for ever.
	GUID string
	// Type is what kind of answer the test gives.
	Type Type
	// Dimension is the side of data quality that it looks at.
	Dimension string
	// ActedUpon are the terms, by qualified name, that the test is about.
	ActedUpon []string
	// Consulted are the terms that it looks at besides.
	Consulted []string
	// Parameters are the names of its parameters.
	Parameters []string
	// Authority names the default source authority of a test that needs one,
	// with the addresses under which the standard knows it, parted by "|".
	// Each is held in a list of this package.
	Authority string

	run check
}

// The default source authorities.
const (
	isoCountries        = "ISO 3166 Country Codes|ISO 3166-1-alpha-2|https://www.iso.org/iso-3166-country-codes.html|https://www.iso.org/obp/ui/#search"
	creativeCommons     = "Creative Commons 4.0 Licenses or CC0|Creative Commons|https://creativecommons.org/|https://creativecommons.org/about/cclicenses/"
	dcmiType            = "DCMI Type Vocabulary|http://purl.org/dc/terms/DCMIType|https://www.dublincore.org/specifications/dublin-core/dcmi-type-vocabulary/2010-10-11/"
	epsgDataset         = "EPSG|https://epsg.org|https://apps.epsg.org/api/swagger/ui/index|https://apps.epsg.org/api/swagger/ui/index#/Datum"
	classesOfDarwinCore = "Darwin Core basisOfRecord|https://dwc.tdwg.org/terms/#dwc:basisOfRecord|https://rs.gbif.org/vocabulary/dwc/basis_of_record.xml"
	presentAbsent       = "Regex present/absent"
	meansVocabulary     = "Establishment Means Controlled Vocabulary List of Terms|https://dwc.tdwg.org/em/|https://api.gbif.org/v1/vocabularies/EstablishmentMeans/concepts"
	degreeVocabulary    = "Degree of Establishment Controlled Vocabulary List of Terms|https://dwc.tdwg.org/doe/|https://api.gbif.org/v1/vocabularies/DegreeOfEstablishment/concepts"
	pathwayVocabulary   = "Pathway Controlled Vocabulary List of Terms|https://dwc.tdwg.org/pw/|https://api.gbif.org/v1/vocabularies/Pathway/concepts"
	rankVocabulary      = "GBIF TaxonRank Vocabulary|https://api.gbif.org/v1/vocabularies/TaxonRank|https://api.gbif.org/v1/vocabularies/TaxonRank/concepts"
	sexVocabulary       = "GBIF Sex Vocabulary|https://api.gbif.org/v1/vocabularies/Sex|https://api.gbif.org/v1/vocabularies/Sex/concepts"
)

// Tests returns the table of all tests: what is stated at all, then what is
// stated wrongly, then what may be proposed.
func Tests() []Test {
	var all []Test
	for _, group := range [][]Test{completeness, validations, amendments} {
		all = append(all, group...)
	}
	return all
}

func terms(names string) []string { return strings.Fields(names) }
