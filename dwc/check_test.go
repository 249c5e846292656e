package dwc_test

import (
	"errors"
	"fmt"
	"reflect"
	"testing"

	"github.com/go-playground/validator/v10"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

// Examples and limits are those of the term list (TDWG, 2026), where no other
// source is given.
var checkCases = []struct {
	term      string
	good, bad []string
}{
	{"decimalLatitude", []string{"-41.0983423", "90", "-90", "0", "52.0000000", "+5.1", "1e1"}, []string{"90.0001", "-91", "52°", "52,1", "NaN", "Inf", "0x10", "5_0", "north", " 52"}},
	{"decimalLongitude", []string{"-121.1761111", "180", "-180.0"}, []string{"180.1", "-181", "E 5", "infinity"}},
	{"month", []string{"1", "10", "12", "06"}, []string{"0", "13", "June", "1.0", "-1", "+1", "6-7"}},
	{"day", []string{"9", "28", "31", "01"}, []string{"0", "32", "12th", "1/2"}},
	{"year", []string{"1160", "2008"}, []string{"21", "20211", "'21", "2021-22", "MMXXI"}},
	{"startDayOfYear", []string{"1", "366"}, []string{"0", "367"}},
	{"endDayOfYear", []string{"1", "365"}, []string{"1.5", "400"}},
	{"countryCode", []string{"AR", "SV", "GB", "IE", "XZ", "ZZ", "IM", "GG"}, []string{"UK", "gb", "GBR", "826", "EN", "England", "QQ", "G1"}},
	{"eventDate", []string{
		"1963-03-08T14:07-06:00", "2009-02-20T08:40Z", "2018-08-29T15:19", "1809-02-12", "1906-06", "1971",
		"2007-03-01T13:00:00Z/2008-05-11T15:30:00Z", "1900/1909", "2007-11-13/15",
		"2021-06-12/2021-06-13", "2021-06-30/07-01", "2024-02-29", "2021-163", "2021-W23-6", "2021-W23", "2021-06-12T22:45:10.25+01:00",
		"2021-06-12T22:00/2021-06-13T05:00", "2021-06/2021-06-15", "2021-06-12T22/23", "2021-163/2021-06-13", "2021-W23-6/2021-06-20", "2021-162/2021-163", "2021-06-12T24:00",
	}, []string{
		"12/06/2021", "2021-6-12", "2021-13-01", "2021-02-29", "2100-02-29", "20210612", "2021-06-12/", "/2021", "2021-06-13/2021-06-12",
		"2021-06-13/12", "2021-06-12 22:45", "2021-06-12T", "2021-06-12T25:00", "2021-06-12T22:61", "2021-06T22:00", "2021T22:00", "June 2021",
		"2021-366", "2021-163/2021-162", "2021-W23/2020-06-20", "2021-W54", "2021-W61-1", "2021-W23-8", "..", "2021-06-12/2021-06-13/2021-06-14", "2021-06-12T24:01", "21", "2021-06-12T22:45+", "2021-06-31", "2021-00-10",
	}},
	{"modified", []string{"2021-06-12"}, []string{"yesterday"}},
	{"dateIdentified", []string{"2021-06"}, []string{"06/2021"}},
	{"georeferencedDate", []string{"2021"}, []string{"in 2021"}},
	{"eventTime", []string{"14:07-06:00", "08:40:21Z", "13:00:00Z/15:30:00Z", "22:45"}, []string{"10.45pm", "2245", "dusk", "22:60", "22:45/", "25:00"}},
	{"basisOfRecord", []string{"PreservedSpecimen", "HumanObservation", "MaterialCitation"}, []string{"humanObservation", "observation", "Human Observation"}},
	{"occurrenceStatus", []string{"detected", "notDetected", "present", "absent"}, []string{"Present", "yes", "not detected"}},
	{"license", []string{"http://creativecommons.org/publicdomain/zero/1.0/legalcode", "https://example.org/terms"}, []string{"CC0", "creativecommons.org/licenses/by/4.0/", "http://", "http://a b"}},
	{"nomenclaturalCode", []string{"ICN", "ICZN", "BC", "ICNCP", "BioCode"}, []string{"iczn", "zoological"}},
	{"individualCount", []string{"0", "1", "25", "100000"}, []string{"-1", "1.5", "about 10", "10+", "3 males", "1,000"}},
	{"coordinateUncertaintyInMeters", []string{"30", "71", "0.5"}, []string{"0", "-5", "0.0", "100 m"}},
	{"coordinatePrecision", []string{"0.00001", "1.0"}, []string{"0", "4 figures"}},
	{"minimumElevationInMeters", []string{"-100", "802"}, []string{"12 m", "sea level"}},
	{"maximumElevationInMeters", []string{"236"}, []string{"low"}},
	{"type", []string{"StillImage", "MovingImage", "Sound", "PhysicalObject", "Event", "Text"}, []string{"image", "Occurrence"}},
	{"language", []string{"en", "es", "en-GB", "cym"}, []string{"English", "e", "xx-invalid-tag-that-is-far-too-long"}},
	{"continent", []string{"Africa", "Antarctica", "Asia", "Europe", "North America", "Oceania", "South America"}, []string{"europe", "EU"}},
	{"establishmentMeans", []string{"native", "nativeReintroduced", "introduced", "introducedAssistedColonisation", "vagrant", "uncertain"}, []string{"alien", "Native"}},
	{"degreeOfEstablishment", []string{"native", "captive", "casual", "widespreadInvasive"}, []string{"wild"}},
}

func TestCheckEachTerm(t *testing.T) {
	for _, c := range checkCases {
		for _, v := range c.good {
			o := dwc.Occurrence{OccurrenceID: "a"}
			require.True(t, o.Set(c.term, v))
			assert.Empty(t, dwc.Check(&o), "%s %q", c.term, v)
		}
		for _, v := range c.bad {
			o := dwc.Occurrence{OccurrenceID: "a"}
			require.True(t, o.Set(c.term, v))
			faults := dwc.Check(&o)
			if assert.Len(t, faults, 1, "%s %q", c.term, v) {
				assert.Equal(t, c.term, faults[0].Term)
				assert.Contains(t, faults[0].Message, "“"+v+"” is no")
			}
		}
	}
}

func TestCheckPairsAndNeeds(t *testing.T) {
	assert.Equal(t, []dwc.FieldFault{{"occurrenceID", "There is no occurrenceID: every record needs one."}}, dwc.Check(&dwc.Occurrence{}))
	for _, c := range []struct {
		o    dwc.Occurrence
		want string
	}{
		{dwc.Occurrence{OrganismQuantity: "many"}, "There is no organismQuantityType, which organismQuantity “many” needs."},
		{dwc.Occurrence{OrganismQuantityType: "individuals"}, "There is no organismQuantity, which organismQuantityType “individuals” needs."},
		{dwc.Occurrence{SampleSizeValue: "5"}, "There is no sampleSizeUnit, which sampleSizeValue “5” needs."},
		{dwc.Occurrence{SampleSizeUnit: "hour"}, "There is no sampleSizeValue, which sampleSizeUnit “hour” needs."},
		{dwc.Occurrence{SampleSizeValue: "five", SampleSizeUnit: "hour"}, "“five” is no number."},
	} {
		c.o.OccurrenceID = "a"
		faults := dwc.Check(&c.o)
		require.Len(t, faults, 1, c.want)
		assert.Equal(t, c.want, faults[0].Message)
	}
	assert.Empty(t, dwc.Check(&dwc.Occurrence{OccurrenceID: "a", SampleSizeValue: "5", SampleSizeUnit: "hour", OrganismQuantity: "many", OrganismQuantityType: "individuals"}))
	assert.Nil(t, dwc.Check(fullOccurrence()))
}

// An event's and a measurement's terms are judged as those of an occurrence.
func TestCheckOtherRecords(t *testing.T) {
	occurrence, event := reflect.TypeFor[dwc.Occurrence](), reflect.TypeFor[dwc.Event]()
	for i := range event.NumField() {
		f := event.Field(i)
		same, ok := occurrence.FieldByName(f.Name)
		require.True(t, ok, f.Name)
		if f.Name != "EventID" {
			assert.Equal(t, same.Tag, f.Tag, f.Name)
		}
	}
	assert.Empty(t, dwc.CheckEvent(&dwc.Event{EventID: "n1", EventDate: "2021-06-12/13", SampleSizeValue: "1", SampleSizeUnit: "night"}))
	assert.Equal(t, []dwc.FieldFault{
		{"eventID", "There is no eventID: every record needs one."},
		{"month", "“June” is no month: a month is a whole number from 1 to 12."},
		{"sampleSizeUnit", "There is no sampleSizeUnit, which sampleSizeValue “1” needs."},
	}, dwc.CheckEvent(&dwc.Event{Month: "June", SampleSizeValue: "1"}))
	assert.Empty(t, dwc.CheckMeasurement(&dwc.Measurement{MeasurementType: "forewing length", MeasurementValue: "14", MeasurementDeterminedDate: "2021-06-13"}))
	assert.Len(t, dwc.CheckMeasurement(&dwc.Measurement{MeasurementDeterminedDate: "next day"}), 1)
}

// Every code of two letters is judged as the ISO 3166-1 list of validator/v10
// has it, but for the two that the standard adds. Numbers from ISO 3166-1, from
// memory: 249 codes; XK is a code for Kosovo that is assigned by its users.
func TestCountryCodesAreISO3166(t *testing.T) {
	v := validator.New()
	count := 0
	for a := 'A'; a <= 'Z'; a++ {
		for b := 'A'; b <= 'Z'; b++ {
			code := string([]rune{a, b})
			want := v.Var(code, "iso3166_1_alpha2") == nil || code == "ZZ" || code == "XZ"
			got := len(dwc.Check(&dwc.Occurrence{OccurrenceID: "a", CountryCode: code})) == 0
			assert.Equal(t, want, got, code)
			if got {
				count++
			}
		}
	}
	assert.Equal(t, 249+len([]string{"ZZ", "XZ", "XK"}), count)
}

// Check reads the tags by itself, for speed; validator/v10 reads the same
// tags and must come to the same end.
func TestCheckAgreesWithValidator(t *testing.T) {
	v := validator.New()
	require.NoError(t, dwc.RegisterRules(v))
	v.RegisterTagNameFunc(func(f reflect.StructField) string { return f.Tag.Get("dwc") })
	var again dwc.Checker
	agree := func(o *dwc.Occurrence) {
		var want, got []string
		var failed validator.ValidationErrors
		if errors.As(v.Struct(o), &failed) {
			for _, f := range failed {
				want = append(want, f.Field())
			}
		}
		for _, f := range dwc.Check(o) {
			got = append(got, f.Term)
		}
		assert.Equal(t, want, got)
		for range 2 {
			assert.Equal(t, dwc.Check(o), again.Check(o), "whatever was checked before")
		}
	}
	agree(&dwc.Occurrence{})
	agree(fullOccurrence())
	agree(&dwc.Occurrence{SampleSizeUnit: "hour", OrganismQuantity: "many"})
	for _, c := range checkCases {
		for _, value := range append(c.good, c.bad...) {
			o := dwc.Occurrence{OccurrenceID: "a", SampleSizeValue: "x"}
			o.Set(c.term, value)
			agree(&o)
		}
	}
}

func ExampleCheck() {
	o := dwc.Occurrence{OccurrenceID: "s1", DecimalLatitude: "152.5", Month: "June"}
	for _, f := range dwc.Check(&o) {
		fmt.Printf("%s: %s\n", f.Term, f.Message)
	}
	// Output:
	// month: “June” is no month: a month is a whole number from 1 to 12.
	// decimalLatitude: “152.5” is no latitude: a latitude is a number of degrees from -90 to 90.
}

func BenchmarkCheck(b *testing.B) {
	o := fullOccurrence()
	b.ReportAllocs()
	for b.Loop() {
		if dwc.Check(o) != nil {
			b.Fatal("a good record is found at fault")
		}
	}
}
