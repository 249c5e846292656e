package gridref

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

var (
	zoneBefore = regexp.MustCompile(`^(?:UTM\b|UTM(\d)|ZONE\b|UTM ZONE\b)?[ :.]*(?:ZONE)?[ :.]*(\d{1,2}) ?(NORTH|SOUTH|[C-HJ-NP-X])?(?:[ ,;:/]+|$)`)
	zoneAfter  = regexp.MustCompile(`[ ,;:/]+(?:UTM[ :]*)?(?:ZONE[ :]*)?(\d{1,2}) ?(NORTH|SOUTH|[C-HJ-NP-X])?$`)
	datumWords = regexp.MustCompile(`\b(?:WGS ?-?(?:19)?84|UTM|ETRS ?-?(?:19)?89)\b`)
	utmJoined  = regexp.MustCompile(`\bUTM(\d)`)
)

// parseUTM reads an easting and northing with a zone.
func parseUTM(w written) (Reading, error, bool) {
	text := strings.NewReplacer("(", " ", ")", " ", "[", " ", "]", " ").Replace(w.text)
	text = utmJoined.ReplaceAllString(text, "UTM $1")
	text = strings.TrimSpace(spaces.ReplaceAllString(datumWords.ReplaceAllString(text, " "), " "))
	text = strings.Trim(text, " ,;:")
	for _, form := range []*regexp.Regexp{zoneBefore, zoneAfter} {
		at := form.FindStringSubmatchIndex(text)
		if at == nil {
			continue
		}
		m := form.FindStringSubmatch(text)
		zone, _ := strconv.Atoi(m[len(m)-2])
		rest := strings.Trim(text[:at[0]]+" "+text[at[1]:], " ,;:/")
		e, n, _, ok := pairFigures(rest)
		if !ok || e.whole < 6 || n.whole < 5 || e.scientific || n.scientific {
			continue
		}
		r, err := readUTM(w, zone, m[len(m)-1], e, n)
		return r, err, true
	}
	if e, n, _, ok := pairFigures(text); ok && strings.Contains(w.text, "UTM") {
		r, err := fault(ZoneMissing, fmt.Sprintf("%s is a UTM easting and northing without the zone. Please add it, such as 31U.", w.quoted),
			zoneSuggestions(e, n)...)
		return r, err, true
	}
	return Reading{}, nil, false
}

// readUTM takes the letter behind the zone as a band; N and S may also mean
// the hemisphere, and lie in the north as bands both.
func readUTM(w written, zone int, letter string, e, n figure) (Reading, error) {
	if zone < 1 || zone > 60 {
		return fault(OutOfRange, fmt.Sprintf("%s has UTM zone %d; zones run from 1 to 60.", w.quoted, zone))
	}
	if e.value < 100_000 || e.value >= 900_000 || n.value >= falseSouth {
		return fault(OutOfRange, fmt.Sprintf("%s has an easting or northing that UTM does not reach: eastings run from 100000 to 900000, "+
			"northings to 10000000.", w.quoted))
	}
	read := func(south bool) (Reading, float64) {
		p := Plane{UTM(zone, south), e.value, n.value}
		s, _ := p.Square(1)
		lat, _, _ := p.geographic()
		return Reading{Square: s, Pair: p}, lat
	}
	north, lat := read(false)
	if letter == "" || letter == "N" || letter == "NORTH" {
		if lat > 84.5 {
			return fault(OutOfRange, fmt.Sprintf("%s has a northing that lies beyond UTM's limit of 84° north.", w.quoted))
		}
		if letter == "" {
			if g := north.Square.Point().Serving(); g == British || g == Irish || g == ChannelIslands {
				north.Note = w.quoted + " does not say the hemisphere; it was read as north."
				return north, nil
			}
			if s, err := (Plane{British, e.value, n.value}).Square(1); err == nil && s.HasLand() && !strings.Contains(w.text, "UTM") && !strings.Contains(w.text, "ZONE") {
				return fault(PairAmbiguous, fmt.Sprintf("%s is an easting and a northing with a number beside them, which may be a UTM zone or something else. "+
					"Please give the reference alone.", w.quoted), s.String(), north.Square.String())
			}
			return query(north, Direction, fmt.Sprintf("%s does not say the hemisphere. It was read as north, %s; please confirm it.",
				w.quoted, north.Square)), nil
		}
		return north, nil
	}
	south, southLat := read(true)
	if letter == "SOUTH" {
		return south, nil
	}
	low, high, _ := bandLimits(letter[0])
	const slack = 0.5 // degrees by which careless users overrun a band
	if r, l := north, lat; letter[0] >= 'N' && l >= low-slack && l <= high+slack {
		return r, nil
	}
	if letter[0] < 'N' && southLat >= low-slack && southLat <= high+slack {
		return south, nil
	}
	if letter == "S" {
		return query(south, Direction, fmt.Sprintf("%s has S behind the zone, which does not fit the band S; it was read as the southern hemisphere, %s. "+
			"Please confirm it.", w.quoted, south.Square)), nil
	}
	return fault(WrongZone, fmt.Sprintf("%s has a northing that does not lie in band %s. Please check the zone, its letter and the northing.", w.quoted, letter))
}
