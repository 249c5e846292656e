package taxa

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What one slip of the pen is: common practice, no source.

func TestIsSwap(t *testing.T) {
	for pair, want := range map[string]bool{
		"moth mtoh": true, "moth omth": true, "moth moht": true,
		"moth moth": false, "moth tohm": false, "moth omht": false, "moth mot": false, "moth mothe": false, "m n": false,
	} {
		a, b, _ := strings.Cut(pair, " ")
		assert.Equal(t, want, isSwap(a, b), pair)
		assert.Equal(t, want, isSwap(b, a), pair)
	}
}

func TestTurnedRound(t *testing.T) {
	for pair, want := range map[string]bool{
		"dark arches|arches dark":                                   true,
		"white satin moth|satin moth white":                         true,
		"white satin moth|moth white satin":                         true,
		"white satin moth|white moth satin":                         false,
		"white satin moth|white satin moth":                         false,
		"white satin|white satin moth":                              false,
		"moth|moth":                                                 false,
		"bright line brown eye moth|brown line bright eye moth":     false,
		"setaceous hebrew character|hebrew character setaceous":     true,
		"setaceous hebrew character|character setaceous and hebrew": false,
	} {
		a, b, _ := strings.Cut(pair, "|")
		assert.Equal(t, want, turnedRound(strings.Fields(a), strings.Fields(b)), pair)
		assert.Equal(t, want, turnedRound(strings.Fields(b), strings.Fields(a)), pair)
	}
}

// TestCostOfVowels: a vowel for another is likelier a slip than a consonant for
// a vowel.
func TestCostOfVowels(t *testing.T) {
	of := func(a, b string) int { return cost(a, b, soundKey(a, true), soundKey(b, true), 3) }
	assert.Zero(t, of("rustic", "rustic"))
	assert.Less(t, of("tussock", "tossock"), of("tussock", "tfssock"))
	assert.Equal(t, of("tussock", "tfssock"), of("tfssock", "tussock"), "whichever of the two is the vowel")
}
