package taxa

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// A key is what is left of a name when capitals, spaces, hyphens, apostrophes,
// full stops, diacritics and ligatures are taken away: two spellings with one
// key are the same spelling. The codes have names written without diacritics,
// ligatures and hyphens (ICZN Articles 27, 32.5.2; ICN Article 60.7, 60.11).

// appendKey appends the key of s to dst. "&" counts as "and".
func appendKey(dst []byte, s string) []byte {
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case c >= utf8.RuneSelf:
			return appendKeyRunes(dst, s[i:])
		case 'a' <= c && c <= 'z', '0' <= c && c <= '9':
			dst = append(dst, c)
		case 'A' <= c && c <= 'Z':
			dst = append(dst, c+'a'-'A')
		case c == '&':
			dst = append(dst, "and"...)
		}
	}
	return dst
}

func appendKeyRunes(dst []byte, s string) []byte {
	for _, r := range norm.NFKD.String(s) {
		switch {
		case r == '&':
			dst = append(dst, "and"...)
		case r < utf8.RuneSelf:
			r = unicode.ToLower(r)
			if 'a' <= r && r <= 'z' || '0' <= r && r <= '9' {
				dst = append(dst, byte(r))
			}
		default:
			if l := foldedLetter(unicode.ToLower(r)); l != "" {
				dst = append(dst, l...)
			} else if unicode.IsLetter(r) || unicode.IsDigit(r) {
				dst = utf8.AppendRune(dst, unicode.ToLower(r))
			}
		}
	}
	return dst
}

// foldedLetter is the plain writing of a letter that does not come apart into
// a base letter and a mark.
func foldedLetter(r rune) string {
	switch r {
	case 'æ':
		return "ae"
	case 'œ':
		return "oe"
	case 'ø':
		return "o"
	case 'ß':
		return "ss"
	case 'ł':
		return "l"
	case 'đ', 'ð':
		return "d"
	case 'þ':
		return "th"
	case 'ı':
		return "i"
	}
	return ""
}

// key is appendKey as a string.
func key(s string) string {
	folded := true
	for i := 0; i < len(s) && folded; i++ {
		folded = 'a' <= s[i] && s[i] <= 'z' || '0' <= s[i] && s[i] <= '9'
	}
	if folded {
		return s
	}
	var buf [96]byte
	return string(appendKey(buf[:0], s))
}

// plainName reports whether s holds nothing but the characters of a name, so
// that its key loses nothing that matters: no question mark, bracket, sign or
// separator.
func plainName(s string) bool {
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9',
			c == ' ', c == '-', c == '\'', c == '.', c == '&':
		case c >= utf8.RuneSelf:
			return plainRunes(s[i:])
		default:
			return false
		}
	}
	return true
}

// appendPlainKey appends the key of s to dst, if s is a plain name.
func appendPlainKey(dst []byte, s string) ([]byte, bool) {
	for i := 0; i < len(s); i++ {
		switch c := plainFold[s[i]]; c {
		case 0:
			return appendKey(dst, s[i:]), plainName(s[i:])
		case ' ':
		default:
			dst = append(dst, c)
		}
	}
	return dst, true
}

// plainFold has for each byte of a plain name what its key makes of it: a
// letter or figure, a space where nothing, 0 where one has to look closer.
var plainFold = func() (fold [256]byte) {
	for c := byte('a'); c <= 'z'; c++ {
		fold[c], fold[c-'a'+'A'] = c, c
	}
	for c := byte('0'); c <= '9'; c++ {
		fold[c] = c
	}
	for _, c := range " -'." {
		fold[c] = ' '
	}
	return fold
}()

func plainRunes(s string) bool {
	for _, r := range s {
		switch {
		case unicode.IsLetter(r), unicode.IsMark(r), r == '’', r == '‘', r == '‐', r == '‑', r == '\u00a0':
		case r < utf8.RuneSelf:
			if !plainName(string(r)) {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// tidy makes one space of any white space, and usual signs of their kin
// (curly quotes, no-break spaces, soft hyphens, underscores, italics marks).
func tidy(s string) string {
	clean := true
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c >= utf8.RuneSelf || c < ' ' || c == '_' || c == '<' || c == '`' || c == ' ' && (i == 0 || i == len(s)-1 || s[i+1] == ' ') {
			clean = false
			break
		}
	}
	if clean {
		return s
	}
	s = italics.Replace(norm.NFC.String(s))
	return strings.Join(strings.Fields(s), " ")
}

var italics = strings.NewReplacer(
	"<i>", "", "</i>", "", "<em>", "", "</em>", "", "<b>", "", "</b>", "",
	"_", " ", "\u00ad", "", "\u200b", "", "\ufeff", "", "`", "'", "´", "'", "’", "'", "‘", "'", "ʼ", "'",
	"“", "\"", "”", "\"", "‐", "-", "‑", "-", "−", "-", "？", "?", "\u00a0", " ",
)
