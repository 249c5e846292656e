package gridref

import (
	"fmt"
	"regexp"
	"strings"
)

var scientificAlone = regexp.MustCompile(`^\d(?:\.\d+)?E\+?\d{1,3}$`)

// parsePair reads a full easting and northing without letters or zone, and
// says what is wrong with lone numbers.
func parsePair(w written) (Reading, error, bool) {
	e, n, labelled, ok := pairFigures(w.text)
	if !ok {
		return loneNumber(w)
	}
	if labelled && (e.whole < 3 || n.whole < 3) {
		// Irish squares have the same letters: X 38 N.
		return Reading{}, nil, false
	}
	r, err := readPair(w, e, n, labelled)
	return r, err, true
}

func loneNumber(w written) (Reading, error, bool) {
	if scientificAlone.MatchString(w.text) {
		r, err := fault(Spreadsheet, w.quoted+" is a number in scientific notation, as a spreadsheet shows a long number: it has lost figures, "+
			"and is at most one half of a reference. Please look up the original.")
		return r, err, true
	}
	c, ok := squeeze(w.text)
	if !ok || strings.Trim(c.text, "0123456789") != "" || strings.Count(w.text, ",") > 1 || strings.Count(w.text, ".") > 1 {
		return Reading{}, nil, false
	}
	switch k := len(c.text); {
	case k == 12 && halves(c.split):
		r, err := runTogether(w, c.text[:6], c.text[6:])
		return r, err, true
	case strings.Count(w.text, ".") == 1 && len(strings.TrimLeft(w.text, "-")) > 4 && strings.Index(w.text, ".") <= 4:
		r, err := fault(HalfMissing, w.quoted+" is one number, and a place needs two, latitude and longitude, or a grid reference with letters.")
		return r, err, true
	default:
		if s, ok := parsePlain("O" + strings.TrimPrefix(c.text, "0")); ok && k%2 == 1 && k > 4 && c.text[0] == '0' {
			r, err := fault(Lookalike, fmt.Sprintf("%s is only figures. If its first is the letter O, it is %s on the Irish Grid; otherwise the letters of the 100 km square are missing.",
				w.quoted, s), s.String())
			return r, err, true
		}
		r, err := fault(LettersMissing, fmt.Sprintf("%s is only figures; the letters of the 100 km square are missing, "+
			"such as TL before 4881.", w.quoted))
		return r, err, true
	}
}

// runTogether reads twelve figures.
func runTogether(w written, easting, northing string) (Reading, error) {
	e, _ := newFigure("", easting, "")
	n, _ := newFigure("", northing, "")
	if r := pairOn(British, e, n); r.Square.HasLand() && !r.Square.elsewhere() {
		return query(r, PairUnits, fmt.Sprintf("%s is 12 figures. It was read as the easting %s and the northing %s run together, %s; please confirm it.",
			w.quoted, easting, northing, r.Square)), nil
	}
	return fault(PairUnits, w.quoted+" is 12 figures, which may be an easting and a northing run together, but those would give no place on land.")
}

// The Isles of Scilly are the only land with an easting of five figures below
// Cornwall, and with a northing of four.
const scillyWest, scillyEast = 75_000, 100_000

// readPair decides the grid and the unit of a pair.
func readPair(w written, e, n figure, labelled bool) (Reading, error) {
	switch {
	case e.scientific || n.scientific:
		return readRounded(w, e, n, max(e.precision, n.precision), Spreadsheet,
			"is in scientific notation, as a spreadsheet shows long numbers, and has lost its last figures")
	case e.whole == 5 && n.whole == 5 && e.value < scillyWest && e.decimals == 0 && n.decimals == 0:
		// In metres it would lie in the sea about Scilly.
		return readRounded(w, scaled(e, 10), scaled(n, 10), 10, PairUnits, "seems to count in tens of metres")
	case e.whole >= 5 && n.whole >= 5, e.whole == 4 && n.whole >= 6 && pairOn(British, e, n).Square.HasLand(), // St Kilda and Uist
		e.value > scillyWest && e.value < scillyEast && n.whole == 4 && n.value > 5000:
		return readMetres(w, e, n, labelled)
	case e.whole == 4 && n.whole == 4 && e.decimals+n.decimals == 0:
		return readRounded(w, scaled(e, 100), scaled(n, 100), 100, PairUnits, "seems to count in hundreds of metres")
	case e.whole == 3 && n.whole >= 1 && n.whole <= 4 && (e.decimals+n.decimals > 0 || n.whole >= 3):
		unit, why := 1000*max(e.precision, n.precision), "seems to count in kilometres"
		if unit == 1000 && n.whole == 3 {
			why += ", unless the letters of its 100 km square are missing"
		}
		return readRounded(w, scaled(e, 1000), scaled(n, 1000), unit, PairUnits, why)
	}
	return fault(PairUnits, fmt.Sprintf("%s is two numbers, and neither a full easting and northing in metres nor a latitude and longitude. "+
		"Please look up the reference.", w.quoted))
}

func scaled(f figure, by float64) figure {
	f.value *= by
	return f
}

// readRounded reads a pair that is worth no more than some metres.
func readRounded(w written, e, n figure, unit float64, code, why string) (Reading, error) {
	size := sizes[0]
	for _, s := range []int32{10, 100, 1000, 10_000, hundredKM} {
		if float64(s) <= unit*1.001 {
			size = s
		}
	}
	// Scaling by powers of ten leaves errors in the last bit.
	plane := Plane{British, e.value + 1e-6, n.value + 1e-6}
	const leastOnLand = 5000 // of either, on both grids
	if plane.Easting < leastOnLand || plane.Northing < leastOnLand {
		plane.Grid = NoGrid
	}
	s, err := plane.Square(size)
	if err != nil || !s.HasLand() {
		if plane.Grid == British {
			plane.Grid = Irish
		}
		if irish, err := plane.Square(size); err == nil && irish.HasLand() {
			s = irish
		}
	}
	if !s.Valid() || !s.HasLand() {
		return fault(code, fmt.Sprintf("%s %s, and as an easting and northing it gives no place on land. Please look up the reference.", w.quoted, why))
	}
	return query(Reading{Square: s}, code, fmt.Sprintf("%s %s. It was read as %s; please confirm it.", w.quoted, why, s)), nil
}

// readMetres reads a pair in metres.
func readMetres(w written, e, n figure, labelled bool) (Reading, error) {
	british := pairOn(British, e, n)
	if british.Square.HasLand() && !british.Square.elsewhere() {
		return british.roundness(w), nil
	}
	if irish := pairOn(Irish, e, n); irish.Square.HasLand() {
		return query(irish, MeantIrish, fmt.Sprintf("%s would lie in the sea on the British grid. It was read on the Irish Grid as %s; "+
			"please confirm it.", w.quoted, irish.Square)), nil
	}
	if swapped := pairOn(British, n, e); !labelled && swapped.Square.HasLand() {
		return query(swapped, Swapped, fmt.Sprintf("%s makes sense only with the northing first. It was read as easting %s, northing %s (%s); "+
			"please confirm it.", w.quoted, trimmed(n), trimmed(e), swapped.Square)), nil
	}
	if n.value >= 1_500_000 && n.value < 1e7 && e.value >= 100_000 && e.value < 1e6 {
		return fault(ZoneMissing, fmt.Sprintf("%s looks like a UTM easting and northing without the zone. Please add it, such as 31U.", w.quoted),
			zoneSuggestions(e, n)...)
	}
	if british.Square.Valid() {
		return british.atSea(w), nil
	}
	return fault(OutOfRange, fmt.Sprintf("%s is no easting and northing of the British or the Irish grid: it lies outside both.", w.quoted))
}

// pairOn returns the square metre around a pair, not valid where the grid has
// none there.
func pairOn(g Grid, e, n figure) Reading {
	p := Plane{g, e.value, n.value}
	s, err := p.Square(1)
	if err != nil {
		return Reading{Square: Square{Grid: g, Easting: -1}}
	}
	return Reading{Square: s, Pair: p}
}

// roundness tells about a pair that may be the corner of a larger square.
func (r Reading) roundness(w written) Reading {
	e, n := r.Pair.Easting, r.Pair.Northing
	multiple := func(of float64) bool {
		return e == float64(int64(e/of))*of && n == float64(int64(n/of))*of
	}
	switch {
	case multiple(1000):
		return query(r, PairRounded, fmt.Sprintf("%s is in whole kilometres, so it may be the corner of a larger square. It was read to the metre, as %s; "+
			"if a square was meant, give its reference.", w.quoted, r.Square))
	case multiple(100):
		r.Note = fmt.Sprintf("%s was read to the metre, as %s; if a square of 100 m was meant, give its reference.", w.quoted, r.Square)
	}
	return r
}

func trimmed(f figure) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.3f", f.value), "0"), ".")
}

// zoneSuggestions are the zones of these islands.
func zoneSuggestions(e, n figure) (suggestions []string) {
	for _, zone := range []int{30, 31, 29} {
		if s, err := (Plane{UTM(zone, false), e.value, n.value}).Square(1); err == nil {
			p := s.Point()
			if g := p.Serving(); g == British || g == Irish || g == ChannelIslands {
				suggestions = append(suggestions, fmt.Sprintf("%d%c %s %s", zone, bandOf(p.Lat), trimmed(e), trimmed(n)))
			}
		}
	}
	return suggestions
}
