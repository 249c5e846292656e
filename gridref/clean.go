package gridref

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// written is a text made ready for the parsers.
type written struct {
	// quoted is what was written, between quotation marks, for messages.
	quoted string
	// text is in capitals, with one plain character for each kind of space,
	// dash, quote and degree sign, and without what has been taken off.
	text   string
	stated float64 // metres of uncertainty, 0 for none
	side   int32   // metres of a square's side named beside it, 0 for none
	metres string  // a length beside the place that may be a height or an accuracy
	approx bool
	beside bool // near the place, or around it
	asked  bool // a question mark
	osgb36 bool // the old British datum is named
}

// plainRune maps what typewriters, word processors and phones make of a
// character to the plain one; 0 leaves it out.
func plainRune(r rune) rune {
	switch r {
	case '‐', '‑', '‒', '–', '—', '―', '−', '﹣', '-', '⁃':
		return '-'
	case '’', '‘', '′', '´', '`', 'ʹ', 'ʼ', '‛', 'ˈ':
		return '\''
	case '“', '”', '″', '„', '‟', 'ʺ', '〃', '˝':
		return '"'
	case 'º', '˚', '∘', '⁰', 'ᵒ', '○', '°':
		return '°'
	case '，', '、', '٫', '‚':
		return ','
	case '．', '·', '∙', '•':
		return '.'
	case '：':
		return ':'
	case '；', '|', '&':
		return ';'
	case '／', '\\', '⁄', '∕':
		return '/'
	case '≈', '∼', '～':
		return '~'
	case '\u200b', '\u200c', '\u200d', '\u200e', '\u200f', '\u2060', '\ufeff', '\u00ad':
		return 0
	}
	switch {
	case r >= '０' && r <= '９':
		return r - '０' + '0'
	case r >= 'Ａ' && r <= 'Ｚ':
		return r - 'Ａ' + 'A'
	case r >= 'ａ' && r <= 'ｚ':
		return r - 'ａ' + 'A'
	case unicode.IsSpace(r) || r == '\u2800' || unicode.IsControl(r):
		return ' '
	}
	return unicode.ToUpper(r)
}

var (
	doubleQuote = regexp.MustCompile(`''`)
	spaces      = regexp.MustCompile(` +`)
	sideWords   = regexp.MustCompile(`[ ,(]*\b(?:(1|2|5|10|100)[ -]?KM|(100|1000) ?M)\b\.?(?: ?SQ(?:UARE|\.)?)?[)]?$`)
	kindWords   = regexp.MustCompile(`\b(?:TETRAD|HECTAD|MONAD|QUADRANT|QUAD|SQUARE|(?:TWO|FOUR|SIX|EIGHT|TEN|[2468]|10)[ -]?FIG(?:URES?|S)?)\b[ .:]*`)
	stated      = regexp.MustCompile(`(?:±|\+ ?/ ?-|\+-)\s*(\d+(?:\.\d+)?)\s*(KM|METRES?|METERS?|MTRS?|M)?\b\.?`)
	bracketed   = regexp.MustCompile(`\(\s*(?:TO |WITHIN )?(\d+(?:\.\d+)?)\s*(KM|METRES?|METERS?|M)\s*\)`)
	accuracy    = regexp.MustCompile(`[ ,;(]*\b(?:(?:ACC(?:URACY)?|PRECISION|PREC|UNCERTAINTY|ERROR|WITHIN|TO|GOOD TO|CORRECT TO|TO THE NEAREST|TO NEAREST)[ .:=]*(?:OF )?` +
		`(\d+(?:\.\d+)?) ?(KM|METRES?|METERS?|MTRS?|M)\b\.?|(\d+(?:\.\d+)?) ?(KM|METRES?|METERS?|MTRS?|M) ?(?:ACC(?:URACY)?|PRECISION|PREC|UNCERTAINTY|ERROR)\b\.?)\)?`)
	lengthBeside = regexp.MustCompile(`^((?:[A-Z]{1,2}[ .]?\d|-?\d{1,3}\.\d+.*\d\.\d).*?)[ ,;(]+` +
		`((?:(?:ALT(?:ITUDE)?|HEIGHT|HT|ELEV(?:ATION)?)[ .:=]*|C(?:A)?[. ]+)?\d{1,4}(?:\.\d+)? ?(?:METRES|METERS|FEET|FT|M)\b\.?(?: ?(?:A\.?S\.?L|A\.?O\.?D|ABOVE SEA LEVEL|ALT(?:ITUDE)?|ELEV(?:ATION)?)\b\.?)?)\)?$`)
	thirdNumber = regexp.MustCompile(`^(-?\d{1,2}\.\d{3,} ?[,;] ?-?\d{1,3}\.\d{3,}) ?[,;] ?(-?\d{1,4}(?:\.\d+)?)$`)
	about       = regexp.MustCompile(`\b(?:APPROX(?:IMATE(?:LY)?|\.)?|CIRCA|ABOUT|AROUND|ROUGHLY|EST(?:IMATED|\.)?)(?:\b|$)\.?`)
	nearby      = regexp.MustCompile(`\b(?:CENTROID(?: OF| AT)?|CENT(?:RE|ERE?D?|RED)(?: (?:ON|OF|AT))?|NEAR(?:BY| TO)?|CLOSE (?:TO|BY)|ADJACENT TO|VICINITY OF)(?:\b|$)\.?`)
	ish         = regexp.MustCompile(`(\d) ?-?ISH\b`)
	sideLead    = regexp.MustCompile(`^(?:1|2|5|10|100)[ -]?KM(?: ?SQ(?:UARE|\.)?)?[ :.]+`)
	// C alone is an Irish square before figures, and a tetrad behind them.
	circa    = regexp.MustCompile(`^CA\b\.? *|^C(?:\. ?| )([A-Z])| CA\.?$`)
	trailing = regexp.MustCompile(`[ ,(]+(?:OSGB ?(?:36)?|BNG|NGR|OS|BRITISH (?:NATIONAL )?GRID|IRISH GRID)\)?$`)
	oldDatum = regexp.MustCompile(`\bOSGB ?-?(?:19)?(?:36)?\b`)
	label    = regexp.MustCompile(`^(?:(?:OS|UK|GB|O\.S\.|BRITISH|IRISH|NATIONAL|NAT|MAP|OSGB|OSI|IRELAND|IRL|IR|IE|ROI|NI)[ :.]+)*` +
		`(?:GRID[ -]?REF(?:ERENCE|S|\.)?|N\.?G\.?R\.?|G\.?R\.?|O\.?S\.?G\.?R\.?|I\.?G\.?R\.?|OSGB(?:36)?|BNG|MGRS|GRID|REF(?:ERENCE)?|LOCATION|COORD(?:INATE)?S?|(?:OS|UK|GB|BRITISH|IRISH|IRELAND|IRL|IR|IE|ROI|NI|AT|GPS))\s*[ :.=\-]\s*`)
)

// clean makes a text ready: plain characters, and labels, "approx" and stated
// uncertainties taken off and kept.
func clean(text string) written {
	if !utf8.ValidString(text) {
		text = fromWindows1252(text)
	}
	w := written{quoted: "“" + strings.Join(strings.Fields(text), " ") + "”"}
	t := strings.Map(func(r rune) rune {
		if r = plainRune(r); r == 0 {
			return -1
		}
		return r
	}, text)
	if t = strings.TrimSpace(t); len(t) > 2 && (t[0] == '"' || t[0] == '\'') && t[len(t)-1] == t[0] {
		t = t[1 : len(t)-1]
	}
	t = doubleQuote.ReplaceAllString(t, `"`)
	if m := stated.FindStringSubmatch(t); m != nil {
		w.stated = metres(m[1], m[2])
		t = strings.Replace(t, m[0], " ", 1)
	} else if m := accuracy.FindStringSubmatch(t); m != nil {
		w.stated = metres(m[1]+m[3], m[2]+m[4])
		t = strings.Replace(t, m[0], " ", 1)
	} else if m := sideWords.FindStringSubmatchIndex(t); m != nil && strings.ContainsAny(t[:1], letters) {
		unit := 1000.0
		if m[2] < 0 {
			unit, m[2], m[3] = 1, m[4], m[5]
		}
		w.side, t = int32(unit*metres(t[m[2]:m[3]], "")), t[:m[0]]
	} else if m := bracketed.FindStringSubmatch(t); m != nil {
		w.stated = metres(m[1], m[2])
		t = strings.Replace(t, m[0], " ", 1)
	} else if m := lengthBeside.FindStringSubmatch(t); m != nil && !strings.ContainsAny(t, "°'\"") && (!isLetter(t[0]) || countDigits(m[1])%2 == 0) {
		t, w.metres = m[1], strings.ToLower(m[2])
	} else if m := thirdNumber.FindStringSubmatch(t); m != nil {
		t, w.metres = m[1], m[2]
	}
	if strings.Contains(t, "?") {
		w.asked = true
		t = strings.ReplaceAll(t, "?", " ")
	}
	t = strings.TrimSpace(spaces.ReplaceAllString(t, " "))
	if rest := kindWords.ReplaceAllString(t, " "); rest != t && strings.ContainsAny(rest, "0123456789") {
		t = strings.TrimSpace(spaces.ReplaceAllString(rest, " "))
	}
	if rest := about.ReplaceAllString(t, " "); rest != t {
		w.approx, t = true, rest
	}
	if rest := nearby.ReplaceAllString(t, " "); rest != t {
		w.beside, t = true, rest
	}
	if rest := nearTo.ReplaceAllString(t, "$1"); rest != t {
		w.beside, t = true, rest
	}
	if rest := ish.ReplaceAllString(t, "$1"); rest != t {
		w.beside, t = true, rest
	}
	if rest := circa.ReplaceAllString(t, "$1"); rest != t {
		w.approx, t = true, rest
	}
	if strings.Contains(t, "~") {
		w.approx, t = true, strings.ReplaceAll(t, "~", " ")
	}
	t = strings.TrimSpace(spaces.ReplaceAllString(t, " "))
	w.osgb36 = oldDatum.MatchString(t)
	t = trailing.ReplaceAllString(t, "")
	if n := len(t); n > 2 && t[0] == '(' && strings.IndexByte(t, ')') == n-1 {
		t = strings.TrimSpace(t[1 : n-1])
	}
	for _, lead := range []*regexp.Regexp{label, sideLead} {
		// NI before figures is rather the square NL than Northern Ireland.
		if rest := lead.ReplaceAllString(t, ""); rest != "" && !(isDigit(rest[0]) && strings.HasPrefix(t, "NI ")) {
			t = rest
		}
	}
	t = besideQuadrant.ReplaceAllStringFunc(t, func(s string) string {
		m := besideQuadrant.FindStringSubmatch(s)
		return m[1] + m[2][:1] + m[3][:1]
	})
	w.text = strings.Trim(t, " .,;:'\"=*_-/#!@")
	// A leading sign belongs to a number, a trailing prime to minutes.
	if strings.HasPrefix(t, "-") && len(t) > 1 && (isDigit(t[1]) || t[1] == '.') {
		w.text = "-" + w.text
	}
	if n := len(t); n > 1 && (t[n-1] == '\'' || t[n-1] == '"') && isDigit(t[n-2]) {
		w.text += t[n-1:]
	}
	return w
}

// fromWindows1252 reads bytes that are no UTF-8 as the older encoding that
// they are likeliest in, for the sake of its degree signs, quotes and spaces.
func fromWindows1252(text string) string {
	const quotesAndDashes = "\u2018\u2019\u201c\u201d\u2022\u2013\u2014" // 0x91 to 0x97
	runes := make([]rune, 0, len(text))
	for _, b := range []byte(text) {
		if b >= 0x91 && b <= 0x97 {
			runes = append(runes, []rune(quotesAndDashes)[b-0x91])
		} else {
			runes = append(runes, rune(b))
		}
	}
	return string(runes)
}

// metres reads a stated uncertainty; without a unit it is in metres.
func metres(figures, unit string) float64 {
	v, err := strconv.ParseFloat(figures, 64)
	if err != nil {
		return 0
	}
	if unit == "KM" {
		v *= 1000
	}
	return v
}

// nearTo is "nr" in front of a reference; NR is a square too.
var nearTo = regexp.MustCompile(`^NR[. ]+([A-Z]{2}[ .]?\d)`)

// besideQuadrant is a quadrant in words behind a hectad.
var besideQuadrant = regexp.MustCompile(`^([A-Z]{1,2} ?\d ?\d)[ ,(/]+(NORTH|SOUTH)[ -]?(EAST|WEST)\)?$`)

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"

// countDigits tells a whole reference from half of one: "TL 8 5 M" is a tetrad.
func countDigits(s string) (n int) {
	for i := range len(s) {
		if isDigit(s[i]) {
			n++
		}
	}
	return n
}

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c >= 'A' && c <= 'Z' }
