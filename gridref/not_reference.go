package gridref

import "regexp"

var (
	nothing   = regexp.MustCompile(`^(?:N[/.]A|NIL|NONE|NULL|UNKNOWN|NOT (?:KNOWN|GIVEN|RECORDED|AVAILABLE)|TBC|TBA)$`)
	postcode  = regexp.MustCompile(`\b[A-Z]{1,2}\d[A-Z\d]? \d[ABD-HJLNP-UW-Z]{2}\b`)
	dateAlone = regexp.MustCompile(`^(?:\d{4}-\d{1,2}-\d{1,2}|[0-3]?\d([./-])[01]?\d([./-])(?:\d{4}|\d\d)|` +
		`[0-3]?\d(?:ST|ND|RD|TH)?[ -]?` + monthName + `(?:[ -]?(?:(?:19|20)\d\d|\d\d))?|` + monthName + `[ -]?(?:(?:19|20)\d\d|\d\d)?)(?: \d\d?:\d\d(?::\d\d)?)?$`)
)

// parseNothing knows the words that say there is no reference.
func parseNothing(w written) (Reading, error, bool) {
	if !nothing.MatchString(w.text) {
		return Reading{}, nil, false
	}
	r, err := fault(Blank, w.quoted+" says that there is no grid reference.")
	return r, err, true
}

// parseDate knows a date, which a spreadsheet also makes of figures that
// look like one.
func parseDate(w written) (Reading, error, bool) {
	if !dateAlone.MatchString(w.text) {
		return Reading{}, nil, false
	}
	r, err := fault(DateOnly, w.quoted+" is a date, not a grid reference; a spreadsheet may have made it of the figures of one. Please look up the original.")
	return r, err, true
}

// parsePostcode knows a British postcode, which begins like a reference
// ("SE15 4NN").
func parsePostcode(w written) (Reading, error, bool) {
	if !postcode.MatchString(w.text) {
		return Reading{}, nil, false
	}
	r, err := fault(Postcode, w.quoted+" has a postcode, which is too large an area, and not a grid reference. Please look up the reference.")
	return r, err, true
}
