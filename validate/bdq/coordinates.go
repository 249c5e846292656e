package bdq

import (
	"math"
	"math/big"
	"regexp"
	"strings"
)

// angle is a latitude or longitude as written, in decimal degrees.
type angle struct {
	text    string // decimal degrees; a decimal stays as it was written
	degrees float64
	axis    byte // 'y' latitude, 'x' longitude, 0 not said
}

func (a angle) fits(axis byte) bool {
	limit := 90.0
	if axis == 'x' {
		limit = 180
	}
	return (a.axis == 0 || a.axis == axis) && math.Abs(a.degrees) <= limit
}

const hemisphereWords = `north|south|east|west|[nsew]`

var (
	writtenAngle = regexp.MustCompile(`^(?:(?:lat|long?|latitude|longitude)[.:=]?\s*)?` +
		`(` + hemisphereWords + `)?\.?\s*` +
		`([+-])?\s*(\d{1,3}(?:\.\d+)?|\.\d+)\s*(°|º|d(?:eg(?:rees?|s)?)?\.?)?\s*` +
		`(?:(\d{1,2}(?:\.\d+)?)\s*('|′|’|m(?:in(?:utes?|s)?)?\.?)?\s*)?` +
		`(?:(\d{1,2}(?:\.\d+)?)\s*("|″|”|''|s(?:ec(?:onds?|s)?)?\.)?\s*)?` +
		`(` + hemisphereWords + `)?\.?$`)
	figures     = regexp.MustCompile(`\d+(?:\.\d+)?|\.\d+`)
	secondsWord = regexp.MustCompile(`(\d)\s*(?:seconds?|secs?)\b`)
)

// parseAngle reads decimal degrees, degrees and decimal minutes, or degrees,
// minutes and seconds. The sign, the letter or the word of a hemisphere says
// which side of zero it is; figures in degrees and minutes without either are
// not read, as nothing says it.
func parseAngle(s string) (angle, bool) {
	s = strings.ToLower(trim(s))
	if len(s) > 100 {
		return angle{}, false
	}
	s = secondsWord.ReplaceAllString(s, `$1"`)
	m := writtenAngle.FindStringSubmatch(strings.ReplaceAll(s, "−", "-"))
	if m == nil {
		return angle{}, false
	}
	before, sign, whole, minutes, seconds, after := m[1], m[2], m[3], m[5], m[7], m[9]
	stated := 1
	for _, part := range []string{minutes, seconds} {
		if part != "" {
			stated++
		}
	}
	if len(figures.FindAllString(s, -1)) != stated {
		return angle{}, false // digits with nothing between degrees and minutes
	}
	if before != "" && after != "" || seconds != "" && strings.Contains(minutes, ".") ||
		stated > 1 && strings.Contains(whole, ".") {
		return angle{}, false
	}
	hemisphere := before + after
	if hemisphere != "" && sign != "" || hemisphere == "" && sign == "" && stated > 1 {
		return angle{}, false
	}
	var out angle
	negative := sign == "-"
	if hemisphere != "" {
		negative = hemisphere[0] == 's' || hemisphere[0] == 'w'
		out.axis = 'y'
		if hemisphere[0] == 'e' || hemisphere[0] == 'w' {
			out.axis = 'x'
		}
	}
	switch {
	case strings.HasPrefix(s, "lat") && out.axis != 'x':
		out.axis = 'y'
	case strings.HasPrefix(s, "lo") && out.axis != 'y':
		out.axis = 'x'
	case strings.HasPrefix(s, "l"):
		return angle{}, false
	}
	value, _ := new(big.Rat).SetString(whole)
	for i, part := range []string{minutes, seconds} {
		if part == "" {
			continue
		}
		r, _ := new(big.Rat).SetString(part)
		if r.Cmp(big.NewRat(60, 1)) >= 0 {
			return angle{}, false
		}
		value.Add(value, r.Quo(r, big.NewRat([]int64{60, 3600}[i], 1)))
	}
	out.text = whole
	if stated > 1 {
		out.text = strings.TrimSuffix(strings.TrimRight(value.FloatString(7), "0"), ".")
	}
	out.degrees, _ = value.Float64()
	if negative && out.degrees != 0 {
		out.text, out.degrees = "-"+out.text, -out.degrees
	}
	return out, true
}

// position is a pair of angles that can be one place only.
type position struct{ latitude, longitude angle }

func (p position) near(q position) bool {
	return math.Abs(p.latitude.degrees-q.latitude.degrees) < sameDegrees &&
		math.Abs(p.longitude.degrees-q.longitude.degrees) < sameDegrees
}

// sameDegrees is how far two writings of one place may lie apart: a figure
// rounded to three places. Common practice, no source.
const sameDegrees = 0.001

// parseCoordinates reads two angles in one text. Which is the latitude must be
// said by hemispheres, or follow because one of them can only be a longitude.
func parseCoordinates(s string) (position, bool) {
	s = trim(s)
	if len(s) > 200 {
		return position{}, false
	}
	var found []position
	try := func(left, right string) {
		a, okA := parseAngle(left)
		b, okB := parseAngle(right)
		if !okA || !okB {
			return
		}
		straight := a.fits('y') && b.fits('x')
		turned := b.fits('y') && a.fits('x')
		if straight == turned && a.degrees != b.degrees {
			if straight {
				found = append(found, position{}, position{}) // either order
			}
			return
		}
		if straight {
			found = append(found, position{a, b})
		} else if turned {
			found = append(found, position{b, a})
		}
	}
	if left, right, ok := strings.Cut(strings.ReplaceAll(s, ";", ","), ","); ok && !strings.Contains(right, ",") {
		try(left, right)
	} else if !ok {
		for i := range s {
			if s[i] == ' ' || s[i] == '/' {
				try(s[:i], s[i+1:])
			}
		}
	}
	if len(found) != 1 {
		return position{}, false
	}
	return found[0], true
}

var projectedSystem = regexp.MustCompile(`(?i)utm|ups|mgrs|grid|easting|northing|metre|meter|trs`)

// coordinatesFromVerbatim is AMENDMENT_COORDINATES_FROM_VERBATIM. Figures are
// copied, never transformed from one reference system to another.
func coordinatesFromVerbatim(r *record, _ *parameters) Response {
	const (
		latitude    = "dwc:verbatimLatitude"
		longitude   = "dwc:verbatimLongitude"
		coordinates = "dwc:verbatimCoordinates"
		srs         = "dwc:verbatimSRS"
		system      = "dwc:verbatimCoordinateSystem"
	)
	for _, term := range [...]string{"dwc:decimalLatitude", "dwc:decimalLongitude"} {
		if value := r.get(term); !isEmpty(value) {
			return unmet("is stated already").of(term, value)
		}
	}
	if r.empty(coordinates) && (r.empty(latitude) || r.empty(longitude)) {
		return unmet("no pair of verbatim coordinates is stated")
	}
	if text := r.get(system); projectedSystem.MatchString(text) {
		return notAmended("does not state latitude and longitude").of(system, text)
	}
	datum := trim(r.get(srs))
	if !isEmpty(datum) && !epsg().geographic(datum) {
		return notAmended("is not known as a geographic reference system").of(srs, datum)
	}
	var at position
	both := !r.empty(latitude) && !r.empty(longitude)
	if both {
		y, okY := parseAngle(r.get(latitude))
		x, okX := parseAngle(r.get(longitude))
		if !okY || !y.fits('y') {
			return notAmended("cannot be read as a latitude").of(latitude, r.get(latitude))
		}
		if !okX || !x.fits('x') {
			return notAmended("cannot be read as a longitude").of(longitude, r.get(longitude))
		}
		at = position{y, x}
	}
	if text := r.get(coordinates); !isEmpty(text) {
		written, ok := parseCoordinates(text)
		if !ok {
			return notAmended("cannot be read as one latitude and one longitude").of(coordinates, text)
		}
		if both && !written.near(at) || !both && !agrees(r, written, latitude, longitude) {
			return notAmended("does not agree with dwc:verbatimLatitude and dwc:verbatimLongitude").of(coordinates, text)
		}
		if !both {
			at = written
		}
	}
	changes := []Change{{"dwc:decimalLatitude", at.latitude.text}, {"dwc:decimalLongitude", at.longitude.text}}
	if !isEmpty(datum) {
		changes = append(changes, Change{"dwc:geodeticDatum", datum})
	}
	return filledIn("latitude and longitude read from the verbatim coordinates", changes...)
}

// agrees compares a position with the one verbatim angle that is stated.
func agrees(r *record, p position, latitude, longitude string) bool {
	for term, want := range map[string]angle{latitude: p.latitude, longitude: p.longitude} {
		if text := r.get(term); !isEmpty(text) {
			got, ok := parseAngle(text)
			if !ok || math.Abs(got.degrees-want.degrees) >= sameDegrees {
				return false
			}
		}
	}
	return true
}
