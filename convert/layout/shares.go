package layout

import (
	"regexp"
	"strings"
)

// shareWhere is the part of the cells whose text fits.
func (s *stats) shareWhere(fits func(text string) bool) float64 {
	n, all := 0, 0
	for t, k := range s.distinct {
		all += k
		if fits(t) {
			n += k
		}
	}
	return float64(n) / float64(max(1, all))
}

// figured is the part of the cells that hold figures.
func (s *stats) figured() float64 {
	return s.shareWhere(func(t string) bool { return strings.ContainsAny(t, "0123456789") })
}

// namesWithCounts is the part of the cells that are a name and a count in one.
func (s *stats) namesWithCounts() float64 {
	return s.shareWhere(splits)
}

// presence reports whether the cells say present or absent, and nothing else.
func (s *stats) presence() bool {
	for t := range s.distinct {
		switch strings.ToLower(strings.Trim(t, " .")) {
		case "present", "absent", "p", "a", "y", "n", "yes", "no", "seen", "not seen", "0", "1", "x", "true", "false", "not found", "found", "✓", "nil":
		default:
			return false
		}
	}
	return true
}

// upTo is the part of the cells that are whole numbers up to the limit; of 31,
// days of a month as well ("1st").
func (s *stats) upTo(limit int) float64 {
	return s.shareWhere(func(t string) bool {
		v, ok := isInt(t)
		return ok && v >= 0 && v <= limit || limit == 31 && dayNumber(t) > 0
	})
}

// longDigits is the part of the cells that may be the figures of a reference,
// or a half of them: two to ten digits.
func (s *stats) longDigits() float64 {
	if s.n == 0 {
		return 0
	}
	n := 0
	for w := 2; w <= 10; w++ {
		n += s.lengths[w]
	}
	return float64(n) / float64(s.n)
}

// alongAxis is the part of the cells that are metres along an axis of a grid,
// as instruments, maps and spreadsheets write them: 545810.5, 545,810,
// E 545810, 545810 m. Five figures at least tell them from degrees.
func (s *stats) alongAxis() float64 { return s.shareWhere(axisMetres.MatchString) }

var axisMetres = regexp.MustCompile(`^(?i)[en]?\s?(\d{5,7}|\d{2,3},\d{3}|\d,\d{3},\d{3})(\.\d+)?\s?(m|metres)?\s?[en]?$`)

// refFigures is the part of the cells that may be the figures of a reference
// whose letters stand elsewhere: 458883, 458 883.
func (s *stats) refFigures() float64 {
	return s.longDigits() + float64(s.pairs)/float64(max(1, s.n))
}

// isPairOfFigures: two numbers of as many figures, as the halves of a
// reference.
func isPairOfFigures(s string) bool {
	i := strings.IndexAny(s, " -/")
	return i >= 2 && i <= 5 && len(s) == 2*i+1 && allDigits(s[:i]) && allDigits(s[i+1:])
}

// serials is the part of the cells that are days as a spreadsheet counts
// them, from 1955 to 2064.
func (s *stats) serials() float64 {
	return s.shareWhere(func(t string) bool {
		v, ok := isInt(t)
		return ok && len(t) == 5 && v >= 20000 && v <= 60000
	})
}

// allClockNumbers: 2130, 930, 21.30: times without a colon.
func (s *stats) allClockNumbers() bool {
	for t := range s.distinct {
		if h, m, ok := strings.Cut(t, "."); ok && len(m) == 2 && len(h) <= 2 {
			t = h + m
		}
		if n, ok := isInt(t); !ok || n > 2400 || n%100 > 59 {
			return false
		}
	}
	return s.n > 0
}
