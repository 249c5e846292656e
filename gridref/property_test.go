package gridref

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// randomSquare is a standard square with land anywhere on a grid.
func randomSquare(random *rand.Rand) Square {
	for {
		p := Plane{Grid: British, Easting: random.Float64() * 700_000, Northing: random.Float64() * 1_300_000}
		switch random.IntN(10) {
		case 0:
			p = Plane{Grid: ChannelIslands, Easting: 500_000 + random.Float64()*100_000, Northing: 5_400_000 + random.Float64()*200_000}
		case 1, 2, 3:
			p = Plane{Grid: Irish, Easting: random.Float64() * 400_000, Northing: random.Float64() * 500_000}
		case 4:
			zone := 1 + random.IntN(60)
			p = Plane{Grid: UTM(zone, random.IntN(2) == 0), Easting: 170_000 + random.Float64()*660_000, Northing: 1_200_000 + random.Float64()*7_000_000}
		}
		s, err := p.Square(sizes[random.IntN(len(sizes))])
		if err == nil && s.HasLand() {
			return s
		}
	}
}

// apart bounds the distance on the ellipsoid in metres from above: the chord
// bent to the smallest radius of curvature there is.
func apart(a, b Point) float64 {
	const leastRadius = 6_335_439
	ax, ay, az := wgs84.geocentric(radians(a.Lat, a.Lon))
	bx, by, bz := wgs84.geocentric(radians(b.Lat, b.Lon))
	chord := math.Sqrt((ax-bx)*(ax-bx) + (ay-by)*(ay-by) + (az-bz)*(az-bz))
	return 2 * leastRadius * math.Asin(chord/(2*leastRadius))
}

func TestRandomSquares(t *testing.T) {
	count := 1_000_000
	if testing.Short() {
		count = 50_000
	}
	random := rand.New(rand.NewPCG(29, 31))
	for range count {
		s := randomSquare(random)
		ref := s.String()
		read, err := Parse(ref)
		if f := (*Fault)(nil); errors.As(err, &f) && f.Code == DateOnly {
			// Some squares in MGRS are dates too: 24JUL.
			continue
		}
		if err != nil {
			require.NoError(t, err, ref)
		}
		named := read.Square
		if s.Grid == ChannelIslands || s.Grid.lettered() {
			if named != s {
				require.Equal(t, s, named, ref)
			}
		} else if named.String() != ref {
			// A name may lie in another band than its 100 km square's centre.
			require.Equal(t, ref, named.String())
		}
		p := s.Point()
		again, err := p.Smallest(s.Grid)
		if err != nil || again != s {
			require.NoError(t, err, ref)
			require.Equal(t, s, again, ref)
		}
		worst := 0.0
		for _, c := range s.Corners() {
			worst = max(worst, apart(p, c))
		}
		if worst > p.Uncertainty {
			require.LessOrEqual(t, worst, p.Uncertainty, ref)
		}
		// Nor is more claimed than needed: the bound of the scale and stretch,
		// the rounding up, and the transformation.
		if most := worst*1.006 + s.Transformation().Accuracy() + 1; p.Uncertainty > most && !(s.Grid == British && s.leavesCover()) {
			require.LessOrEqual(t, p.Uncertainty, most, ref)
		}
	}
}

func TestBackFromOutputDecimals(t *testing.T) {
	random := rand.New(rand.NewPCG(37, 41))
	round := func(v float64) float64 { return math.Round(v*1e7) / 1e7 }
	for range 20_000 {
		s := randomSquare(random)
		p := s.Point()
		p.Lat, p.Lon = round(p.Lat), round(p.Lon)
		again, err := p.Smallest(s.Grid)
		require.NoError(t, err, s.String())
		assert.Equal(t, s, again, s.String())
	}
}

func TestNoAllocation(t *testing.T) {
	shifts()
	s := Square{British, 548_300, 281_200, 100}
	buffer := make([]byte, 0, 32)
	var sum float64
	for name, f := range map[string]func(){
		"Parse":          func() { r, _ := Parse("TL 483 812"); sum += float64(r.Square.Size) },
		"Parse degrees":  func() { r, _ := Parse("52.4091617, 0.1795509"); sum += r.Place.Lat },
		"Square.Point":   func() { sum += s.Point().Lat },
		"Point.Smallest": func() { q, _ := Point{52.4, 0.18, 70}.Smallest(British); sum += float64(q.Size) },
		"Square.Append":  func() { buffer = s.Append(buffer[:0]) },
		"Irish":          func() { sum += Square{Irish, 212_000, 334_000, 1000}.Point().Lat },
		"UTM":            func() { sum += Square{UTM(31, false), 304_000, 5_803_000, 1000}.Point().Lat },
	} {
		assert.Zero(t, testing.AllocsPerRun(100, f), name)
	}
	assert.NotZero(t, sum)
}
