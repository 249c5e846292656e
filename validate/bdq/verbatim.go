package bdq

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"fieldfare/dwc/calendar"
)

// interpretDate reads a date as people write it and gives it as ISO 8601, in
// the precision in which it is stated, where it can mean one date or one
// interval only. "03/04/2020" and years of two digits can mean more than one.
// dated says whether the text has anything of a date about it.
func interpretDate(text string) (iso string, ok, dated bool) {
	s := strings.Join(strings.Fields(strings.TrimFunc(text, func(r rune) bool { return !prints(r) })), " ")
	if len(s) > 100 {
		return "", false, hasDatePart(s)
	}
	if _, valid := parseISO(s); valid {
		return s, true, true
	}
	if eastAsian.MatchString(s) {
		s = strings.TrimRight(eastAsian.ReplaceAllString(s, "$1-$2-$3"), "-")
	}
	if strings.TrimRight(s, "/-–—") != s { // an end that is not stated
		return "", false, hasDatePart(s)
	}
	s = afterDigit.ReplaceAllString(beforeDigit.ReplaceAllString(s, "$1 $2"), "$1 $2")
	date, clock := s, ""
	if m := clockTail.FindStringSubmatch(s); m != nil {
		date, clock = m[1], "T"+m[2]
	}
	if iso, ok = singleDate(date); ok && clock != "" {
		iso += clock
	}
	if !ok && clock == "" {
		iso, ok = dateRange(s)
	}
	if ok {
		_, ok = parseISO(iso)
	}
	if !ok {
		return "", false, hasDatePart(s)
	}
	return iso, true, true
}

var (
	eastAsian = regexp.MustCompile(`^(\d{4})\s*年\s*(?:(\d{1,2})\s*月\s*(?:(\d{1,2})\s*日)?)?$`)
	clockTail = regexp.MustCompile(`^(.*\d),?[ T](\d{2}:\d{2}(?::\d{2})?(?:Z|[+-]\d{2}:?\d{2})?)$`)
	// 5May1999
	afterDigit  = regexp.MustCompile(`(\d)(\pL{3,})`)
	beforeDigit = regexp.MustCompile(`(\pL{3,})(\d)`)
	decade      = regexp.MustCompile(`^(\d{3})0'?s$`)
)

// hasDatePart says whether the text has a digit or the name of a month in it.
func hasDatePart(s string) bool {
	if strings.IndexFunc(s, unicode.IsDigit) >= 0 {
		return true
	}
	for _, word := range words(s) {
		if _, ok := namedMonth(word); ok {
			return true
		}
	}
	return false
}

// parts are what one date states; 0 where it does not.
type parts struct{ year, month, day int }

func (p parts) iso() string {
	switch {
	case p.month == 0:
		return fmt.Sprintf("%04d", p.year)
	case p.day == 0:
		return fmt.Sprintf("%04d-%02d", p.year, p.month)
	}
	return fmt.Sprintf("%04d-%02d-%02d", p.year, p.month, p.day)
}

func (p parts) possible() bool {
	return p.month <= 12 && (p.day == 0 || p.month > 0 && p.day <= calendar.DaysIn(max(p.year, 4), p.month))
}

// complete takes from another date what this one leaves out.
func (p *parts) complete(from parts) {
	if p.year == 0 {
		p.year = from.year
	}
	if p.month == 0 && p.day > 0 {
		p.month = from.month
	}
}

func singleDate(s string) (string, bool) {
	if m := decade.FindStringSubmatch(s); m != nil && m[1][2] != '0' {
		return m[1] + "0/" + m[1] + "9", true
	}
	p, ok := dateParts(s)
	if !ok || p.year == 0 {
		return "", false
	}
	return p.iso(), true
}

// kinds of token in a written date.
const (
	yearToken    = 'Y' // four digits
	numberToken  = 'N' // one or two digits
	monthToken   = 'M' // a name or a Roman numeral
	unknownToken = 'U' // a placeholder: 00, XX, ??, --
)

// dateParts reads the tokens of one date, whole or in part.
func dateParts(s string) (parts, bool) {
	kinds, values, ok := dateTokens(s)
	if !ok {
		return parts{}, false
	}
	at := func(i int) int { return values[i] }
	var p parts
	switch kinds {
	case "Y", "UUY", "YUU", "YU", "UY":
		p.year = values[strings.IndexByte(kinds, yearToken)]
	case "YN", "YNU":
		p = parts{at(0), at(1), 0}
	case "NY":
		p = parts{at(1), at(0), 0}
	case "UNY":
		p = parts{at(2), at(1), 0}
	case "NUY":
		p.year = at(2)
	case "MY", "MUY":
		p = parts{at(len(kinds) - 1), at(0), 0}
	case "UMY":
		p = parts{at(2), at(1), 0}
	case "YM", "YMU":
		p = parts{at(0), at(1), 0}
	case "NMY":
		p = parts{at(2), at(1), at(0)}
	case "MNY":
		p = parts{at(2), at(0), at(1)}
	case "YMN":
		p = parts{at(0), at(1), at(2)}
	case "YNM":
		p = parts{at(0), at(2), at(1)}
	case "YNN":
		// After the year comes the month, unless it can only be the day.
		p = parts{at(0), at(1), at(2)}
		if at(1) > 12 {
			p.month, p.day = at(2), at(1)
		}
	case "NNY":
		if at(0) <= 12 && at(1) <= 12 && at(0) != at(1) {
			return parts{}, false // the order of day and month differs between countries
		}
		p = parts{at(2), at(1), at(0)}
		if at(1) > 12 {
			p.month, p.day = at(0), at(1)
		}
	case "M":
		p.month = at(0)
	case "N":
		p.day = at(0)
		return p, p.day <= 31
	case "NM":
		p.month, p.day = at(1), at(0)
	case "MN":
		p.month, p.day = at(0), at(1)
	default:
		return parts{}, false
	}
	return p, p.possible()
}

func dateTokens(s string) (kinds string, values []int, ok bool) {
	tokens := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,./-_–—", r) })
	if len(tokens) > 8 {
		return "", nil, false
	}
	named := 0
	for _, token := range tokens {
		if _, ok := namedMonth(token); ok {
			named++
		}
	}
	for _, token := range tokens {
		kind, value, drop, ok := dateToken(token, named > 0)
		if !ok {
			return "", nil, false
		}
		if !drop {
			kinds += string(kind)
			values = append(values, value)
		}
	}
	return kinds, values, len(kinds) > 0
}

// smallWords stand between day, month and year in other languages.
var smallWords = []string{"de", "del", "do", "di", "le", "el", "am", "den", "der"}

var weekdays = []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

func dateToken(token string, named bool) (kind rune, value int, drop, ok bool) {
	lower := folded(token)
	switch {
	case lower == "of" || lower == "the" || named && slices.Contains(smallWords, lower):
		return 0, 0, true, true
	case strings.Trim(lower, "x") == "" && (len(lower) > 1 || named), strings.Trim(lower, "?") == "":
		return unknownToken, 0, false, true
	}
	if len(lower) >= 3 {
		for _, day := range weekdays {
			if strings.HasPrefix(day, lower) {
				return 0, 0, true, true
			}
		}
	}
	if m, ok := namedMonth(token); ok {
		return monthToken, m, false, true
	}
	if m, ok := romanMonth(token); ok && !named {
		return monthToken, m, false, true
	}
	n, isNumber := digits(token)
	if !isNumber {
		n, isNumber = ordinal(lower)
	}
	switch {
	case !isNumber:
		return 0, 0, false, false
	case len(token) == 4 && n >= 1000:
		return yearToken, n, false, true
	case n == 0 && len(token) <= 2:
		return unknownToken, 0, false, true
	case n <= 31 && (len(token) <= 2 || n > 0 && !isDigits(token)):
		return numberToken, n, false, true
	}
	return 0, 0, false, false
}

func isDigits(s string) bool {
	_, ok := digits(s)
	return ok
}

// ordinal reads "3rd" and "12th".
func ordinal(s string) (int, bool) {
	if len(s) < 3 || len(s) > 4 {
		return 0, false
	}
	n, ok := digits(s[:len(s)-2])
	want := "th"
	if n/10 != 1 {
		switch n % 10 {
		case 1:
			want = "st"
		case 2:
			want = "nd"
		case 3:
			want = "rd"
		}
	}
	return n, ok && s[len(s)-2:] == want
}

var rangeSigns = []string{" to ", " until ", " through ", "–", "—", "/", "-"}

var daysInMonth = regexp.MustCompile(`^(\pL+\.?) (\d{1,2})(?:st|nd|rd|th)? ?[-–] ?(\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$`)

var between = regexp.MustCompile(`^(?i:between|from) (.+?) (?i:and|to|until) (.+)$`)

// dateRange reads two dates with a sign between them, where exactly one way of
// parting the text makes sense. Either may leave out what the other says.
func dateRange(s string) (string, bool) {
	if m := daysInMonth.FindStringSubmatch(s); m != nil { // May 5-7, 1999
		s = m[2] + "-" + m[3] + " " + m[1] + " " + m[4]
	}
	if m := between.FindStringSubmatch(s); m != nil {
		s = m[1] + " to " + m[2]
	}
	found := ""
	for _, sign := range rangeSigns {
		for from := 0; ; {
			i := strings.Index(s[from:], sign)
			if i < 0 {
				break
			}
			left, right := s[:from+i], s[from+i+len(sign):]
			from += i + len(sign)
			iso, ok := joined(strings.TrimSpace(left), strings.TrimSpace(right))
			if !ok {
				continue
			}
			if found != "" && found != iso {
				return "", false
			}
			found = iso
		}
	}
	return found, found != ""
}

func joined(left, right string) (string, bool) {
	a, okA := dateParts(left)
	b, okB := dateParts(right)
	if !okA || !okB || a.year == 0 && b.year == 0 {
		return "", false
	}
	a.complete(b)
	b.complete(a)
	if !a.possible() || !b.possible() || (a.month == 0) != (b.month == 0) || (a.day == 0) != (b.day == 0) {
		return "", false
	}
	if a == b {
		return a.iso(), true
	}
	iso := a.iso() + "/" + b.iso()
	_, ok := parseISO(iso) // the end is not before the start
	return iso, ok
}
