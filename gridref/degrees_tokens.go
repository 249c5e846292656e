package gridref

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// angle is one coordinate as written.
type angle struct {
	value     float64 // degrees, the sign applied
	precision float64 // degrees that one in the last place is worth
	hemi      byte    // N, S, E, W, or 0
	signed    bool    // a plus or minus was written
	negative  bool    // it was a minus
	dashed    bool    // the minus may be a dash between two values
	broken    string  // why it cannot be, for a message
	parts     int     // 1 degrees, 2 with minutes, 3 with seconds
}

// mark is a token of a text with degrees in it.
type mark struct {
	kind   byte // '#' number, '°', '\'', '"', 'H' hemisphere, '-', '+', '|' a separator
	number string
	hemi   byte
	spaced bool // a space or comma stood before it
	dash   bool // a minus that stands apart from the number behind it, or close to one before
}

var (
	// Words for the parts of an angle, behind a number.
	degreeWord = regexp.MustCompile(`(\d) ?DEG(?:REES?|S)?(?:\.|\b|(\d))`)
	degreeD    = regexp.MustCompile(`(\d) ?D\b`)
	// What is typed for want of a degree sign.
	degreeTyped = regexp.MustCompile(`(\d) ?[O*^]`)
	minuteWord  = regexp.MustCompile(`(\d) ?(?:MIN(?:UTE)?S?\b\.?|M\b|M(\d))`)
	secondWord  = regexp.MustCompile(`(\d) ?(?:SEC(?:OND)?S?\b\.?)`)
	dmsLetters  = regexp.MustCompile(`(\d{1,3}) ?D ?(\d{1,2}(?:\.\d+)?) ?M(?: ?(\d{1,2}(?:\.\d+)?) ?S)?`)
	axisWord    = regexp.MustCompile(`\b(?:LAT(?:ITUDE)?|N LAT|LON(?:GITUDE|G)?|LNG)\b[ .:=]*`)
	compass     = regexp.MustCompile(`(\b|\d)(?:(N)ORTH|(S)OUTH|(E)AST|(W)EST)\b`)
	datumNote   = regexp.MustCompile(`[(, ]*\bWGS ?-?(?:19)?84\b[) :,]*`)
	wktPoint    = regexp.MustCompile(`^(?:SRID=\d+;)?POINT ?\( ?(-?\d+(?:\.\d+)?)[ ]+(-?\d+(?:\.\d+)?) ?\)?$`)
	isoPoint    = regexp.MustCompile(`^([+-])(\d{2,6})(\.\d+)?([+-])(\d{3,7})(\.\d+)?(?:CRSWGS_84)?/?$`)
	dotted      = regexp.MustCompile(`(\d{1,3})[.:](\d{1,2})[.:](\d{1,2}(?:\.\d+)?)`)
	colons      = regexp.MustCompile(`(\d):(\d)`)
	commaDigit  = regexp.MustCompile(`\d,\d`)
	fourCommas  = regexp.MustCompile(`^(-?\d{1,3}),(\d{2,}),(-?\d{1,3}),(\d{2,})$`)
	pointDigit  = regexp.MustCompile(`\d\.\d`)
)

// plainDegrees puts signs and single letters in the place of words.
func plainDegrees(t string) string {
	t = datumNote.ReplaceAllString(t, " ")
	t = compass.ReplaceAllString(t, "$1$2$3$4$5")
	t = dmsLetters.ReplaceAllStringFunc(t, func(s string) string {
		m := dmsLetters.FindStringSubmatch(s)
		if m[3] == "" {
			return m[1] + "°" + m[2] + "'"
		}
		return m[1] + "°" + m[2] + "'" + m[3] + `"`
	})
	t = strings.NewReplacer("(", " ", ")", " ", "[", " ", "]", " ", "{", " ", "}", " ").Replace(t)
	if strings.ContainsAny(t, "'\"") {
		t = degreeTyped.ReplaceAllString(t, "$1°")
	}
	t = degreeWord.ReplaceAllString(t, "$1°$2")
	if strings.Count(t, "D") > 1 {
		// A single D may be a tetrad's.
		t = degreeD.ReplaceAllString(t, "$1°")
	}
	if strings.Contains(t, "°") {
		// Without degrees an M is metres.
		t = minuteWord.ReplaceAllString(t, "$1'$2")
	}
	t = secondWord.ReplaceAllString(t, `$1"`)
	return strings.TrimSpace(t)
}

// commas turns decimal commas into points and returns whether it did.
func commas(t string) (string, bool) {
	if m := fourCommas.FindStringSubmatch(t); m != nil {
		return m[1] + "." + m[2] + " " + m[3] + "." + m[4], true
	}
	if pointDigit.MatchString(t) {
		return t, false
	}
	n := len(commaDigit.FindAllString(t, -1))
	numbers := len(numberRun.FindAllString(t, -1))
	// One comma between equal halves separates the two values.
	if n == 0 || n == 1 && numbers%2 == 0 && balanced(t) {
		return t, false
	}
	return commaDigit.ReplaceAllStringFunc(t, func(s string) string { return s[:1] + "." + s[2:] }), true
}

var numberRun = regexp.MustCompile(`\d+`)

// balanced reports whether the comma between two figures has as many numbers
// before as behind it.
func balanced(t string) bool {
	at := commaDigit.FindStringIndex(t)
	return len(numberRun.FindAllString(t[:at[0]+1], -1)) == len(numberRun.FindAllString(t[at[1]-1:], -1))
}

// marks cuts a text into tokens; ok is false where it holds anything else than
// an angle may.
func marks(t string) (ms []mark, ok bool) {
	spaced := false
	for i := 0; i < len(t); {
		c := t[i]
		m := mark{kind: c, spaced: spaced}
		spaced = false
		switch {
		case isDigit(c) || c == '.' && i+1 < len(t) && isDigit(t[i+1]) && (i == 0 || !isLetter(t[i-1])):
			j := i
			for j < len(t) && isDigit(t[j]) {
				j++
			}
			if j+1 < len(t) && t[j] == '.' && isDigit(t[j+1]) {
				j++
				for j < len(t) && isDigit(t[j]) {
					j++
				}
			}
			m.kind, m.number = '#', t[i:j]
			i = j
		case strings.HasPrefix(t[i:], "°"):
			m.kind = 'd'
			i += len("°")
		case c == 'N' || c == 'S' || c == 'E' || c == 'W':
			if i+1 < len(t) && isLetter(t[i+1]) {
				return nil, false
			}
			m.kind, m.hemi = 'H', c
			i++
		case c == '-':
			m.dash = i > 0 && (isDigit(t[i-1]) || i+1 < len(t) && t[i+1] == ' ' && t[i-1] == ' ')
			i++
		case c == '\'' || c == '"' || c == '+':
			i++
		case c == ' ' || c == '.':
			spaced = true
			i++
			continue
		case c == ',' || c == ';' || c == '/' || c == ':' || c == '=':
			m.kind = '|'
			spaced = true
			i++
		default:
			return nil, false
		}
		ms = append(ms, m)
	}
	return ms, len(ms) > 0
}

// newAngle puts one coordinate together.
func newAngle(ms []mark) (a angle) {
	var numbers []string
	for _, m := range ms {
		switch m.kind {
		case '-':
			if len(numbers) == 0 {
				a.negative, a.signed, a.dashed = true, true, m.dash
			}
		case '+':
			a.signed = true
		case 'H':
			a.hemi = m.hemi
		case '#':
			numbers = append(numbers, m.number)
		}
	}
	numbers = unpackAngle(numbers, a.hemi)
	a.parts = len(numbers)
	if a.parts == 0 || a.parts > 3 {
		a.broken = "has a part that is not degrees, minutes and seconds"
		return a
	}
	unit := 1.0
	for i, text := range numbers {
		v, err := strconv.ParseFloat(text, 64)
		switch {
		case err != nil:
			a.broken = "has a number that cannot be read"
		case i > 0 && v >= 60:
			a.broken = "has " + text + " minutes or seconds; they run from 0 to 59"
		case i < a.parts-1 && strings.Contains(text, "."):
			a.broken = "has a decimal point in a part that is followed by a smaller one"
		}
		a.value += v * unit
		_, decimals, _ := strings.Cut(text, ".")
		a.precision = unit * math.Pow10(-len(decimals))
		unit /= 60
	}
	if a.negative || a.hemi == 'S' || a.hemi == 'W' {
		a.value = -a.value
	}
	return a
}

// unpackAngle cuts figures run together, DDMM, DDMMSS, DDDMM and DDDMMSS.
func unpackAngle(numbers []string, hemi byte) []string {
	if len(numbers) != 1 || hemi == 0 {
		return numbers
	}
	whole, _, _ := strings.Cut(numbers[0], ".")
	if len(whole) < 4 || len(whole) > 7 {
		return numbers
	}
	width := len(whole) % 2
	if hemi == 'E' || hemi == 'W' {
		width = 2 + width
	} else {
		width = 2
	}
	if len(whole) == 4 {
		width = 2
	}
	text := numbers[0]
	if len(whole)-width <= 2 {
		return []string{text[:width], text[width:]}
	}
	return []string{text[:width], text[width : width+2], text[width+2:]}
}
