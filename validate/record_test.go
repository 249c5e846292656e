package validate_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
)

// good is a record with nothing wrong: Heart and Dart, which flies from May to
// July, at light on 12 June 2021.
func good() (dwc.Occurrence, validate.Facts) {
	o := dwc.Occurrence{
		Type: "Event", BasisOfRecord: "HumanObservation", OccurrenceStatus: "present", ScientificName: "Agrotis exclamationis", VernacularName: "Heart and Dart",
		VerbatimIdentification: "Heart and Dart", TaxonRank: "species", Kingdom: "Animalia", NomenclaturalCode: "ICZN", IndividualCount: "12", LifeStage: "adult",
		EventDate: "2021-06-12", Year: "2021", Month: "6", Day: "12", VerbatimEventDate: "12/06/2021", RecordedBy: "Ines Calloway", IdentifiedBy: "Tom Achterberg",
		SamplingProtocol: "actinic light trap", Locality: "Sallowmere Reserve", VerbatimCoordinates: "TL4588", DecimalLatitude: "52.47", DecimalLongitude: "0.14",
		GeodeticDatum: "EPSG:4326", CoordinateUncertainty: "708", CountryCode: "GB", Country: "United Kingdom", OccurrenceRemarks: "worn",
	}
	f := validate.Facts{
		Start: day(2021, 6, 12), End: day(2021, 6, 12), Dated: true, Latitude: 52.47, Longitude: 0.14, Radius: 708, SquareSize: 1000, Placed: true,
		Count: 12, Counted: true, Reference: "TL4588", Light: true, Taxon: validate.TaxonFacts{Listed: true, Flight: 0b1110000, Number: 2089},
	}
	return o, f
}

func day(y, m, d int) int32 {
	return int32(time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// codes are the checks that fire on the good record once it is changed.
func codes(change func(o *dwc.Occurrence, f *validate.Facts), asks *validate.Asks) string {
	o, f := good()
	change(&o, &f)
	var list []string
	for _, finding := range new(validate.RecordChecker).Check(&o, &f, asks) {
		list = append(list, finding.Code)
	}
	return strings.Join(list, " ")
}

func TestRecordChecks(t *testing.T) {
	type o = dwc.Occurrence
	type f = validate.Facts
	for _, c := range []struct {
		name   string
		change func(o *o, f *f)
		want   string
	}{
		{"nothing wrong", func(o *o, f *f) {}, ""},
		{"a latitude beyond the pole", func(o *o, f *f) { o.DecimalLatitude = "95" }, "field-decimalLatitude"},
		{"absent and counted", func(o *o, f *f) { o.OccurrenceStatus = "absent" }, "absent-with-count"},
		{"absent and 0", func(o *o, f *f) { o.OccurrenceStatus = "absent"; f.Count = 0; o.IndividualCount = "0" }, ""},
		{"present and 0", func(o *o, f *f) { f.Count = 0; o.IndividualCount = "0" }, "present-without-any"},
		{"the list's number", func(o *o, f *f) { f.Count = 2089; o.IndividualCount = "2089"; o.LifeStage = "larva"; f.Light = false }, "count-is-a-code"},
		{"the figures of the reference", func(o *o, f *f) { f.Count = 4588; o.IndividualCount = "4588" }, "count-is-a-code count-too-large"},
		{"a great night", func(o *o, f *f) { f.Count = 900; o.IndividualCount = "900" }, ""},
		{"more than ever", func(o *o, f *f) { f.Count = 1200; o.IndividualCount = "1200" }, "count-too-large"},
		{"a web of larvae", func(o *o, f *f) { f.Count = 1200; o.LifeStage = "larva"; f.Light = false }, ""},
		{"many of a scarce one", func(o *o, f *f) { f.Count = 60; f.Taxon.NeedsNote = true }, "count-too-large"},
		{"a larva at light", func(o *o, f *f) { o.LifeStage = "larva" }, "stage-at-light"},
		{"an adult by leaf-mine", func(o *o, f *f) { f.Light = false; o.SamplingProtocol = "Leaf-mine search" }, "adult-by-search-for-young"},
		{"a larva by leaf-mine", func(o *o, f *f) { f.Light = false; o.SamplingProtocol = "leaf mine"; o.LifeStage = "larva" }, ""},
		{"an adult reared from a mine", func(o *o, f *f) { f.Light = false; o.SamplingProtocol = "reared from leaf mine" }, ""},
		{"an adult by sweeping", func(o *o, f *f) { f.Light = false; o.SamplingProtocol = "sweep net" }, ""},
		{"an adult over a nova reserve", func(o *o, f *f) { f.Light = false; o.SamplingProtocol = "Casanova walk" }, ""},
		{"a male larva", func(o *o, f *f) { o.LifeStage = "larva"; o.Sex = "male"; f.Light = false }, "sex-of-young"},
		{"a male adult", func(o *o, f *f) { o.Sex = "male" }, ""},
		{"March", func(o *o, f *f) { f.Start = day(2021, 3, 12); f.End = f.Start }, "out-of-season"},
		{"a week early", func(o *o, f *f) { f.Start = day(2021, 4, 25); f.End = f.Start }, ""},
		{"two weeks early", func(o *o, f *f) { f.Start = day(2021, 4, 16); f.End = f.Start }, "out-of-season"},
		{"a month late", func(o *o, f *f) { f.Start = day(2021, 8, 30); f.End = f.Start }, "out-of-season"},
		{"a year, so no season", func(o *o, f *f) { f.Start, f.End = day(2021, 1, 1), day(2021, 12, 31) }, ""},
		{"a larva in March", func(o *o, f *f) { f.Start = day(2021, 3, 12); f.End = f.Start; o.LifeStage = "larva"; f.Light = false }, ""},
		{"a winter moth in January", func(o *o, f *f) { f.Start = day(2021, 1, 3); f.End = f.Start; f.Taxon.Flight = 0b110000000011 }, ""},
		{"an egg before its moth flies", func(o *o, f *f) {
			o.LifeStage, f.Light, f.Taxon.Flight = "egg", false, 0b110000000
			f.Start = day(2021, 6, 20)
			f.End = f.Start
		}, "stage-before-flight"},
		{"an egg while its moth flies", func(o *o, f *f) { o.LifeStage, f.Light = "egg", false }, ""},
		{"a winter moth in June", func(o *o, f *f) { f.Taxon.Flight = 0b110000000011 }, "out-of-season"},
		{"no specimen", func(o *o, f *f) { f.Taxon.NeedsSpecimen = true }, "specimen-needed"},
		{"a specimen in the remarks", func(o *o, f *f) { f.Taxon.NeedsSpecimen = true; o.OccurrenceRemarks = "gen. det. by T. Achterberg" }, ""},
		{"no specimen, and said so", func(o *o, f *f) { f.Taxon.NeedsSpecimen = true; o.OccurrenceRemarks = "specimen not retained" }, "specimen-needed"},
		{"no note", func(o *o, f *f) { f.Taxon.NeedsNote = true; o.OccurrenceRemarks = "" }, "note-needed"},
		{"a note", func(o *o, f *f) { f.Taxon.NeedsNote = true }, ""},
		{"at sea", func(o *o, f *f) { f.AtSea = true }, "no-land"},
		{"a mountain in feet", func(o *o, f *f) { o.MinimumElevation, o.VerbatimElevation = "2300", "2300" }, "high-ground"},
	} {
		assert.Equal(t, c.want, codes(c.change, nil), c.name)
	}
}

func TestRemarks(t *testing.T) {
	for _, remark := range []string{
		"not seen", "Not found this year", "no sign of it", "dead", "found dead on path", "DEAD in spider web", "escaped", "escaped from a cage", "captive stock",
		"released", "released by a dealer", "bred", "reared from larva", "ex larva", "e.l. 3.vi", "?", "worn?", "possibly this species", "not sure of this one", "wings only", "bred and released",
		"could be Lesser", "might be a different one", "may have been Common Rustic", "unconfirmed", "ID to be confirmed", "Lesser not ruled out",
	} {
		assert.Equal(t, "remarks-contradict", codes(func(o *dwc.Occurrence, f *validate.Facts) { o.OccurrenceRemarks = remark }, nil), remark)
	}
	for _, remark := range []string{
		"worn", "counted and released", "all released at dawn", "released unharmed", "on dead nettle", "under dead wood", "dead calm, warm", "has bred here for years", "first since 1998, not seen since",
		"three on ivy", "deadly nightshade nearby", "escaped before it could be potted", "possibly a second brood", "new to the garden", "on white dead-nettle", "Deadman's Lane",
		"could be seen from the path", "may be a second brood", "could be heard by the ditch", "kept until it could be identified",
	} {
		assert.Empty(t, codes(func(o *dwc.Occurrence, f *validate.Facts) { o.OccurrenceRemarks = remark }, nil), remark)
	}
}

func TestAsks(t *testing.T) {
	asks := &validate.Asks{SquareMetres: 1000, Days: 2, HasFrom: true, From: day(2000, 1, 1), HasTo: true, To: day(2024, 12, 31),
		Ranks: []string{"species"}, Terms: []string{"lifeStage"}, CountNeeded: true, ViceCounty: "29"}
	type o = dwc.Occurrence
	type f = validate.Facts
	for name, c := range map[string]struct {
		change func(o *o, f *f)
		want   string
	}{
		"all met":              {func(o *o, f *f) { o.County = "vice-county 29" }, ""},
		"a tetrad":             {func(o *o, f *f) { f.SquareSize = 2000 }, "asks-square"},
		"a monad":              {func(o *o, f *f) { f.SquareSize = 1000 }, ""},
		"a point within 700 m": {func(o *o, f *f) { f.SquareSize = 0; f.Radius = 700 }, ""},
		"a point within 5 km":  {func(o *o, f *f) { f.SquareSize = 0; f.Radius = 5000 }, "asks-square"},
		"no place":             {func(o *o, f *f) { f.Placed = false }, "asks-square"},
		"a month":              {func(o *o, f *f) { f.End = f.Start + 29 }, "asks-date"},
		"a night":              {func(o *o, f *f) { f.End = f.Start + 1; f.Night = true }, ""},
		"too early":            {func(o *o, f *f) { f.Start = day(1999, 6, 30); f.End = f.Start }, "asks-period"},
		"too late":             {func(o *o, f *f) { f.Start = day(2025, 6, 1); f.End = f.Start }, "asks-period"},
		"a genus":              {func(o *o, f *f) { o.TaxonRank = "genus" }, "asks-rank"},
		"no stage":             {func(o *o, f *f) { o.LifeStage = "" }, "asks-term"},
		"no count":             {func(o *o, f *f) { f.Counted = false; o.IndividualCount = "" }, "asks-count"},
		"several": {func(o *o, f *f) {
			f.Counted = false
			o.IndividualCount = ""
			o.OrganismQuantity = "several"
			o.OrganismQuantityType = "individuals"
		}, "asks-count"},
		"another vice-county":   {func(o *o, f *f) { o.HigherGeography = "VC 31" }, "asks-vice-county"},
		"a county, not a vice-": {func(o *o, f *f) { o.County = "Norfolk" }, ""},
	} {
		assert.Equal(t, c.want, codes(c.change, asks), name)
	}
}

func TestViceCountyNumber(t *testing.T) {
	for text, want := range map[string]int{
		"29": 29, "VC29": 29, "vc 29": 29, "v.c. 29": 29, "v.c.29": 29, "vice-county 29": 29, "Vice County 29": 29, "29 Cambridgeshire": 29, "H12": -12, "VC H12": -12, "112": 112,
		"": 0, "113": 0, "Cambridgeshire": 0, "0": 0, "1000": 0, "29a": 0, "H41": 0,
	} {
		assert.Equal(t, want, validate.ViceCountyNumber(text), text)
	}
}

// TestFactsOf compares the days with those of package time.
func TestFactsOf(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		when := time.Date(1600+r.IntN(600), 1, 1+r.IntN(366), 0, 0, 0, 0, time.UTC)
		f := validate.FactsOf(&dwc.Occurrence{EventDate: when.Format("2006-01-02")})
		assert.True(t, f.Dated)
		assert.Equal(t, int32(when.Unix()/86400), f.Start)
		month := validate.FactsOf(&dwc.Occurrence{EventDate: when.Format("2006-01")})
		first := time.Date(when.Year(), when.Month(), 1, 0, 0, 0, 0, time.UTC)
		assert.Equal(t, [2]int32{int32(first.Unix() / 86400), int32(first.AddDate(0, 1, -1).Unix() / 86400)}, [2]int32{month.Start, month.End})
	}
	for text, want := range map[string][2]int32{
		"2021": {day(2021, 1, 1), day(2021, 12, 31)}, "2021-06-12/2021-06-13": {day(2021, 6, 12), day(2021, 6, 13)},
		"2021-06-12T22:30Z/2021-06-13T04:00Z": {day(2021, 6, 12), day(2021, 6, 13)}, "2020/2021": {day(2020, 1, 1), day(2021, 12, 31)},
	} {
		f := validate.FactsOf(&dwc.Occurrence{EventDate: text})
		assert.Equal(t, want, [2]int32{f.Start, f.End}, text)
		assert.True(t, f.Dated, text)
	}
	for _, text := range []string{"", "June", "2021-13", "2021-06-12/2020", "0", "2021-06-12-01"} {
		assert.False(t, validate.FactsOf(&dwc.Occurrence{EventDate: text}).Dated, text)
	}
	f := validate.FactsOf(&dwc.Occurrence{VerbatimCoordinates: "TL 458 883", IndividualCount: "12", DecimalLatitude: "52.4", DecimalLongitude: "0.1", CoordinateUncertainty: "71"})
	assert.Equal(t, "TL458883", f.Reference)
	assert.Equal(t, int32(12), f.Count)
	assert.True(t, f.Placed)
}

func TestEveryCheckIsInTheTable(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range validate.Checks() {
		assert.False(t, seen[c.Name], c.Name)
		seen[c.Name] = true
		assert.NotEmpty(t, c.Source, c.Name)
		assert.True(t, strings.HasSuffix(c.Asks, "?") || c.Name == "field-", c.Name)
		assert.Less(t, c.State, reading.Skipped, c.Name)
	}
	for i := range faults {
		for code := range strings.FieldsSeq(faults[i].code) {
			switch code {
			case "no-such-day", "gap-filled-from-above", "outside-area", "county-disagrees": // of other packages
			default:
				assert.True(t, seen[code], code)
			}
		}
	}
}

func FuzzViceCountyNumber(f *testing.F) {
	for _, s := range []string{"29", "VC H12", "v.c. 3", "vice-county", "é9"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n := validate.ViceCountyNumber(text)
		if n < -40 || n > 112 {
			t.Fatal(n)
		}
	})
}

func FuzzFactsOf(f *testing.F) {
	for _, s := range []string{"2021-06-12", "2021-06-12/13", "0001-02-30/9999", "2021-W03"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		facts := validate.FactsOf(&dwc.Occurrence{EventDate: text})
		if facts.Dated && facts.Start > facts.End {
			t.Fatal(text)
		}
	})
}

func ExampleRecordChecker() {
	o := dwc.Occurrence{
		BasisOfRecord: "HumanObservation", OccurrenceStatus: "present", ScientificName: "Agrotis exclamationis",
		VernacularName: "Heart and Dart", IndividualCount: "3", SamplingProtocol: "light trap", LifeStage: "larva",
	}
	f := validate.Facts{Light: true, Count: 3, Counted: true}
	for _, finding := range new(validate.RecordChecker).Check(&o, &f, nil) {
		fmt.Println(finding.State, finding.Code)
		fmt.Println(finding.Message)
	}
	// Output:
	// query stage-at-light
	// Heart and Dart is recorded as larva, but the method is “light trap”, which catches adults. Check the stage or the method.
}

// BenchmarkRecordWithNothingWrong is to cost under 2 µs.
func BenchmarkRecordWithNothingWrong(b *testing.B) {
	o, f := good()
	var checker validate.RecordChecker
	asks := &validate.Asks{SquareMetres: 1000, Days: 2, Ranks: []string{"species"}, Terms: []string{"lifeStage", "recordedBy"}, CountNeeded: true}
	b.ReportAllocs()
	for b.Loop() {
		if found := checker.Check(&o, &f, asks); found != nil {
			b.Fatal(found)
		}
	}
}

// BenchmarkSet is the cost of the checks of the whole set, for each record.
func BenchmarkSet(b *testing.B) {
	const n = 100_000
	record := records(n, n/8)
	entries := make([]validate.Entry, n)
	for i := range entries {
		entries[i] = record(i)
	}
	b.ReportAllocs()
	for b.Loop() {
		set := validate.NewSet()
		for i := range entries {
			set.Observe(&entries[i])
		}
		_ = set.Settle()
		for i := range entries {
			set.Findings(&entries[i], nil)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/n, "ns/record")
}
