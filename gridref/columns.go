package gridref

import (
	"fmt"
	"strings"
)

// ParseNumber reads a reference whose figures were kept as numbers, apart from
// their letters, in one column ("TL 812") or two ("TL 45 812"): a spreadsheet
// drops leading zeros there. Where putting one back alone makes the reference
// whole, the reading is a query. Anything else is read as by [Parse]. The error
// is a *Fault.
func ParseNumber(text string) (Reading, error) {
	if len(text) > longestText {
		return tooLong(text)
	}
	fields := strings.Fields(text)
	if len(fields) < 2 || !onlyLetters(fields[0]) {
		return Parse(text)
	}
	letters, figures := fields[0], fields[1:]
	for _, f := range figures {
		if !onlyFigures(f) || len(f) > 9 {
			return Parse(text)
		}
	}
	switch {
	case len(figures) == 1 && len(figures[0])%2 == 1:
		return restored(text, letters+" 0"+figures[0])
	case len(figures) == 2 && len(figures[0]) != len(figures[1]) && len(figures[0]) <= 5 && len(figures[1]) <= 5:
		e, n := padPair(figures[0], figures[1])
		return restored(text, letters+" "+e+" "+n)
	}
	return Parse(text)
}

// restored reads a text with the zeros put back.
func restored(text, with string) (Reading, error) {
	r, err := Parse(with)
	if err != nil {
		return r, err
	}
	return query(r, Spreadsheet, fmt.Sprintf("“%s” seems to have lost a leading zero in a column of numbers. It was read as %s; please confirm it.",
		text, r.Square)), nil
}

// ParseEastingNorthing reads a full easting and northing, in metres, kept in
// two columns. The error is a *Fault.
func ParseEastingNorthing(easting, northing string) (Reading, error) {
	if text := easting + northing; len(text) > longestText {
		return tooLong(text)
	}
	easting, northing = strings.TrimSpace(easting), strings.TrimSpace(northing)
	if easting == "" && northing == "" {
		return fault(Blank, "No grid reference is given.")
	}
	w := clean(easting + " " + northing)
	if easting == "" || northing == "" {
		return fault(HalfMissing, fmt.Sprintf("%s is only one of the easting and the northing. Please add the other.", w.quoted))
	}
	e, okE := oneFigure(easting, 'E')
	n, okN := oneFigure(northing, 'N')
	if !okE || !okN {
		return Parse(easting + " " + northing)
	}
	r, err := readPair(w, e, n, false)
	if err != nil {
		return r, err
	}
	return finish(r, w), nil
}

// oneFigure reads a number of metres with its own label, thousands commas and
// unit.
func oneFigure(text string, axis byte) (figure, bool) {
	t := clean(text).text
	t = strings.Trim(strings.TrimPrefix(strings.TrimPrefix(t, "M"), string(axis)), " :=M"+string(axis))
	if scientificAlone.MatchString(t) {
		return newFigure(t, "", "")
	}
	whole, decimals, _ := strings.Cut(t, ".")
	if head, tail, ok := strings.Cut(whole, ","); ok && len(tail) == 3 && len(head) <= 4 {
		whole = head + tail
	}
	if whole == "" || !onlyFigures(whole) || !onlyFigures(decimals) {
		return figure{}, false
	}
	return newFigure("", whole, decimals)
}

// ParseLatLon reads latitude and longitude kept in two columns, each in any of
// the ways that Parse knows. The error is a *Fault.
func ParseLatLon(latitude, longitude string) (Reading, error) {
	if text := latitude + longitude; len(text) > longestText {
		return tooLong(text)
	}
	latitude, longitude = strings.TrimSpace(latitude), strings.TrimSpace(longitude)
	w := clean(latitude + ", " + longitude)
	switch {
	case latitude == "" && longitude == "":
		return fault(Blank, "No latitude and longitude are given.")
	case latitude == "" || longitude == "":
		w.quoted = "“" + latitude + longitude + "”"
		return fault(HalfMissing, w.quoted+" is only one of latitude and longitude. Please add the other.")
	}
	a, okA := oneAngle(latitude)
	b, okB := oneAngle(longitude)
	if !okA || !okB {
		return fault(Unreadable, w.quoted+" is not a latitude and a longitude that can be read. Please write them such as 52.4075 and 0.1735.")
	}
	r, err := order(w, a, b, false)
	if err != nil {
		return r, err
	}
	return finish(r, w), nil
}

// oneAngle reads one coordinate alone.
func oneAngle(text string) (angle, bool) {
	t := plainDegrees(axisWord.ReplaceAllString(clean(text).text, " "))
	if !strings.Contains(t, "°") {
		t = dotted.ReplaceAllString(t, "$1 $2 $3")
	}
	t = colons.ReplaceAllString(colons.ReplaceAllString(t, "$1 $2"), "$1 $2")
	if !pointDigit.MatchString(t) {
		t = commaDigit.ReplaceAllStringFunc(t, func(s string) string { return s[:1] + "." + s[2:] })
	}
	ms, ok := marks(t)
	if !ok || countNumbers(ms) == 0 || countNumbers(ms) > 3 {
		return angle{}, false
	}
	letters := 0
	for _, m := range ms {
		if m.kind == 'H' {
			letters++
		}
	}
	return newAngle(ms), letters <= 1
}

func onlyLetters(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return !(r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z') }) < 0
}

func onlyFigures(s string) bool { return strings.Trim(s, "0123456789") == "" }
