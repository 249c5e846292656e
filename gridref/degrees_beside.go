package gridref

import (
	"fmt"
	"regexp"
	"strings"
)

var decimalPair = regexp.MustCompile(`(?:^|[^A-Z0-9.,-])((?:LAT[ :=.]*)?-?\d{1,2}\.\d{3,}°? ?[NS]?[ ,;/]+(?:LON(?:G)?[ :=.]*)?-?\d{1,3}\.\d{3,}(?:°? ?[EW])?)(?:[^A-Z0-9.]|$)`)

// parseDegreesBeside finds decimal latitude and longitude among other writing,
// or beside a reference to the same place.
func parseDegreesBeside(w written) (Reading, error, bool) {
	at := decimalPair.FindStringSubmatchIndex(w.text)
	if at == nil {
		return Reading{}, nil, false
	}
	before, behind := w.text[:at[2]], w.text[at[3]:]
	if n := len(strings.Trim(before, " .:")); n == 1 || n == 2 {
		// Kilometres behind the letters of a square.
		return Reading{}, nil, false
	}
	if decimalPair.MatchString(behind) {
		r, err := fault(TwoReferences, w.quoted+" holds more than one latitude and longitude. Please give the one that belongs to this record.")
		return r, err, true
	}
	if !strings.ContainsAny(before+behind, letters) {
		return Reading{}, nil, false
	}
	r, err := Parse(w.text[at[2]:at[3]])
	if err != nil || !r.Geographic() || !home(r.Place) {
		return Reading{}, nil, false
	}
	w.text = before + " ; " + behind
	if square, err, found := parseBeside(w); found {
		if err != nil {
			return square, err, true
		}
		c := square.Square.Point()
		if apart := c.distance(r.Place); apart > c.Uncertainty+r.Place.Uncertainty {
			r, err := fault(TwoReferences, fmt.Sprintf("%s holds a reference, %s, and latitude and longitude, %s, which lie %.0f m apart. "+
				"Please give the one that belongs to this record.", w.quoted, square.Square, r.Place, apart), square.Square.String(), r.Place.String())
			return r, err, true
		}
		return query(square, TwoReferences, fmt.Sprintf("%s holds a reference, and latitude and longitude in agreement with it. It was read as %s; please confirm it.",
			w.quoted, square.Square)), nil, true
	}
	return query(r, OtherWords, fmt.Sprintf("%s holds other words beside the latitude and longitude. It was read as %s; please confirm it.", w.quoted, r.Place)), nil, true
}
