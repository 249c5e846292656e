package layout

import (
	"regexp"
	"strings"
)

// nightLabels number a night or visit and say its day in brackets or behind a
// colon: "Night 1 (3 July)", "Visit 2: 10/7", "V3 3/4/21".
var nightLabels = regexp.MustCompile(`(?i)^(?:(?:night|visit|session|walk|week|trap night|survey|count|check|v)\s*(?:no\.? ?)?[0-9]{1,3}\s*(?:\((.+)\)|[:–-]\s*(.+))|(?:visit|survey|v) ?[0-9]{1,2}[ ,]+([0-9].+))$`)

// dayOfNight returns the day that such a label says, "" for none.
func dayOfNight(text string) string {
	m := nightLabels.FindStringSubmatch(trim(text))
	if m == nil {
		return ""
	}
	day := strings.TrimSpace(m[1] + m[2] + m[3])
	switch scanDate(day) {
	case fullDate, dayMonth, pairOnly:
		return day
	}
	return ""
}

// runOverMidnight finds out whether the hours over the counts start over.
func (a *axis) runOverMidnight() {
	last := -1
	for i := range a.cols {
		v := a.cols[i].get(Time)
		if v == nil {
			continue
		}
		figures, _, _ := strings.Cut(strings.NewReplacer(".", ":", "h", ":").Replace(v.Text), ":")
		hour, ok := isInt(trim(figures))
		if !ok {
			return
		}
		a.overnight = a.overnight || hour < last
		last = hour
	}
}
