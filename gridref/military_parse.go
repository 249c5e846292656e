package gridref

import (
	"fmt"
	"regexp"
	"strconv"
)

var (
	militaryForm = regexp.MustCompile(`^(\d{1,2})([C-HJ-NP-X])([A-HJ-NP-Z])([A-HJ-NP-V])([0-9OIL]*)$`)
	polarForm    = regexp.MustCompile(`^([ABYZ])([A-HJ-NP-Z])([A-HJ-NP-Z])(\d{3,11})$`)
	zoneAlone    = regexp.MustCompile(`^(\d{1,2})[C-HJ-NP-X]$`)
)

// parseMilitary reads MGRS references.
func parseMilitary(w written) (Reading, error, bool) {
	c, ok := squeeze(w.text)
	if !ok {
		return Reading{}, nil, false
	}
	var name military
	var figures string
	if m := militaryForm.FindStringSubmatch(c.text); m != nil {
		zone, _ := strconv.Atoi(m[1])
		name, figures = military{zone, m[2][0], m[3][0], m[4][0]}, m[5]
	} else if m := polarForm.FindStringSubmatch(c.text); m != nil {
		name, figures = military{0, m[1][0], m[2][0], m[3][0]}, m[4]
	} else if zoneAlone.MatchString(c.text) {
		r, err := fault(HalfMissing, w.quoted+" is a UTM zone alone; the easting and northing, or the letters and figures of the square, are missing.")
		return r, err, true
	} else {
		return Reading{}, nil, false
	}
	t := trial{figures: figures, letters: c.text[:len(c.text)-len(figures)]}
	for i, b := range []byte(figures) {
		if !isDigit(b) {
			t.corrected++
			t.figures = t.figures[:i] + string(lookalikeFigure(b)) + t.figures[i+1:]
		}
	}
	if s, ok := name.tetrad(c, figures); ok {
		r, err := fault(LettersLast, fmt.Sprintf("%s may be the tetrad %s with its letters behind the figures, or a square in UTM zone %d. "+
			"Please give the reference.", w.quoted, s, name.zone), s.String(), t.letters)
		return r, err, true
	}
	grid, east, north, ok := name.corner()
	if !ok {
		if name.zone == 0 && len(figures)%2 == 1 {
			// Any three letters and a number.
			return Reading{}, nil, false
		}
		r, err := fault(NoSuchSquare, fmt.Sprintf("%s names a square that does not exist: %s is not a 100 km square of that zone and band.",
			w.quoted, t.letters))
		return r, err, true
	}
	t.square = Square{grid, east, north, hundredKM}
	if figures != "" {
		t.locate(c.split[len(t.letters):], "")
	}
	if t.code != "" {
		r, err := t.fault(w, c)
		return r, err, true
	}
	return t.reading(w), nil, true
}

// tetrad takes letters that stand apart behind a figure, figure and letter, as
// in "48J TL", for those of a British 100 km square. The zones of these islands
// are left alone.
func (name military) tetrad(c compact, figures string) (s Square, ok bool) {
	at := len(c.text) - 2
	if figures != "" || at != 3 || !c.split[at] || name.zone >= 29 && name.zone <= 31 {
		return Square{}, false
	}
	s, ok = readPlain(c.text[at:] + c.text[:at])
	return s, ok && s.Grid == British
}
