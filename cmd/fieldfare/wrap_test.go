package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestWrapped(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{
		{"short\n", 80, "short\n"},
		{"no width is known, as in a file, so that the line stays as it is\n", 0, "no width is known, as in a file, so that the line stays as it is\n"},
		{"  held   10 records: a day that the calendar does not have\n", 40, "  held   10 records: a day that the\n         calendar does not have\n"},
		{"        20  held     not handed in until you answer\n", 36, "        20  held     not handed in\n                  until you answer\n"},
		{"Next: open queries.xlsx, fill in your answers,\n  --answers \"a folder with a long name/queries.xlsx\"\n", 30, "Next: open queries.xlsx, fill\nin your answers,\n  --answers \"a folder with a long name/queries.xlsx\"\n"},
		{"  two  blanks stay within a line that is broken\n", 30, "  two  blanks stay within a\n  line that is broken\n"},
		{"the last line has no end of its own at all", 30, "the last line has no end of\nits own at all"},
		{"on three columns nobody can read anything\n", 3, "on three columns nobody can\nread anything\n"},
	} {
		assert.Equal(t, c.want, wrapped(c.text, c.width))
	}
}

func FuzzWrapped(f *testing.F) {
	f.Add("  held   10 records: a day that the calendar does not have\n", 40)
	f.Fuzz(func(t *testing.T, text string, width int) {
		got := wrapped(text, width)
		assert.Equal(t, strings.Fields(text), strings.Fields(got), "no word is lost or changed")
		assert.Equal(t, utf8.ValidString(text), utf8.ValidString(got))
	})
}
