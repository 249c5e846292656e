package people

import (
	"regexp"
	"sort"
	"strings"
)

var (
	email = regexp.MustCompile(`(?i)(mailto:|e-?mail:?\s*)?[\p{L}\d._%+'-]*[\p{L}\d_%+-]\s?[@＠]\s?[\p{L}\d-]+(\.[\p{L}\d-]+)*\.[a-z]{2,}\b`)
	// An address written to be read by people only.
	spelt = regexp.MustCompile(`(?i)[\p{L}\d._%+-]+\s*(\[\s*at\s*\]|\(\s*at\s*\)|\{\s*at\s*\}|\sat\s)\s*[\p{L}\d-]+(\s*(\.|\[\s*dot\s*\]|\(\s*dot\s*\)|\sdot\s)\s*[\p{L}\d-]+)+`)

	keyed   = regexp.MustCompile(`(?i)\b(tel|telephone|phone|mob|mobile|ph|fax|ring|call|whatsapp)\b[.:]?\s*(no\.?|number)?[.:]?\s*(\+?\(?\d[\d\s().-]{3,}\d)`)
	digitsR = regexp.MustCompile(`\+?\s?\(?\+?\d[\d\s().–-]{6,}\d`)

	postcode = regexp.MustCompile(`(?i)\b([A-Z]{1,2})(\d[A-Z\d]?)(\s{0,2})(\d[ABD-HJLNP-UW-Z]{2})\b`)
	house    = regexp.MustCompile(`(\b[Nn]o\.?\s*)?\b\d{1,3}[A-Za-z]?,?\s+(\p{Lu}[\p{L}'’.-]*\s+){1,3}(Road|Rd|Street|St|Lane|Ln|Avenue|Ave|Close|Drive|Row|Terrace|Crescent|Cres|Gardens|Gdns|Grove|Place|Court|Cottages|Mews|Way)\b\.?`)
	number   = regexp.MustCompile(`^([Nn]o\.?\s*)?\d{1,3}[A-Za-z]?,?\s+`)
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
	for _, re := range [...]*regexp.Regexp{email, spelt} {
		for _, m := range re.FindAllStringIndex(text, -1) {
			add(m[0], m[1])
		}
	}
	for _, m := range keyed.FindAllStringSubmatchIndex(text, -1) {
		if n := countDigits(text[m[6]:m[7]]); n >= 5 && n <= 15 {
			add(m[0], m[7])
		}
	}
	for _, m := range digitsR.FindAllStringIndex(text, -1) {
		if start, end, ok := telephone(text, m[0], m[1]); ok {
			add(start, end)
		}
	}
	for _, m := range postcode.FindAllStringSubmatchIndex(text, -1) {
		if isPostcode(text[m[2]:m[3]], text[m[4]:m[5]], text[m[6]:m[7]], text[m[8]:m[9]]) {
			add(m[0], m[1])
		}
	}
	streets := map[int]int{} // where a number of a house ends that is cut
	for _, m := range house.FindAllStringIndex(text, -1) {
		if inTransect(text[:m[0]]) {
			continue
		}
		n := m[0] + len(number.FindString(text[m[0]:m[1]]))
		if len(cut) == 0 || !overlaps(cut, m[0], n) {
			cut = append(cut, span{m[0], n})
			found = append(found, text[m[0]:m[1]])
			streets[n] = m[1]
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
	return strings.Contains(s, "＠") || strings.Contains(strings.ToLower(s), "dot") && spelt.MatchString(s) || strings.Contains(s, "at]") || strings.Contains(s, "(at)")
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

// telephone tells whether a run of figures is a telephone number: 10 or 11
// figures with the leading 0 and an area code in use (01, 02, 03, 05, 07, 08;
// Ofcom's National Telephone Numbering Plan, from memory), or an international
// one of at most 15 figures (ITU-T E.164).
func telephone(s string, start, end int) (int, int, bool) {
	for start < end && (s[start] == ' ' || s[start] == '\n') {
		start++
	}
	if start > 0 && (isLetterOrDigit(s[start-1]) || strings.HasSuffix(s[:start], ".")) || afterSquare(s[:start]) {
		return 0, 0, false
	}
	run := s[start:end]
	if end < len(s) && (isLetterOrDigit(s[end]) || s[end] == '/' || s[end] == ':') || end+1 < len(s) && (s[end] == '.' || s[end] == ',') && isDigit(s[end+1]) {
		// Something follows that a telephone number does not end in: leave
		// the last group and look again.
		cut := strings.LastIndexAny(run, " \n")
		if cut < 7 {
			return 0, 0, false
		}
		run, end = strings.TrimRight(run[:cut], " -.("), start+len(strings.TrimRight(run[:cut], " -.("))
	}
	if strings.Count(run, ".") == 1 && !strings.Contains(run, ". ") {
		return 0, 0, false // a decimal
	}
	groups := strings.FieldsFunc(run, func(r rune) bool { return r < '0' || r > '9' })
	n := countDigits(run)
	international := strings.HasPrefix(strings.TrimLeft(run, "( "), "+")
	switch {
	case len(groups) == 0:
		return 0, 0, false
	case international && start > 0 && isDigit(lastNonSpace(s[:start])):
		return 0, 0, false // a sum
	case international:
		return start, end, n >= 8 && n <= 16 && groups[0][0] != '0'
	case strings.HasPrefix(groups[0], "00"):
		return start, end, n >= 11 && n <= 18 && groups[0] != "000"
	case groups[0][0] == '0' && len(groups[0]) >= 3:
		// Trailing figures may be a count or a year: take no more than fit.
		for k := len(groups); k > 0; k-- {
			if n == 10 || n == 11 {
				return start, start + endOfGroup(run, k), strings.IndexByte("123578", groups[0][1]) >= 0 && shapely(groups[:k])
			}
			n -= len(groups[k-1])
		}
	case len(run) == 10 && len(groups) == 1 && run[0] == '7' || len(groups) == 2 && len(groups[0]) == 4 && groups[0][0] == '7' && len(groups[1]) == 6:
		return start, end, true // a mobile number that lost its nought in a spreadsheet
	case american.MatchString(run):
		return start, end, true
	}
	return 0, 0, false
}

var american = regexp.MustCompile(`^\(?\d{3}\)?[ -]\d{3}-\d{4}$`)

// shapely: no group after the first has fewer than two figures.
func shapely(groups []string) bool {
	for _, g := range groups[1:] {
		if len(g) < 2 {
			return false
		}
	}
	return len(groups) <= 5
}

// endOfGroup returns where the k-th group of figures ends.
func endOfGroup(run string, k int) int {
	for i := 0; i < len(run); i++ {
		if isDigit(run[i]) && (i+1 == len(run) || !isDigit(run[i+1])) {
			if k--; k == 0 {
				return i + 1
			}
		}
	}
	return len(run)
}

func isLetterOrDigit(c byte) bool {
	return isDigit(c) || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c >= 0x80
}

func lastNonSpace(s string) byte {
	s = strings.TrimRight(s, " ")
	if s == "" {
		return 0
	}
	return s[len(s)-1]
}

// afterSquare: the letters of a grid square stand before the figures.
func afterSquare(before string) bool {
	w := strings.TrimRight(before, " :")
	i := strings.LastIndexAny(w, " ,;(") + 1
	w = w[i:]
	return (len(w) == 1 || len(w) == 2) && strings.ToUpper(w) == w && isLetterOrDigit(w[0]) && !isDigit(w[0]) && w[0] < 0x80
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
		return area == up // without a gap only in capitals
	}
	switch strings.ToLower(unit) {
	case "1st", "2nd", "3rd", "4th", "5th", "6th", "7th", "8th", "9th":
		return false
	}
	return area == up || up != area && strings.ToLower(unit) == unit
}

// inTransect: the number before a street's name is that of a trap, a section
// or the like.
func inTransect(before string) bool {
	w := strings.Fields(strings.ToLower(before))
	if len(w) == 0 {
		return false
	}
	switch strings.Trim(w[len(w)-1], ".:,") {
	case "trap", "section", "compartment", "site", "plot", "ride", "transect", "compt", "route", "visit", "square", "point", "station", "pond", "count", "nos":
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
