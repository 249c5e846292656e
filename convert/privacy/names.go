package privacy

import (
	"regexp"
	"strings"
	"unicode"

	"fieldfare/dwc"
)

// name is what a person's or a society's name looks like: a few words of
// letters, the first of them capital.
var name = regexp.MustCompile(`^\p{Lu}[\p{L}'’.]*([ -][\p{L}'’.&]+){0,5}$`)

// names keeps, of people joined as Darwin Core recommends, those that are
// plainly names and share no word with what the record says of its place: the
// recorder of a garden may be written down by the garden's name.
func names(joined string, o *dwc.Occurrence) (kept string, dropped bool) {
	if joined == "" {
		return "", false
	}
	place := placeWords(o)
	var list []string
	for n := range strings.SplitSeq(joined, " | ") {
		if !name.MatchString(n) || sharesWord(n, place) {
			dropped = true
			continue
		}
		list = append(list, n)
	}
	return strings.Join(list, " | "), dropped
}

// placeWords are the words, of four letters or more, of the terms that name
// the record's place.
func placeWords(o *dwc.Occurrence) map[string]bool {
	words := map[string]bool{}
	for _, text := range []string{o.Locality, o.VerbatimLocality, o.LocationID, o.Municipality, o.LocationRemarks, o.Island, o.WaterBody} {
		for w := range wordsOf(text) {
			words[w] = true
		}
	}
	return words
}

func sharesWord(text string, words map[string]bool) bool {
	if len(words) == 0 {
		return false
	}
	for w := range wordsOf(text) {
		if words[w] {
			return true
		}
	}
	return false
}

func wordsOf(text string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }) {
			if len([]rune(w)) >= 4 && !yield(w) {
				return
			}
		}
	}
}
