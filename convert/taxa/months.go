package taxa

import (
	"strconv"
	"strings"
)

// Months is a set of months: bit 0 is January, bit 11 December.
type Months uint16

const allMonths Months = 1<<12 - 1

// Has reports whether month m (1 to 12) is in the set. An empty set, of which
// nothing is known, has every month.
func (s Months) Has(m int) bool {
	return s == 0 || m >= 1 && m <= 12 && s&(1<<(m-1)) != 0
}

var monthNames = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// String names the months: "May to September", "March to April and July to
// October", "October to January", "all year"; empty for an empty set.
func (s Months) String() string {
	if s == 0 {
		return ""
	}
	if s == allMonths {
		return "all year"
	}
	has := func(m int) bool { return s&(1<<((m+12)%12)) != 0 }
	var runs []string
	for m := range 12 {
		if !has(m) || has(m-1) {
			continue
		}
		end := m
		for has(end + 1) {
			end++
		}
		run := monthNames[m]
		if end > m {
			run += " to " + monthNames[end%12]
		}
		runs = append(runs, run)
	}
	return strings.Join(runs, " and ")
}

var romanMonths = [...]string{"i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"}

// monthOf reads one month as a number, a roman number or a name of at least
// three letters; 0 if it is none.
func monthOf(w string) int {
	if n, err := strconv.Atoi(w); err == nil {
		if n >= 1 && n <= 12 {
			return n
		}
		return 0
	}
	for i, r := range romanMonths {
		if w == r {
			return i + 1
		}
	}
	if w == "sept" {
		return 9
	}
	if len(w) >= 3 {
		for i, n := range monthNames {
			if strings.HasPrefix(strings.ToLower(n), w) {
				return i + 1
			}
		}
	}
	return 0
}

// ParseMonths reads flight months as lists write them: "6-9", "Jun–Sep",
// "June to September", "V-VI, VIII", "10-2" (over the year's end), "all year".
// Words like "late" and "mid" are passed over. ok is false where something
// else is written.
func ParseMonths(s string) (set Months, ok bool) {
	if open := strings.IndexByte(s, '('); open > 0 {
		s = s[:open] // "5-6, 8-9 (two broods)"
	}
	s = strings.ToLower(strings.TrimSpace(s))
	switch s {
	case "":
		return 0, true
	case "all year", "all", "any", "year round", "throughout", "throughout the year":
		return allMonths, true
	}
	last, open := 0, false
	for _, w := range monthTokens(s) {
		switch w {
		case "-", "to", "until", "till":
			if last == 0 || open {
				return 0, false
			}
			open = true
		case ",", "and", "early", "mid", "middle", "late", "end", "beginning", "of":
		default:
			m := monthOf(w)
			if m == 0 {
				return 0, false
			}
			set |= 1 << (m - 1)
			if open {
				for k := last; k != m; k = k%12 + 1 {
					set |= 1 << (k - 1)
				}
			}
			last, open = m, false
		}
	}
	return set, !open && set != 0
}

// monthTokens splits into words, numbers, dashes and commas.
func monthTokens(s string) []string {
	var out []string
	start := -1
	flush := func(end int) {
		if start >= 0 {
			out = append(out, s[start:end])
			start = -1
		}
	}
	for i, r := range s {
		switch r {
		case '-', '–', '—':
			flush(i)
			out = append(out, "-")
		case ',', ';', '/', '&', '+':
			flush(i)
			out = append(out, ",")
		case ' ', '.', '\t', '\u00a0', '(', ')':
			flush(i)
		default:
			if start < 0 {
				start = i
			}
		}
	}
	flush(len(s))
	return out
}
