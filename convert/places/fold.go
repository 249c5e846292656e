package places

import (
	"strings"
	"unicode"

	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// fold makes spellings comparable: lower case, letters and figures only, "&"
// as "and", accents removed.
func fold(s string) string { return strings.Join(foldedWords(s), "") }

// foldedWords are the folded words of a name. An apostrophe is no end of a
// word.
func foldedWords(s string) []string {
	s = strings.ReplaceAll(s, "&", " and ")
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x80 {
			if plain, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), s); err == nil {
				s = plain
			}
			break
		}
	}
	var out []string
	var b strings.Builder
	flush := func() {
		if b.Len() > 0 {
			out = append(out, b.String())
			b.Reset()
		}
	}
	for _, r := range s {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(unicode.ToLower(r))
		case r == '\'' || r == '’' || r == '‘' || r == '`' || r == '.':
		default:
			flush()
		}
	}
	flush()
	return out
}
