package layout

import "strings"

// skipNoVisit is why a row that says that nobody went is no visit with nothing
// found.
const skipNoVisit = "no visit was made"

// notRun: words for a night on which the trap was not lit, or a visit that was
// not made: no absence, and no record.
func notRun(s string) bool {
	if len(s) < 4 || len(s) > 40 {
		return false
	}
	low := strings.ToLower(strings.Trim(s, " .!-()*\""))
	for _, sep := range [...]string{" - ", " – ", ", ", "; ", ": ", " (", " because", " due to", " as ", " owing"} {
		low, _, _ = strings.Cut(low, sep)
	}
	switch low {
	case "trap not run", "not run", "not walked", "no walk", "not trapped", "no trapping", "did not trap", "didn't trap", "trap not set", "trap not out", "not set", "trap off",
		"trap failed", "no visit", "not visited", "not done", "not counted", "no count", "no count made", "no survey", "not surveyed", "no trap", "trap not used", "away", "no transect", "not recorded",
		"trap not on", "trap not lit", "not lit", "walk missed", "missed", "not possible", "no access", "cancelled":
		return true
	}
	return false
}

// saysNotRun reports whether some cell of a row says so.
func (k *keptRow) saysNotRun() bool {
	for c := range k.looks {
		if k.looks[c] != 0 && notRun(k.text(c)) {
			return true
		}
	}
	return false
}
