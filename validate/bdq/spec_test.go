package bdq_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/validate/bdq"
)

// The cases below follow clause by clause from the tests' specifications
// (ExpectedResponse and Notes of the BDQ standard's list of tests, CC BY 4.0);
// the clause is named in each.

type specCase struct {
	clause     string
	terms      bdq.Map
	status     bdq.Status
	result     string
	parameters map[string]string
}

const (
	has    = bdq.HasResult
	unmet  = bdq.InternalUnmet
	none   = bdq.NotAmended
	yes    = bdq.Compliant
	no     = bdq.NotCompliant
	absent = "https://invalid/invalidservice"
)

func runSpec(t *testing.T, spec map[string][]specCase) {
	t.Helper()
	for test, cases := range spec {
		t.Run(test, func(t *testing.T) {
			for _, c := range cases {
				suite, err := bdq.New(bdq.Settings{Today: today, Parameters: c.parameters})
				require.NoError(t, err)
				got, ok := suite.Run(test, c.terms)
				require.True(t, ok, test)
				assert.Equal(t, string(c.status)+" "+c.result, string(got.Status)+" "+got.ResultText(), "%v: %s (%s)", c.terms, c.clause, got.Comment())
			}
		})
	}
}

// one is a case of a test with a single term.
func one(term, value string, status bdq.Status, result, clause string) specCase {
	return specCase{clause: clause, terms: bdq.Map{term: value}, status: status, result: result}
}

// TestEmpty: bdqval:Empty is no character, or none but U+0000 to U+0020;
// serialisations of nothing are values.
func TestEmpty(t *testing.T) {
	for _, test := range bdq.Tests() {
		if test.Dimension != "Completeness" || test.Type == bdq.Amendment || len(test.ActedUpon) != 1 || test.Label == "VALIDATION_SCIENTIFICNAMEID_COMPLETE" {
			continue
		}
		_, term, _ := strings.Cut(test.ActedUpon[0], ":")
		suite, err := bdq.New(bdq.Settings{Today: today})
		require.NoError(t, err)
		for value, filled := range map[string]bool{
			"": false, " ": false, "\t\n\r\v\f": false, "\x00\x01\x1f": false, "\u00a0": false, "\u200b\ufeff": false, "\u2028": false, "\x7f\u0085": false,
			"null": true, "NULL": true, "\\N": true, "NA": true, "?": true, "-": true, "0": true, "\x00a": true, "é": true, "\u00a0é": true,
		} {
			got, ok := suite.Run(test.GUID, bdq.Map{term: value})
			require.True(t, ok)
			want := map[bool]string{true: yes, false: no}[filled]
			if test.Type == bdq.Issue {
				want = map[bool]string{true: bdq.PotentialIssue, false: bdq.NotIssue}[filled]
			}
			assert.Equal(t, has, got.Status)
			assert.Equal(t, want, got.Result, "%s of %q", test.Label, value)
		}
	}
}

func TestVocabularySpecifications(t *testing.T) {
	exact := "exactly as in the source authority: white space, invisible characters and other writing are NOT_COMPLIANT"
	unambiguous := "AMENDED if it can be unambiguously interpreted; otherwise NOT_AMENDED"
	runSpec(t, map[string][]specCase{
		"VALIDATION_COUNTRYCODE_STANDARD": {
			one("countryCode", "GB", has, yes, "a valid code"),
			one("countryCode", "ZZ", has, yes, "accept XZ and ZZ"),
			one("countryCode", "XX", has, no, "user-assigned codes besides XZ and ZZ are not valid"),
			one("countryCode", "UK", has, no, "reserved, not assigned"),
			one("countryCode", "AN", has, no, "withdrawn in 2010"),
			one("countryCode", "GRL", has, no, "alpha-2 only"),
			one("countryCode", "gb", has, no, exact),
			one("countryCode", " GB", has, no, exact),
			one("countryCode", "GB\x02", has, no, exact),
			one("countryCode", "GB\u00a0", has, no, exact),
			one("countryCode", "null", has, no, "otherwise NOT_COMPLIANT"),
			{"source authority not available", bdq.Map{"countryCode": "GB"}, bdq.ExternalUnmet, "", map[string]string{"bdqval:sourceAuthority": absent}},
			{"the default, by its address", bdq.Map{"countryCode": "GB"}, has, yes, map[string]string{"sourceAuthority": "https://www.iso.org/obp/ui/#search"}},
		},
		"AMENDMENT_COUNTRYCODE_STANDARDIZED": {
			one("countryCode", "GB", none, "", "valid already"),
			one("countryCode", "GRL", bdq.Amended, `{"dwc:countryCode":"GL"}`, "three letter codes are amended"),
			one("countryCode", "gb ", bdq.Amended, `{"dwc:countryCode":"GB"}`, unambiguous),
			one("countryCode", "Österreich", bdq.Amended, `{"dwc:countryCode":"AT"}`, unambiguous),
			one("countryCode", "High Seas", bdq.Amended, `{"dwc:countryCode":"XZ"}`, "XZ for high seas"),
			one("countryCode", "Congo", none, "", "two countries"),
			one("countryCode", "Korea", none, "", "two countries"),
			one("countryCode", "Aus", bdq.Amended, `{"dwc:countryCode":"AU"}`, "three letter codes are amended"),
		},
		"VALIDATION_DCTYPE_STANDARD": {
			one("type", "StillImage", has, yes, "a term name"),
			one("type", "stillImage", has, no, exact),
			one("type", "Event ", has, no, exact),
			one("type", "http://purl.org/dc/dcmitype/Event", has, no, "dc:type holds literals"),
			one("type", "Occurrence", has, no, "not of this vocabulary"),
		},
		"AMENDMENT_DCTYPE_STANDARDIZED": {
			one("type", "http://purl.org/dc/dcmitype/PhysicalObject", bdq.Amended, `{"dc:type":"PhysicalObject"}`, "IRI values to literals"),
			one("type", " Sound\x02", bdq.Amended, `{"dc:type":"Sound"}`, "removing leading and trailing white space"),
			one("type", "Physical object", bdq.Amended, `{"dc:type":"PhysicalObject"}`, "correcting case errors"),
			one("type", "Image", none, "", "valid already"),
			one("type", "http://purl.org/dc/dcmitype/Specimen", none, "", "no such term"),
		},
		"VALIDATION_BASISOFRECORD_STANDARD": {
			one("basisOfRecord", "HumanObservation", has, yes, "a class of Darwin Core"),
			one("basisOfRecord", "MaterialEntity", has, yes, "a class of Darwin Core"),
			one("basisOfRecord", "Human Observation", has, no, exact),
			one("basisOfRecord", "HUMANOBSERVATION", has, no, exact),
			one("basisOfRecord", "HumanObservation\n", has, no, exact),
			{"the default, by its name", bdq.Map{"basisOfRecord": "Taxon"}, has, yes, map[string]string{"bdqval:sourceAuthority": "Darwin Core basisOfRecord"}},
		},
		"AMENDMENT_BASISOFRECORD_STANDARDIZED": {
			one("basisOfRecord", "PRESERVED_SPECIMEN", bdq.Amended, `{"dwc:basisOfRecord":"PreservedSpecimen"}`, unambiguous),
			one("basisOfRecord", "PreservedSpec", bdq.Amended, `{"dwc:basisOfRecord":"PreservedSpecimen"}`, unambiguous),
			one("basisOfRecord", "http://rs.tdwg.org/dwc/terms/MachineObservation", bdq.Amended, `{"dwc:basisOfRecord":"MachineObservation"}`, unambiguous),
			one("basisOfRecord", "specimen", none, "", "preserved, fossil or living"),
			one("basisOfRecord", "Obs.", none, "", "of man or machine"),
			one("basisOfRecord", "Taxon", none, "", "valid already"),
		},
		"VALIDATION_OCCURRENCESTATUS_STANDARD": {
			one("occurrenceStatus", "present", has, yes, "present or absent"),
			one("occurrenceStatus", "Present", has, no, "NOT_COMPLIANT if there are case differences"),
			one("occurrenceStatus", "absent\t", has, no, exact),
		},
		"AMENDMENT_OCCURRENCESTATUS_STANDARDIZED": {
			one("occurrenceStatus", "0", bdq.Amended, `{"dwc:occurrenceStatus":"absent"}`, "0 as absent"),
			one("occurrenceStatus", "Present", bdq.Amended, `{"dwc:occurrenceStatus":"present"}`, "lower case"),
			one("occurrenceStatus", "2", none, "", unambiguous),
			one("occurrenceStatus", "doubtful", none, "", unambiguous),
			one("occurrenceStatus", "absent", none, "", "valid already"),
		},
		"VALIDATION_TAXONRANK_STANDARD": {
			one("taxonRank", "species", has, yes, "in the source authority"),
			one("taxonRank", "variety", has, yes, "in the source authority"),
			one("taxonRank", "ssp.", has, no, "an abbreviation is not in it"),
			one("taxonRank", "species ", has, no, exact),
		},
		"AMENDMENT_TAXONRANK_STANDARDIZED": {
			one("taxonRank", "subsp.", bdq.Amended, `{"dwc:taxonRank":"subspecies"}`, unambiguous),
			one("taxonRank", "especie", bdq.Amended, `{"dwc:taxonRank":"species"}`, unambiguous),
			one("taxonRank", "sub", none, "", "many ranks begin so"),
			one("taxonRank", "genus", none, "", "valid already"),
		},
		"VALIDATION_ESTABLISHMENTMEANS_STANDARD": {
			one("establishmentMeans", "introducedAssistedColonisation", has, yes, "in the source authority"),
			one("establishmentMeans", "Native", has, no, exact),
			one("establishmentMeans", "native\x0b", has, no, exact),
		},
		"AMENDMENT_ESTABLISHMENTMEANS_STANDARDIZED": {
			one("establishmentMeans", "Native", bdq.Amended, `{"dwc:establishmentMeans":"native"}`, unambiguous),
			one("establishmentMeans", "indigenous", bdq.Amended, `{"dwc:establishmentMeans":"native"}`, unambiguous),
			one("establishmentMeans", "introduced: assisted colonisation", bdq.Amended, `{"dwc:establishmentMeans":"introducedAssistedColonisation"}`, unambiguous),
			one("establishmentMeans", "cultivated", none, "", "a degree of establishment"),
			one("establishmentMeans", "native", none, "", "valid already"),
		},
		"VALIDATION_DEGREEOFESTABLISHMENT_STANDARD": {
			one("degreeOfEstablishment", "widespreadInvasive", has, yes, "in the source authority"),
			one("degreeOfEstablishment", "Captive", has, no, exact),
		},
		"AMENDMENT_DEGREEOFESTABLISHMENT_STANDARDIZED": {
			one("degreeOfEstablishment", "widespread invasive", bdq.Amended, `{"dwc:degreeOfEstablishment":"widespreadInvasive"}`, unambiguous),
			one("degreeOfEstablishment", "Cultivated", bdq.Amended, `{"dwc:degreeOfEstablishment":"cultivated"}`, unambiguous),
			one("degreeOfEstablishment", "ca", none, "", "captive or casual"),
		},
		"VALIDATION_PATHWAY_STANDARD": {
			one("pathway", "otherEscape", has, yes, "in the source authority"),
			one("pathway", "OtherEscape", has, no, exact),
		},
		"AMENDMENT_PATHWAY_STANDARDIZED": {
			one("pathway", "Biological control", bdq.Amended, `{"dwc:pathway":"biologicalControl"}`, unambiguous),
			one("pathway", "control", none, "", "biological or of erosion"),
			one("pathway", "unknown", none, "", "otherwise NOT_AMENDED"),
		},
		"VALIDATION_SEX_STANDARD": {
			one("sex", "Female", has, yes, "in the source authority"),
			one("sex", "male", has, yes, "Darwin Core's own example"),
			one("sex", "m", has, no, "an abbreviation is not in it"),
			one("sex", " Male", has, no, exact),
		},
		"AMENDMENT_SEX_STANDARDIZED": {
			one("sex", "m", bdq.Amended, `{"dwc:sex":"Male"}`, unambiguous),
			one("sex", "♀", bdq.Amended, `{"dwc:sex":"Female"}`, unambiguous),
			one("sex", "2 males, 1 female", none, "", "two sexes"),
			one("sex", "Hermaphrodite", none, "", "valid already"),
			{"source authority not available comes first", bdq.Map{}, bdq.ExternalUnmet, "", map[string]string{"bdqval:sourceAuthority": absent}},
		},
		"VALIDATION_LICENSE_STANDARD": {
			one("license", "https://creativecommons.org/licenses/by/4.0/", has, yes, "the canonical form has nothing after the version"),
			one("license", "http://creativecommons.org/licenses/by-nc/4.0/legalcode", has, yes, "http or https"),
			one("license", "https://creativecommons.org/licenses/by-nc-sa/4.0/deed.zh-hans", has, yes, "a language code"),
			one("license", "https://creativecommons.org/licenses/by/4.0/legalcode.mi", has, yes, "legalcode.mi exists"),
			one("license", "https://creativecommons.org/publicdomain/zero/1.0/legalcode.mi", has, no, "not for CC0"),
			one("license", "https://creativecommons.org/licenses/by/3.0/", has, no, "4.0 licences"),
			one("license", "https://creativecommons.org/licenses/by/4.0/deed.xx", has, no, "no such translation"),
			one("license", "https://creativecommons.org/licenses/by/4.0/ ", has, no, exact),
			one("license", "CC BY 4.0", has, no, "the address, not the name"),
		},
		"AMENDMENT_LICENSE_STANDARDIZED": {
			one("license", "", none, "", "no prerequisite is named: NOT_AMENDED"),
			one("license", "CC BY-NC 4.0", bdq.Amended, `{"dcterms:license":"https://creativecommons.org/licenses/by-nc/4.0/legalcode"}`, unambiguous),
			one("license", "Creative Commons Attribution-NonCommercial 4.0 International License", bdq.Amended, `{"dcterms:license":"https://creativecommons.org/licenses/by-nc/4.0/legalcode"}`, unambiguous),
			one("license", "creativecommons.org/licenses/by/4.0", bdq.Amended, `{"dcterms:license":"https://creativecommons.org/licenses/by/4.0/legalcode"}`, unambiguous),
			one("license", "CC-BY", none, "", "no version"),
			one("license", "CC BY 3.0", none, "", "not a value of the source authority"),
			one("license", "https://creativecommons.org/licenses/by/4.0/", none, "", "valid already"),
		},
	})
}

func TestDatumSpecifications(t *testing.T) {
	runSpec(t, map[string][]specCase{
		"VALIDATION_GEODETICDATUM_STANDARD": {
			one("geodeticDatum", "EPSG:4326", has, yes, "a CRS for 2D geographic coordinates in degrees"),
			one("geodeticDatum", "EPSG:6326", has, yes, "a datum"),
			one("geodeticDatum", "EPSG:7030", has, yes, "an ellipsoid"),
			one("geodeticDatum", "EPSG:4979", has, no, "a 3D geographic CRS"),
			one("geodeticDatum", "EPSG:4978", has, no, "a geocentric CRS"),
			one("geodeticDatum", "EPSG:4807", has, no, "a CRS in grads"),
			one("geodeticDatum", "EPSG:27700", has, no, "a projected CRS"),
			one("geodeticDatum", "EPSG:4326 ", has, no, "trailing white space"),
			one("geodeticDatum", "epsg:4326", has, no, "in the form Authority:Number"),
			one("geodeticDatum", "unknown", has, no, `only the value "not recorded"`),
		},
		"AMENDMENT_GEODETICDATUM_STANDARDIZED": {
			one("geodeticDatum", "WGS_84", bdq.Amended, `{"dwc:geodeticDatum":"EPSG:4326"}`, "alternative representations"),
			one("geodeticDatum", "WGS:84", bdq.Amended, `{"dwc:geodeticDatum":"EPSG:4326"}`, "alternative representations"),
			one("geodeticDatum", "WGS 84", bdq.Amended, `{"dwc:geodeticDatum":"EPSG:4326"}`, "alternative representations"),
			one("geodeticDatum", "4326", bdq.Amended, `{"dwc:geodeticDatum":"EPSG:4326"}`, "the form Authority:Number"),
			one("geodeticDatum", "NAD83", bdq.Amended, `{"dwc:geodeticDatum":"EPSG:4269"}`, "never one datum to another"),
			one("geodeticDatum", "Clarke 1866", bdq.Amended, `{"dwc:geodeticDatum":"EPSG:7008"}`, "otherwise the ellipsoid"),
			one("geodeticDatum", "not recorded", none, "", `"not recorded" results in NOT_AMENDED`),
			one("geodeticDatum", "GDA", none, "", "GDA94 or GDA2020"),
			one("geodeticDatum", "EPSG:32754", none, "", "a projected CRS"),
			one("geodeticDatum", "EPSG:4277", none, "", "valid already"),
		},
		"AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT": {
			{"fill in the default", bdq.Map{"decimalLatitude": "52.5", "decimalLongitude": "0.3"}, bdq.FilledIn, `{"dwc:geodeticDatum":"EPSG:4326"}`, nil},
			{"add the largest shift", bdq.Map{"decimalLatitude": "52.5", "decimalLongitude": "0.3", "coordinateUncertaintyInMeters": "71"}, bdq.Amended,
				`{"dwc:geodeticDatum":"EPSG:4326","dwc:coordinateUncertaintyInMeters":"245"}`, nil},
			{"between the specified default and any other", bdq.Map{"decimalLatitude": "52.5", "decimalLongitude": "0.3", "coordinateUncertaintyInMeters": "71"}, bdq.Amended,
				`{"dwc:geodeticDatum":"EPSG:4277","dwc:coordinateUncertaintyInMeters":"419"}`, map[string]string{"bdqval:defaultGeodeticDatum": "EPSG:4277"}},
			{"uncertainty not valid", bdq.Map{"decimalLatitude": "52.5", "decimalLongitude": "0.3", "coordinateUncertaintyInMeters": "0"}, bdq.FilledIn, `{"dwc:geodeticDatum":"EPSG:4326"}`, nil},
			{"uncertainty not interpretable", bdq.Map{"decimalLatitude": "52.5", "decimalLongitude": "0.3", "coordinateUncertaintyInMeters": "large"}, bdq.FilledIn, `{"dwc:geodeticDatum":"EPSG:4326"}`, nil},
			{"a parameter", bdq.Map{}, bdq.FilledIn, `{"dwc:geodeticDatum":"EPSG:4258"}`, map[string]string{"bdqval:defaultGeodeticDatum": "EPSG:4258"}},
		},
		"AMENDMENT_COORDINATES_FROM_VERBATIM": {
			{"from latitude, longitude and SRS", bdq.Map{"verbatimLatitude": "23.712 S", "verbatimLongitude": "139° 55' 23\" E", "verbatimSRS": "EPSG:4326"}, bdq.FilledIn,
				`{"dwc:decimalLatitude":"-23.712","dwc:decimalLongitude":"139.9230556","dwc:geodeticDatum":"EPSG:4326"}`, nil},
			{"from coordinates", bdq.Map{"verbatimCoordinates": "41 05 54S 121d 05' 34\"W", "verbatimSRS": "NAD27"}, bdq.FilledIn, // Darwin Core's example
				`{"dwc:decimalLatitude":"-41.0983333","dwc:decimalLongitude":"-121.0927778","dwc:geodeticDatum":"NAD27"}`, nil},
			{"seconds beside degrees that have no minutes are not dropped", bdq.Map{"verbatimCoordinates": "41 5\" S, 121 W", "verbatimSRS": "NAD27"}, bdq.FilledIn,
				`{"dwc:decimalLatitude":"-41.0013889","dwc:decimalLongitude":"-121","dwc:geodeticDatum":"NAD27"}`, nil},
			{"degrees and seconds on no side of zero", bdq.Map{"verbatimCoordinates": "0 90 1\"", "verbatimSRS": "EPSG:4326"}, none, "", nil},
			{"which is the latitude is not said", bdq.Map{"verbatimCoordinates": "23.7, 39.9", "verbatimSRS": "EPSG:4326"}, none, "", nil},
			{"inconsistent with each other", bdq.Map{"verbatimCoordinates": "23.712 S, 139.923 E", "verbatimLatitude": "-23.9", "verbatimLongitude": "139.923"}, none, "", nil},
			{"consistent with each other", bdq.Map{"verbatimCoordinates": "23.712 S, 139.923 E", "verbatimLatitude": "-23.712", "verbatimLongitude": "139.923"}, bdq.FilledIn,
				`{"dwc:decimalLatitude":"-23.712","dwc:decimalLongitude":"139.923"}`, nil},
			{"not geographic", bdq.Map{"verbatimCoordinates": "17T 630000 4833400", "verbatimCoordinateSystem": "UTM"}, none, "", nil}, // Darwin Core's example
			{"a projected SRS", bdq.Map{"verbatimLatitude": "52.5", "verbatimLongitude": "0.3", "verbatimSRS": "EPSG:27700"}, none, "", nil},
			{"no latitude", bdq.Map{"verbatimLatitude": "95 N", "verbatimLongitude": "0.3 E"}, none, "", nil},
			{"one of the two is empty", bdq.Map{"verbatimLongitude": "0.3 E"}, unmet, "", nil},
			{"longitude is stated", bdq.Map{"decimalLongitude": "0.3", "verbatimCoordinates": "52.5 N, 0.3 E"}, unmet, "", nil},
			{"no hemisphere and no sign", bdq.Map{"verbatimLatitude": "52 30", "verbatimLongitude": "0 18"}, none, "", nil},
		},
	})
}

func TestNumberSpecifications(t *testing.T) {
	runSpec(t, map[string][]specCase{
		"VALIDATION_MINDEPTH_LESSTHAN_MAXDEPTH": {
			{"less", bdq.Map{"minimumDepthInMeters": "1.5", "maximumDepthInMeters": "2"}, has, yes, nil},
			{"more", bdq.Map{"minimumDepthInMeters": "2", "maximumDepthInMeters": "1.5"}, has, no, nil},
			{"as numbers, not as text", bdq.Map{"minimumDepthInMeters": "9", "maximumDepthInMeters": "10"}, has, yes, nil},
			{"not a number", bdq.Map{"minimumDepthInMeters": "9 m", "maximumDepthInMeters": "10"}, unmet, "", nil},
			{"less than zero", bdq.Map{"minimumDepthInMeters": "-1", "maximumDepthInMeters": "10"}, unmet, "", nil},
		},
		"VALIDATION_MINELEVATION_LESSTHAN_MAXELEVATION": {
			{"below the sea", bdq.Map{"minimumElevationInMeters": "-3", "maximumElevationInMeters": "-1"}, has, yes, nil},
			{"the other is empty", bdq.Map{"minimumElevationInMeters": "-3"}, unmet, "", nil},
		},
		"VALIDATION_DECIMALLATITUDE_INRANGE": {
			one("decimalLatitude", "90", has, yes, "inclusive"),
			one("decimalLatitude", "-90.0", has, yes, "inclusive"),
			one("decimalLatitude", "90.0000001", has, no, "out of range"),
			one("decimalLatitude", "NaN", unmet, "", "not a number"),
			one("decimalLatitude", "52,5", unmet, "", "not a number"),
			one("decimalLatitude", "0x1p4", unmet, "", "not a number"),
			one("decimalLatitude", "5.25E1", has, yes, "a number with an exponent"),
		},
		"VALIDATION_DECIMALLONGITUDE_INRANGE": {
			one("decimalLongitude", "180", has, yes, "inclusive"),
			one("decimalLongitude", "-180.01", has, no, "out of range"),
		},
		"VALIDATION_COORDINATES_NOTZERO": {
			{"0.0 is 0", bdq.Map{"decimalLatitude": "0.0", "decimalLongitude": "-0"}, has, no, nil},
			{"one is not 0", bdq.Map{"decimalLatitude": "0.0", "decimalLongitude": "0.0001"}, has, yes, nil},
			{"one is empty", bdq.Map{"decimalLatitude": "5"}, unmet, "", nil},
		},
		"VALIDATION_COORDINATEUNCERTAINTY_INRANGE": {
			one("coordinateUncertaintyInMeters", "1", has, yes, "inclusive"),
			one("coordinateUncertaintyInMeters", "0.99", has, no, "less than 1"),
			one("coordinateUncertaintyInMeters", "10 km", has, no, "not interpreted as a number: NOT_COMPLIANT"),
		},
		"VALIDATION_MINELEVATION_INRANGE": {
			one("minimumElevationInMeters", "-430", has, yes, "inclusive"),
			one("minimumElevationInMeters", "8850", has, yes, "inclusive"),
			one("minimumElevationInMeters", "-430.5", has, no, "out of range"),
			{"parameters", bdq.Map{"minimumElevationInMeters": "100"}, has, no, map[string]string{"bdqval:maximumValidElevationInMeters": "99"}},
		},
		"VALIDATION_MAXELEVATION_INRANGE": {one("maximumElevationInMeters", "8851", has, no, "out of range")},
		"VALIDATION_MINDEPTH_INRANGE":     {one("minimumDepthInMeters", "11000", has, yes, "inclusive"), one("minimumDepthInMeters", "deep", unmet, "", "not a number")},
		"VALIDATION_MAXDEPTH_INRANGE":     {one("maximumDepthInMeters", "11000.5", has, no, "out of range"), one("maximumDepthInMeters", "", unmet, "", "empty")},
		"AMENDMENT_MINDEPTHMAXDEPTH_FROM_VERBATIM": {
			one("verbatimDepth", "10 fathoms", bdq.FilledIn, `{"dwc:minimumDepthInMeters":"18.288","dwc:maximumDepthInMeters":"18.288"}`, "the notes' example; one value is both"),
			one("verbatimDepth", "20-10 m", bdq.FilledIn, `{"dwc:minimumDepthInMeters":"10","dwc:maximumDepthInMeters":"20"}`, "a range"),
			one("verbatimDepth", "3 ft", bdq.FilledIn, `{"dwc:minimumDepthInMeters":"0.9144","dwc:maximumDepthInMeters":"0.9144"}`, "not rounded"),
			one("verbatimDepth", "10-20", none, "", "units must be specified"),
			one("verbatimDepth", "> 100 m", none, "", "open"),
			one("verbatimDepth", "-10 m", none, "", "not a depth"),
			one("verbatimDepth", "10 m to 20 ft", none, "", "two units"),
			one("verbatimDepth", "min 20 m, max 10 m", none, "", "contradicts itself"),
			{"stated already", bdq.Map{"maximumDepthInMeters": "1", "verbatimDepth": "1 m"}, unmet, "", nil},
		},
		"AMENDMENT_MINELEVATIONMAXELEVATION_FROM_VERBATIM": {
			one("verbatimElevation", "10 yards", bdq.FilledIn, `{"dwc:minimumElevationInMeters":"9.144","dwc:maximumElevationInMeters":"9.144"}`, "the notes' example"),
			one("verbatimElevation", "1-1.5 km", bdq.FilledIn, `{"dwc:minimumElevationInMeters":"1000","dwc:maximumElevationInMeters":"1500"}`, "kilometres"),
			one("verbatimElevation", "-3 m", bdq.FilledIn, `{"dwc:minimumElevationInMeters":"-3","dwc:maximumElevationInMeters":"-3"}`, "below the sea"),
			one("verbatimElevation", "1,500 ft a.s.l.", bdq.FilledIn, `{"dwc:minimumElevationInMeters":"457.2","dwc:maximumElevationInMeters":"457.2"}`, "feet"),
			one("verbatimElevation", "1,5 m", none, "", "1.5 m, or 1 m and 5 m"),
			one("verbatimElevation", "about 100 m", none, "", "not exact"),
		},
		"AMENDMENT_OCCURRENCESTATUS_ASSUMEDDEFAULT": {
			{"all empty", bdq.Map{}, bdq.FilledIn, `{"dwc:occurrenceStatus":"present"}`, nil},
			{"a count is stated", bdq.Map{"individualCount": "0"}, none, "", nil},
			{"a quantity is stated", bdq.Map{"organismQuantity": "12"}, none, "", nil},
			{"a parameter", bdq.Map{}, bdq.FilledIn, `{"dwc:occurrenceStatus":"absent"}`, map[string]string{"defaultOccurrenceStatus": "absent"}},
		},
		"VALIDATION_COUNTRY_NOTEMPTY": {
			{"the high seas have no country", bdq.Map{"countryCode": "XZ"}, has, yes, nil},
			{"High seas", bdq.Map{"countryCode": "XZ", "country": "High seas"}, has, yes, nil},
			{"another code", bdq.Map{"countryCode": "ZZ"}, has, no, nil},
		},
	})
}
