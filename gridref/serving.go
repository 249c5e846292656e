package gridref

// Serving returns the grid that recorders at the point use: the British
// National Grid in Great Britain and the Isle of Man, the Irish Grid in
// Ireland, the Channel Islands' squares there, and elsewhere UTM or UPS by the
// rules of NGA.STND.0037.
func (p Point) Serving() Grid {
	switch {
	case !(p.Lat >= -90 && p.Lat <= 90 && p.Lon >= -180 && p.Lon <= 180):
		return NoGrid
	case inChannelIslands(p.Lat, p.Lon):
		return ChannelIslands
	case p.Lat > 49 && p.Lat < 62 && p.Lon > -12 && p.Lon < 3:
		if inIreland(p.Lat, p.Lon) {
			if s, err := p.Square(Irish, hundredKM); err == nil && s.HasLand() {
				return Irish
			}
		} else if !inFrance(p.Lat, p.Lon) {
			if s, err := p.Square(British, hundredKM); err == nil && s.HasLand() {
				return British
			}
		}
	}
	return worldGrid(p.Lat, p.Lon)
}

// The line between the grids in the sea between the islands, and the lines
// around the Channel Islands and through the Strait of Dover, are ours: they
// run midway between the coasts.
var ireland = []Point{
	{Lat: 50.5, Lon: -11.5}, {Lat: 56.5, Lon: -11.5}, {Lat: 55.75, Lon: -7.3}, {Lat: 55.45, Lon: -6.4},
	{Lat: 55.28, Lon: -5.95}, {Lat: 55, Lon: -5.5}, {Lat: 54.7, Lon: -5.32}, {Lat: 54.4, Lon: -5.2},
	{Lat: 54, Lon: -5.15}, {Lat: 53.5, Lon: -5.3}, {Lat: 52.5, Lon: -5.4}, {Lat: 52, Lon: -5.9},
	{Lat: 51.5, Lon: -6}, {Lat: 51, Lon: -7.5},
}

// inIreland counts the edges of the line that a ray eastwards crosses.
func inIreland(lat, lon float64) (inside bool) {
	last := ireland[len(ireland)-1]
	for _, next := range ireland {
		if (last.Lat > lat) != (next.Lat > lat) &&
			lon < last.Lon+(lat-last.Lat)/(next.Lat-last.Lat)*(next.Lon-last.Lon) {
			inside = !inside
		}
		last = next
	}
	return inside
}

func inChannelIslands(lat, lon float64) bool {
	return lat > 48.9 && lat < 49.85 && lon > -2.85 && lon < -1.87 && !(lat > 49.6 && lon > -2.05)
}

func inFrance(lat, lon float64) bool { return lat < 51.05 && lon > 1.3 }

// worldGrid returns the UTM zone, with the exceptions of Norway and Svalbard,
// or the polar grid.
func worldGrid(lat, lon float64) Grid {
	switch {
	case lat >= 84:
		return PolarNorth
	case lat < -80:
		return PolarSouth
	}
	zone := min(int((lon+180)/6)+1, 60)
	switch {
	case lat >= 56 && lat < 64 && lon >= 3 && lon < 12:
		zone = 32
	case lat >= 72 && lon >= 0 && lon < 42:
		zone = 31 + 2*int((lon+3)/12)
	}
	return UTM(zone, lat < 0)
}
