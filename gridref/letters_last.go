package gridref

import (
	"fmt"
	"regexp"
	"slices"
)

var lettersBehind = regexp.MustCompile(`^(\d[\d .,/-]*?)[ ,(\[/-]*([A-Z]{2})[)\]]?$`)

// parseLast reads a reference with its letters behind the figures.
func parseLast(w written) (Reading, error, bool) {
	m := lettersBehind.FindStringSubmatch(w.text)
	if m == nil || slices.Contains([]string{"NE", "NW", "SE", "SW"}, m[2]) {
		return Reading{}, nil, false
	}
	s, ok := squareOf(m[2])
	if !ok || !s.HasLand() {
		return Reading{}, nil, false
	}
	r, err := Parse(m[2] + " " + m[1])
	if err != nil || r.Doubt.Code != "" {
		return Reading{}, nil, false
	}
	return query(r, LettersLast, fmt.Sprintf("%s has the letters of the square behind the figures. It was read as %s; please confirm it.", w.quoted, r.Square)), nil, true
}
