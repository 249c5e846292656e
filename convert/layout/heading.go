package layout

import (
	"reflect"
	"sort"
	"strings"
	"unicode/utf8"

	"fieldfare/dwc"

	"github.com/agnivade/levenshtein"
)

// match is a sense of a heading and how surely the words say so.
type match struct {
	sense
	weight int
	why    string
}

const (
	weightTerm      = 110 // a Darwin Core term's own name
	weightExact     = 100
	weightContained = 70
	weightMisspelt  = 60
	weightLoose     = 30 // one everyday word within a longer heading
	stepDown        = 8  // each further sense of the same words
)

// headingSenses returns what a heading may mean, surest first. terms says
// that the page is written in Darwin Core's terms.
func headingSenses(s string, terms bool) []match {
	s = trim(s)
	if s == "" || utf8.RuneCountInString(s) > 60 {
		return nil
	}
	if terms {
		if t, ok := termNames[strings.ToLower(bareTerm(s))]; ok {
			return termSenses(t)
		}
	}
	key := normHeading(s)
	if key == "" {
		return nil
	}
	if bare := cutYear(s); bare != "" && len(bare) < len(s)-3 { // "2011 date"
		return headingSenses(bare, terms)
	}
	if ss, ok := vocabulary[key]; ok {
		return withBracket(weigh(ss, weightExact, "the heading “"+s+"”"), s)
	}
	if t, ok := termNames[strings.ToLower(bareTerm(s))]; ok && isCamel(s) {
		return termSenses(t)
	}
	words := strings.Fields(key)
	if bare := dropFillers(words); bare != key && bare != "" {
		if ss, ok := vocabulary[bare]; ok {
			return withBracket(weigh(ss, weightExact-5, "the heading “"+s+"”"), s)
		}
	}
	near, slips := misspelt(key, s)
	if slips == 1 {
		return withBracket(near, s)
	}
	if len(words) > 7 {
		return withBracket(near, s)
	}
	if within := contained(words, s); len(near) == 0 || len(within) > 0 && within[0].weight == weightContained {
		return withBracket(within, s)
	}
	return withBracket(near, s)
}

func weigh(ss []sense, weight int, why string) []match {
	out := make([]match, len(ss))
	for i, s := range ss {
		out[i] = match{s, weight - i*stepDown, why}
	}
	return out
}

// withBracket lets a sex or stage in brackets say which count is meant:
// "Count (larvae)".
func withBracket(ms []match, heading string) []match {
	in := normHeading(insideBrackets(heading))
	if in == "" {
		return ms
	}
	for _, s := range vocabulary[in] {
		if s.meaning != Count || s.sex == "" && s.stage == "" {
			continue
		}
		for i := range ms {
			if ms[i].meaning == Count && ms[i].sex == "" && ms[i].stage == "" {
				ms[i].sex, ms[i].stage = s.sex, s.stage
			}
		}
	}
	return ms
}

var headingFillers = wordSet("the of a an was were is please if any known and or your full our this our my in e g eg etc dd mm yyyy yy ddmmyy ddmmyyyy nearest approx exact optional required used given")

func dropFillers(words []string) string {
	var out []string
	for _, w := range words {
		if !headingFillers[w] {
			out = append(out, w)
		}
	}
	return strings.Join(out, " ")
}

// contained finds the longest phrase of the vocabulary within a heading of
// several words. Of equally long ones the last counts, as the head of an
// English compound stands last, unless "of" turns it round.
func contained(words []string, heading string) []match {
	if len(words) < 2 {
		return nil
	}
	best, bestWords, bestLoose := []sense(nil), 0, true
	for from := range words {
		for to := from + 1; to <= len(words); to++ {
			ss, ok := vocabulary[strings.Join(words[from:to], " ")]
			if !ok {
				continue
			}
			loose := to-from == 1 && needsMore[words[from]] || to-from == 1 && len(words[from]) < 3 && words[from] != "gr" && words[from] != "vc"
			better := to-from > bestWords || to-from == bestWords && bestLoose && !loose ||
				to-from == bestWords && bestLoose == loose && !followsOf(words, from)
			if bestWords > 0 && loose && !bestLoose {
				better = false
			}
			if better {
				best, bestWords, bestLoose = ss, to-from, loose
			}
		}
	}
	if best == nil {
		return nil
	}
	weight := weightContained
	if bestLoose {
		weight = weightLoose
	}
	return weigh(best, weight, "words of the heading “"+heading+"”")
}

func followsOf(words []string, at int) bool {
	for _, w := range words[:at] {
		if w == "of" || w == "by" {
			return true
		}
	}
	return false
}

// vocabularyKeys are the phrases long enough to be recognised when misspelt,
// by their first letter, which is seldom wrong, and in a fixed order.
var vocabularyKeys = func() [256][]string {
	var keys [256][]string
	for k := range vocabulary {
		if len(k) >= 4 && isASCII(k) {
			keys[k[0]] = append(keys[k[0]], k)
		}
	}
	for _, ks := range keys {
		sort.Strings(ks)
	}
	return keys
}()

// misspelt finds the phrases nearest to a heading: one slip in four letters
// and more, two in eight and more.
func misspelt(key, heading string) (ms []match, slips int) {
	if len(key) < 4 || len(key) > 40 || !isASCII(key) || placeWords[key] || vernacularWords[key] {
		return nil, 0 // a lane is no lake, an otter no other
	}
	best, found := 3, ""
	for _, k := range vocabularyKeys[key[0]] {
		if d := len(k) - len(key); d > 2 || d < -2 {
			continue
		}
		dist := 1
		if !oneSlip(key, k) {
			if len(key) < 8 || len(k) < 8 {
				continue
			}
			if dist = levenshtein.ComputeDistance(key, k); dist > 2 {
				continue
			}
		}
		if dist < best {
			best, found = dist, k
		}
	}
	if found == "" {
		return nil, 0
	}
	return weigh(vocabulary[found], weightMisspelt, "the heading “"+heading+"”, taken for “"+found+"”"), best
}

// bareTerm strips a namespace from a term ("dwc:eventDate", a URL's end).
func bareTerm(s string) string {
	if i := strings.LastIndexAny(s, ":/#"); i >= 0 && i+1 < len(s) && !strings.ContainsAny(s[i+1:], " ") {
		return s[i+1:]
	}
	return s
}

func isCamel(s string) bool {
	s = bareTerm(s)
	for i := 1; i < len(s); i++ {
		if s[i] >= 'A' && s[i] <= 'Z' && s[i-1] >= 'a' && s[i-1] <= 'z' {
			return !strings.ContainsAny(s, " .")
		}
	}
	return false
}

// termNames maps Darwin Core's term names in small letters to their spelling.
var termNames = func() map[string]string {
	m := map[string]string{}
	t := reflect.TypeFor[dwc.Occurrence]()
	for i := range t.NumField() {
		if name := t.Field(i).Tag.Get("dwc"); name != "" {
			m[strings.ToLower(name)] = name
		}
	}
	return m
}()

// termMeanings maps the terms that a meaning covers.
var termMeanings = map[string]Meaning{
	"eventDate": Date, "eventTime": Time, "scientificName": Scientific, "vernacularName": Vernacular,
	"scientificNameAuthorship": Authorship, "taxonID": TaxonNumber, "individualCount": Count, "sex": Sex,
	"lifeStage": Stage, "occurrenceStatus": Status, "recordedBy": Recorder, "identifiedBy": Determiner,
	"locality": Site, "decimalLatitude": Latitude, "decimalLongitude": Longitude,
	"coordinateUncertaintyInMeters": Uncertainty, "county": County, "country": Country, "verbatimElevation": Elevation,
	"habitat": Habitat, "samplingProtocol": Method, "samplingEffort": Effort, "occurrenceRemarks": Remarks,
	"identificationQualifier": Certainty, "basisOfRecord": Basis, "occurrenceID": RecordID,
}

func termSenses(term string) []match {
	why := "Darwin Core's term " + term
	if m, ok := termMeanings[term]; ok {
		return []match{{sense{meaning: m}, weightTerm, why}}
	}
	return []match{{sense{meaning: Term, term: term}, weightTerm, why}}
}

// writtenInTerms reports whether a row of headings is Darwin Core's: at least
// two of its term names in their own spelling.
func writtenInTerms(headings []string) bool {
	n := 0
	for _, h := range headings {
		if name, ok := termNames[strings.ToLower(bareTerm(trim(h)))]; ok && name == bareTerm(trim(h)) && isCamel(name) {
			n++
		}
	}
	return n >= 2
}
