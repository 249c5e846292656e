package report

import (
	"strconv"
	"testing"

	"fieldfare/dwc"
	"fieldfare/gridref"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestBlurredSquares: what is blurred to a square is drawn as that square.
func TestBlurredSquares(t *testing.T) {
	for written, drawn := range map[string]string{"TL48NE": "TL48NE", "TL48": "TL48", "TL48Q": ""} {
		r, err := gridref.Parse(written)
		require.NoError(t, err)
		o := dwc.Occurrence{ScientificName: "Laothoe populi", OccurrenceStatus: "present"}
		p := r.Square.Point()
		o.DecimalLatitude, o.DecimalLongitude = strconv.FormatFloat(p.Lat, 'f', -1, 64), strconv.FormatFloat(p.Lon, 'f', -1, 64)
		o.CoordinateUncertainty = strconv.FormatFloat(p.Uncertainty, 'f', -1, 64)
		var s Season
		seen := SightingOf(&o, true, false)
		s.Add(&seen)
		if drawn == "" {
			assert.Empty(t, s.squares.coarse, written)
			assert.Len(t, s.squares.tetrads, 1)
			continue
		}
		require.Len(t, s.squares.coarse, 1, written)
		for sq := range s.squares.coarse {
			assert.Equal(t, drawn, sq.String())
		}
		assert.Contains(t, s.mapPicture().SVG, `class="vague blurred"`)
	}
}
