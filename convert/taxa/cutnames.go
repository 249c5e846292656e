package taxa

import (
	"slices"
	"strings"
)

// mostAlike is how many names with the same first letters are looked at: where
// a list has more, these letters say little.
const mostAlike = 500

// mostCutShort is how many names may be offered for one that is cut short; of
// more, none is.
const mostCutShort = 6

// cutNames are the vernacular names that the tokens may be short for: their
// words cut ("Small Tort", "Lt Arches") or given by their first letters
// ("LYU", "Lesser YU"). They are offered, never taken.
func (r *resolver) cutNames(s string, toks []token) []int32 {
	n := 0
	for n < len(toks) && (toks[n].kind == wordToken || toks[n].kind == numberToken || toks[n].sign("&") || toks[n].sign("+") || toks[n].sign("/")) {
		n++ // the rest are notes
	}
	for n > 0 && (openWords[toks[n-1].key] != "" || aggregateWords[toks[n-1].key]) {
		n--
	}
	text := written(s, toks[:n])
	words := wordsWithoutAnd(strings.ReplaceAll(text, "&", " and "))
	switch {
	case len(words) == 0 || len(words) > 6:
		return nil
	case len(words) == 1 && !lettersOfWords(text):
		return nil
	case len(words) == 1:
		words = strings.Split(words[0], "")
	}
	var found []int32
	if last := len(words) - 1; last > 0 && cutWord(words[last], "moth") { // "Vapourer Mth"
		for at := range r.ix.chain(strings.Join(words[:last], "")) {
			if n := &r.ix.names[at]; n.kind == vernacularName && !contains32(found, n.taxon) {
				found = append(found, n.taxon)
			}
		}
	}
	initials := r.ix.spelling.initials()
	for _, k := range initialKeys(words) {
		alike := initials[k]
		if len(alike) > mostAlike {
			continue
		}
		for _, name := range alike {
			n := &r.ix.names[name]
			if contains32(found, n.taxon) || !cutFrom(words, wordsWithoutAnd(n.text)) {
				continue
			}
			if found = append(found, n.taxon); len(found) > mostCutShort {
				return nil
			}
		}
	}
	return found
}

// lettersOfWords: a single word that may be the first letters of several: in
// capitals, or without a vowel.
func lettersOfWords(text string) bool {
	k := key(text)
	return len(k) >= 2 && len(k) <= 6 && len(strings.Trim(k, "abcdefghijklmnopqrstuvwxyz")) == 0 && (text == strings.ToUpper(text) || !strings.ContainsAny(k, "aeio"))
}

// wordsWithoutAnd are the words of a vernacular name but for "the" and "and".
func wordsWithoutAnd(s string) []string {
	return slices.DeleteFunc(vernacularWords(s), func(w string) bool { return w == "and" || w == "the" })
}

// initialKeys are the first letters that a name may have of which the words
// are cut short: each word stands for one word, or each of its letters does.
func initialKeys(words []string) []string {
	keys := []string{""}
	for _, w := range words {
		var longer []string
		for _, k := range keys {
			longer = append(longer, k+w[:1])
			if len(w) > 1 && len(w) <= 6 && !hasDigit(w) {
				longer = append(longer, k+w)
			}
		}
		keys = longer
	}
	return keys
}

// cutFrom: the words are those of the candidate, in order, each whole, cut
// short or given by its first letter. Words like moth may be left out behind.
func cutFrom(words, candidate []string) bool {
	if len(words) == 0 {
		for _, c := range candidate {
			if kindOf(c) == "" {
				return false
			}
		}
		return true
	}
	if len(candidate) == 0 {
		return false
	}
	w := words[0]
	if cutWord(w, candidate[0]) && cutFrom(words[1:], candidate[1:]) {
		return true
	}
	if len(w) < 2 || len(w) > len(candidate) {
		return false
	}
	for i := range len(w) {
		if candidate[i][0] != w[i] {
			return false
		}
	}
	return cutFrom(words[1:], candidate[len(w):])
}

// cutWord: w is the word c, its beginning, or its first letter with some of
// those behind ("mdw" for meadow).
func cutWord(w, c string) bool {
	if strings.HasPrefix(c, w) || shortForms[w] == c {
		return true
	}
	for _, one := range singular(w) {
		if len(one) > 2 && strings.HasPrefix(c, one) {
			return true
		}
	}
	if len(w) < 2 || len(w) > 4 || w[0] != c[0] {
		return false
	}
	j := 0
	for i := 0; i < len(c) && j < len(w); i++ {
		if c[i] == w[j] {
			j++
		}
	}
	return j == len(w)
}

// buildInitials indexes the vernacular names by the first letters of their
// words, with and without a word like moth at their end.
func (ix *Index) buildInitials() map[string][]int32 {
	index := map[string][]int32{}
	for _, name := range ix.spelling.names {
		words := wordsWithoutAnd(ix.names[name].text)
		var k []byte
		for _, w := range words {
			k = append(k, w[0])
		}
		for n := len(words); n > 0; n-- {
			index[string(k[:n])] = append(index[string(k[:n])], name)
			if kindOf(words[n-1]) == "" {
				break
			}
		}
	}
	return index
}
