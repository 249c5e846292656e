package bdq

import (
	"regexp"
	"strings"
	"unicode"
)

var (
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
		return wellFormedLSID(s[len("urn:lsid:"):])
	case strings.HasPrefix(lower, "urn:"):
		return urn.MatchString(s)
	case strings.Contains(s, "://"):
		return uri.MatchString(s)
	case strings.HasPrefix(lower, "http:"), strings.HasPrefix(lower, "https:"):
		return false
	}
	return scope.MatchString(s)
}

// wellFormedLSID asks for authority, namespace and object, and lets a revision
// follow (Life Sciences Identifiers, OMG dtc/04-05-01).
func wellFormedLSID(s string) bool {
	n := 0
	for part := range strings.SplitSeq(s, ":") {
		if n++; part == "" || strings.IndexFunc(part, func(r rune) bool { return !prints(r) }) >= 0 {
			return false
		}
	}
	return n == 3 || n == 4
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

// Words of a scientific name that stand before an epithet or among its authors
// without being an epithet; as the botanical code and usage have them, from
// memory.

func rankWord(s string) bool {
	switch s {
	case "subsp", "ssp", "subspecies", "var", "variety", "varietas", "v", "subvar", "f", "fo", "form", "forma", "subf",
		"morph", "m", "ab", "race", "convar", "nothosubsp", "nothovar", "cv", "pv", "bv":
		return true
	}
	return false
}

func doubtWord(s string) bool {
	switch s {
	case "aff", "cf", "nr", "x", "×":
		return true
	}
	return false
}

func authorWord(s string) bool {
	switch s {
	case "ex", "et", "in", "and", "de", "von", "van", "der", "den", "da", "di", "du", "la", "le", "al", "non", "nec",
		"sensu", "auct", "bis", "fil", "f", "y", "zu", "dos", "del", "emend":
		return true
	}
	return false
}

// polynomial finds the generic name, the specific epithet and the lowest
// infraspecific epithet in a scientific name.
func polynomial(name string) (parts [3]string) {
	afterRank, authors := false, false
	for rest := name; rest != ""; {
		var field string
		field, rest = nextField(rest)
		word := bareWord(field)
		bare := strings.ToLower(strings.TrimSuffix(word, "."))
		switch {
		case word == "", doubtWord(bare):
		case parts[0] == "":
			parts[0] = word
		case strings.HasPrefix(field, "("):
			// a subgenus after the genus, or an author in brackets
			authors = parts[1] != ""
		case parts[1] != "" && rankWord(bare) && epithetFollows(bare, rest):
			afterRank, authors = true, false
		case afterRank:
			parts[2], afterRank = word, false
		case authors || authorWord(bare) || !epithet(word):
			authors = authors || parts[1] != ""
		case parts[1] == "":
			parts[1] = word
		default:
			parts[2] = word
		}
	}
	return parts
}

func nextField(s string) (field, rest string) {
	s = strings.TrimLeftFunc(s, unicode.IsSpace)
	if i := strings.IndexFunc(s, unicode.IsSpace); i >= 0 {
		return s[:i], s[i:]
	}
	return s, ""
}

// epithetFollows tells a rank from an author of the same letters, such as "f."
// for forma and filius: an epithet follows the rank.
func epithetFollows(rank, rest string) bool {
	for rest != "" {
		var field string
		field, rest = nextField(rest)
		word := bareWord(field)
		lower := strings.ToLower(word)
		switch {
		case doubtWord(strings.TrimSuffix(lower, ".")):
		case len(rank) == 1:
			return epithet(word) && !authorWord(lower)
		default:
			return epithet(word) || len(word) > 3 && epithet(lower)
		}
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
