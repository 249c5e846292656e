package report

import (
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
)

// A cell holds 32,767 characters (Office Open XML); more is cut off, and said
// to be.
func TestClip(t *testing.T) {
	for _, text := range []string{strings.Repeat("x", 32767), strings.Repeat("🦋", 16383), strings.Repeat("é", 32767), ""} {
		assert.Equal(t, text, clip(text))
	}
	for _, text := range []string{strings.Repeat("x", 32768), strings.Repeat("🦋", 16384), "x" + strings.Repeat("🦋", 20000)} {
		short := clip(text)
		assert.LessOrEqual(t, len(utf16.Encode([]rune(short))), 32767)
		assert.True(t, strings.HasSuffix(short, clipped))
		assert.True(t, strings.HasPrefix(text, strings.TrimSuffix(short, clipped)))
	}
}
