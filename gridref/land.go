package gridref

// The 100 km squares with land, from memory of the two national grids' index
// diagrams. HX has Sule Skerry, OV a strip of the Yorkshire coast, TV Beachy
// Head; Irish land beneath the British grid does not count as British.
var (
	britishLand = landOf(britishPair,
		"HP HT HU HW HX HY HZ "+
			"NA NB NC ND NF NG NH NJ NK NL NM NN NO NR NS NT NU NW NX NY NZ OV "+
			"SC SD SE SH SJ SK SM SN SO SP SR SS ST SU SV SW SX SY SZ "+
			"TA TF TG TL TM TQ TR TV ")
	irishLand = landOf(irishPair, "B  C  D  F  G  H  J  L  M  N  O  Q  R  S  T  V  W  X  ")
)

// landMask has a bit for each 100 km column, in an item for each row.
type landMask [15]uint16

func landOf(origin func(string) (int32, int32, bool), squares string) (m landMask) {
	for ; len(squares) >= 3; squares = squares[3:] {
		if e, n, ok := origin(squares[:3]); ok {
			m[n/hundredKM] |= 1 << (e / hundredKM)
		}
	}
	return m
}

func britishPair(s string) (int32, int32, bool) { return britishOrigin(s[0], s[1]) }
func irishPair(s string) (int32, int32, bool)   { return irishOrigin(s[0]) }

func (m *landMask) has(east, north int32) bool {
	if east < 0 || north < 0 {
		return false
	}
	col, row := east/hundredKM, north/hundredKM
	return row < int32(len(m)) && col < 16 && m[row]>>col&1 == 1
}

// HasLand reports whether the 100 km square around the square's south-west
// corner has any land of the grid's own countries. Grids that serve the whole
// world have no such list, and the answer is true.
func (s Square) HasLand() bool {
	switch s.Grid {
	case British:
		return britishLand.has(s.Easting, s.Northing)
	case Irish:
		return irishLand.has(s.Easting, s.Northing)
	}
	return true
}
