package gridref

// hundredKM is the side of a lettered square in metres.
const hundredKM = 100_000

// letterIndex returns a letter's place, 0 to 24, in the 5 by 5 tables of the
// British and Irish grids, which leave out I; -1 where it has none.
func letterIndex(c byte) int32 {
	switch {
	case c >= 'A' && c < 'I':
		return int32(c - 'A')
	case c > 'I' && c <= 'Z':
		return int32(c-'A') - 1
	}
	return -1
}

// letterOf is the reverse of letterIndex.
func letterOf(index int32) byte {
	if index >= 8 {
		index++
	}
	return 'A' + byte(index)
}

// britishOrigin returns the south-west corner of a 100 km square in metres; ok
// is false for letters outside the grid, whose 500 km squares are H, J, N, O,
// S and T.
func britishOrigin(first, second byte) (east, north int32, ok bool) {
	i, corner := letterIndex(second), first-'A'
	if i < 0 || corner >= 26 || !fiveHundreds[corner].real {
		return 0, 0, false
	}
	o := fiveHundreds[corner]
	return o.east + i%5*hundredKM, o.north + (4-i/5)*hundredKM, true
}

// fiveHundreds holds the south-west corners of the British grid's 500 km
// squares by their letters.
var fiveHundreds = [26]struct {
	east, north int32
	real        bool
}{
	'S' - 'A': {0, 0, true},
	'T' - 'A': {500_000, 0, true},
	'N' - 'A': {0, 500_000, true},
	'O' - 'A': {500_000, 500_000, true},
	'H' - 'A': {0, 1_000_000, true},
	'J' - 'A': {500_000, 1_000_000, true},
}

// britishLetters is the reverse; ok is false outside the lettered area.
func britishLetters(east, north int32) (first, second byte, ok bool) {
	if east < 0 || north < 0 || east >= 10*hundredKM || north >= 15*hundredKM {
		return 0, 0, false
	}
	col, row := east/hundredKM, north/hundredKM
	return "STNOHJ"[col/5+2*(row/5)], letterOf((4-row%5)*5 + col%5), true
}

// irishOrigin returns the south-west corner of an Irish 100 km square.
func irishOrigin(letter byte) (east, north int32, ok bool) {
	i := letterIndex(letter)
	if i < 0 {
		return 0, 0, false
	}
	return i % 5 * hundredKM, (4 - i/5) * hundredKM, true
}

// irishLetter is the reverse; ok is false outside the lettered area.
func irishLetter(east, north int32) (letter byte, ok bool) {
	if east < 0 || north < 0 || east >= 5*hundredKM || north >= 5*hundredKM {
		return 0, false
	}
	return letterOf((4-north/hundredKM)*5 + east/hundredKM), true
}

// The WA and WV squares of UTM zone 30 north lie one above the other.
const (
	channelEast    = 500_000
	channelNorthWV = 5_400_000
	channelNorthWA = 5_500_000
)

func channelOrigin(first, second byte) (east, north int32, ok bool) {
	if first == 'W' {
		switch second {
		case 'A':
			return channelEast, channelNorthWA, true
		case 'V':
			return channelEast, channelNorthWV, true
		}
	}
	return 0, 0, false
}

func channelLetter(east, north int32) (second byte, ok bool) {
	if east >= channelEast && east < channelEast+hundredKM {
		switch north / hundredKM {
		case channelNorthWA / hundredKM:
			return 'A', true
		case channelNorthWV / hundredKM:
			return 'V', true
		}
	}
	return 0, false
}
