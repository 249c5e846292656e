package layout

import "strings"

// figured is the part of the cells that hold figures.
func (s *stats) figured() float64 {
	n, all := 0, 0
	for t, k := range s.distinct {
		all += k
		if strings.ContainsAny(t, "0123456789") {
			n += k
		}
	}
	return float64(n) / float64(max(1, all))
}
