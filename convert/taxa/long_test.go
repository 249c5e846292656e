package taxa_test

import (
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
)

// TestLongTextIsNoName reads a megabyte as a name, which would take hours if
// each of its parts were tried.
func TestLongTextIsNoName(t *testing.T) {
	m := starter()
	for _, text := range []string{strings.Repeat("rain ", 200_000), "Buff-tip " + strings.Repeat("and again ", 100_000), strings.Repeat("(", 1<<20), strings.Repeat("a & ", 40_000), strings.Repeat("1 ", 100_000), strings.Repeat("a at b dot ", 20_000)} {
		r := m.Match(taxa.Written{Name: text}, taxa.Context{})
		assert.Equal(t, reading.Held, r.State)
		assert.Nil(t, r.Taxon)
	}
}

// Two names behind other words are read without a look beyond the text: the
// places of the words are those of the whole of it.
func TestTwoNamesBehindOtherWords(t *testing.T) {
	m := taxa.NewIndex(taxa.Starter()).NewMatcher()
	for _, text := range []string{
		"12 June: Heart & Dart 3, Large Yellow Underwing 12, Flame 1",
		"12 Hart and Dart, Large Yelow Underwing",
		"3 Agrotis exclamationus: Hart and Dart",
	} {
		assert.NotPanics(t, func() { m.Match(taxa.Written{Name: text}, taxa.Context{}) }, text)
	}
}
