package report

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Visible is a text as it may stand where people see it, on a screen or a web
// page: whatever would move the cursor, change colours or turn the direction of
// writing is shown as U+FFFD instead.
func Visible(text string) string {
	return strings.Map(func(c rune) rune {
		switch {
		case c == '\n' || c == '\t':
			return c
		case unicode.IsControl(c), unicode.Is(unicode.Bidi_Control, c), c == '\u2028', c == '\u2029':
			return utf8.RuneError
		}
		return c
	}, text)
}
