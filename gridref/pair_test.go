package gridref

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRoundedPairs: a pair in kilometres or hundreds of metres is a query, on
// the grid on which it lies on land, and a fault where that is none. Common
// practice, no source.
func TestRoundedPairs(t *testing.T) {
	for text, want := range map[string]string{
		"545, 281":   "TL4581",
		"545 281":    "TL4581",
		"5450, 2810": "TL450810",
		"150, 350":   "G5050", // sea on the British grid
		"1500, 3500": "G500500",
	} {
		r, err := Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, r.Square.String(), text)
		assert.Equal(t, PairUnits, r.Doubt.Code, text)
	}
	for _, text := range []string{"999, 999", "900, 100"} {
		_, err := Parse(text)
		var fault *Fault
		require.ErrorAs(t, err, &fault, text)
		assert.Equal(t, PairUnits, fault.Code)
	}
}

// TestOneLetterOrders: one compass letter tells which value is which.
func TestOneLetterOrders(t *testing.T) {
	for text, code := range map[string]string{
		"52.4091, 0.1795 E": "",
		"0.1795 E, 52.4091": "",
		"0.1795 E 52.4091":  "",
		"0.1795, 52.4091 N": Direction, // east or west?
	} {
		r, err := Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, "52.4091, 0.1795", r.Place.String(), text)
		assert.Equal(t, code, r.Doubt.Code, text)
	}
}
