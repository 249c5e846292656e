package light_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"
	"fieldfare/convert/when/light"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestOf compares with times that PyEphem 4.1.4 computes (Brandon Rhodes, MIT
// licence; its positions are VSOP87's): Observer with pressure 0, sunrise and
// sunset at horizon -0:34 by the upper limb, twilight at -6 by the centre, the
// rising before and the setting after the place's noon.
func TestOf(t *testing.T) {
	f, err := os.Open("testdata/pyephem.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	worst := 0.0
	for _, row := range rows[1:] {
		lat, _ := strconv.ParseFloat(row[1], 64)
		lon, _ := strconv.ParseFloat(row[2], 64)
		d, err := time.Parse(time.DateOnly, row[3])
		require.NoError(t, err)
		day := light.Of(lat, lon, when.Date{Year: d.Year(), Month: int(d.Month()), Day: d.Day()})
		for i, got := range []time.Time{day.Dawn, day.Sunrise, day.Sunset, day.Dusk} {
			name := fmt.Sprintf("%s %s %s", row[0], row[3], rows[0][4+i])
			if row[4+i] == "" {
				assert.True(t, got.IsZero(), "%s: %s, want none", name, got)
				continue
			}
			want, err := time.Parse("2006-01-02T15:04:05", row[4+i])
			require.NoError(t, err)
			off := math.Abs(got.Sub(want).Seconds())
			worst = math.Max(worst, off)
			assert.LessOrEqual(t, off, 60.0, "%s: %s, want %s", name, got, want)
		}
	}
	t.Logf("farthest from the reference: %.0f seconds", worst)
}

func TestTrap(t *testing.T) {
	ely := func(y, m, d int, at string) reading.Verdict {
		return light.Trap(52.40, 0.26, when.Date{Year: y, Month: m, Day: d}, at)
	}
	for _, c := range []struct {
		y, m, d int
		at      string
		want    reading.State
	}{
		{2021, 6, 12, "14:00", reading.Query},
		{2021, 6, 12, "19:00", reading.Query},
		{2021, 6, 12, "10:45", reading.Query},
		{2021, 6, 12, "21:00", reading.Fair}, // after sunset by Greenwich time
		{2021, 6, 12, "22:45", reading.Fair},
		{2021, 6, 12, "02:00", reading.Fair},
		{2021, 12, 12, "15:00", reading.Query},
		{2021, 12, 12, "17:00", reading.Fair},
		{2021, 6, 12, "", reading.Fair},
		{2021, 6, 12, "dusk", reading.Fair},
	} {
		assert.Equal(t, c.want, ely(c.y, c.m, c.d, c.at).State, "%d-%d-%d %s", c.y, c.m, c.d, c.at)
	}
	// No sunset at midsummer beyond the polar circle.
	assert.Equal(t, reading.Fair, light.Trap(69.65, 18.96, when.Date{Year: 2021, Month: 6, Day: 12}, "14:00").State)
	assert.Equal(t, reading.Fair, light.Trap(math.NaN(), 0, when.Date{Year: 2021, Month: 6, Day: 12}, "14:00").State)
}

func ExampleOf() {
	day := light.Of(52.40, 0.26, when.Date{Year: 2021, Month: 6, Day: 12})
	fmt.Println(day.Sunset.Format("15:04"), day.Dusk.Format("15:04"))
	// Output: 20:21 21:10
}

func BenchmarkTrap(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		light.Trap(52.40, 0.26, when.Date{Year: 2021, Month: 6, Day: 12}, "22:45")
	}
}
