package layout

import "strings"

// scanGridRef reports whether a trimmed text has the shape of a grid
// reference or of coordinates, faults included: it judges columns, it does not
// read references.
func scanGridRef(s string) bool {
	if len(s) < 4 || len(s) > 44 {
		return false
	}
	if l, d, ok := gridParts(s); ok {
		return d%2 == 0 && d <= 10 && (l == 2 && d >= 2 || l == 1 && d >= 4)
	}
	return scanCoordinates(s)
}

// likeGridRef is scanGridRef with an odd number of figures allowed: a slip,
// where the place says that a reference is meant.
func likeGridRef(s string) bool {
	l, d, ok := gridParts(s)
	return ok && d <= 10 && (l == 2 && d >= 2 || l == 1 && d >= 4)
}

// gridParts splits a reference into the number of its leading letters and of
// its figures; a tetrad letter or quadrant may follow.
func gridParts(s string) (letters, figures int, ok bool) {
	tail := 0
	var first [2]byte
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case isLetter(c) && figures == 0:
			if letters == 2 {
				return 0, 0, false
			}
			first[letters] = c &^ 0x20
			letters++
		case isLetter(c):
			if tail++; tail > 2 {
				return 0, 0, false
			}
		case isDigit(c):
			if tail > 0 {
				return 0, 0, false
			}
			figures++
		case c == ' ' || c == '.' || c == '-' || c == '/' || c == ',' || c == '(' || c == ')' || c == 0xC2 || c == 0xA0:
		default:
			return 0, 0, false
		}
	}
	switch letters {
	case 2:
		ok = first[1] != 'I' && (strings.IndexByte("HJNOST", first[0]) >= 0 || first == [2]byte{'W', 'V'} || first == [2]byte{'W', 'A'})
	case 1:
		ok = first[0] != 'I'
	}
	if tail > 0 && figures != 2 {
		ok = ok && figures == 4 // a tetrad or quadrant follows two figures; a slip may follow four
	}
	return letters, figures, ok
}

// isGridLetters: the letters of a 100 km square alone ("TL", "H").
func isGridLetters(s string) bool {
	l, d, ok := gridParts(s)
	return ok && d == 0 && len(s) == l && (l == 2 || l == 1) && s == strings.ToUpper(s)
}

// scanCoordinates: two long figures (easting and northing), or a latitude and
// a longitude in one cell.
func scanCoordinates(s string) bool {
	groups, digits, points, degrees, compass := 0, 0, 0, 0, 0
	wide := true
	for i := 0; i < len(s); {
		c := s[i]
		switch {
		case isDigit(c):
			n := 0
			point := false
			for i < len(s) && (isDigit(s[i]) || s[i] == '.' && !point && i+1 < len(s) && isDigit(s[i+1])) {
				if s[i] == '.' {
					point = true
				} else if !point {
					n++
				}
				i++
			}
			groups++
			digits += n
			if point {
				points++
			}
			if n < 5 || n > 7 {
				wide = false
			}
			continue
		case strings.IndexByte("NSEWnsew", c) >= 0:
			compass++
		case c == 0xC2 && i+1 < len(s) && s[i+1] == 0xB0:
			degrees++
			i++
		case strings.IndexByte(" ,;-+'\"", c) >= 0 || c >= 0x80:
		default:
			return false
		}
		i++
	}
	switch {
	case degrees >= 2 && groups >= 2:
		return true
	case groups == 2 && wide && digits >= 11:
		return true
	case groups == 2 && points == 2 && digits <= 6:
		return strings.ContainsAny(s, ",; ") || compass > 0
	}
	return false
}

// figuresAt reads the figures of a reference from a place on: one group, or
// two of which the second is no year behind a whole reference ("TL453812
// 1998"). It returns where they end and how many they are.
func figuresAt(s string, from int) (end, figures int) {
	end = from
	first := 0 // figures of the first group
	for k := from; k < len(s); k++ {
		switch {
		case isDigit(s[k]):
			n := k
			for n < len(s) && isDigit(s[n]) {
				n++
			}
			if figures > 0 && first%2 == 0 && first >= 4 && n-k != first {
				return end, figures
			}
			if y, ok := isInt(s[k:n]); ok && figures == 4 && first == 4 && n-k == 4 && y >= 1800 && y <= 2100 && isDigit(s[from]) {
				return end, figures // TF5012 2019
			}
			if figures == 0 {
				first = n - k
			}
			figures += n - k
			end = n
			k = n - 1
		case s[k] != ' ' && s[k] != '-' && s[k] != '/' && s[k] != '.' || k-end >= 1:
			return end, figures
		}
	}
	return end, figures
}

// gridRefIn finds a British or Irish reference within a longer text ("Tinker's
// Row TL 453 812") and returns where it starts and ends; -1 where there is
// none, or where it is the whole text.
func gridRefIn(s string) (int, int) {
	for i := 0; i+4 <= len(s); i++ {
		if i > 0 && (isLetter(s[i-1]) || isDigit(s[i-1])) {
			continue
		}
		if c := s[i]; c < 'A' || c > 'Z' {
			continue
		}
		letters := 0
		j := i
		for j < len(s) && s[j] >= 'A' && s[j] <= 'Z' && letters < 3 {
			letters++
			j++
		}
		if letters != 2 && letters != 1 || j < len(s) && isLetter(s[j]) {
			continue
		}
		end, figures := figuresAt(s, j)
		// A tetrad letter or a quadrant directly behind two figures.
		if figures == 2 {
			k := end
			for k < len(s) && s[k] >= 'A' && s[k] <= 'Z' && k-end < 2 {
				k++
			}
			if k == len(s) || !isLetter(s[k]) {
				end = k
			}
		}
		if figures >= 2 && (letters == 2 || figures >= 4) && (i > 0 || end < len(s)) && likeGridRef(s[i:end]) {
			return i, end
		}
	}
	return -1, -1
}
