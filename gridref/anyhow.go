package gridref

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// parser is one way of reading a text; found is false where the text is not of
// its kind, and the next one is tried.
type parser func(w written) (r Reading, err error, found bool)

func parseAnyhow(text string) (Reading, error) {
	if len(text) > longestText {
		return tooLong(text)
	}
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
	for _, parse := range []parser{parseNothing, parseDate, parseNumeric, parseMilitary, parseDegrees, parseDated, parseUTM, parsePair, parsePostcode, parseSeveral, parseLast, parseDegreesBeside, parseRemark, parseYear, parseLetters, parseBeside} {
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

// longestText is how many bytes a place with all that is written beside it may
// have.
const longestText = 2000

func tooLong(text string) (Reading, error) {
	start := strings.Fields(strings.ToValidUTF8(text[:60], ""))
	return fault(Unreadable, fmt.Sprintf("The text that begins “%s” is too long for a place. Please write the reference alone.", strings.Join(start, " ")))
}

var heightWord = regexp.MustCompile(`alt|h(?:eigh)?t|elev|a\.?s\.?l|a\.?o\.?d|sea|f(?:ee)?t`)

// finish adds what was written around the reference.
func finish(r Reading, w written) Reading {
	if w.osgb36 && r.Geographic() {
		r = r.fromOSGB36(w)
	}
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
	if w.metres != "" {
		what := "it may be a height or the accuracy of the place"
		if heightWord.MatchString(w.metres) {
			what = "it seems to be a height"
		}
		r = query(r, OtherWords, fmt.Sprintf("%s has “%s” behind the place, which was not used: %s. "+
			"It was read as %s; please confirm it, and write ± before an accuracy.", w.quoted, w.metres, what, r.name()))
	}
	if w.approx || w.beside {
		r = r.widened(w)
	}
	return r
}

// fromOSGB36 moves latitude and longitude from the old British datum, which
// lies up to 130 m from WGS84.
func (r Reading) fromOSGB36(w written) Reading {
	asWritten := r.Place
	e, n := britishOnAiry.project(radians(r.Place.Lat, r.Place.Lon))
	moved := Plane{British, e, n}.Point()
	if moved.distance(asWritten) > 200 {
		return query(r, OldDatum, w.quoted+" names OSGB36, the datum of the British National Grid, but lies outside Britain. "+
			"It was read as it stands; please confirm the place and its datum.")
	}
	moved.Uncertainty = roundUp(asWritten.Uncertainty + moved.Uncertainty)
	r.Place, r.osgb36 = moved, true
	return query(r, OldDatum, fmt.Sprintf("%s gives latitude and longitude on OSGB36, the datum of the British National Grid. "+
		"They were moved to WGS84, by %.0f m, and read as %s; please confirm that they are not on WGS84 already.", w.quoted, moved.distance(asWritten), moved))
}

// widened makes the uncertainty of an approximate place three times that of
// its square or its figures, unless it was stated.
func (r Reading) widened(w written) Reading {
	said := "is marked as approximate"
	if w.beside {
		said = "says that the place is near the reference or around it"
	}
	message := fmt.Sprintf("%s %s; it was read as %s", w.quoted, said, r.name())
	if w.stated == 0 {
		r.Stated = roundUp(3 * r.Centre().Uncertainty)
		message += fmt.Sprintf(", and its uncertainty was made three times as large, %s m, to take in its surroundings", strconv.FormatFloat(r.Stated, 'f', -1, 64))
		if r.Geographic() {
			r.Place.Uncertainty = r.Stated
		}
	}
	switch {
	case w.beside:
		return query(r, Beside, message+". Please confirm it, or give the reference of the place itself.")
	case r.Doubt.Code != "":
		r.Doubt.Message += " " + message + "."
	case r.Note != "":
		r.Note += " " + message + "."
	default:
		r.Note = message + "."
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
