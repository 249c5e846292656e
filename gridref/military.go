package gridref

// military is the name of a 100 km square in the Military Grid Reference
// System (NGA.STND.0037): zone (0 on the polar grids), band, column and row.
type military struct {
	zone              int
	band, column, row byte
}

const (
	bands       = "CDEFGHJKLMNPQRSTUVWX" // 8 degrees each from 80 south; X has 12
	rowLetters  = "ABCDEFGHJKLMNPQRSTUV"
	rowCycle    = int32(len(rowLetters)) * hundredKM
	evenRows    = 5 // the row letters of even zones begin at F
	falseSouth  = 10_000_000
	firstColumn = 1
)

var columnSets = [3]string{"ABCDEFGH", "JKLMNPQR", "STUVWXYZ"}

// polarSet is one half of a polar grid: its columns' letters from the west,
// the easting of the first and the northing of row A, in 100 km.
type polarSet struct {
	band               byte
	grid               Grid
	columns, rows      string
	firstCol, firstRow int32
}

var polarSets = [4]polarSet{
	{'A', PolarSouth, "JKLPQRSTUXYZ", "ABCDEFGHJKLMNPQRSTUVWXYZ", 8, 8},
	{'B', PolarSouth, "ABCFGHJKLPQR", "ABCDEFGHJKLMNPQRSTUVWXYZ", 20, 8},
	{'Y', PolarNorth, "RSTUXYZ", "ABCDEFGHJKLMNP", 13, 13},
	{'Z', PolarNorth, "ABCFGHJ", "ABCDEFGHJKLMNP", 20, 13},
}

// bandOf returns the band letter of a latitude in degrees.
func bandOf(lat float64) byte {
	i := int((lat + 80) / 8)
	return bands[min(max(i, 0), len(bands)-1)]
}

// bandLimits returns the latitudes of a band; ok is false for other letters.
func bandLimits(band byte) (south, north float64, ok bool) {
	for i := range len(bands) {
		if bands[i] == band {
			south = float64(8*i - 80)
			if band == 'X' {
				return south, 84, true
			}
			return south, south + 8, true
		}
	}
	return 0, 0, false
}

// military names the 100 km square around the square's corner. The band is
// that of the square's centre.
func (s Square) military() (military, bool) {
	col, row := s.Easting/hundredKM, s.Northing/hundredKM
	if s.Grid == PolarNorth || s.Grid == PolarSouth {
		for i := range polarSets {
			p := &polarSets[i]
			c, r := col-p.firstCol, row-p.firstRow
			if p.grid == s.Grid && c >= 0 && c < int32(len(p.columns)) && r >= 0 && r < int32(len(p.rows)) {
				return military{band: p.band, column: p.columns[c], row: p.rows[r]}, true
			}
		}
		return military{}, false
	}
	zone := s.Grid.Zone()
	if zone == 0 || col < firstColumn || col > 8 || s.Northing < 0 || s.Northing >= falseSouth {
		return military{}, false
	}
	lat, _, _ := s.Centre().geographic()
	shift := int32(0)
	if zone%2 == 0 {
		shift = evenRows
	}
	return military{
		zone:   zone,
		band:   bandOf(lat),
		column: columnSets[(zone-1)%3][col-firstColumn],
		row:    rowLetters[(row+shift)%int32(len(rowLetters))],
	}, true
}

// corner returns the grid and the south-west corner of a named 100 km square;
// ok is false where no such square exists, or none in that band.
func (m military) corner() (g Grid, east, north int32, ok bool) {
	if m.zone == 0 {
		for i := range polarSets {
			p := &polarSets[i]
			c, r := index(p.columns, m.column), index(p.rows, m.row)
			if p.band == m.band && c >= 0 && r >= 0 {
				return p.grid, (c + p.firstCol) * hundredKM, (r + p.firstRow) * hundredKM, true
			}
		}
		return NoGrid, 0, 0, false
	}
	south, top, ok := bandLimits(m.band)
	if !ok || m.zone > 60 {
		return NoGrid, 0, 0, false
	}
	g = UTM(m.zone, m.band < 'N')
	c, r := index(columnSets[(m.zone-1)%3], m.column), index(rowLetters, m.row)
	if c < 0 || r < 0 {
		return NoGrid, 0, 0, false
	}
	if m.zone%2 == 0 {
		r = (r + rowCycle/hundredKM - evenRows) % (rowCycle / hundredKM)
	}
	east = (c + firstColumn) * hundredKM
	for north = r * hundredKM; north < falseSouth; north += rowCycle {
		if overlapsBand(g, east, north, south, top) {
			return g, east, north, true
		}
	}
	return NoGrid, 0, 0, false
}

// overlapsBand reports whether any part of a 100 km square lies in a band.
func overlapsBand(g Grid, east, north int32, south, top float64) bool {
	least, most := 90.0, -90.0
	for i := range int32(9) {
		p := Plane{g, float64(east + i%3*hundredKM/2), float64(north + i/3*hundredKM/2)}
		lat, _, _ := p.geographic()
		least, most = min(least, lat), max(most, lat)
	}
	return most > south && least < top
}

func index(letters string, c byte) int32 {
	for i := range len(letters) {
		if letters[i] == c {
			return int32(i)
		}
	}
	return -1
}
