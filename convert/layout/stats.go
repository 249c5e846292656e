package layout

import "math/bits"

// stats sums up what the cells of a column look like.
type stats struct {
	n        int // cells with text, dittos apart
	blank    int
	ditto    int
	by       [32]int
	distinct map[string]int
	// Steps of whole numbers, one row to the next.
	steps, stepsOfOne int
	lastInt           int
	hasInt            bool
	lengths           [16]int // of digit-only texts
	pairs             int     // 458 883
	dotted3           int     // 73.317
	big               int     // whole numbers above 10,000
	numbers           int
	longest           int
}

const maxDistinct = 3000

func (s *stats) add(text string, l look) {
	if l.is(lookDitto) {
		s.ditto++
		return
	}
	s.n++
	for b := l; b != 0; b &= b - 1 {
		s.by[bits.TrailingZeros32(uint32(b))]++
	}
	if s.distinct == nil {
		s.distinct = map[string]int{}
	}
	if len(s.distinct) < maxDistinct {
		s.distinct[text]++
	}
	s.longest = max(s.longest, len(text))
	if n, ok := isInt(text); ok {
		s.numbers++
		if s.hasInt {
			s.steps++
			if n == s.lastInt+1 {
				s.stepsOfOne++
			}
		}
		s.lastInt, s.hasInt = n, true
		s.lengths[min(len(text), 15)]++
		if n > 10000 {
			s.big++
		}
	} else if len(text) == 10 && allDigits(text) {
		s.lengths[10]++ // the figures of a square of one metre
	} else if l.is(lookDecimal) {
		s.numbers++
		if i := len(text) - 4; i > 0 && text[i] == '.' {
			s.dotted3++
		}
	} else if isScientificNumber(text) {
		s.lengths[6]++ // 5.45E+05 was six figures
	} else if isPairOfFigures(text) {
		s.pairs++
	}
}

// share is the part of the column's cells that look like any of the bits,
// counted generously by the commonest of them.
func (s *stats) share(m look) float64 {
	if s.n == 0 {
		return 0
	}
	best := 0
	for b := m; b != 0; b &= b - 1 {
		best = max(best, s.cells(b&-b))
	}
	return float64(best) / float64(s.n)
}

// cells counts the cells that have a look, a single one.
func (s *stats) cells(l look) int { return s.by[bits.TrailingZeros32(uint32(l))] }

// shares sums the parts of several looks that exclude each other.
func (s *stats) shares(ms ...look) float64 {
	f := 0.0
	for _, m := range ms {
		f += s.share(m)
	}
	return min(f, 1)
}

// sequential reports whether the column counts its rows.
func (s *stats) sequential() bool {
	return s.n >= 3 && s.numbers == s.n && s.steps >= 2 && s.stepsOfOne*10 >= s.steps*9 && len(s.distinct) == min(s.n, maxDistinct)
}
