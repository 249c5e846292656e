package gridref

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// reading says what a lettered reference was read as.
func (t trial) reading(w written) Reading {
	r := Reading{Square: t.square, Note: t.square.datumNote()}
	ref := t.square.String()
	if t.corrected > 0 {
		r = query(r, Lookalike, fmt.Sprintf("%s has a letter where a figure belongs, or the reverse (O and 0, I, l and 1, S and 5). "+
			"It was read as %s; please confirm it.", w.quoted, ref))
	}
	if t.extra {
		r = query(r, TooManyFigures, fmt.Sprintf("%s has 12 figures, which claims to know the place to 10 cm. "+
			"It was read to the metre, as %s; please confirm it.", w.quoted, ref))
	}
	if len(t.letters) == 1 && strings.HasPrefix(w.text, t.letters+";") {
		r = query(r, Lookalike, fmt.Sprintf("%s has a mark behind its first letter that may stand for a letter l or I. "+
			"It was read as %s; please confirm it.", w.quoted, ref))
	}
	if !t.square.HasLand() || t.square.elsewhere() {
		r = r.atSea(w)
	}
	return r
}

// atSea asks about a square without land.
func (r Reading) atSea(w written) Reading {
	s := r.Square
	letters := Square{s.Grid, s.Easting / hundredKM * hundredKM, s.Northing / hundredKM * hundredKM, hundredKM}.String()
	if s.Grid == British && s.irish() {
		if irish, err := s.Point().Square(Irish, max(s.Size, 1000)); err == nil {
			return query(r, MeantIrish, fmt.Sprintf("%s lies in or beside Ireland, where references have one letter. "+
				"The same place on the Irish Grid is in %s; please check which grid was meant.", w.quoted, irish))
		}
	}
	if s.Grid == British && s.HasLand() {
		return query(r, OpenSea, fmt.Sprintf("%s lies in or beside France. Please check the figures.", w.quoted))
	}
	message := fmt.Sprintf("%s lies in %s, a 100 km square of open sea on the %s grid. Please check the letters.", w.quoted, letters, s.Grid)
	if s.Transformation() == HelmertOSGB36 {
		message += " It is outside the cover of OSTN15, so its latitude and longitude are from the less exact Helmert transformation (10 m)."
	}
	return query(r, OpenSea, message)
}

// irish reports whether the square's centre lies on the Irish Grid's land side
// of the sea between the islands.
func (s Square) irish() bool {
	p := s.Point()
	if !inIreland(p.Lat, p.Lon) {
		return false
	}
	irish, err := p.Square(Irish, hundredKM)
	return err == nil && irish.HasLand()
}

// fault says why a reference with good letters cannot be read.
func (t *trial) fault(w written, c compact) (Reading, error) {
	n := len(t.figures)
	switch t.code {
	case OddFigures:
		message := fmt.Sprintf("%s has %s after the letters; a grid reference has an even number, "+
			"half for the easting and half for the northing. Please look up the missing or extra one.", w.quoted, figureCount(n))
		suggestions := t.withoutDoubles()
		if len(suggestions) > 0 {
			message += " A figure may have been struck twice."
		}
		return fault(OddFigures, message, suggestions...)
	case TooManyFigures:
		return fault(TooManyFigures, fmt.Sprintf("%s has %d figures after the letters; a grid reference has at most 10.", w.quoted, n))
	case PairAmbiguous:
		s := t.pairSquare()
		suggestions := []string{t.letters + t.figures[:5] + t.figures[6:11], s.String()}
		if s.Easting/hundredKM == t.square.Easting/hundredKM || s.Northing/hundredKM == t.square.Northing/hundredKM {
			// Likelier in the next square.
			suggestions = suggestions[1:]
		}
		return fault(PairAmbiguous, fmt.Sprintf("%s has six figures each way: as a full easting and northing they lie in %s, not in %s, "+
			"and as a reference they claim to know the place to 10 cm. Please look up the reference.", w.quoted, s.String()[:2], t.letters), suggestions...)
	case UnevenFigures:
		parts := figureParts(t.figures, c.split[len(c.text)-n-t.suffixLength(c):])
		suggestions, why := unevenSuggestions(t.letters, parts)
		if w.asked {
			suggestions, why = nil, "A question mark may stand for a figure."
		}
		return fault(UnevenFigures, fmt.Sprintf("%s splits its figures as %s; the easting and the northing must have the same number. %s",
			w.quoted, strings.Join(parts, " and "), why), suggestions...)
	}
	return fault(NoSuchTetrad, fmt.Sprintf("%s ends in letters that fit no 2 km or 5 km square there. A tetrad has one letter, A to Z without O, "+
		"and a quadrant NE, NW, SE or SW.", w.quoted), t.square.String())
}

// withoutDoubles returns what an odd count of figures gives with one of two
// equal neighbours left out.
func (t *trial) withoutDoubles() (suggestions []string) {
	for i := 1; i < len(t.figures) && t.square.Grid.lettered(); i++ {
		if t.figures[i] != t.figures[i-1] {
			continue
		}
		s := t.letters + t.figures[:i] + t.figures[i+1:]
		if isReference(s) && !slices.Contains(suggestions, s) {
			suggestions = append(suggestions, s)
		}
	}
	return suggestions
}

// suffixLength counts the letters after the figures.
func (t *trial) suffixLength(c compact) int { return len(c.text) - len(t.letters) - len(t.figures) }

func figureCount(n int) string {
	if n == 1 {
		return "1 figure"
	}
	return strconv.Itoa(n) + " figures"
}

// figureParts cuts the figures where something stood between them.
func figureParts(figures string, split []bool) (parts []string) {
	start := 0
	for i := 1; i < len(figures); i++ {
		if i < len(split) && split[i] {
			parts = append(parts, figures[start:i])
			start = i
		}
	}
	return append(parts, figures[start:])
}

// unevenSuggestions returns what may have been meant by two runs of figures of
// different lengths, likeliest first, and what may have happened.
func unevenSuggestions(letters string, parts []string) (suggestions []string, why string) {
	const lost = "A zero may have been lost."
	if len(parts) != 2 {
		if s := letters + strings.Join(parts, ""); isReference(s) {
			suggestions = append(suggestions, s)
		}
		if s := letters + parts[0] + parts[1]; len(parts[0]) == len(parts[1]) && isReference(s) {
			suggestions = append(suggestions, s)
		}
		return suggestions, "Something else may stand behind the reference, or figures may have been lost."
	}
	first, second := len(parts[0]), len(parts[1])
	if first-second == 1 || second-first == 1 {
		if e, n := padPair(parts[0], parts[1]); len(e) <= 5 {
			suggestions = append(suggestions, letters+e+n) // as a spreadsheet drops it
		}
		if e, n := endPair(parts[0], parts[1]); len(e) <= 5 && !slices.Contains(suggestions, letters+e+n) {
			suggestions = append(suggestions, letters+e+n) // as a hand leaves it out
		}
		return suggestions, lost
	}
	why = "Something else may stand behind the reference, or figures may have been lost."
	if (first+second)%2 == 0 && first+second <= 10 {
		suggestions = append(suggestions, letters+parts[0]+parts[1])
		why = "A space may have slipped, or figures may have been lost."
	}
	if first%2 == 0 && first <= 10 {
		suggestions = append(suggestions, letters+parts[0])
	}
	return suggestions, why
}

func isReference(text string) bool {
	_, ok := readPlain(text)
	return ok
}

// endPair puts zeros behind the shorter of two runs of figures.
func endPair(e, n string) (string, string) {
	width := max(len(e), len(n))
	return e + strings.Repeat("0", width-len(e)), n + strings.Repeat("0", width-len(n))
}

// padPair puts zeros before the shorter of two runs of figures.
func padPair(e, n string) (string, string) {
	width := max(len(e), len(n))
	return strings.Repeat("0", width-len(e)) + e, strings.Repeat("0", width-len(n)) + n
}

// unknownLetters is for a text shaped like a reference whose letters no grid
// has.
func (c compact) unknownLetters(w written) (Reading, error, bool) {
	letters := 0
	for letters < len(c.text) && isLetter(c.text[letters]) {
		letters++
	}
	figures := c.text[letters:]
	if letters == 0 || letters > 2 || strings.ContainsFunc(figures, func(r rune) bool { return r > '9' }) {
		return Reading{}, nil, false
	}
	prefix := c.text[:letters]
	if letters == 2 && prefix[0] == 'I' {
		// I before an Irish letter is a common way to say Ireland.
		if s, ok := squareOf(prefix[1:]); ok && s.HasLand() && (figures == "" || s.plainFigures(figures)) {
			r := Reading{Square: s}
			return query(r, MeantIrish, fmt.Sprintf("%s begins with I, which no British square does. It was read on the Irish Grid as %s; "+
				"please confirm it.", w.quoted, s)), nil, true
		}
	}
	var suggestions []string
	if as := strings.ReplaceAll(prefix, "I", "L"); letters == 2 && as != prefix {
		if s, ok := squareOf(as); ok && s.HasLand() && (figures == "" || s.plainFigures(figures)) {
			suggestions = append(suggestions, s.String())
		}
	}
	if letters == 2 {
		if s, ok := squareOf(string([]byte{prefix[1], prefix[0]})); ok && s.HasLand() && (figures == "" || s.plainFigures(figures)) {
			suggestions = append(suggestions, s.String())
		}
	}
	r, err := fault(NoSuchSquare, fmt.Sprintf("%s begins with %s, and there is no such square: British references begin with H, J, N, O, S or T "+
		"and a second letter, Irish ones with a single letter, and neither uses I.", w.quoted, prefix), suggestions...)
	return r, err, true
}
