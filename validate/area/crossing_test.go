package area_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fieldfare/validate/area"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCrossing(t *testing.T) {
	var star, circle []string
	for i := range 6 { // a pentagram
		angle := float64(i%5) * 4 * math.Pi / 5
		star = append(star, fmt.Sprintf("[%.6f,%.6f]", 0.1+0.01*math.Sin(angle), 52.4+0.01*math.Cos(angle)))
	}
	for i := range 5001 {
		angle := float64(i%5000) * 2 * math.Pi / 5000
		circle = append(circle, fmt.Sprintf("[%.6f,%.6f]", 0.1+0.1*math.Sin(angle), 52.4+0.1*math.Cos(angle)))
	}
	for name, c := range map[string]struct {
		rings string
		want  bool
	}{
		"a square":                     {ring(t, "TL48"), false},
		"a square with a hole":         {ring(t, "TL48") + "," + ring(t, "TL4585"), false},
		"a hole over the edge":         {ring(t, "TL4585") + `,[[0.14,52.447],[0.2,52.447],[0.2,52.449],[0.14,52.449],[0.14,52.447]]`, true},
		"a bow":                        {`[[0,52],[0.1,52.1],[0.1,52],[0,52.1],[0,52]]`, true},
		"a pentagram":                  {"[" + strings.Join(star, ",") + "]", true},
		"a circle":                     {"[" + strings.Join(circle, ",") + "]", false},
		"two squares that touch":       {`[[0,52],[0.1,52],[0.1,52.1],[0.2,52.1],[0.2,52.2],[0.1,52.2],[0.1,52.1],[0,52.1],[0,52]]`, false},
		"a point visited on the way":   {`[[0,52],[0.1,52],[0.1,52.05],[0.1,52.1],[0,52.1],[0,52]]`, false},
		"a spike there and back again": {`[[0,52],[0.1,52],[0.1,52.1],[0.1,52.2],[0.1,52.1],[0,52.1],[0,52]]`, false},
	} {
		a, err := area.Read([]byte(`{"type":"Polygon","coordinates":[` + c.rings + `]}`))
		require.NoError(t, err, name)
		lat, lon, found := a.Crossing()
		assert.Equal(t, c.want, found, name)
		if found {
			assert.InDelta(t, 52.3, lat, 0.4, name)
			assert.InDelta(t, 0.1, lon, 0.2, name)
		}
	}
}
