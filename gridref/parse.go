package gridref

import "strings"

// Parse reads one place as written: a reference to the British or Irish grid
// or to the Channel Islands' squares, a full easting and northing, UTM, MGRS,
// or latitude and longitude. Case, spaces of every kind, full stops, commas,
// slashes, hyphens and brackets between the parts do not matter, nor does
// "approx" around them. The error is always a *Fault.
//
// The squares read are those of [Standard], and 500 m quarters of a monad
// ("TL4881NE"). Degrees outside these islands are read as they are, unless
// only the two values' order or a sign keeps them from lying within.
func Parse(text string) (Reading, error) {
	if s, ok := parsePlain(text); ok {
		return Reading{Square: s, Note: s.datumNote()}, nil
	}
	if r, ok := parsePlainDegrees(text); ok {
		return r, nil
	}
	return parseAnyhow(text)
}

// datumNote tells what an old map would change about a small square.
func (s Square) datumNote() string {
	if s.Grid == ChannelIslands && s.Size <= 100 {
		return "Read on WGS84. A reference from an old map of the Channel Islands, on the European Datum 1950, lies some 150 m away."
	}
	return ""
}

// parsePlain reads the common forms fast: letters, figures, a suffix, with
// single spaces between; anything with a doubt is left to parseAnyhow.
func parsePlain(text string) (Square, bool) {
	s, ok := readPlain(text)
	return s, ok && !s.gluedYear(text)
}

// gluedYear reports whether the last figures of a reference to 10 m may be a
// year behind one to 1 km: "TL4581 2019", but not "TL 4581 2019".
func (s Square) gluedYear(text string) bool {
	year := s.Northing / 10 % 10_000
	if s.Size != 10 || year < 1950 || year > 2029 {
		return false
	}
	text = strings.TrimSpace(text)
	lead := 2
	if s.Grid == Irish {
		lead = 1
	}
	return len(text) == lead+9 && isDigit(text[lead])
}

func readPlain(text string) (Square, bool) {
	i, end := 0, len(text)
	for end > 0 && text[end-1] == ' ' {
		end--
	}
	for i < end && text[i] == ' ' {
		i++
	}
	if end-i < 3 {
		return Square{}, false
	}
	var s Square
	var ok bool
	first := upper(text[i])
	i++
	if second := upper(text[i]); second >= 'A' && second <= 'Z' {
		i++
		s.Grid = British
		if first == 'W' {
			s.Grid = ChannelIslands
			s.Easting, s.Northing, ok = channelOrigin(first, second)
		} else {
			s.Easting, s.Northing, ok = britishOrigin(first, second)
		}
	} else {
		s.Grid = Irish
		s.Easting, s.Northing, ok = irishOrigin(first)
	}
	if !ok || !s.HasLand() {
		return Square{}, false
	}
	if isGap(text[i]) {
		i++
	}
	return s, s.plainFigures(text[i:end]) && !s.elsewhere()
}

// elsewhere reports whether a British reference lies in Ireland or in France,
// though its 100 km square has British land.
func (s Square) elsewhere() bool {
	if s.Grid != British || s.Size > 10_000 {
		return false
	}
	east, north := s.Easting+s.Size/2, s.Northing+s.Size/2
	switch band := uint(north) / irishBand; {
	case band < uint(len(irishEast)) && east < irishEast[band]:
		return s.irish()
	case east >= 600_000 && north < 150_000:
		p := s.Point()
		return inFrance(p.Lat, p.Lon)
	}
	return false
}

// irishEast bounds what may lie in Ireland on the British grid, so that most
// references need not be asked: the eastings, in metres, that nothing on the
// Irish side of the sea reaches in each band of northings from 0 up.
var irishEast = [...]int32{0, 0, 45_000, 127_000, 141_000, 172_000, 177_000, 183_000, 193_000, 196_000, 195_000, 185_000, 155_000, 88_000}

const irishBand = 50_000

// plainFigures moves the 100 km square s to what the rest of its reference
// says.
func (s *Square) plainFigures(text string) bool {
	figures, gap, mark := 0, -1, byte(0)
	var value uint64
	i := 0
	for ; i < len(text); i++ {
		c := text[i]
		if digit := c - '0'; digit <= 9 {
			value = value*10 + uint64(digit)
			figures++
			continue
		}
		if gap >= 0 || !isGap(c) {
			break
		}
		gap, mark = figures, c
	}
	if figures == 0 || figures%2 == 1 || figures > 10 || gap >= 0 && (gap != figures/2 && i == len(text) || isGap(text[i-1]) && i < len(text) && figures != 2) {
		return false
	}
	// Division by what is known beforehand is quicker.
	var east, north uint64
	switch figures {
	case 2:
		east, north, s.Size = value/10, value%10, 10_000
	case 4:
		east, north, s.Size = value/100, value%100, 1000
	case 6:
		east, north, s.Size = value/1000, value%1000, 100
	case 8:
		east, north, s.Size = value/10_000, value%10_000, 10
	case 10:
		east, north, s.Size = value/hundredKM, value%hundredKM, 1
	}
	if gap > 0 && mark != ' ' && mark != '.' && (figures == 4 || figures == 8) && near(int64(east), int64(north), figures/2) {
		// Perhaps two references.
		return false
	}
	s.Easting += int32(east) * s.Size
	s.Northing += int32(north) * s.Size
	if i == len(text) {
		return true
	}
	if gap >= 0 && gap != 2 {
		return false
	}
	return s.suffix(text[i:])
}

// suffix narrows a square by a tetrad's letter or a quadrant's two.
func (s *Square) suffix(text string) bool {
	switch {
	case len(text) == 1 && s.Size == 10_000:
		col, row, ok := tetradPlace(upper(text[0]))
		s.Easting, s.Northing, s.Size = s.Easting+col*2000, s.Northing+row*2000, 2000
		return ok
	case len(text) == 2 && (s.Size == 10_000 || s.Size == 1000):
		east, north, ok := quadrant(upper(text[0]), upper(text[1]))
		s.Size /= 2
		if east {
			s.Easting += s.Size
		}
		if north {
			s.Northing += s.Size
		}
		return ok
	}
	return false
}

// isGap reports the single characters that commonly part a reference.
func isGap(c byte) bool {
	const gaps = 1<<' ' | 1<<'.' | 1<<'-' | 1<<'/' | 1<<','
	return c < 64 && uint64(gaps)>>c&1 == 1
}

func upper(c byte) byte {
	if c >= 'a' && c <= 'z' {
		c -= 'a' - 'A'
	}
	return c
}
