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
// though its 100 km square has British land. The first conditions are only
// there to be quick.
func (s Square) elsewhere() bool {
	switch {
	case s.Grid != British || s.Size > 10_000:
		return false
	case s.Easting < 200_000 && s.Northing < 750_000:
		return s.irish()
	case s.Easting >= 600_000 && s.Northing < 150_000:
		p := s.Point()
		return inFrance(p.Lat, p.Lon)
	}
	return false
}

// plainFigures moves the 100 km square s to what the rest of its reference
// says.
func (s *Square) plainFigures(text string) bool {
	figures, gap, mark := 0, -1, byte(0)
	var value int64
	i := 0
	for ; i < len(text); i++ {
		c := text[i]
		if gap < 0 && isGap(c) {
			gap, mark = figures, c
			continue
		}
		if c < '0' || c > '9' {
			break
		}
		value = value*10 + int64(c-'0')
		figures++
	}
	if figures == 0 || figures%2 == 1 || figures > 10 || gap >= 0 && (gap != figures/2 && i == len(text) || isGap(text[i-1]) && i < len(text) && figures != 2) {
		return false
	}
	power, size := int64(1), int32(hundredKM)
	for range figures / 2 {
		power *= 10
		size /= 10
	}
	if gap > 0 && mark != ' ' && mark != '.' && (figures == 4 || figures == 8) && near(value/power, value%power, figures/2) {
		// Perhaps two references.
		return false
	}
	s.Easting += int32(value/power) * size
	s.Northing += int32(value%power) * size
	s.Size = size
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
func isGap(c byte) bool { return c == ' ' || c == '.' || c == '-' || c == '/' || c == ',' }

func upper(c byte) byte {
	if c >= 'a' && c <= 'z' {
		c -= 'a' - 'A'
	}
	return c
}
