package places

import (
	"fmt"
	"regexp"
	"strings"

	"fieldfare/convert/reading"
)

// shortestPart is the least number of letters of a name that is looked for
// inside a longer one; shorter ones (Fen, Wood) turn up by chance.
const shortestPart = 6

// shortestPrivate is the same for a private place, which is rather looked for
// too often than too rarely ("Home pond").
const shortestPrivate = 3

// address is a house by its number: one who lives in the village of a reserve
// does not live in the reserve.
var address = regexp.MustCompile(`(?i)^\d{1,4}[a-z]?,? +[\pL'’ ]+ (?:lane|ln|road|rd|street|st|row|close|avenue|ave|drive|way|crescent|terrace|gardens|green|hill|drove)\b`)

// outerPart finds the listed place that stands at either end of the site's
// name, parted from the rest by a comma or the like.
func (l *List) outerPart(out *Reading) (Reading, bool) {
	for _, piece := range pieces(out.Name) {
		at := l.keys[fold(piece)]
		if len(at) > 1 {
			out.Possible = append(out.Possible, l.possible(at)...)
		}
		if len(at) == 1 {
			found := l.partOf(*out, at[0])
			if two, apart := l.twoPlaces(found, at[0]); apart {
				return two, true
			}
			found.Verdict = reading.Verdict{Message: fmt.Sprintf("“%s” is a part of %s on the places list.", out.Name, found.Place.Name)}
			if address.MatchString(out.Name) {
				found.Verdict = reading.QueryOf("site-part", fmt.Sprintf("“%s” looks like an address, and was put at %s of the places list. Please check, or add it to the list.", out.Name, found.Place.Name), found.Place.Name)
			}
			return found, true
		}
	}
	return Reading{}, false
}

// innerPart finds a listed place among the words of the site's name.
func (l *List) innerPart(out Reading) Reading {
	at, beside, plain, possible := l.inside(out.Name)
	out.Possible = append(out.Possible, l.possible(possible)...)
	if at < 0 || beside && !l.entries[at].Private {
		return out
	}
	if plain { // "Tinker's Row garden trap" says no more than Tinker's Row
		return l.found(out, at)
	}
	found := l.partOf(out, at)
	if two, apart := l.twoPlaces(found, at); apart {
		return two
	}
	if beside { // a private place is not to be betrayed by its neighbours
		found.Placed = false
		found.Verdict = reading.QueryOf("site-beside-private", fmt.Sprintf("“%s” names the private place %s and is blurred as well. Please check.", out.Name, found.Place.Name), found.Place.Name)
		return found
	}
	found.Verdict = reading.QueryOf("site-part", fmt.Sprintf("“%s” was taken to be a part of %s on the places list. Please check, or add it to the list.", out.Name, found.Place.Name), found.Place.Name)
	return found
}

func (l *List) partOf(out Reading, at int) Reading {
	found := l.found(out, at)
	found.Name, found.Part = out.Name, true
	return found
}

// pieces are the outer parts of a name that has a comma, a bracket, a dash or
// the like: what stands before the first and behind the last of them.
func pieces(name string) []string {
	const signs = ",;:()[]/|"
	spaced := strings.NewReplacer(" - ", ",", " – ", ",", " — ", ",").Replace(name)
	first := strings.IndexAny(spaced, signs)
	if first < 0 {
		return nil
	}
	out := []string{spaced[:first]}
	if last := strings.LastIndexAny(strings.TrimRight(spaced, signs+" "), signs); last >= 0 {
		out = append(out, spaced[last+1:])
	}
	return out
}

// inside returns the listed place whose longest spelling stands among the
// words of the name, -1 for none, whether words such as "near" say that the
// site lies beside it, and whether the other words say nothing of where.
// Possible are places of shared names among the words.
func (l *List) inside(name string) (place int, beside, plain bool, possible []int) {
	words := foldedWords(name)
	place, best := -1, 0
	for i := range words {
		key := ""
		for j := i; j < len(words); j++ {
			key += words[j]
			n, at := len([]rune(key)), l.keys[key]
			if n <= best || n < shortestPart && (n < shortestPrivate || !l.private(at)) {
				continue
			}
			if len(at) > 1 {
				possible = append(possible, at...)
			} else if len(at) == 1 {
				place, best = at[0], len([]rune(key))
				beside = besideWords(words[:i])
				plain = plainWords(words[:i]) && plainWords(words[j+1:])
			}
		}
	}
	return place, beside, plain, possible
}

// private tells whether any of the places is.
func (l *List) private(at []int) bool {
	for _, i := range at {
		if l.entries[i].Private {
			return true
		}
	}
	return false
}

// plainWords tells whether none of the words says where something is: they
// come from titles.
func plainWords(words []string) bool {
	for _, w := range words {
		switch w {
		case "the", "at", "my", "our", "garden", "trap", "traps", "moth", "moths", "light", "actinic", "mv", "list", "records", "recording", "catch", "catches", "site", "survey":
		default:
			return false
		}
	}
	return true
}

// besideWords tells whether the words before a place's name put the site
// outside it.
func besideWords(before []string) bool {
	for _, w := range before {
		switch w {
		case "near", "nr", "opposite", "opp", "of", "off", "between", "beyond", "behind", "outside", "towards", "to", "from", "adjacent", "adj", "by", "beside", "around", "above", "below", "past", "not", "excluding", "except":
			return true
		}
	}
	return false
}
