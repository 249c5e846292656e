package bdq

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// folded is the text in lower case and without accents.
func folded(s string) string {
	ascii := true
	for i := 0; i < len(s) && ascii; i++ {
		ascii = s[i] < 0x80
	}
	if ascii {
		return strings.ToLower(s)
	}
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return unicode.ToLower(r)
	}, norm.NFD.String(s))
}

// words are the folded words of a text: runs of letters, digits and symbols
// that carry meaning, parted by white space, punctuation and the capitals
// inside a compound ("PreservedSpecimen").
func words(s string) []string {
	var out []string
	var word strings.Builder
	flush := func() {
		if word.Len() > 0 {
			out = append(out, folded(word.String()))
			word.Reset()
		}
	}
	wasLower := false
	for _, r := range s {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.Mn, r) || unicode.Is(unicode.So, r):
			if unicode.IsUpper(r) && wasLower {
				flush()
			}
			word.WriteRune(r)
			wasLower = unicode.IsLower(r)
		default:
			flush()
			wasLower = false
		}
	}
	flush()
	return out
}

// key is a text reduced to its words, run together.
func key(s string) string { return strings.Join(words(s), "") }
