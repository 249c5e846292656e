package gridref

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Before the letters, and on cards and labels long after, the 100 km square
// was written as the first figures of its full easting and northing: 52 is TL,
// 5 to the east and 2 to the north, and 411 is HU. Common practice, no source.
var (
	numericFirst = regexp.MustCompile(`^(?:[(\[] ?)?(\d1[0-2]|\d\d)( ?[)\]])?( ?[ /:-] ?)?(?:[(\[] ?)?([A-Z]{2})?(?: ?[)\]])?[ /:-]*(\d[\d .]*[A-Z]{0,2})$`)
	lettersFirst = regexp.MustCompile(`^([A-Z]{2})(?: ?[(\[] ?(\d1[0-2]|\d\d) ?[)\]][ /:-]*| ?(\d1[0-2]|\d\d)[/:] ?)(\d[\d .]*[A-Z]{0,2})$`)
	sixOrMore    = regexp.MustCompile(`^\d{6,10}$`)
	twoFigures   = regexp.MustCompile(`^\d\d$`)
	decimalHalf  = regexp.MustCompile(`^\d{1,2}\.`)
)

// parseNumeric reads references whose 100 km square is in figures.
func parseNumeric(w written) (Reading, error, bool) {
	var code, letters, rest string
	bare, open := false, false
	if m := lettersFirst.FindStringSubmatch(w.text); m != nil {
		letters, code, rest = m[1], m[2]+m[3], m[4]
		// TL 52/45 is one square kilometre.
		open = m[3] != ""
		if open && len(rest) < 4 {
			return Reading{}, nil, false
		}
	} else if m := numericFirst.FindStringSubmatch(w.text); m != nil {
		code, letters, rest = m[1], m[4], m[5]
		parted := m[2] != "" || m[3] != ""
		bare = m[2] == "" && letters == ""
		slash := strings.Contains(m[3], "/")
		if !parted && letters == "" || bare && (!slash && !sixOrMore.MatchString(rest) || decimalHalf.MatchString(rest)) {
			return Reading{}, nil, false
		}
	} else {
		return Reading{}, nil, false
	}
	if letters == "" && bare && twoFigures.MatchString(rest) && dayAndMonth(code, rest) {
		r, err := fault(DateOnly, w.quoted+" may be a day and a month, or a square of 10 km in figures. Please give the reference with its letters.")
		return r, err, true
	}
	north, _ := strconv.Atoi(code[1:])
	s := Square{British, int32(code[0]-'0') * hundredKM, int32(north) * hundredKM, hundredKM}
	if !s.HasLand() {
		return Reading{}, nil, false
	}
	r, err := parseAnyhow(s.String() + " " + rest)
	if err != nil || r.Geographic() || r.Doubt.Code != "" {
		return Reading{}, nil, false
	}
	switch {
	case letters == "":
		return query(r, NumericSquare, fmt.Sprintf("%s has figures for the 100 km square: %s is %s, %c00 km east and %s00 km north. "+
			"It was read as %s; please confirm it.", w.quoted, code, s, code[0], code[1:], r.Square)), nil, true
	case letters != s.String():
		other, err := Parse(letters + " " + rest)
		if open || err != nil || !other.Square.HasLand() {
			return Reading{}, nil, false
		}
		r, err := fault(NumericSquare, fmt.Sprintf("%s has figures and letters for the 100 km square that disagree: %s is %s, and not %s. Please look up the reference.",
			w.quoted, code, s, letters), other.Square.String(), r.Square.String())
		return r, err, true
	}
	r.Note = fmt.Sprintf("%s gives the 100 km square in figures and in letters, which agree; it was read as %s.", w.quoted, r.Square)
	return r, nil, true
}

// dayAndMonth reports whether two numbers, in either order, may be a date.
func dayAndMonth(a, b string) bool {
	first, _ := strconv.Atoi(a)
	second, _ := strconv.Atoi(b)
	return len(a) == 2 && min(first, second) >= 1 && min(first, second) <= 12 && max(first, second) <= 31
}
