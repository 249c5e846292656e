package gridref

import (
	"strings"
)

// compact is a text without its separators: capitals and figures, and for each
// place whether something stood before it.
type compact struct {
	text  string
	split []bool
}

// squeeze drops what may stand between the parts of a reference; ok is false
// where anything else is left.
func squeeze(text string) (c compact, ok bool) {
	gap := false
	for _, r := range text {
		switch {
		case r < 0x80 && (isDigit(byte(r)) || isLetter(byte(r))):
			c.text += string(r)
			c.split = append(c.split, gap)
			gap = false
		case strings.ContainsRune(" .,/-()[]{}:;'\"_=+*<>", r):
			gap = true
		default:
			return compact{}, false
		}
	}
	return c, len(c.text) > 0 && len(c.text) <= 40
}

// trial is one way to take a compact text apart: letters, figures, suffix.
type trial struct {
	square    Square
	corrected int    // characters read as another
	code      string // why it fails; empty where it is a square
	figures   string
	letters   string
	extra     bool // figures beyond the metre
}

// parseLetters reads references that begin with the letters of a 100 km
// square.
func parseLetters(w written) (Reading, error, bool) {
	c, ok := squeeze(w.text)
	if !ok {
		return Reading{}, nil, false
	}
	if strings.IndexFunc(c.text, func(r rune) bool { return r < 'A' }) < 0 {
		return parseLettersAlone(w, c.text)
	}
	var best, failed *trial
	for _, letters := range []int{2, 1} {
		for _, suffix := range []int{0, 1, 2} {
			t, ok := c.try(letters, suffix)
			switch {
			case !ok:
			case t.code != "":
				if failed == nil || t.corrected < failed.corrected {
					failed = &t
				}
			case best == nil || t.better(best):
				best = &t
			}
		}
	}
	if best != nil && (failed == nil || best.corrected <= 2) {
		if best.letters == "E" && len(best.figures) >= 4 {
			r, err := fault(HalfMissing, w.quoted+" lies in E, a 100 km square of open sea on the Irish Grid. If it is an easting alone, please add the northing.")
			return r, err, true
		}
		return best.reading(w), nil, true
	}
	if failed != nil {
		r, err := failed.fault(w, c)
		return r, err, true
	}
	return c.unknownLetters(w)
}

// better prefers what needs no correction, then a square with land.
func (t *trial) better(u *trial) bool {
	if t.square.HasLand() != u.square.HasLand() && t.corrected > 0 == (u.corrected > 0) {
		return t.square.HasLand()
	}
	return t.corrected < u.corrected
}

func parseLettersAlone(w written, text string) (Reading, error, bool) {
	if len(text) > 2 {
		return Reading{}, nil, false
	}
	s, ok := squareOf(text)
	if !ok {
		if len(text) == 2 {
			return compact{text: text}.unknownLetters(w)
		}
		return Reading{}, nil, false
	}
	r := trial{square: s}.reading(w)
	// In small letters, or where it has a meaning of its own, it may be a word
	// or a mark in a table.
	if text == "NA" || text == "X" || strings.ToUpper(w.quoted) != w.quoted && (len(text) == 1 || text == "NO" || text == "SO") {
		r = query(r, OtherWords, w.quoted+" may be a word or a mark. It was read as the 100 km square "+text+"; please confirm it.")
	}
	return r, nil, true
}

// squareOf returns the 100 km square of one or two letters.
func squareOf(letters string) (s Square, ok bool) {
	s.Size = hundredKM
	switch {
	case len(letters) == 1:
		s.Grid = Irish
		s.Easting, s.Northing, ok = irishOrigin(letters[0])
	case letters[0] == 'W':
		s.Grid = ChannelIslands
		s.Easting, s.Northing, ok = channelOrigin(letters[0], letters[1])
	default:
		s.Grid = British
		s.Easting, s.Northing, ok = britishOrigin(letters[0], letters[1])
	}
	return s, ok
}

// try takes the text apart with so many letters before and after the figures.
// ok is false where that makes no sense at all.
func (c compact) try(lead, suffix int) (t trial, ok bool) {
	end := len(c.text) - suffix
	if end <= lead {
		return t, false
	}
	prefix, real := []byte(c.text[:lead]), 0
	for i, b := range prefix {
		if isLetter(b) {
			real++
		}
		as := lookalikeLetter(b)
		if as == b {
			continue
		}
		// Only a figure written together with its neighbour is a letter.
		if as == 0 || lead == 1 || i == 1 && c.split[1] || i == 0 && isDigit(b) && c.split[1] {
			return t, false
		}
		prefix[i] = as
		t.corrected++
	}
	if real == 0 {
		return t, false
	}
	t.letters = string(prefix)
	if t.square, ok = squareOf(t.letters); !ok || t.corrected > 0 && !t.square.HasLand() {
		return t, false
	}
	figures := []byte(c.text[lead:end])
	changed := 0
	for i, b := range figures {
		if isDigit(b) {
			continue
		}
		as := lookalikeFigure(b)
		if as == 0 || c.inWord(lead+i) {
			return t, false
		}
		figures[i] = as
		changed++
	}
	if changed > 0 && 2*changed > len(figures) {
		return t, false
	}
	if lead == 1 && isLetter(c.text[1]) {
		// The second letter is no figure where both name a square with land.
		if s, ok := squareOf(c.text[:2]); ok && s.HasLand() {
			return t, false
		}
	}
	t.corrected += changed
	t.figures = string(figures)
	for _, b := range []byte(c.text[end:]) {
		if !isLetter(b) {
			return t, false
		}
	}
	t.locate(c.split[lead:end], c.text[end:])
	return t, true
}

// inWord reports whether the letter there belongs to letters that stand apart
// from the figures: "site" has no 5 and 1 in it.
func (c compact) inWord(i int) bool {
	start, end := i, i+1
	for start > 0 && !c.split[start] {
		start--
	}
	for end < len(c.text) && !c.split[end] {
		end++
	}
	return end-start > 1 && strings.Trim(c.text[start:end], letters) == ""
}

// locate moves the 100 km square to where the figures say, or sets why not.
func (t *trial) locate(split []bool, suffix string) {
	n := len(t.figures)
	if t.whole(split) {
		return
	}
	switch {
	case !halves(split) && gaps(split) == 1:
		t.code = UnevenFigures
		return
	case n%2 == 1:
		t.code = OddFigures
		return
	case n > 12:
		t.code = TooManyFigures
		return
	case n == 12 && gaps(split) == 1 && split[6] && t.square.Grid == British && t.pairSquare().HasLand():
		// A full easting and northing that lies in another square than the
		// letters say, or a reference to 10 cm.
		t.code = PairAmbiguous
		return
	case !halves(split):
		t.code = UnevenFigures
		return
	}
	half := min(n/2, 5)
	t.extra = n > 10
	plain := t.square
	if !plain.plainFigures(t.figures[:half] + t.figures[n/2:n/2+half]) {
		t.code = OddFigures
		return
	}
	if suffix == "" {
		t.square = plain
		return
	}
	if len(suffix) == 1 && n >= 4 {
		// A tetrad's letter after finer figures says nothing new.
		tetrad, ok := plain.Tetrad()
		if ref := tetrad.String(); !ok || ref[len(ref)-1] != suffix[0] {
			t.code = NoSuchTetrad
		}
		t.square = plain
		return
	}
	t.square = plain
	if !plain.suffix(suffix) {
		t.code = NoSuchTetrad
		return
	}
	t.square = plain
}

// whole reads a full easting and northing behind letters that agree with it.
func (t *trial) whole(split []bool) bool {
	n := len(t.figures)
	if n < 11 || n > 13 {
		return false
	}
	for i := 5; i <= 6; i++ {
		if i < n && split[i] && n-i >= 5 && n-i <= 7 {
			e, n := atoi(t.figures[:i]), atoi(t.figures[i:])
			if t.square.Contains(Plane{t.square.Grid, float64(e), float64(n)}) {
				t.square.Easting, t.square.Northing, t.square.Size = int32(e), int32(n), 1
				return true
			}
		}
	}
	return false
}

// pairSquare takes 12 figures as a full easting and northing.
func (t *trial) pairSquare() Square {
	s, err := Plane{British, float64(atoi(t.figures[:6])), float64(atoi(t.figures[6:]))}.Square(1)
	if err != nil {
		return Square{Grid: British, Easting: -1}
	}
	return s
}

// gaps counts the separators between the figures.
func gaps(split []bool) (n int) {
	for i := 1; i < len(split); i++ {
		if split[i] {
			n++
		}
	}
	return n
}

// halves reports whether separators between the figures leave two equal parts.
func halves(split []bool) bool {
	return gaps(split) == 0 || len(split)%2 == 0 && split[len(split)/2]
}

func atoi(figures string) (v int64) {
	for i := range len(figures) {
		v = v*10 + int64(figures[i]-'0')
	}
	return v
}

// lookalikeLetter returns the letter that a figure, or the unused letter I, is
// easily written for; the character itself where it is a letter; 0 for none.
func lookalikeLetter(b byte) byte {
	switch b {
	case '0':
		return 'O'
	case '1', 'I':
		return 'L'
	case '5':
		return 'S'
	}
	if isLetter(b) {
		return b
	}
	return 0
}

// lookalikeFigure is the reverse.
func lookalikeFigure(b byte) byte {
	switch b {
	case 'O', 'Q':
		return '0'
	case 'I', 'L':
		return '1'
	case 'S':
		return '5'
	}
	return 0
}
