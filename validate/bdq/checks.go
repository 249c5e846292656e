package bdq

import (
	"regexp"
	"strings"
)

// check answers one test's question about a record.
type check func(r *record, p *parameters) Response

// notEmpty is COMPLIANT where any of the terms has a value.
func notEmpty(terms ...string) check {
	return func(r *record, _ *parameters) Response {
		for _, term := range terms {
			if value := r.get(term); !isEmpty(value) {
				return compliant("has a value").of(term, value)
			}
		}
		if len(terms) == 1 {
			return notCompliant("is empty").of(terms[0], "")
		}
		return notCompliant("none of the terms has a value")
	}
}

// issue is a POTENTIAL_ISSUE where the term has a value.
func issue(term string) check {
	return func(r *record, _ *parameters) Response {
		out := Response{Status: HasResult, Result: NotIssue, reason: "is empty", term: term}
		if value := r.get(term); !isEmpty(value) {
			out.Result, out.reason, out.value = PotentialIssue, "has a value", value
		}
		return out
	}
}

// orEmpty stops a test whose one term is empty.
func orEmpty(term string, then func(r *record, p *parameters, value string) Response) check {
	return func(r *record, p *parameters) Response {
		value := r.get(term)
		if isEmpty(value) {
			return unmet("is empty").of(term, "")
		}
		return then(r, p, value).of(term, value)
	}
}

// standard is COMPLIANT where the term's value is one of the vocabulary,
// exactly as it stands.
func standard(term string, v func() *vocabulary) check {
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		return verdict(v().has(value), "is in the vocabulary", "is not in the vocabulary")
	})
}

// toStandard proposes the one value of the vocabulary that the term's value
// means.
func toStandard(term string, v func() *vocabulary) check {
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		if v().values[value] {
			return notAmended("is in the vocabulary")
		}
		if meant, ok := v().interpret(value); ok {
			return amended("means one value of the vocabulary", Change{term, meant})
		}
		return notAmended("does not mean one value of the vocabulary")
	})
}

func countryCodeStandard() check {
	return orEmpty("dwc:countryCode", func(_ *record, _ *parameters, value string) Response {
		return verdict(countries().codes[value], "is an ISO 3166-1 alpha-2 code", "is not an ISO 3166-1 alpha-2 code")
	})
}

func countryCodeToStandard() check {
	const term = "dwc:countryCode"
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		if countries().codes[value] {
			return notAmended("is an ISO 3166-1 alpha-2 code")
		}
		if code, ok := countries().interpret(value); ok {
			return amended("means one country", Change{term, code})
		}
		return notAmended("does not mean one country")
	})
}

// countryNotEmpty lets the high seas be without a country.
func countryNotEmpty(r *record, _ *parameters) Response {
	country := r.get("dwc:country")
	switch {
	case !isEmpty(country):
		return compliant("has a value").of("dwc:country", country)
	case r.get("dwc:countryCode") == "XZ":
		return compliant("is empty, and dwc:countryCode says the high seas").of("dwc:country", "")
	}
	return notCompliant("is empty").of("dwc:country", "")
}

func datumStandard() check {
	return orEmpty("dwc:geodeticDatum", func(_ *record, _ *parameters, value string) Response {
		return verdict(epsg().codes[value] || value == notRecorded,
			"is the EPSG code of a geographic reference system, datum or ellipsoid, or says that none was recorded",
			"is not the EPSG code of a geographic reference system, datum or ellipsoid")
	})
}

func datumToStandard() check {
	const term = "dwc:geodeticDatum"
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		if epsg().codes[value] {
			return notAmended("is an EPSG code")
		}
		if code, ok := epsg().interpret(value); ok {
			return amended("means one reference system, datum or ellipsoid", Change{term, code})
		}
		return notAmended("does not mean one reference system, datum or ellipsoid")
	})
}

// The addresses of the Creative Commons 4.0 licences and CC0, as the
// standard's expression lists them. That makes "deed" or "legalcode" part of
// every address, while its notes call the address without either the canonical
// one; both are taken.
var licenceAddress = regexp.MustCompile(`^https?://creativecommons\.org/(?:` +
	`licenses/(?:by|by-sa|by-nc|by-nc-sa|by-nd|by-nc-nd)/4\.0/(?:(?:deed|legalcode)(?:\.(?:mi|` + licenceLanguages + `))?)?|` +
	`publicdomain/zero/1\.0/(?:(?:deed|legalcode)(?:\.(?:` + licenceLanguages + `))?)?)$`)

const licenceLanguages = `id|eu|da|de|en|es|fr|fy|hr|it|lv|lt|ni|no|pl|pt|ro|si|fi|sv|tr|cs|el|ru|uk|ar|jp|zh-hans|zh-hant|ko`

func licenceStandard() check {
	return orEmpty("dcterms:license", func(_ *record, _ *parameters, value string) Response {
		return verdict(isLicence(value),
			"is the address of a Creative Commons 4.0 licence or CC0", "is not the address of a Creative Commons 4.0 licence or CC0")
	})
}

// isLicence answers for the usual addresses without the expression.
func isLicence(s string) bool {
	switch s {
	case "http://creativecommons.org/licenses/by/4.0/legalcode", "https://creativecommons.org/licenses/by/4.0/legalcode",
		"http://creativecommons.org/licenses/by-nc/4.0/legalcode", "https://creativecommons.org/licenses/by-nc/4.0/legalcode",
		"http://creativecommons.org/publicdomain/zero/1.0/legalcode", "https://creativecommons.org/publicdomain/zero/1.0/legalcode":
		return true
	}
	return licenceAddress.MatchString(s)
}

var (
	licenceName = regexp.MustCompile(`^(?:creative commons|cc) ?(by(?: (?:sa|nc sa|nc nd|nc|nd))?) (?:v ?|version )?4(?: ?0)?(?: international)?(?: licen[cs]e)?$`)
	licencePath = regexp.MustCompile(`^(?:https?://)?(?:www\.)?creativecommons\.org/(licenses/(?:by|by-sa|by-nc|by-nc-sa|by-nd|by-nc-nd)/4\.0|publicdomain/zero/1\.0)(?:/.*)?$`)
	zeroName    = regexp.MustCompile(`^(?:creative commons|cc) ?(?:0|zero)(?: (?:v ?)?1(?: ?0)?)?(?: universal)?(?: public domain dedication)?(?: licen[cs]e)?$`)
	spelledOut  = strings.NewReplacer("noncommercial", "nc", "non-commercial", "nc", "sharealike", "sa", "share-alike", "sa",
		"noderivatives", "nd", "no-derivatives", "nd", "noderivs", "nd", "attribution", "by")
	gaps = regexp.MustCompile(`[^a-z0-9]+`)
)

// licenceToStandard proposes the legal code of the licence that the value
// names. A licence of Creative Commons named without its version is not one
// licence, as versions differ; CC0 has only one.
func licenceToStandard(r *record, _ *parameters) Response {
	const term = "dcterms:license"
	value := r.get(term)
	switch {
	case isEmpty(value):
		return notAmended("is empty").of(term, "")
	case isLicence(value):
		return notAmended("is the address of a Creative Commons licence").of(term, value)
	}
	lower := folded(trim(value))
	if len(lower) > 200 {
		return notAmended("does not name one licence").of(term, value)
	}
	if m := licencePath.FindStringSubmatch(lower); m != nil {
		return amendedLicence(m[1], value)
	}
	name := spelledOut.Replace(lower)
	name = trim(gaps.ReplaceAllString(name, " "))
	if zeroName.MatchString(name) {
		return amendedLicence("publicdomain/zero/1.0", value)
	}
	if m := licenceName.FindStringSubmatch(name); m != nil {
		return amendedLicence("licenses/"+gaps.ReplaceAllString(m[1], "-")+"/4.0", value)
	}
	return notAmended("does not name one licence").of(term, value)
}

func amendedLicence(path, value string) Response {
	const term = "dcterms:license"
	return amended("names one licence", Change{term, "https://creativecommons.org/" + path + "/legalcode"}).of(term, value)
}
