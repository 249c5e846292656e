package layout

import (
	"regexp"
	"strings"
)

// nightLabels number a night or visit and say its day in brackets or behind a
// colon: "Night 1 (3 July)", "Visit 2: 10/7".
var nightLabels = regexp.MustCompile(`(?i)^(?:night|visit|session|walk|week|trap night)\s+(?:no\.? ?)?[0-9]{1,3}\s*(?:\((.+)\)|[:–-]\s*(.+))$`)

// dayOfNight returns the day that such a label says, "" for none.
func dayOfNight(text string) string {
	m := nightLabels.FindStringSubmatch(trim(text))
	if m == nil {
		return ""
	}
	day := strings.TrimSpace(m[1] + m[2])
	switch scanDate(day) {
	case fullDate, dayMonth, pairOnly:
		return day
	}
	return ""
}
