package gridref

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Any square written in any of the usual styles is read as that square.
func TestRandomSquaresInEveryStyle(t *testing.T) {
	random := rand.New(rand.NewPCG(53, 59))
	gaps := []string{"", " ", ".", "-", "/", ", ", "  ", "\u00a0", " - ", "\u2009"}
	around := []string{"%s", " %s ", "(%s)", "[%s]", "%s approx", "%s.", "NGR %s", "Grid ref: %s", "\"%s\"", "%s (approx)", "GR: %s"}
	for range 20_000 {
		s := randomSquare(random)
		if !s.Grid.lettered() || s.elsewhere() || s.Size == hundredKM {
			continue
		}
		ref := s.String()
		letters := 2
		if s.Grid == Irish {
			letters = 1
		}
		end := letters
		for end < len(ref) && isDigit(ref[end]) {
			end++
		}
		half := (end - letters) / 2
		parts := []string{ref[:letters], ref[letters : letters+half], ref[letters+half : end]}
		if end < len(ref) {
			parts = append(parts, ref[end:])
		}
		gap := gaps[random.IntN(len(gaps))]
		text := fmt.Sprintf(around[random.IntN(len(around))], strings.Join(parts, gap))
		if random.IntN(3) == 0 {
			text = strings.ToLower(text)
		}
		r, err := Parse(text)
		if assert.NoError(t, err, "%q", text) {
			assert.Equal(t, s, r.Square, "%q", text)
			assert.Empty(t, r.Doubt, "%q", text)
		}
	}
}

// Any full easting and northing on British land is read as it is.
func TestRandomPairs(t *testing.T) {
	random := rand.New(rand.NewPCG(61, 67))
	forms := []string{"%d %d", "%d,%d", "%d, %d", "%d/%d", "E%d N%d", "E %d, N %d", "%dE %dN", "Easting %d Northing %d", "(%d, %d)", "%d.0 %d.0"}
	for range 20_000 {
		s, err := Plane{British, random.Float64() * 700_000, random.Float64() * 1_250_000}.Square(1)
		// Five figures each way are asked about, but for Scilly.
		short := s.Easting < 100_000 && s.Northing < 100_000
		if err != nil || !s.HasLand() || s.elsewhere() || s.Easting < 5000 || short || s.Easting%1000+s.Northing%1000 == 0 {
			continue
		}
		if s.Northing < 10_000 {
			continue // only sea
		}
		text := fmt.Sprintf(forms[random.IntN(len(forms))], s.Easting, s.Northing)
		r, err := Parse(text)
		if assert.NoError(t, err, "%q", text) {
			assert.Equal(t, s, r.Square, "%q", text)
			assert.Empty(t, r.Doubt, "%q", text)
			assert.Equal(t, British, r.Pair.Grid, "%q", text)
		}
	}
}

// Any place in these islands written in any of the usual styles is read there.
func TestRandomDegreesInEveryStyle(t *testing.T) {
	random := rand.New(rand.NewPCG(71, 73))
	for range 20_000 {
		s := randomSquare(random)
		p := s.Point()
		if !home(p) {
			continue
		}
		text, step := writeDegrees(random, p)
		r, err := Parse(text)
		if assert.NoError(t, err, "%q", text) {
			require.True(t, r.Geographic(), "%q", text)
			assert.Empty(t, r.Doubt, "%q", text)
			assert.InDelta(t, p.Lat, r.Place.Lat, step*1.01, "%q", text)
			assert.InDelta(t, p.Lon, r.Place.Lon, step*1.01, "%q", text)
			assert.GreaterOrEqual(t, r.Place.Uncertainty*1.001, min(apart(p, r.Place), math.Inf(1)), "%q", text)
		}
	}
}

// writeDegrees writes a point in one of many ways, truncated, and returns what
// one in the last place is worth.
func writeDegrees(random *rand.Rand, p Point) (text string, step float64) {
	ns, ew := "N", "E"
	if p.Lon < 0 {
		ew = "W"
	}
	lat, lon := p.Lat, math.Abs(p.Lon)
	split := func(v float64) (d, m int, s float64) {
		d = int(v)
		m = int((v - float64(d)) * 60)
		return d, m, (v - float64(d) - float64(m)/60) * 3600
	}
	d1, m1, s1 := split(lat)
	d2, m2, s2 := split(lon)
	i1, i2 := int(s1), int(s2)
	switch random.IntN(8) {
	case 0:
		return fmt.Sprintf("%.5f, %.5f", p.Lat, p.Lon), 1e-5
	case 1:
		return fmt.Sprintf("%.4f%s %.4f%s", lat, ns, lon, ew), 1e-4
	case 2:
		return fmt.Sprintf("%.4f° %s, %.4f° %s", lat, ns, lon, ew), 1e-4
	case 3:
		return fmt.Sprintf("%d°%d'%d\"%s %d°%d'%d\"%s", d1, m1, i1, ns, d2, m2, i2, ew), 1.0 / 3600
	case 4:
		return fmt.Sprintf("%s %d° %02d’ %02d” %s %03d° %02d’ %02d”", ns, d1, m1, i1, ew, d2, m2, i2), 1.0 / 3600
	case 5:
		return fmt.Sprintf("%d %d %d %s, %d %d %d %s", d1, m1, i1, ns, d2, m2, i2, ew), 1.0 / 3600
	case 6:
		return fmt.Sprintf("%02d%02d%02d%s %03d%02d%02d%s", d1, m1, i1, ns, d2, m2, i2, ew), 1.0 / 3600
	}
	return strings.ReplaceAll(fmt.Sprintf("%.5f %.5f", p.Lat, p.Lon), ".", ","), 1e-5
}
