package taxa_test

import (
	"testing"

	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/require"
)

// What stands before the first of two names, such as a wattage, belongs to
// neither.
func TestTwoNamesBehindAFigure(t *testing.T) {
	for _, text := range []string{"125W MV, Robinson trap", "12 Heart and Dert, Robinson trap", "2 Noctua pronubba - Large Yelow Underwing"} {
		require.NotPanics(t, func() { starter().Match(taxa.Written{Name: text}, taxa.Context{}) }, text)
	}
}
