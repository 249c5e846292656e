package layout

import "strings"

// isSection reports whether a heading over counts numbers a part of the page's
// place: "S1", "Section 4", "Plot 2b", "C".
func isSection(text string) bool {
	low := strings.ToLower(trim(text))
	word := firstWord(low)
	rest := strings.Trim(low[len(word):], " .")
	switch word {
	case "section", "sect", "sec", "plot", "quadrat", "stop", "station", "stretch", "point", "compartment", "cpt":
		if rest == "" {
			return false
		}
	default:
		if len(word) != 1 {
			return false
		}
	}
	digits := strings.TrimRight(rest, "abcdefgh")
	return len(rest)-len(digits) <= 1 && len(digits) <= 2 && (digits == "" || allDigits(digits))
}
