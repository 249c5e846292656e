package bdq

import (
	"regexp"
	"strings"
	"unicode"
)

var (
	lsid  = regexp.MustCompile(`^(?i:urn:lsid):[A-Za-z0-9][A-Za-z0-9.-]*:[^\s:]+:[^\s:]+(?::[^\s:]+)?$`)
	urn   = regexp.MustCompile(`^(?i:urn):([A-Za-z0-9][A-Za-z0-9-]{0,30}[A-Za-z0-9]):[^\s]+$`)
	uri   = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9+.-]*://[^\s/?#]+/[^\s]+$`)
	scope = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9_.+-]*:[^\s:/][^\s]*$`)
)

// nameIDComplete asks for an LSID (five parts at least), another URN with its
// namespace and what it names (RFC 8141), scope:value, or a URI with a host
// and a path that says more than "/" (RFC 3986).
func nameIDComplete() check {
	return orEmpty("dwc:scientificNameID", func(_ *record, _ *parameters, value string) Response {
		return verdict(completeID(value), "is a complete identifier", "is not a complete identifier")
	})
}

func completeID(s string) bool {
	lower := strings.ToLower(s)
	switch {
	case strings.HasPrefix(lower, "urn:lsid:"):
		return lsid.MatchString(s)
	case strings.HasPrefix(lower, "urn:"):
		return urn.MatchString(s)
	case strings.Contains(s, "://"):
		return uri.MatchString(s)
	case strings.HasPrefix(lower, "http:"), strings.HasPrefix(lower, "https:"):
		return false
	}
	return scope.MatchString(s)
}

// polynomialConsistent compares the words of the scientific name with the
// terms that repeat them. Authors are passed over; capitals do not matter in
// an epithet, as older names have them.
func polynomialConsistent(r *record, _ *parameters) Response {
	const name = "dwc:scientificName"
	if r.empty(name) {
		return unmet("is empty").of(name, "")
	}
	terms := [...]string{"dwc:genericName", "dwc:specificEpithet", "dwc:infraspecificEpithet"}
	var parts [3]string
	parsed, stated := false, false
	for i, term := range terms {
		value := r.get(term)
		if isEmpty(value) {
			continue
		}
		if stated = true; !parsed {
			parts, parsed = polynomial(r.get(name)), true
		}
		value = bareWord(trim(value))
		same := value == parts[i]
		if i > 0 {
			same = strings.EqualFold(value, parts[i])
		}
		if !same {
			return notCompliant("is not that word of dwc:scientificName").of(term, r.get(term))
		}
	}
	if !stated {
		return unmet("genericName, specificEpithet and infraspecificEpithet are all empty")
	}
	return compliant("agrees with the terms that repeat its words").of(name, r.get(name))
}

// Words of a scientific name that stand before an epithet without being one.
// Abbreviations of ranks as the botanical code and usage have them; from
// memory.
var (
	rankWords = map[string]bool{
		"subsp": true, "ssp": true, "subspecies": true, "var": true, "variety": true, "varietas": true, "v": true,
		"subvar": true, "f": true, "fo": true, "form": true, "forma": true, "subf": true, "morph": true, "m": true,
		"ab": true, "race": true, "convar": true, "nothosubsp": true, "nothovar": true, "cv": true, "pv": true, "bv": true,
	}
	doubtWords = map[string]bool{"aff": true, "cf": true, "x": true, "×": true, "nr": true}
	// Small words that belong to the names of authors.
	authorWords = map[string]bool{
		"ex": true, "et": true, "in": true, "and": true, "de": true, "von": true, "van": true, "der": true, "den": true,
		"da": true, "di": true, "du": true, "la": true, "le": true, "al": true, "non": true, "nec": true, "sensu": true,
		"auct": true, "bis": true, "fil": true, "f": true, "y": true, "zu": true, "dos": true, "del": true, "emend": true,
	}
)

// polynomial finds the generic name, the specific epithet and the lowest
// infraspecific epithet in a scientific name.
func polynomial(name string) (parts [3]string) {
	afterRank, authors := false, false
	for i, field := range strings.Fields(name) {
		word := bareWord(field)
		bare := strings.ToLower(strings.TrimSuffix(word, "."))
		switch {
		case word == "", doubtWords[bare]:
		case parts[0] == "":
			parts[0] = word
		case strings.HasPrefix(field, "("):
			// a subgenus after the genus, or an author in brackets
			authors = parts[1] != ""
		case parts[1] != "" && rankWords[bare] && hasEpithetAfter(name, i):
			afterRank, authors = true, false
		case afterRank:
			parts[2], afterRank = word, false
		case authors || authorWords[bare] || !epithet(word):
			authors = authors || parts[1] != ""
		case parts[1] == "":
			parts[1] = word
		default:
			parts[2] = word
		}
	}
	return parts
}

// hasEpithetAfter tells the rank "f." from the author "f." (filius): an
// epithet follows the rank.
func hasEpithetAfter(name string, i int) bool {
	fields := strings.Fields(name)
	for _, field := range fields[i+1:] {
		word := bareWord(field)
		if doubtWords[strings.ToLower(strings.TrimSuffix(word, "."))] {
			continue
		}
		if bare := strings.ToLower(strings.TrimSuffix(fields[i], ".")); bare == "f" || bare == "m" || bare == "v" {
			return epithet(word) && !authorWords[strings.ToLower(word)]
		}
		return epithet(word) || len(word) > 3 && epithet(strings.ToLower(word))
	}
	return false
}

// bareWord drops a hybrid sign, quotes, brackets and commas around a word.
func bareWord(s string) string {
	return strings.Trim(strings.TrimPrefix(s, "×"), "(),;[]'\"‘’“”")
}

// epithet says whether a word has the look of an epithet: small letters and
// hyphens.
func epithet(s string) bool {
	if len(s) < 2 {
		return false
	}
	for _, r := range s {
		if !unicode.IsLower(r) && r != '-' {
			return false
		}
	}
	return true
}
