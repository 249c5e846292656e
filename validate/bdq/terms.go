package bdq

import (
	"strconv"
	"strings"
	"unicode"
)

// Terms gives a record's values by term name, without a prefix: "eventDate",
// "type", "license". A term that is not stated has the empty string.
type Terms interface {
	Get(term string) string
}

// Map is a record held as a map from term name to value.
type Map map[string]string

// Get returns the value of the term.
func (m Map) Get(term string) string { return m[term] }

// record is one record under test, with the readings that several tests need.
type record struct {
	terms             Terms
	event, identified reading
}

// reading is a date term read as ISO 8601, once.
type reading struct {
	done, valid bool
	span        span
}

func (r *record) get(term string) string { return r.terms.Get(local(term)) }

func (r *record) empty(term string) bool { return isEmpty(r.get(term)) }

func (r *record) eventDate() (span, bool) {
	return r.event.of(r.terms, "eventDate")
}

func (r *record) dateIdentified() (span, bool) {
	return r.identified.of(r.terms, "dateIdentified")
}

func (d *reading) of(terms Terms, term string) (span, bool) {
	if !d.done {
		d.done = true
		d.span, d.valid = parseISO(terms.Get(term))
	}
	return d.span, d.valid
}

// local drops the prefix of a qualified term name.
func local(term string) string {
	if len(term) > 3 && term[3] == ':' { // dwc:
		return term[4:]
	}
	if at := strings.IndexByte(term, ':'); at >= 0 {
		return term[at+1:]
	}
	return term
}

// isEmpty is bdqval:Empty: no character at all, or none that prints (the
// standard names U+0000 to U+0020; other white space and invisible characters
// say no more). Words for nothing, such as "null", are values.
func isEmpty(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x7f {
			return strings.IndexFunc(s[i:], prints) < 0
		}
		if s[i] > ' ' {
			return false
		}
	}
	return true
}

func prints(r rune) bool {
	return !unicode.IsSpace(r) && !unicode.In(r, unicode.Cc, unicode.Cf)
}

// trim drops white space and characters that do not print from both ends.
func trim(s string) string {
	if s == "" || plain(s[0]) && plain(s[len(s)-1]) {
		return s
	}
	return strings.TrimFunc(s, func(r rune) bool { return !prints(r) })
}

func plain(c byte) bool { return c > ' ' && c < 0x7f }

// number reads a value as a decimal number, with or without an exponent.
// White space around it does not matter; anything else beside it does.
func number(s string) (float64, bool) {
	s = trim(s)
	if s == "" || len(s) > 64 {
		return 0, false
	}
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= '0' && c <= '9', c == '.', c == '+', c == '-', c == 'e', c == 'E':
		default:
			return 0, false
		}
	}
	f, err := strconv.ParseFloat(s, 64)
	return f, err == nil
}

// integer reads a value as a whole number written in digits.
func integer(s string) (int, bool) {
	s = trim(s)
	if s == "" || len(s) > 10 {
		return 0, false
	}
	for i := 0; i < len(s); i++ {
		if (s[i] < '0' || s[i] > '9') && (i > 0 || s[i] != '-' && s[i] != '+') {
			return 0, false
		}
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}
