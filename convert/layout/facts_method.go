package layout

import (
	"regexp"
	"strings"
)

// methodPhrase finds a trap or lamp within a sentence: "125W MV Robinson
// trap". A bare "Heath" may be a place, a bare "Robinson" a person.
var methodPhrase = regexp.MustCompile(`(?i)\b(?:` +
	`(?:[0-9]{1,3} ?w(?:atts?)?\.? )?(?:mv|mercury vapour|actinic)(?: (?:robinson|skinner|heath|light|moth|bucket|home-made))*(?: (?:traps?|lamp|bulb))?` + `|` +
	`(?:[0-9]{1,3} ?w(?:atts?)?\.? )?(?:robinson|skinner|heath|led|uv|light|black ?light)(?: (?:mv|actinic|light|moth|bucket|robinson|skinner))* traps?` + `|` +
	`[0-9]{1,3} ?w(?:atts?)? (?:robinson|skinner|heath|led|uv)` + `|` +
	`(?:[1-9] )?actinics` + `)\b`)

// methodIn returns the trap or lamp that a title or a line below a list names;
// none where it names several.
func methodIn(text string) string {
	found := ""
	for _, m := range methodPhrase.FindAllString(text, -1) {
		switch {
		case strings.EqualFold(m, "light trap"), strings.EqualFold(m, "light traps"):
			if found == "" {
				found = m
			}
		case found == "" || strings.HasPrefix(strings.ToLower(found), "light trap"):
			found = m
		default:
			return ""
		}
	}
	return found
}
