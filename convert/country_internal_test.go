package convert

import (
	"testing"

	"fieldfare/gridref"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCountryOfSquares(t *testing.T) {
	for reference, want := range map[string]string{
		"TL4588": "GB", "NX1530": "GB", "NX4634": "GB", "HU4741": "GB", "NX": "GB",
		"SC3875": "IM", "SC27": "IM", "NX4605": "IM", "NX40": "IM", // Douglas, Peel, Point of Ayre
		"WV6548": "JE", "WV3378": "GG", "WV4575": "GG", "WA5708": "GG", // St Helier, St Peter Port, Sark, Alderney
		"TR3241": "GB", "TR6825": "", // Dover, Calais
		"J3474": "", "O1534": "", // Belfast and Dublin share a grid
	} {
		r, err := gridref.Parse(reference)
		require.NoError(t, err, reference)
		assert.Equal(t, want, countryOf(r.Square), reference)
	}
}
