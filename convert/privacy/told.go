package privacy

import (
	"regexp"
	"slices"
	"strings"

	"fieldfare/dwc"
)

// told are the terms that a blurred record keeps, each with what its value
// must look like to be kept: what was seen, when, by whom and how many. A
// value that is no word of a vocabulary, date, number or name says more than
// it should, or may, and stays at home.
var told = []struct {
	terms []string
	fits  func(string) bool
}{
	{[]string{"type", "basisOfRecord", "nomenclaturalCode", "taxonomicStatus", "establishmentMeans", "degreeOfEstablishment"}, isOneWord},
	{[]string{"taxonRank"}, matches(`^[a-z]{4,14}( (aggregate|group|complex))?$`)},
	{[]string{"license"}, isLicence},
	{[]string{"language"}, matches(`^[a-z]{2,3}(-[A-Za-z]{2,4})?$`)},
	{[]string{"individualCount", "year", "month", "day", "startDayOfYear", "endDayOfYear"}, matches(`^\d{1,9}$`)},
	{[]string{"organismQuantity"}, isQuantity},
	{[]string{"organismQuantityType"}, isOneOf("individuals", "signs")},
	{[]string{"sex"}, eachOf("male", "female", "hermaphrodite", "indeterminate", "undetermined", "mixed")},
	{[]string{"lifeStage"}, eachOf("adult", "imago", "larva", "pupa", "egg", "nymph", "juvenile", "subadult", "immature", "teneral", "exuvia", "gall", "mine", "case", "seedling", "spore")},
	{[]string{"caste"}, eachOf("queen", "worker", "drone", "gyne", "soldier")},
	{[]string{"vitality"}, isOneOf("alive", "dead")},
	{[]string{"occurrenceStatus"}, isOneOf("present", "absent")},
	{[]string{"eventDate", "dateIdentified"}, matches(`^[\d:TZ/+.-]{4,60}$`)},
	{[]string{"country"}, isOneOf("United Kingdom", "Ireland", "Isle of Man", "Jersey", "Guernsey")},
	{[]string{"countryCode"}, matches(`^[A-Z]{2}$`)},
	{[]string{"identificationQualifier"}, isOneOf("cf.", "aff.", "agg.", "?", "s.l.", "s.str.", "s. lat.", "sp.", "spp.")},
	{[]string{"taxonID", "scientificNameID"}, func(string) bool { return true }}, // the list's, see dropStated
	{[]string{"scientificName", "acceptedNameUsage", "vernacularName", "scientificNameAuthorship"}, isShort},
	{[]string{"kingdom", "phylum", "class", "order", "superfamily", "family", "subfamily", "tribe", "genus", "subgenus"}, matches(`^\p{Lu}[\p{Ll}-]+$`)},
	{[]string{"specificEpithet", "infraspecificEpithet"}, matches(`^[\p{Ll}-]+$`)},
}

// ListTerms are the terms that come from the taxon list. What a notebook
// itself states of them is free text, and for a record that will be blurred
// it must not stand in their place.
var ListTerms = []string{
	"taxonID", "scientificNameID", "scientificName", "acceptedNameUsage", "vernacularName", "scientificNameAuthorship", "kingdom", "phylum", "class",
	"order", "superfamily", "family", "subfamily", "tribe", "genus", "subgenus", "specificEpithet", "infraspecificEpithet",
	"taxonRank", "nomenclaturalCode", "taxonomicStatus",
}

func matches(pattern string) func(string) bool { return regexp.MustCompile(pattern).MatchString }

func isOneOf(values ...string) func(string) bool {
	return func(s string) bool { return slices.Contains(values, s) }
}

// eachOf accepts several of the values, joined as Darwin Core recommends.
func eachOf(values ...string) func(string) bool {
	return func(s string) bool {
		for part := range strings.SplitSeq(s, " | ") {
			if !slices.Contains(values, part) {
				return false
			}
		}
		return true
	}
}

// oneWord is a word of a vocabulary; whether the vocabulary has it is for
// dropOdd to tell.
var oneWord = regexp.MustCompile(`^[A-Za-z]{2,30}$`)

func isOneWord(s string) bool { return oneWord.MatchString(s) }

func isShort(s string) bool { return len(s) <= 120 }

func isLicence(s string) bool {
	url, ok := dwc.LicenseURL(s)
	return ok && url == s
}

var figures = regexp.MustCompile(`^[\d\s<>~≈≥≤+=.,–-]{1,24}$`)

// quantityWords are the words in which a quantity that is no number is given.
var quantityWords = strings.Fields("a about abundance abundant all approx approximately around at c ca circa common dozen dozens few frequent " +
	"hundred hundreds individuals least lots many moderate more most none numerous occasional of one or over plenty present rare several " +
	"some thousand thousands to two under up very couple")

func isQuantity(s string) bool {
	if figures.MatchString(s) {
		return true
	}
	for w := range strings.FieldsFuncSeq(strings.ToLower(s), func(r rune) bool { return strings.ContainsRune(" 0123456789<>~≈≥≤+=.,–-", r) }) {
		if !slices.Contains(quantityWords, w) {
			return false
		}
	}
	return len(s) <= 40
}

// vocabularyTerms are those whose values dwc knows.
var vocabularyTerms = []string{"type", "basisOfRecord", "nomenclaturalCode", "establishmentMeans", "degreeOfEstablishment"}

var codes = []string{"", "ICZN", "ICN"}

// dropOdd empties the terms of a vocabulary that hold something else.
func dropOdd(o *dwc.Occurrence) {
	probe := dwc.Occurrence{DateIdentified: o.DateIdentified}
	for _, term := range vocabularyTerms {
		probe.Set(term, o.Get(term))
	}
	if probe == (dwc.Occurrence{Type: "Event", BasisOfRecord: "HumanObservation", NomenclaturalCode: o.NomenclaturalCode}) && slices.Contains(codes, o.NomenclaturalCode) {
		return // as nearly all are
	}
	for _, f := range dwc.Check(&probe) {
		o.Set(f.Term, "")
	}
}
