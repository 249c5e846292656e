package gridref

import (
	"fmt"
	"regexp"
)

var (
	remark     = regexp.MustCompile(`^(.*\d.*?)[ ,;:-]*[(\[]([^()0-9]*[A-Z]{3,}[^()0-9]*)[)\]]$`)
	yearBehind = regexp.MustCompile(`^([A-Z]{1,2} ?(?:\d{10}|\d{8}|\d{6}|\d{4}|\d{2}[A-Z]{0,2}|\d{5} \d{5}|\d{4} \d{4}|\d{3} \d{3}|\d\d \d\d))[ ,;:(-]+((?:19|20)\d\d)\)?$`)
)

// parseRemark reads a place with a remark in brackets behind it.
func parseRemark(w written) (Reading, error, bool) {
	m := remark.FindStringSubmatch(w.text)
	if m == nil {
		return Reading{}, nil, false
	}
	r, err := Parse(m[1])
	if err != nil {
		return Reading{}, nil, false
	}
	return query(r, OtherWords, fmt.Sprintf("%s holds other words beside the place. It was read as %s; please confirm it.", w.quoted, r.name())), nil, true
}

// parseYear reads a reference with a year behind it. Behind four figures
// written together with their letters it may also be the northing.
func parseYear(w written) (Reading, error, bool) {
	m := yearBehind.FindStringSubmatch(w.text)
	if m == nil {
		return Reading{}, nil, false
	}
	one, alsoOne := readPlain(w.text)
	if alsoOne && !one.gluedYear(w.text) {
		return Reading{}, nil, false
	}
	s, ok := parsePlain(m[1])
	if !ok {
		return Reading{}, nil, false
	}
	if alsoOne {
		r, err := fault(StrayDate, fmt.Sprintf("%s may be %s with the year %s, or one reference, %s. Please give the reference alone.", w.quoted, s, m[2], one),
			s.String(), one.String())
		return r, err, true
	}
	return query(Reading{Square: s, Note: s.datumNote()}, StrayDate, fmt.Sprintf("%s has a year behind the reference. It was read as %s; please confirm it.", w.quoted, s)), nil, true
}
