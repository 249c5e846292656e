package layout

import "strings"

// dateForm says how much of a date a text holds.
type dateForm uint8

const (
	noDate    dateForm = iota
	yearOnly           // 2014
	monthOnly          // June
	monthYear          // June 2014
	dayMonth           // 12 June, 12/13.vi
	pairOnly           // 12/6: day and month, or something else entirely
	fullDate           // 12/6/2014
)

func (f dateForm) hasYear() bool { return f == yearOnly || f == monthYear || f == fullDate }

var monthNames = [...]string{"january", "february", "march", "april", "may", "june", "july",
	"august", "september", "october", "november", "december"}

var romanMonths = map[string]int{"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6, "vii": 7,
	"viii": 8, "ix": 9, "x": 10, "xi": 11, "xii": 12}

// monthOf returns the month a word names, 0 for none. Abbreviations of three
// letters and more and slips of one letter in long names are understood.
func monthOf(word string) int {
	if len(word) < 3 || len(word) > 10 {
		return 0
	}
	word = strings.ToLower(word)
	if word == "sept" {
		return 9
	}
	for i, m := range monthNames {
		if strings.HasPrefix(m, word) {
			return i + 1
		}
	}
	if len(word) < 5 {
		return 0
	}
	for i, m := range monthNames {
		if len(m) >= 6 && oneSlip(word, m) {
			return i + 1
		}
	}
	return 0
}

var dateFillers = map[string]bool{"st": true, "nd": true, "rd": true, "th": true, "of": true, "the": true,
	"night": true, "nt": true, "to": true, "and": true, "c": true, "ca": true, "circa": true, "approx": true,
	"early": true, "mid": true, "late": true, "end": true, "begin": true, "beginning": true, "am": true, "pm": true,
	"evening": true, "eve": true, "noc": true, "morning": true, "from": true, "between": true, "on": true, "t": true,
	"z": true, "h": true, "hrs": true, "before": true, "after": true, "pre": true, "post": true}

var seasons = map[string]bool{"spring": true, "summer": true, "autumn": true, "winter": true}

func isWeekday(w string) bool {
	if len(w) < 3 {
		return false
	}
	for _, d := range [...]string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"} {
		if strings.HasPrefix(d, w) {
			return true
		}
	}
	return w == "tues" || w == "thurs" || w == "weds"
}

// dateToken is a run of digits or letters in a date.
type dateToken struct {
	num   int
	width int // digits, 0 for a month
	month int
	sep   byte // what stood before it
}

// scanDate tells how much of a date a trimmed text is. It is a sieve for
// judging columns, not a reading.
func scanDate(s string) dateForm {
	if strings.ContainsAny(s, "xX×") && numberOfLamps.MatchString(strings.ToLower(s)) {
		return noDate // 2 x 15W is no 2 October 2015
	}
	if len(s) < 3 || len(s) > 60 {
		return noDate
	}
	var buf [8]dateToken
	toks, ok := dateTokens(s, buf[:0])
	if !ok {
		return noDate
	}
	return judgeDate(toks, len(s))
}

func dateTokens(s string, toks []dateToken) ([]dateToken, bool) {
	sep := byte(0)
	hasSeason := false
	for i := 0; i < len(s); {
		c := s[i]
		switch {
		case c >= '0' && c <= '9':
			j := i
			n := 0
			for j < len(s) && s[j] >= '0' && s[j] <= '9' && j-i < 9 {
				n = n*10 + int(s[j]-'0')
				j++
			}
			if len(toks) == cap(toks) {
				return nil, false
			}
			toks = append(toks, dateToken{num: n, width: j - i, sep: sep})
			sep, i = 0, j
		case isLetter(c):
			j := i
			for j < len(s) && isLetter(s[j]) {
				j++
			}
			w := strings.ToLower(s[i:j])
			m := romanMonths[w] // negative until a day beside it makes it a month
			if m = -m; m == 0 && !isWeekday(w) {
				m = monthOf(w)
			}
			switch {
			case m != 0:
				if len(toks) == cap(toks) {
					return nil, false
				}
				toks = append(toks, dateToken{month: m, sep: sep})
				sep = 0
			case seasons[w]:
				hasSeason = true
				sep = ' '
			case dateFillers[w] || isWeekday(w):
				sep = ' '
			default:
				return nil, false
			}
			i = j
		case strings.IndexByte(" ,./-:'_()&+\u00e2\u0080\u0093\u0094", c) >= 0:
			if sep == 0 || sep == ' ' {
				sep = c
			}
			i++
		default:
			return nil, false
		}
	}
	if hasSeason && len(toks) == 0 {
		return toks, false
	}
	return toks, len(toks) > 0
}

func judgeDate(toks []dateToken, length int) dateForm {
	// A time at the end is no part of the date.
	for i := 1; i < len(toks); i++ {
		if toks[i].sep == ':' && i >= 2 {
			toks = toks[:i-1]
			break
		}
	}
	months, days, years, afterMonth, seenMonth := 0, 0, 0, 0, false
	for _, t := range toks {
		switch {
		case t.month != 0:
			months++
			seenMonth = true
		case t.width == 4 && t.num >= 1500 && t.num <= 2199:
			years++
		case t.width <= 2 && t.num <= 31:
			days++
			if seenMonth {
				afterMonth++
			}
		case t.width <= 2:
			years++
		case t.width == 8 && len(toks) == 1:
			y, m, d := t.num/10000, t.num/100%100, t.num%100
			if y >= 1700 && y <= 2199 && m >= 1 && m <= 12 && d >= 1 && d <= 31 {
				return fullDate
			}
			return noDate
		default:
			return noDate
		}
	}
	if months > 0 {
		return judgeNamedMonth(toks, days, years, afterMonth)
	}
	return judgeNumbers(toks, years, length)
}

func judgeNamedMonth(toks []dateToken, days, years, afterMonth int) dateForm {
	for _, t := range toks {
		if t.month < 0 && days == 0 && (years == 0 || len(toks) > 2) {
			return noDate // "x", "v", "i" are months only beside a day
		}
	}
	if toks[0].month < 0 && days > 0 && len(toks) == 2 {
		return noDate // "X 3"
	}
	switch {
	case days == 0 && years == 0:
		return monthOnly
	case days == 0:
		return monthYear
	case years > 0:
		return fullDate
	case days >= 2 && afterMonth > 0 && toks[0].month == 0 && toks[len(toks)-1].width == 2 && toks[len(toks)-1].month == 0:
		return fullDate // 12 June 14
	case days == 2 && afterMonth == 2 && toks[len(toks)-1].width == 2 && toks[0].month > 0 && toks[2].sep != '/' && toks[2].sep != '-':
		return fullDate // June 12 14
	}
	return dayMonth
}

func judgeNumbers(toks []dateToken, years, length int) dateForm {
	switch len(toks) {
	case 1:
		if toks[0].width == 4 && years == 1 && length <= 8 {
			return yearOnly
		}
	case 2:
		a, b := toks[0], toks[1]
		switch {
		case a.width == 4 && b.width == 4 && years == 2 && b.sep != 0 && b.sep != ' ':
			return yearOnly // 1990-1995
		case a.width == 4 || b.width == 4:
			m := min(a.num, b.num)
			if m >= 1 && m <= 12 && b.sep != ' ' && b.sep != 0 {
				return monthYear
			}
		case b.sep == '/' || b.sep == '.' || b.sep == '-':
			if a.num >= 1 && a.num <= 31 && b.num >= 1 && b.num <= 31 && (a.num <= 12 || b.num <= 12) {
				return pairOnly
			}
		}
	case 3, 4, 5, 6:
		if !dateSeparators(toks) {
			return noDate
		}
		a, b, c := toks[0], toks[1], toks[len(toks)-1]
		if len(toks) == 3 {
			switch {
			case (b.sep == '/' || b.sep == '-') && c.sep == '.' && a.num < b.num && b.num <= 31 && c.num <= 12 && c.width <= 2 && a.width <= 2:
				return dayMonth // 12/13.6
			case a.width == 4 && b.num <= 12 && c.num <= 31:
				return fullDate
			case c.width == 4 && c.num >= 1500 && a.num <= 31 && b.num <= 31 && (a.num <= 12 || b.num <= 12):
				return fullDate
			case c.width == 2 && a.num <= 31 && b.num <= 31 && (a.num <= 12 || b.num <= 12):
				return fullDate
			}
			return noDate
		}
		if years > 0 || c.width == 2 {
			return fullDate // 12/13/6/21, 31/5/21-1/6/21
		}
		return dayMonth
	}
	return noDate
}

func dateSeparators(toks []dateToken) bool {
	for _, t := range toks[1:] {
		switch t.sep {
		case '/', '.', '-', ' ', '_', ',':
		default:
			return t.sep >= 0x80 || t.sep == '\'' || t.sep == '&'
		}
	}
	return toks[1].sep != ',' && toks[1].sep != 0
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }
func isDigit(c byte) bool  { return c >= '0' && c <= '9' }

// dayNumber returns the day of a month that "12" or "12th" says, 0 for none.
func dayNumber(s string) int {
	t := strings.ToLower(s)
	if i := strings.IndexByte(t, ' '); i > 0 && isWeekday(strings.TrimRight(t[:i], ".,")) {
		t = t[i+1:] // Sat 13th
	}
	if len(t) > 2 {
		switch t[len(t)-2:] {
		case "st", "nd", "rd", "th":
			t = t[:len(t)-2]
		}
	}
	if n, ok := isInt(t); ok && n >= 1 && n <= 31 {
		return n
	}
	return 0
}

// oneSlip reports whether two words differ by one letter added, left out or
// changed, or by two neighbours swapped.
func oneSlip(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	if len(a) < len(b) {
		return a[i:] == b[i+1:]
	}
	if i >= len(a)-1 {
		return true
	}
	return a[i+1:] == b[i+1:] || a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}
