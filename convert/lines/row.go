package lines

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Row is the answer to one value, field by field.
type Row struct {
	text   []byte
	fields []field
}

type field struct {
	end    int
	number bool
}

func (r *Row) reset() { r.text, r.fields = r.text[:0], r.fields[:0] }

// Text adds a field of text.
func (r *Row) Text(s string) {
	r.text = append(r.text, s...)
	r.fields = append(r.fields, field{end: len(r.text)})
}

// Append adds a field of text from an append function such as that of a value
// with its own Append method.
func (r *Row) Append(fill func(dst []byte) []byte) {
	r.text = fill(r.text)
	r.fields = append(r.fields, field{end: len(r.text)})
}

// Decimal adds a number with so many decimals, at most 9. Its size times ten to
// that power must be below 2^53.
func (r *Row) Decimal(v float64, places int) {
	r.text = appendDecimal(r.text, v, places)
	r.fields = append(r.fields, field{end: len(r.text), number: true})
}

// Metres adds a number with up to three decimals, as few as it needs.
func (r *Row) Metres(v float64) {
	r.text = appendDecimal(r.text, v, 3)
	for r.text[len(r.text)-1] == '0' {
		r.text = r.text[:len(r.text)-1]
	}
	if last := len(r.text) - 1; r.text[last] == '.' {
		r.text = r.text[:last]
	}
	r.fields = append(r.fields, field{end: len(r.text), number: true})
}

// NoNumber adds a number that is not known: nothing, and null in JSON.
func (r *Row) NoNumber() { r.fields = append(r.fields, field{end: len(r.text), number: true}) }

// Field returns a field, counted from 0 after the value's own column; it is
// valid until the next row.
func (r *Row) Field(i int) []byte {
	start := 0
	if i > 0 {
		start = r.fields[i-1].end
	}
	return r.text[start:r.fields[i].end]
}

func (r *Row) appendCSV(dst []byte, comma byte) []byte {
	for i := range r.fields {
		if i > 0 {
			dst = append(dst, comma)
		}
		if f := r.Field(i); r.fields[i].number {
			dst = append(dst, f...)
		} else {
			dst = appendCSV(dst, f, comma)
		}
	}
	return dst
}

func (r *Row) appendJSONField(dst []byte, i int) []byte {
	f := r.Field(i)
	switch {
	case !r.fields[i].number:
		return appendJSON(dst, f)
	case len(f) == 0:
		return append(dst, "null"...)
	}
	return append(dst, f...)
}

// appendCSV appends a field by RFC 4180, quoted where it must be.
func appendCSV[T string | []byte](dst []byte, s T, comma byte) []byte {
	quote := len(s) > 0 && (s[0] == ' ' || s[len(s)-1] == ' ' || s[0] == '\t')
	for i := 0; i < len(s) && !quote; i++ {
		c := s[i]
		quote = c == comma || c == '"' || c == '\n' || c == '\r'
	}
	if !quote {
		return append(dst, s...)
	}
	dst = append(dst, '"')
	for i := 0; i < len(s); i++ {
		if s[i] == '"' {
			dst = append(dst, '"')
		}
		dst = append(dst, s[i])
	}
	return append(dst, '"')
}

// appendJSON appends a string by RFC 8259.
func appendJSON[T string | []byte](dst []byte, s T) []byte {
	const hex = "0123456789abcdef"
	if !utf8.ValidString(string(s)) {
		s = T(strings.ToValidUTF8(string(s), "\uFFFD"))
	}
	dst = append(dst, '"')
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c == '"' || c == '\\':
			dst = append(dst, '\\', c)
		case c < 0x20:
			dst = append(dst, '\\', 'u', '0', '0', hex[c>>4], hex[c&15])
		default:
			dst = append(dst, c)
		}
	}
	return append(dst, '"')
}

// appendDecimal appends v rounded to so many decimals, all of them written.
func appendDecimal(dst []byte, v float64, places int) []byte {
	scale := powers[places]
	scaled := int64(math.Round(math.Abs(v) * float64(scale)))
	if v < 0 && scaled > 0 {
		dst = append(dst, '-')
	}
	whole, part := scaled/scale, scaled%scale
	dst = strconv.AppendInt(dst, whole, 10)
	if places == 0 {
		return dst
	}
	dst = append(dst, '.')
	for unit := scale / 10; unit > 0; unit /= 10 {
		dst = append(dst, byte('0'+part/unit))
		part %= unit
	}
	return dst
}

var powers = [...]int64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9}
