package people

import (
	"regexp"
	"sort"
	"strings"
)

var (
	email = regexp.MustCompile(`(?i)(mailto:|e-?mail:?\s*)?[\p{L}\d._%+'-]*[\p{L}\d_%+-]\s?[@＠]\s?[\p{L}\d-]+(\.[\p{L}\d-]+)*\.[a-z]{2,}\b`)
	// An address written to be read by people only.
	spelt = regexp.MustCompile(`(?i)[\p{L}\d._%+-]+\s*[\[({]\s*at\s*[\])}]\s*[\p{L}\d-]+(\s*[\[({]\s*dot\s*[\])}]\s*[\p{L}\d-]+|\sdot\s[\p{L}\d-]+|\.[\p{L}\d-]+)+|[\p{L}\d._%+-]+\sat\s[\p{L}\d-]+(\sdot\s[\p{L}\d-]+)+`)

	keyed = regexp.MustCompile(`(?i)\b(tel|telephone|phone|mob|mobile|ph|fax|ring|call|whatsapp)\b[.:]?\s*(no\.?|number)?[.:]?\s*(\+?\(?\d[\d\s().-]{3,}\d)`)

	postcode = regexp.MustCompile(`(?i)^([A-Z]{1,2})(\d[A-Z\d]?)(\s{0,2})(\d[ABD-HJLNP-UW-Z]{2})\b`)
	house    = regexp.MustCompile(`(\b[Nn]o\.?\s*)?\b(\d{1,3}[A-Za-z]?[-–/])?\d{1,3}[A-Za-z]?,?\s+(\p{Lu}[\p{L}'’.-]*\s+){1,3}(Road|Rd|Street|St|Lane|Ln|Avenue|Ave|Close|Drive|Row|Terrace|Crescent|Cres|Gardens|Gdns|Grove|Place|Court|Cottages|Mews|Way)\b\.?`)
	number   = regexp.MustCompile(`^([Nn]o\.?\s*)?(\d{1,3}[A-Za-z]?[-–/])?\d{1,3}[A-Za-z]?,?\s+`)
)

// areas are the postcode areas of the United Kingdom and the islands (Royal
// Mail; from memory).
var areas = func() map[string]bool {
	m := map[string]bool{}
	for _, a := range strings.Fields(`AB AL B BA BB BD BH BL BN BR BS BT CA CB CF CH CM CO CR CT CV CW DA DD DE DG DH DL DN DT DY
		E EC EH EN EX FK FY G GL GU GY HA HD HG HP HR HS HU HX IG IM IP IV JE KA KT KW KY L LA LD LE LL LN LS LU M ME MK ML N NE NG
		NN NP NR NW OL OX PA PE PH PL PO PR RG RH RM S SA SE SG SK SL SM SN SO SP SR SS ST SW SY TA TD TF TN TQ TR TS TW UB W WA
		WC WD WF WN WR WS WV YO ZE`) {
		m[a] = true
	}
	return m
}()

// Scrub removes from a text what must never go out: e-mail addresses,
// telephone numbers, postcodes, and the number of a house before its street.
// It returns the text without them and what was found, as written. Grid
// references, coordinates, dates, times, counts and checklist numbers stay.
func Scrub(text string) (clean string, found []string) {
	if !mayHold(text) {
		return text, nil
	}
	var cut []span
	add := func(start, end int) {
		for _, c := range cut {
			if start < c.end && c.start < end {
				return
			}
		}
		cut = append(cut, span{start, end})
		found = append(found, strings.TrimSpace(text[start:end]))
	}
	// Each pattern is tried only where a quick look shows what it cannot do
	// without: most texts hold nothing of the kind.
	if strings.ContainsAny(text, "@＠") {
		for _, m := range email.FindAllStringIndex(text, -1) {
			add(m[0], m[1])
		}
	}
	if maySpell(text) {
		for _, m := range spelt.FindAllStringIndex(text, -1) {
			add(m[0], m[1])
		}
	}
	n := countDigits(text)
	if n >= 5 && mayCall(text) {
		for _, m := range keyed.FindAllStringSubmatchIndex(text, -1) {
			if n := countDigits(text[m[6]:m[7]]); n >= 5 && n <= 15 {
				add(m[0], m[7])
			}
		}
	}
	if n >= 8 {
		for _, run := range longRuns(text) {
			for _, t := range telephones(text, run.start, run.end) {
				add(t.start, t.end)
			}
		}
	}
	if n >= 2 {
		for i := range text {
			if end := postcodeAt(text, i); end > 0 {
				add(i, end)
			}
		}
	}
	if n >= 1 && streetWord(text) {
		for _, m := range house.FindAllStringIndex(text, -1) {
			if inTransect(text[:m[0]]) || !isHouse(text[m[0]:m[1]], text[m[1]:]) {
				continue
			}
			end := m[0] + len(number.FindString(text[m[0]:m[1]]))
			if !overlaps(cut, m[0], end) {
				cut = append(cut, span{m[0], end})
				found = append(found, text[m[0]:m[1]])
			}
		}
	}
	if len(cut) == 0 {
		return text, nil
	}
	sort.Sort(&byPlace{cut, found})
	var b strings.Builder
	at := 0
	for _, c := range cut {
		b.WriteString(text[at:c.start])
		at = c.end
	}
	b.WriteString(text[at:])
	return mend(b.String()), found
}

type span struct{ start, end int }

type byPlace struct {
	cut   []span
	found []string
}

func (p *byPlace) Len() int           { return len(p.cut) }
func (p *byPlace) Less(i, j int) bool { return p.cut[i].start < p.cut[j].start }
func (p *byPlace) Swap(i, j int) {
	p.cut[i], p.cut[j] = p.cut[j], p.cut[i]
	p.found[i], p.found[j] = p.found[j], p.found[i]
}

func overlaps(cut []span, start, end int) bool {
	for _, c := range cut {
		if start < c.end && c.start < end {
			return true
		}
	}
	return false
}

// mayHold is a quick look: without a figure and without an @ there is hardly
// anything to remove.
func mayHold(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] == '@' || isDigit(s[i]) {
			return true
		}
	}
	return strings.Contains(s, "＠") || maySpell(s)
}

// maySpell: an address could be written out, with "dot" or a bracketed "at".
func maySpell(s string) bool {
	for i := 0; i+2 < len(s); i++ {
		switch {
		case s[i]|0x20 == 'd' && s[i+1]|0x20 == 'o' && s[i+2]|0x20 == 't',
			s[i]|0x20 == 'a' && s[i+1]|0x20 == 't' && strings.ContainsAny(s[:i], "[({"):
			return true
		}
	}
	return false
}

// longRuns are the stretches of figures, blanks and the signs of telephone
// numbers that hold at least eight figures.
func longRuns(s string) []span {
	var out []span
	for i := 0; i < len(s); {
		if !isDigit(s[i]) {
			i++
			continue
		}
		end, n := i, 0
		for j := i; j < len(s); j++ {
			if isDigit(s[j]) {
				end, n = j+1, n+1
			} else if strings.IndexByte(" \t\n().+/-\xe2\x80\x93", s[j]) < 0 {
				break
			}
		}
		if n >= 8 {
			out = append(out, span{i, end})
		}
		i = end
	}
	return out
}

// mayCall: one of the words that announce a telephone number could be there.
func mayCall(s string) bool {
	for i := 0; i+2 < len(s); i++ {
		if i > 0 && isLetterOrDigit(s[i-1]) {
			continue
		}
		switch string([]byte{s[i] | 0x20, s[i+1] | 0x20, s[i+2] | 0x20}) {
		case "tel", "pho", "mob", "rin", "cal", "wha", "fax":
			return true
		}
		if s[i]|0x20 == 'p' && s[i+1]|0x20 == 'h' {
			return true
		}
	}
	return false
}

// postcodeAt returns where the postcode that starts at i ends, or 0.
func postcodeAt(s string, i int) int {
	letter := func(k int) bool { return k < len(s) && (s[k]|0x20 >= 'a' && s[k]|0x20 <= 'z') }
	if !letter(i) || i > 0 && isLetterOrDigit(s[i-1]) {
		return 0
	}
	k := i + 1
	if letter(k) {
		k++
	}
	if k >= len(s) || !isDigit(s[k]) {
		return 0
	}
	m := postcode.FindStringSubmatchIndex(s[i:])
	if m == nil || !isPostcode(s[i+m[2]:i+m[3]], s[i+m[4]:i+m[5]], s[i+m[6]:i+m[7]], s[i+m[8]:i+m[9]]) {
		return 0
	}
	return i + m[1]
}

var streetWords = [...]string{"Road", "Rd", "Street", "St", "Lane", "Ln", "Ave", "Close", "Drive", "Row", "Terrace", "Cres", "Gardens", "Gdns", "Grove", "Place", "Court", "Cottages", "Mews", "Way"}

func streetWord(s string) bool {
	for _, w := range streetWords {
		if strings.Contains(s, w) {
			return true
		}
	}
	return false
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func countDigits(s string) int {
	n := 0
	for i := 0; i < len(s); i++ {
		if isDigit(s[i]) {
			n++
		}
	}
	return n
}

// isPostcode tells a postcode from what looks like one: a quadrant of a grid
// square (TF49SW), an ordinal (m25 2nd).
func isPostcode(area, district, gap, unit string) bool {
	up := strings.ToUpper(area)
	if !areas[up] {
		return false
	}
	if gap == "" {
		switch strings.ToUpper(unit[1:]) {
		case "NE", "NW", "SE", "SW":
			if len(area) == 2 && len(district) == 1 {
				return false
			}
		}
	}
	switch unit[1:] {
	case "st", "nd", "rd", "th":
		return false
	}
	return area == up || strings.ToLower(unit) == unit
}

var month = regexp.MustCompile(`^\d+\s+(January|February|March|April|May|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\b`)

// isHouse tells the number of a house from a date before a street's name, and
// a street from "close to".
func isHouse(found, after string) bool {
	return !month.MatchString(found) && !(strings.HasSuffix(found, "Close") && (strings.HasPrefix(after, " to ") || strings.HasPrefix(after, " by")))
}

// inTransect: the number before a street's name is that of a trap, a section
// or the like.
func inTransect(before string) bool {
	w := strings.Fields(strings.ToLower(before))
	if len(w) == 0 {
		return false
	}
	switch strings.Trim(w[len(w)-1], ".:,") {
	case "trap", "section", "compartment", "site", "plot", "ride", "transect", "compt", "route", "visit", "square", "point", "station", "pond", "count", "nos", "bus":
		return true
	}
	return false
}

var (
	emptyBrackets = regexp.MustCompile(`\s*[<(\[{]\s*[,;:]*\s*[>)\]}]`)
	blanks        = regexp.MustCompile(`[ \t]{2,}`)
	blankBefore   = regexp.MustCompile(`\s+([,;.])`)
	doubled       = regexp.MustCompile(`([,;])(\s*[,;])+`)
)

// mend closes the gaps that a removal leaves.
func mend(s string) string {
	s = emptyBrackets.ReplaceAllString(s, "")
	s = blankBefore.ReplaceAllString(s, "$1")
	s = doubled.ReplaceAllString(s, "$1")
	s = blanks.ReplaceAllString(s, " ")
	return strings.Trim(s, " \t\n,;:-–|<>")
}

func isLetterOrDigit(c byte) bool {
	return isDigit(c) || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c >= 0x80
}
