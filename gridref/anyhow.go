package gridref

import (
	"fmt"
	"strings"
)

// parser is one way of reading a text; found is false where the text is not of
// its kind, and the next one is tried.
type parser func(w written) (r Reading, err error, found bool)

func parseAnyhow(text string) (Reading, error) {
	w := clean(text)
	if strings.TrimSpace(w.text) == "" {
		if w.quoted == "“”" {
			return fault(Blank, "No grid reference is given.")
		}
		return fault(Unreadable, w.quoted+" has no grid reference in it.")
	}
	// The order matters only where a text could be of two kinds: degrees before
	// letters ("N 52 18 E 0 7" begins like the Irish Grid), zones before both
	// ("31DEG" is a square).
	for _, parse := range []parser{parseNothing, parseDate, parseMilitary, parseDegrees, parseDated, parseUTM, parsePair, parsePostcode, parseLetters, parseBeside} {
		if r, err, found := parse(w); found {
			if err != nil {
				return r, err
			}
			return finish(r, w), nil
		}
	}
	return fault(Unreadable, w.quoted+" is not a grid reference or a latitude and longitude that can be read. "+
		"Write a reference such as TL4881, or latitude and longitude such as 52.4075, 0.1735.")
}

// finish adds what was written around the reference.
func finish(r Reading, w written) Reading {
	if w.stated > 0 {
		r.Stated = w.stated
		if r.Geographic() {
			r.Place.Uncertainty = roundUp(w.stated)
		}
	}
	if w.side > 0 && !r.Geographic() && r.Square.Size != w.side {
		r = query(r, OtherWords, fmt.Sprintf("%s names a square of %s, but its figures give one of %s. It was read as %s; please confirm it.",
			w.quoted, sideOf(Square{Size: w.side}), sideOf(r.Square), r.name()))
	}
	if w.asked {
		r = query(r, Doubted, w.quoted+" has a question mark beside it. It was read as "+r.name()+"; please confirm it.")
	}
	if w.approx && r.Doubt.Code == "" && r.Note == "" {
		r.Note = w.quoted + " is marked as approximate; it was read as " + r.name() + "."
	}
	return r
}

// name returns the reading as a message names it.
func (r Reading) name() string {
	if r.Geographic() {
		return r.Place.String()
	}
	return r.Square.String()
}

// sideOf returns a square's side in words.
func sideOf(s Square) string {
	if s.Size >= 1000 {
		return fmt.Sprintf("%d km", s.Size/1000)
	}
	return fmt.Sprintf("%d m", s.Size)
}
