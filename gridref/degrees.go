package gridref

import (
	"fmt"
	"math"
	"strings"
)

// parseDegrees reads latitude and longitude.
func parseDegrees(w written) (Reading, error, bool) {
	if scientificAlone.MatchString(w.text) {
		return Reading{}, nil, false
	}
	t := strings.TrimPrefix(w.text, "GEO:")
	if m := wktPoint.FindStringSubmatch(t); m != nil {
		lat, _ := marks(m[2])
		lon, _ := marks(m[1])
		r, err := judge(w, newAngle(lat), newAngle(lon), true)
		return r, err, true
	}
	if m := isoPoint.FindStringSubmatch(strings.TrimSpace(t)); m != nil {
		r, err, found := parseISO6709(w, m)
		return r, err, found
	}
	axes := axisWord.FindAllString(t, -1)
	t = plainDegrees(axisWord.ReplaceAllString(t, " "))
	if strings.Count(t, "°") == 0 {
		t = dotted.ReplaceAllString(t, "$1 $2 $3")
	}
	t = colons.ReplaceAllString(colons.ReplaceAllString(t, "$1 $2"), "$1 $2")
	t, decimalCommas := commas(t)
	ms, ok := marks(t)
	if !ok || !geographic(ms, len(axes)) {
		return Reading{}, nil, false
	}
	if decimalsAtLeast(ms, 3) > 2 {
		r, err := fault(TwoReferences, w.quoted+" holds more than one latitude and longitude. Please give the one that belongs to this record.")
		return r, err, true
	}
	first, second, ok := halve(ms)
	if !ok {
		r, err := halfOrNone(w, ms)
		return r, err, true
	}
	a, b := newAngle(first), newAngle(second)
	fixed := false
	if len(axes) == 2 {
		fixed = true
		if strings.HasPrefix(axes[0], "LO") || strings.HasPrefix(axes[0], "LN") {
			a, b = b, a
		}
	}
	r, err := order(w, a, b, fixed)
	if err == nil && decimalCommas && ambiguousComma(a, b) {
		r = query(r, DecimalComma, fmt.Sprintf("%s has commas that may be decimal commas or separate degrees from minutes. "+
			"They were read as decimal commas, %s; please confirm it.", w.quoted, r.Place))
	}
	return r, err, true
}

// ambiguousComma: two figures behind a comma may be minutes.
func ambiguousComma(a, b angle) bool {
	return a.parts == 1 && b.parts == 1 && a.precision >= 0.009 && b.precision >= 0.009
}

// geographic tells degrees from everything else made of numbers.
func geographic(ms []mark, axes int) bool {
	numbers, degrees, points, signs, largest := 0, 0, 0, 0, 0.0
	var ns, ew int
	for _, m := range ms {
		switch m.kind {
		case '#':
			numbers++
			whole, decimals, _ := strings.Cut(m.number, ".")
			if decimals != "" {
				points++
			}
			if len(whole) > 7 {
				return false
			}
			var v float64
			for i := range len(whole) {
				v = v*10 + float64(whole[i]-'0')
			}
			largest = max(largest, v)
		case 'd', '\'', '"':
			degrees++
		case '-', '+':
			signs++
		case 'H':
			if m.hemi == 'N' || m.hemi == 'S' {
				ns++
			} else {
				ew++
			}
		}
	}
	switch {
	case numbers == 0:
		return false
	case degrees+axes == 0 && ms[0].kind == 'H' && ms[len(ms)-1].kind == 'H':
		// An Irish tetrad: W 14 S.
		return false
	case degrees > 0 || axes > 0:
		return largest <= 1000 || ns+ew > 0
	case ns == 1 && ew == 1:
		return largest <= 360 || packed(ms)
	case ns+ew == 1:
		// A lone letter before figures is the Irish Grid's, unless a point
		// divides them unevenly.
		if ms[0].kind == 'H' && numbers == 1 && len(ms) == 2 {
			whole, decimals, _ := strings.Cut(ms[1].number, ".")
			return len(whole) <= 2 && len(decimals) > len(whole)
		}
		return points > 0 && largest <= 360 && (ms[0].kind != 'H' || numbers == 2)
	case ns+ew == 2:
		return numbers == 2 && points == 2 && largest <= 360
	case ns+ew > 0:
		return false
	}
	if numbers == 2 || numbers == 4 || numbers == 6 {
		small := largest <= 360
		return small && (points > 0 || signs > 0 || numbers > 2 || largest <= 180 && smallPair(ms))
	}
	return false
}

// packed reports whether the numbers have the lengths of latitude and longitude
// run together: DDMM with DDDMM, or DDMMSS with DDDMMSS, where a longitude may
// also lack its third figure but not begin with another than 0. Six and six
// figures are an easting and a northing.
func packed(ms []mark) bool {
	var lat, lon string
	for i, m := range ms {
		if m.kind != '#' {
			continue
		}
		hemi := byte(0)
		if i > 0 && ms[i-1].kind == 'H' && ms[0].kind == 'H' {
			hemi = ms[i-1].hemi
		} else if i+1 < len(ms) && ms[i+1].kind == 'H' {
			hemi = ms[i+1].hemi
		}
		whole, _, _ := strings.Cut(m.number, ".")
		switch hemi {
		case 'N', 'S':
			lat = whole
		case 'E', 'W':
			lon = whole
		default:
			return false
		}
	}
	if len(lat) != 4 && len(lat) != 6 {
		return false
	}
	return len(lon) == len(lat)+1 || len(lon) == len(lat) && lon[0] == '0'
}

// smallPair: two whole numbers of at most three figures, written apart.
func smallPair(ms []mark) bool {
	for _, m := range ms {
		if m.kind == '#' && len(m.number) > 2 {
			return false
		}
	}
	return true
}

// halve finds where the second value begins.
func halve(ms []mark) (a, b []mark, ok bool) {
	cut := -1
	var letters []int
	var numbers []int
	for i, m := range ms {
		switch m.kind {
		case 'H':
			letters = append(letters, i)
		case '#':
			numbers = append(numbers, i)
		}
	}
	switch {
	case len(letters) == 2 && letters[0] == 0:
		cut = letters[1]
	case len(letters) == 2:
		cut = letters[0] + 1
	case len(letters) == 1 && letters[0] > 0 && letters[0] < len(ms)-1 && numbers[0] < letters[0]:
		at := letters[0]
		cut = at + 1
		switch {
		case numbers[len(numbers)-1] < at:
			cut = -1
		case ms[at-1].kind == '|' || ms[at].spaced && ms[at+1].kind == '#' && !ms[at+1].spaced:
			// It stands with the number behind it.
			cut = at
		}
	}
	if len(letters) == 0 && len(numbers) <= 3 && oneDegreeSign(ms) && !strings.Contains(ms[numbers[0]].number, ".") {
		// Degrees and minutes of one value alone.
		return nil, nil, false
	}
	if cut < 0 {
		cut = halfway(ms, numbers)
	}
	if cut <= 0 || cut >= len(ms) {
		return nil, nil, false
	}
	a, b = ms[:cut], ms[cut:]
	return a, b, countNumbers(a) > 0 && countNumbers(b) > 0
}

func oneDegreeSign(ms []mark) bool {
	n := 0
	for _, m := range ms {
		if m.kind == 'd' {
			n++
		}
	}
	return n == 1
}

// halfway cuts before the second degree sign's number, or between equal counts
// of numbers; a sign goes with the number behind it.
func halfway(ms []mark, numbers []int) int {
	cut := -1
	var degrees []int
	for i, m := range ms {
		if m.kind == 'd' && i > 0 {
			degrees = append(degrees, i)
		}
	}
	switch {
	case len(degrees) == 2:
		for i := degrees[1]; i > 0; i-- {
			if ms[i].kind == '#' {
				cut = i
				break
			}
		}
	case len(numbers)%2 == 0 && len(numbers) > 0:
		cut = numbers[len(numbers)/2]
	}
	for cut > 0 && (ms[cut-1].kind == '-' || ms[cut-1].kind == '+' || ms[cut-1].kind == 'H' && cut > 1 && ms[cut-1].spaced) {
		cut--
	}
	return cut
}

func countNumbers(ms []mark) (n int) {
	for _, m := range ms {
		if m.kind == '#' {
			n++
		}
	}
	return n
}

// decimalsAtLeast counts the numbers with so many decimals.
func decimalsAtLeast(ms []mark, least int) (n int) {
	for _, m := range ms {
		if _, decimals, _ := strings.Cut(m.number, "."); len(decimals) >= least {
			n++
		}
	}
	return n
}

func halfOrNone(w written, ms []mark) (Reading, error) {
	if countNumbers(ms) <= 3 {
		return fault(HalfMissing, w.quoted+" is one value, and a place needs two: latitude and longitude. Please add the other.")
	}
	return fault(Unreadable, w.quoted+" has numbers that do not divide into a latitude and a longitude. Please write it such as 52.4075, 0.1735.")
}

// order puts latitude first.
func order(w written, a, b angle, fixed bool) (Reading, error) {
	vertical := func(h byte) bool { return h == 'N' || h == 'S' }
	level := func(h byte) bool { return h == 'E' || h == 'W' }
	switch {
	case a.hemi != 0 && b.hemi != 0 && vertical(a.hemi) == vertical(b.hemi):
		return fault(Direction, fmt.Sprintf("%s has %c and %c: one value must be north or south, the other east or west.", w.quoted, a.hemi, b.hemi))
	case vertical(a.hemi) || level(b.hemi):
		return judge(w, a, b, fixed)
	case level(a.hemi) || vertical(b.hemi):
		if a.hemi != 0 && b.hemi != 0 && !home(Point{Lat: b.value, Lon: a.value}) && home(Point{Lat: a.value, Lon: b.value}) {
			r, err := judge(w, a, b, fixed)
			if err != nil {
				return r, err
			}
			return query(r, Direction, fmt.Sprintf("%s lies outside Britain and Ireland as written, but within them with the two letters exchanged. "+
				"It was read as %s; please confirm it.", w.quoted, r.Place)), nil
		}
		return judge(w, b, a, fixed)
	}
	return judge(w, a, b, fixed)
}

// uncertainty is that of the figures given: the two sides that one in the last
// place spans on the ground, joined (Wieczorek and others 2004, "uncertainty
// due to coordinate precision"). It is at least a metre.
func uncertainty(lat float64, latPrecision, lonPrecision float64) float64 {
	meridian, normal := wgs84.radii(lat * degree)
	up := meridian * latPrecision * degree
	along := normal * math.Cos(lat*degree) * lonPrecision * degree
	return roundUp(max(math.Hypot(up, along), 1))
}
