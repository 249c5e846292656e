package dwc

import (
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/go-playground/validator/v10"
	"golang.org/x/text/language"
)

// rule is what the standard says of a value: the test, and the words for a
// value that fails it, after “value” and before a full stop.
type rule struct {
	valid func(string) bool
	words string
}

// rules are the validations that the tags of Occurrence name. Each says what
// the definition or comments of its terms say (https://dwc.tdwg.org/terms/),
// unless a comment gives another source.
var rules = map[string]rule{
	"iso_date":     {isISODate, "is no date or interval as ISO 8601 writes it, such as 2021-06-12 or 2021-06-12/2021-06-13"},
	"iso_time":     {isISOTimeOrInterval, "is no time of day as ISO 8601 writes it, such as 22:45 or 22:45Z"},
	"year":         {isYear, "is no year of four digits"},
	"month":        {between(1, 12), "is no month: a month is a whole number from 1 to 12"},
	"day_of_month": {between(1, 31), "is no day of a month: a day is a whole number from 1 to 31"},
	"day_of_year":  {between(1, 366), "is no day of a year: a day is a whole number from 1 to 366"},

	"decimal_latitude":  {degrees(90), "is no latitude: a latitude is a number of degrees from -90 to 90"},
	"decimal_longitude": {degrees(180), "is no longitude: a longitude is a number of degrees from -180 to 180"},
	"above_zero":        {func(s string) bool { v, ok := decimal(s); return ok && v > 0 }, "is no number above zero"},
	"number_value":      {func(s string) bool { _, ok := decimal(s); return ok }, "is no number"},
	"whole_number":      {isWholeNumber, "is no whole number of individuals: write 0, 1, 2 and so on"},

	"country_alpha2": {isCountryCode, "is no country code of two capital letters after ISO 3166-1, such as GB (ZZ stands for unknown, XZ for the high seas)"},
	"language_tag":   {isLanguage, "is no language code, such as en"},
	"web_address":    {isWebAddress, "is no web address: a licence is stated by its address, such as http://creativecommons.org/licenses/by/4.0/legalcode"},

	// The DCMI type vocabulary.
	"dcmi_type": oneOf("Collection", "Dataset", "Event", "Image", "InteractiveResource", "MovingImage", "PhysicalObject",
		"Service", "Software", "Sound", "StillImage", "Text"),
	"basis_of_record": oneOf("HumanObservation", "MachineObservation", "PreservedSpecimen", "FossilSpecimen", "LivingSpecimen",
		"MaterialEntity", "MaterialSample", "MaterialCitation", "Occurrence", "Event", "Taxon"),
	// The standard recommends the first two, and let them be extended; the
	// others are those it recommended before.
	"occurrence_status": oneOf("detected", "notDetected", "present", "absent"),
	// Codes and their names before their latest editions: from memory.
	"nomenclatural_code": oneOf("ICZN", "ICN", "ICNP", "ICNCP", "ICVCN", "BC", "BioCode", "ICBN", "ICNB", "ICTV"),
	"continent":          oneOf("Africa", "Antarctica", "Asia", "Europe", "North America", "Oceania", "South America"),
	"establishment_means": oneOf("native", "nativeEndemic", "nativeReintroduced", "introduced", "introducedAssistedColonisation",
		"vagrant", "uncertain"),
	"degree_of_establishment": oneOf("native", "captive", "cultivated", "released", "failing", "casual", "reproducing",
		"established", "colonising", "invasive", "widespreadInvasive"),
}

// RegisterRules teaches a validator the validations that the tags of
// Occurrence name beside its own, so that validator.Struct can be used on
// records. Check finds the same faults a good deal faster.
func RegisterRules(v *validator.Validate) error {
	for name, r := range rules {
		valid := func(f validator.FieldLevel) bool { return r.valid(f.Field().String()) }
		if err := v.RegisterValidation(name, valid); err != nil {
			return err
		}
	}
	return nil
}

func oneOf(words ...string) rule {
	last := len(words) - 1
	return rule{
		valid: func(s string) bool { return slices.Contains(words, s) },
		words: "is none of the words that this term takes: " + strings.Join(words[:last], ", ") + " or " + words[last],
	}
}

func isYear(s string) bool {
	_, ok := number(s)
	return ok && len(s) == 4
}

// between tests for a whole number without a sign.
func between(low, high int) func(string) bool {
	return func(s string) bool {
		n, ok := number(s)
		return ok && len(s) <= 3 && n >= low && n <= high
	}
}

func isWholeNumber(s string) bool {
	_, ok := number(s)
	return ok && len(s) <= 18
}

func degrees(limit float64) func(string) bool {
	return func(s string) bool {
		v, ok := decimal(s)
		return ok && math.Abs(v) <= limit
	}
}

// decimal reads a number in figures; the words and the hexadecimal that
// strconv knows are none.
func decimal(s string) (float64, bool) {
	for i := range len(s) {
		switch c := s[i]; {
		case isDigit(c), c == '.', c == '-', c == '+', c == 'e', c == 'E':
		default:
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// countryCodes says of every pair of capital letters whether it is a country
// code that the standard allows; validator/v10 keeps the list of ISO 3166-1.
var countryCodes = sync.OnceValue(func() (codes [26][26]bool) {
	v := validator.New()
	for a := range 26 {
		for b := range 26 {
			code := string([]byte{byte('A' + a), byte('A' + b)})
			codes[a][b] = code == "ZZ" || code == "XZ" || v.Var(code, "iso3166_1_alpha2") == nil
		}
	}
	return
})

func isCountryCode(s string) bool {
	if len(s) != 2 || s[0] < 'A' || s[0] > 'Z' || s[1] < 'A' || s[1] > 'Z' {
		return false
	}
	return countryCodes()[s[0]-'A'][s[1]-'A']
}

func isLanguage(s string) bool {
	if len(s) <= 3 {
		_, err := language.ParseBase(s)
		return err == nil
	}
	_, err := language.Parse(s)
	return err == nil
}

func isWebAddress(s string) bool {
	// Nearly every record has one of these; they need no taking apart.
	for i := range licenses {
		if s == licenses[i].url {
			return true
		}
	}
	_, ok := webAddress(s)
	return ok && !strings.ContainsAny(s, " \t\n")
}

// webAddress returns an address of the web with what it must not hold, such
// as spaces, escaped.
func webAddress(s string) (escaped string, ok bool) {
	s = strings.TrimSpace(s)
	if !strings.HasPrefix(s, "http://") && !strings.HasPrefix(s, "https://") {
		return "", false
	}
	u, err := url.Parse(s)
	if err != nil || u.Host == "" {
		return "", false
	}
	return u.String(), true
}
