package validate_test

import (
	"testing"

	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// setCodes are the checks of the set that fire on each of the records.
func setCodes(t *testing.T, entries ...validate.Entry) [][]string {
	t.Helper()
	set := validate.NewSet()
	t.Cleanup(func() { set.Close() })
	for i := range entries {
		e := entries[i]
		set.Observe(&e)
	}
	require.NoError(t, set.Settle())
	codes := make([][]string, len(entries))
	for i := range entries {
		for _, f := range set.Findings(&entries[i], func(int, int) string { return "elsewhere" }) {
			codes[i] = append(codes[i], f.Code)
		}
	}
	return codes
}

// A person's two places are too far apart only beyond what is not known of
// either. A degree of latitude is 111.195 km on the sphere of the Earth's mean
// radius, 6371.0088 km.
func TestTwoPlacesAtOnceAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		km            float64
		first, second float32
		night, asked  bool
	}{
		{49.9, 0, 0, true, false}, {50.1, 0, 0, true, true}, {51, 600, 600, true, false}, {51, 400, 400, true, true}, {51, 1200, 0, true, false}, {51, 0, 1200, true, false},
		{149.9, 0, 0, false, false}, {150.1, 0, 0, false, true},
	} {
		record := records(2, 1)
		a, b := record(0), record(1)
		b.RecordedBy, b.Locality = a.RecordedBy, "Long Drove"
		b.Facts.Latitude = a.Facts.Latitude + c.km/111.195
		a.Facts.Radius, b.Facts.Radius = c.first, c.second
		a.Facts.Light, b.Facts.Light = c.night, c.night
		codes := setCodes(t, a, b)
		assert.NotContains(t, codes[0], "two-places-at-once", c)
		if c.asked {
			assert.Contains(t, codes[1], "two-places-at-once", c)
		} else {
			assert.NotContains(t, codes[1], "two-places-at-once", c)
		}
	}
}

// Half a pair of coordinates is no place.
func TestFactsOfHalfAPlace(t *testing.T) {
	for o, want := range map[dwc.Occurrence]bool{
		{DecimalLatitude: "52.4", DecimalLongitude: "0.1"}: true, {DecimalLatitude: "52.4"}: false, {DecimalLongitude: "0.1"}: false,
		{DecimalLatitude: "52.4", DecimalLongitude: "east"}: false, {}: false,
	} {
		assert.Equal(t, want, validate.FactsOf(&o).Placed, o)
	}
}
