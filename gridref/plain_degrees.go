package gridref

// parsePlainDegrees reads two decimal numbers without letters that lie in
// these islands as written, the commonest form, fast; anything with a doubt is
// left to parseAnyhow.
func parsePlainDegrees(text string) (Reading, bool) {
	lat, rest, ok := cutDecimal(text)
	if !ok || rest == "" || rest[0] != ',' && rest[0] != ' ' && rest[0] != ';' && rest[0] != '\t' {
		return Reading{}, false
	}
	lon, rest, ok := cutDecimal(rest[1:])
	if !ok || rest != "" {
		return Reading{}, false
	}
	p := Point{Lat: lat.value, Lon: lon.value}
	if !home(p) {
		return Reading{}, false
	}
	p.Uncertainty = uncertainty(p.Lat, lat.precision, lon.precision)
	return Reading{Place: p}, true
}

// cutDecimal takes a decimal number off a text, with the spaces about it. It
// leaves numbers that a float64 does not hold exactly to others.
func cutDecimal(text string) (a angle, rest string, ok bool) {
	i := 0
	for i < len(text) && text[i] == ' ' {
		i++
	}
	if i < len(text) && text[i] == '-' {
		a.negative, a.signed = true, true
		i++
	}
	digits, point := int64(0), -1
	start := i
	for ; i < len(text); i++ {
		c := text[i]
		if c == '.' && point < 0 {
			point = i
			continue
		}
		if !isDigit(c) {
			break
		}
		digits = digits*10 + int64(c-'0')
	}
	decimals := i - point - 1
	if point <= start || point > start+3 || decimals < 1 || i-start > 16 {
		return a, text, false
	}
	scale := 1.0
	for range decimals {
		scale *= 10
	}
	a.value, a.precision = float64(digits)/scale, 1/scale
	if a.negative {
		a.value = -a.value
	}
	end := i
	for end < len(text) && text[end] == ' ' {
		end++
	}
	// A space that separates the values stays.
	if end == len(text) || text[end] == ',' || text[end] == ';' || text[end] == '\t' {
		i = end
	}
	return a, text[i:], true
}
