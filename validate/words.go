package validate

import "strings"

// wordIndex finds words and phrases in a text in one walk over it. A word that
// ends in "*" may run on.
type wordIndex [256][]indexedWord

type indexedWord struct {
	word string
	runs bool  // may be part of a longer word
	kind uint8 // bit of the result
}

// newWordIndex indexes lists of words in lower case; the list's number is its
// bit.
func newWordIndex(lists ...[]string) *wordIndex {
	index := &wordIndex{}
	for kind, list := range lists {
		for _, w := range list {
			word, runs := strings.CutSuffix(w, "*")
			index[word[0]] = append(index[word[0]], indexedWord{word, runs, uint8(kind)})
		}
	}
	return index
}

// in returns the lists of which the text, in lower case, has a word: a bit for
// each. A word counts where no letter runs into it.
func (index *wordIndex) in(text string) (kinds uint32) {
	for i := range len(text) {
		c := text[i]
		if i > 0 && letter(c) && letter(text[i-1]) {
			continue
		}
		for j := range index[c] {
			w := &index[c][j]
			if len(text)-i < len(w.word) || text[i:i+len(w.word)] != w.word {
				continue
			}
			end := i + len(w.word)
			if w.runs || end == len(text) || !letter(text[end]) || !letter(text[end-1]) {
				kinds |= 1 << w.kind
			}
		}
	}
	return kinds
}

// containsAny tells whether the text has one of the phrases.
func containsAny(text string, phrases []string) bool {
	for _, p := range phrases {
		if strings.Contains(text, p) {
			return true
		}
	}
	return false
}

// textMemory remembers which words the texts of the records before had: remarks
// and dates repeat.
type textMemory struct{ contradicts, ofDay knownTexts }

// knownTexts are what was found in texts before.
type knownTexts struct {
	last  string
	found uint32 // in it
	all   map[string]uint32
}

// textsKept is how many texts are remembered, longestKept the bytes of the
// longest.
const (
	textsKept   = 4096
	longestKept = 200
)

// of returns what find finds in the text.
func (k *knownTexts) of(text string, find func(string) uint32) uint32 {
	if text == k.last {
		return k.found
	}
	found, known := k.all[text]
	switch {
	case known:
	case len(text) > longestKept:
		return find(text)
	default:
		found = find(text)
		if k.all == nil || len(k.all) >= textsKept {
			k.all = make(map[string]uint32)
		}
		text = strings.Clone(text) // not all of the row that it is from
		k.all[text] = found
	}
	k.last, k.found = text, found
	return found
}
