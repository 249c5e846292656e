package area

// Crossing returns a place, latitude and longitude in degrees, near which a
// ring of the area crosses itself or another: what lies inside is then a
// matter of how it is counted. Rings that only touch do not cross.
func (a *Area) Crossing() (lat, lon float64, found bool) {
	for i := range a.parts {
		for _, sides := range a.parts[i].bands {
			for k := range sides {
				for _, other := range sides[:k] {
					if s := sides[k]; apart(s.from[0], s.to[0], other.from[0], other.to[0]) || apart(s.from[1], s.to[1], other.from[1], other.to[1]) {
						continue
					} else if cross(s.from, s.to, other.from, other.to) {
						return (s.from[1] + s.to[1] + other.from[1] + other.to[1]) / 4, (s.from[0] + s.to[0] + other.from[0] + other.to[0]) / 4, true
					}
				}
			}
		}
	}
	return 0, 0, false
}

// apart tells whether two intervals have nothing in common.
func apart(a, b, c, d float64) bool { return max(a, b) < min(c, d) || max(c, d) < min(a, b) }
