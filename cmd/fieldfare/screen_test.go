package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Control characters are those of ISO/IEC 6429 (ECMA-48), C0 and C1; the marks
// that turn the direction are Bidi_Control of Unicode Standard Annex 9.
func TestScreenShowsNoControls(t *testing.T) {
	for text, want := range map[string]string{
		"Heart and Dart, 3\n\tTL4588": "Heart and Dart, 3\n\tTL4588",
		"\x1b[31mred\x1b[0m":          "�[31mred�[0m",
		"\x1b]0;title\a":              "�]0;title�",
		"over\rwritten\b":             "over�written�",
		"\u009b2J":                    "�2J",
		"\u202egpj.exe\u2066":         "�gpj.exe�",
		"broken \xff\x9b":             "broken ��",
		"Grüne Eule – 鳥":              "Grüne Eule – 鳥",
		"\x7f\x00\u2028":              "���",
	} {
		var out bytes.Buffer
		n, err := screen{&out}.Write([]byte(text))
		require.NoError(t, err)
		assert.Equal(t, len(text), n)
		assert.Equal(t, want, out.String())
	}
}
