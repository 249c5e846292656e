package places

import "strings"

// shortWords are the short forms in which the words of a place's name are
// written (common practice, no source). A word that may be short for two is
// left out.
var shortWords = map[string]string{
	"res": "reserve", "resv": "reserve", "rsv": "reserve",
	"n": "north", "nth": "north", "s": "south", "sth": "south", "e": "east", "w": "west",
	"gt": "great", "grt": "great", "lt": "little", "ltl": "little", "upr": "upper", "lwr": "lower",
	"ln": "lane", "la": "lane", "rd": "road", "fm": "farm", "frm": "farm", "hse": "house", "wd": "wood", "wds": "woods",
	"pk": "park", "cmn": "common", "cott": "cottage", "gdn": "garden", "gdns": "gardens", "brg": "bridge", "plantn": "plantation",
}

// expanded is the folded name with its short words written out.
func expanded(name string) string {
	words := foldedWords(name)
	for i, w := range words {
		if long, found := shortWords[w]; found {
			words[i] = long
		}
		if w == "st" && i == 0 {
			words[i] = "saint"
		} else if w == "st" && i == len(words)-1 {
			words[i] = "street"
		}
	}
	return strings.Join(words, "")
}

// written looks for the place whose name is this one but for short words.
func (l *List) written(name string) []int {
	key := expanded(name)
	if at := l.full[key]; len(at) > 0 {
		return at
	}
	return l.full[strings.TrimPrefix(key, "the")]
}
