package places

import (
	"fmt"
	"regexp"
	"strings"

	"fieldfare/convert/reading"
)

var (
	doubtAhead  = regexp.MustCompile(`(?i)^(?:[?¿]+|(?:prob|probably|poss|possibly|presumably|maybe|perhaps)\b[.,:]?) *`)
	doubtBehind = regexp.MustCompile(`(?i)[ ,]*(?:[(\[] *(?:\?+|(?:prob|probably|poss|possibly|presumably|maybe|perhaps|uncertain|not sure|unsure)\.?\??) *[)\]]|\?+)$`)
)

// withoutDoubt is the name without a question mark or word before or behind it
// by which the recorder says that it is not certain; the name itself where
// there is none, or nothing else.
func withoutDoubt(name string) string {
	if !strings.ContainsAny(name, "?¿(") && !strings.ContainsAny(name[:min(1, len(name))], "pPmM") {
		return name // as nearly all are
	}
	sure := doubtBehind.ReplaceAllString(doubtAhead.ReplaceAllString(name, ""), "")
	if fold(sure) == "" {
		return name
	}
	return sure
}

// apartMetres is how far two listed places in one name may lie apart to be
// taken for one inside the other (common practice, no source).
const apartMetres = 1000

// twoPlaces is the reading of a part of the place at which the name also has
// another listed place that lies elsewhere ("Sallowmere / Tinker's Row"):
// nothing says at which of them it was.
func (l *List) twoPlaces(part Reading, at int) (Reading, bool) {
	words := foldedWords(part.Name)
	other := -1
	for i := range words {
		key := ""
		for _, w := range words[i:] {
			key += w
			found := l.keys[key]
			if len([]rune(key)) < shortestPart || len(found) != 1 || found[0] == at || besideWords(words[:i]) {
				continue
			}
			if e := &l.entries[found[0]]; !l.holds(at, key) && l.entries[at].placed && e.placed && Apart(l.entries[at].where, e.where) > apartMetres {
				other = found[0]
			}
		}
	}
	if other < 0 {
		return part, false
	}
	both := []int{at, other}
	part.Place, part.Placed, part.Part = nil, false, false
	part.Possible = append(part.Possible, l.possible(both)...)
	part.Verdict = reading.QueryOf("site-ambiguous", fmt.Sprintf("“%s” names two places of the list, %s and %s. Please write at which one it was.", part.Name, l.entries[at].Name, l.entries[other].Name), l.describe(both)...)
	return part, true
}

// holds: a spelling of the place has the key in it, so that the key is no
// other place's name here.
func (l *List) holds(at int, key string) bool {
	for _, s := range append([]string{l.entries[at].Name}, l.entries[at].Other...) {
		if strings.Contains(fold(s), key) {
			return true
		}
	}
	return false
}
