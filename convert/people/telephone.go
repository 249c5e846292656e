package people

import (
	"regexp"
	"strings"
)

// telephones finds the telephone numbers in a run of figures, blanks and
// signs: 10 or 11 figures with the leading 0 and an area code in use (01, 02,
// 03, 055, 056, 07, 08; Ofcom's National Telephone Numbering Plan, from
// memory), international ones of at most 15 figures (ITU-T E.164, from
// memory), and mobile numbers that lost their nought in a spreadsheet.
func telephones(s string, start, end int) []span {
	groups := groupsOf(s, start, end)
	var out []span
	for i := 0; i < len(groups); {
		n := 0
		switch {
		case plusBefore(s, groups[i].start):
			n = international(s, groups[i:], 8, 16)
		case strings.HasPrefix(s[groups[i].start:groups[i].end], "00"):
			n = international(s, groups[i:], 11, 18)
		default:
			n = national(s, groups[i:])
		}
		if n == 0 || !endsWell(s, groups[i+n-1].end) {
			i++
			continue
		}
		from := groups[i].start
		for from > 0 && strings.IndexByte("+(", s[from-1]) >= 0 {
			from--
		}
		out = append(out, span{from, groups[i+n-1].end})
		i += n
	}
	return out
}

func groupsOf(s string, start, end int) []span {
	var out []span
	for i := start; i < end; i++ {
		if !isDigit(s[i]) {
			continue
		}
		from := i
		for i < end && isDigit(s[i]) {
			i++
		}
		out = append(out, span{from, i})
	}
	return out
}

// plusBefore tells whether a plus sign of a telephone number, not of a sum,
// stands before the figures at i.
func plusBefore(s string, i int) bool {
	before := strings.TrimRight(s[:i], "(")
	if !strings.HasSuffix(before, "+") {
		return false
	}
	before = strings.TrimRight(before[:len(before)-1], " (")
	return before == "" || !isDigit(before[len(before)-1])
}

// international returns how many groups make an international number of least
// to most figures; 0 for none.
func international(s string, groups []span, least, most int) int {
	first := s[groups[0].start:groups[0].end]
	if strings.HasPrefix(first, "000") || least == 8 && first[0] == '0' {
		return 0
	}
	if !startsWell(s, groups[0].start) {
		return 0
	}
	n, fit := 0, 0
	for k, g := range groups {
		w := s[g.start:g.end]
		if k == 1 && least > 8 && strings.HasPrefix(w, "00") || k > 0 && strings.ContainsAny(s[groups[k-1].end:g.start], "+/") {
			break
		}
		if n += len(w); n > most {
			break
		}
		if n >= least {
			fit = k + 1
		}
	}
	return fit
}

// national returns how many groups make a number of this country; 0 for none.
func national(s string, groups []span) int {
	first := s[groups[0].start:groups[0].end]
	switch {
	case first[0] == '7' && lostNought(s, groups):
		return min(len(groups), 2-len(first)/10)
	case american.MatchString(upTo(s, groups, 3)) && startsWell(s, groups[0].start):
		return 3
	case len(first) < 3 || !areaCode(first):
		return 0
	}
	n, fit := 0, 0
	for k, g := range groups {
		between := ""
		if k > 0 {
			between = s[groups[k-1].end:g.start]
		}
		if k > 4 || k > 0 && g.end-g.start < 2 || strings.Contains(between, "+") || strings.Count(between, "/") > 0 && (k > 1 || g.end-g.start < 5) {
			break
		}
		if n += g.end - g.start; n > 11 {
			break
		}
		if n == 11 || n == 10 && fit == 0 {
			fit = k + 1
		}
	}
	if fit == 0 || fit == 2 && s[groups[0].end:groups[1].start] == "." { // a decimal
		return 0
	}
	figures := 0
	for _, g := range groups[:fit] {
		figures += g.end - g.start
	}
	// An easting and northing have an even number of figures.
	if figures == 10 && (afterSquare(s[:groups[0].start]) || !startsWell(s, groups[0].start)) || numbered(s[:groups[0].start]) {
		return 0
	}
	if i := groups[0].start; i > 0 && (isDigit(s[i-1]) || s[i-1] == '.' || s[i-1] == '#') {
		return 0
	}
	return fit
}

// areaCode tells whether a number's first group begins as area codes do.
func areaCode(first string) bool {
	if first[0] != '0' {
		return false
	}
	switch first[1] {
	case '1', '2', '3', '7', '8':
		return true
	case '5':
		return first[2] == '5' || first[2] == '6'
	}
	return false
}

// lostNought tells whether the figures are a mobile number without its 0.
func lostNought(s string, groups []span) bool {
	if !startsWell(s, groups[0].start) || afterSquare(s[:groups[0].start]) || numbered(s[:groups[0].start]) {
		return false
	}
	n := groups[0].end - groups[0].start
	return n == 10 || n == 4 && len(groups) > 1 && groups[1].end-groups[1].start == 6 && s[groups[0].end:groups[1].start] == " "
}

var american = regexp.MustCompile(`^\d{3}\)?[ -]\d{3}-\d{4}$`)

func upTo(s string, groups []span, n int) string {
	if len(groups) < n {
		return ""
	}
	return s[groups[0].start:groups[n-1].end]
}

// startsWell: nothing stands before the figures that makes them part of
// something else.
func startsWell(s string, i int) bool {
	if i == 0 {
		return true
	}
	c := s[i-1]
	return !isDigit(c) && c != '.' && c != '#' && c < 0x80 && !(c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z')
}

// endsWell: nothing follows the figures that makes them part of something else.
func endsWell(s string, i int) bool {
	if i == len(s) {
		return true
	}
	c := s[i]
	if isDigit(c) || c == ':' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' {
		return false
	}
	return !((c == '.' || c == ',') && i+1 < len(s) && isDigit(s[i+1]))
}

// afterSquare: the letters of a grid square, or words that announce a
// reference, stand before the figures.
func afterSquare(before string) bool {
	w := lastWord(before)
	if len(w) == 1 && w[0] >= 'A' && w[0] <= 'Z' {
		return true
	}
	if len(w) == 2 && strings.IndexByte("hnostHNOSTwW", w[0]) >= 0 && strings.ToLower(w[1:]) >= "a" && strings.ToLower(w[1:]) <= "z" {
		switch strings.ToLower(w) {
		case "so", "to", "no", "on", "of", "or", "he", "ok", "nr", "we", "tm", "th":
			return strings.ToUpper(w) == w
		}
		return true
	}
	switch strings.ToLower(w) {
	case "ref", "reference", "gridref", "grid", "gr", "ngr", "os", "square", "easting", "eastings", "e", "n", "osgr", "map":
		return true
	}
	return false
}

// numbered: a word before the figures says what they number.
func numbered(before string) bool {
	switch strings.ToLower(lastWord(before)) {
	case "specimen", "slide", "voucher", "record", "barcode", "id", "accession", "catalogue", "checklist", "isbn", "issn", "species", "sample", "tube", "vial", "tag", "key":
		return true
	}
	return false
}

func lastWord(before string) string {
	w := strings.TrimRight(before, " :.#(")
	return w[strings.LastIndexAny(w, " ,;(\n\t")+1:]
}
