package gridref

// tetrads are the letters of the 2 km squares in a hectad, by columns from the
// west, each from the south. The second row from the top, eastwards, reads
// D I N T Y, which gives the scheme its name. O is left out. Common practice,
// no source.
const tetrads = "ABCDEFGHIJKLMNPQRSTUVWXYZ"

func tetradLetter(col, row int32) byte { return tetrads[col*5+row] }

// tetradPlace returns the column and row, 0 to 4, of a tetrad letter; ok is
// false for O and for anything else.
func tetradPlace(letter byte) (col, row int32, ok bool) {
	for i := int32(0); i < int32(len(tetrads)); i++ {
		if tetrads[i] == letter {
			return i / 5, i % 5, true
		}
	}
	return 0, 0, false
}

func appendQuadrant(b []byte, east, north bool) []byte {
	ns, ew := byte('S'), byte('W')
	if north {
		ns = 'N'
	}
	if east {
		ew = 'E'
	}
	return append(b, ns, ew)
}

// quadrant reads NE, NW, SE and SW.
func quadrant(ns, ew byte) (east, north, ok bool) {
	ok = (ns == 'N' || ns == 'S') && (ew == 'E' || ew == 'W')
	return ew == 'E', ns == 'N', ok
}
