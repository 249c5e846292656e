package area

import (
	"math"

	"github.com/paulmach/orb"
)

const (
	// sidesInBand is about how many sides a band is to have.
	sidesInBand = 8
	// mostAgain is how often a side may be laid out again, on average: long
	// ones lie in many bands.
	mostAgain = 3
)

func newPart(p orb.Polygon) part {
	n, rise := 0, 0.0
	for _, ring := range p {
		n += len(ring) - 1
		for i := 1; i < len(ring); i++ {
			rise += math.Abs(ring[i][1] - ring[i-1][1])
		}
	}
	out := part{Polygon: p, box: p.Bound()}
	bands := float64(n/sidesInBand + 1)
	if height := out.box.Max[1] - out.box.Min[1]; height > 0 {
		bands = min(bands, 1+mostAgain*float64(n)*height/rise)
	}
	out.bands = make([][]side, int(bands))
	for _, ring := range p {
		for i := 1; i < len(ring); i++ {
			s := side{ring[i-1], ring[i]}
			for b := out.band(min(s.from[1], s.to[1])); b <= out.band(max(s.from[1], s.to[1])); b++ {
				out.bands[b] = append(out.bands[b], s)
			}
		}
	}
	return out
}

// band is the number of the band that holds a latitude.
func (p *part) band(lat float64) int {
	height := p.box.Max[1] - p.box.Min[1]
	if !(height > 0) {
		return 0
	}
	return min(max(int((lat-p.box.Min[1])/height*float64(len(p.bands))), 0), len(p.bands)-1)
}

// contains tells whether a point lies in the polygon or on its edge: whether a
// ray from it to the east crosses an odd number of sides.
func (p *part) contains(at orb.Point) bool {
	if !p.box.Contains(at) {
		return false
	}
	odd := false
	for _, s := range p.bands[p.band(at[1])] {
		a, b := s.from, s.to
		turn := (b[0]-a[0])*(at[1]-a[1]) - (b[1]-a[1])*(at[0]-a[0])
		if turn == 0 && min(a[0], b[0]) <= at[0] && at[0] <= max(a[0], b[0]) && min(a[1], b[1]) <= at[1] && at[1] <= max(a[1], b[1]) {
			return true
		}
		if (a[1] > at[1]) != (b[1] > at[1]) && (turn > 0) == (b[1] > a[1]) {
			odd = !odd
		}
	}
	return odd
}

// crosses tells whether a side of the polygon crosses one of the outline.
func (p *part) crosses(o Outline) bool {
	for b := p.band(o.box.Min[1]); b <= p.band(o.box.Max[1]); b++ {
		for _, s := range p.bands[b] {
			from, to := s.from, s.to
			if max(from[0], to[0]) < o.box.Min[0] || min(from[0], to[0]) > o.box.Max[0] || max(from[1], to[1]) < o.box.Min[1] || min(from[1], to[1]) > o.box.Max[1] {
				continue
			}
			for j := 1; j < len(o.ring); j++ {
				if cross(from, to, o.ring[j-1], o.ring[j]) {
					return true
				}
			}
		}
	}
	return false
}

// cross tells whether two line segments cross in a point inside both.
func cross(a, b, c, d orb.Point) bool {
	turn := func(p, q, r orb.Point) float64 { return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0]) }
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}
