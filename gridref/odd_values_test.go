package gridref

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/encoding/wkt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whoever imports the package may hand it values that no parser makes. None of
// them panics, and what is said of them does not look like a place.

func TestSquaresThatAreNone(t *testing.T) {
	for g := range 256 {
		for _, size := range []int32{0, -1, 7, 1000, math.MaxInt32, math.MinInt32} {
			for _, at := range []int32{0, -1, 5_500_000, math.MaxInt32, math.MinInt32} {
				s := Square{Grid(g), at, at, size}
				_, _, _, _, _ = s.String(), s.Point(), s.Corners(), s.Transformation(), s.HasLand()
				_, _ = s.Hectad()
				_, _ = s.Tetrad()
				_, _ = s.Monad()
				blurred, err := s.Coarsen(100_000)
				if !s.Valid() {
					require.ErrorIs(t, err, ErrOutside, "%+v", s)
					require.Zero(t, blurred)
				}
			}
		}
	}
	assert.Empty(t, Square{}.String())
	assert.False(t, Square{}.Valid())
}

func TestPlacesThatAreNone(t *testing.T) {
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 91, 1e7}
	for g := range 256 {
		for _, v := range odd {
			for _, other := range append([]float64{0.5}, odd...) {
				for _, p := range []Point{{Lat: v, Lon: other}, {Lat: other, Lon: v}} {
					_ = p.String()
					_, err := p.Square(Grid(g), 1000)
					_, errSmallest := p.Smallest(Grid(g))
					if math.IsNaN(v) {
						require.ErrorIs(t, err, ErrOutside, "%v on %v", p, Grid(g))
						require.ErrorIs(t, errSmallest, ErrOutside)
					}
					if v != 91 || other != 0.5 {
						require.Equal(t, NoGrid, p.Serving(), "%v", p)
					}
				}
				for _, p := range []Plane{{Grid(g), v, other}, {Grid(g), other, v}} {
					_ = p.Point()
					_, err := p.Square(1000)
					if v != 91 {
						require.ErrorIs(t, err, ErrOutside, "%+v", p)
					}
				}
			}
		}
	}
	_, err := Point{Lat: 52.4, Lon: 0.18, Uncertainty: math.NaN()}.Smallest(British)
	require.ErrorIs(t, err, ErrTooRough, "nothing is known of how exact it is")
}

// TestOutlineAcrossTheDateLine: Taveuni in Fiji, through which 180 degrees
// runs. The outline stays about as wide as the square.
func TestOutlineAcrossTheDateLine(t *testing.T) {
	for _, lon := range []float64{179.99, -179.99} {
		for _, zone := range []int{1, 60} {
			s, err := Point{Lat: -16.85, Lon: lon}.Square(UTM(zone, true), 100_000)
			require.NoError(t, err)
			outline, err := wkt.UnmarshalPolygon(s.WKT())
			require.NoError(t, err)
			bound := outline.Bound()
			assert.InDelta(t, 1, bound.Right()-bound.Left(), 0.1, "%s: %s", s, s.WKT())
			assert.Equal(t, orb.CCW, outline[0].Orientation())
			centre := s.Point()
			assert.True(t, bound.Contains(orb.Point{centre.Lon, centre.Lat}), s.String())
		}
	}
}
