package taxa

import (
	_ "embed"
	"strings"
	"sync"
)

// lexicon is what is known of names beyond the user's lists: real names that
// may be correctly spelt and yet not listed, and the words that vernacular
// names are made of. It only ever keeps a name from being corrected.
type lexicon struct {
	names    map[string]bool // keys of scientific names
	english  map[string]bool // keys of vernacular names
	genera   map[string]bool
	words    map[string]bool // words of vernacular names
	epithets map[string]bool
}

//go:embed starter/neighbours.txt
var neighbours string

var builtinLexicon = sync.OnceValue(func() *lexicon {
	lx := &lexicon{names: map[string]bool{}, english: map[string]bool{}, genera: map[string]bool{}, words: map[string]bool{}, epithets: map[string]bool{}}
	for _, n := range Starter().names {
		lx.add(n.text, n.kind == vernacularName)
	}
	for line := range strings.Lines(neighbours) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		if words, ok := strings.CutPrefix(line, "words:"); ok {
			for _, w := range strings.Fields(words) {
				lx.words[w] = true
			}
			continue
		}
		sci, vernacular, _ := strings.Cut(line, "|")
		if sci != "" {
			lx.add(sci, false)
		}
		for _, v := range strings.Split(vernacular, ";") {
			if v != "" {
				lx.add(v, true)
			}
		}
	}
	return lx
})

func (lx *lexicon) add(text string, vernacular bool) {
	if vernacular {
		lx.english[vernacularKey(text)] = true
		for _, w := range vernacularWords(text) {
			lx.words[w] = true
		}
		return
	}
	n := splitName(text)
	lx.names[key(n.canonical)] = true
	lx.genera[key(n.genus)] = true
	if n.epithet != "" {
		lx.epithets[key(n.epithet)] = true
	}
}

// isVernacularWord reports whether a folded word stands in vernacular names
// of the lists or of the lexicon.
func (ix *Index) isVernacularWord(k string) bool {
	if v, ok := variantWords[k]; ok {
		k = v
	}
	return ix.known.words[k] || len(ix.spelling.postings[k]) > 0
}

// hasVernacularWord: the text, or a part of it between hyphens, is a word of
// vernacular names.
func (ix *Index) hasVernacularWord(text string) bool {
	for _, w := range vernacularWords(text) {
		if ix.isVernacularWord(w) {
			return true
		}
	}
	return false
}

// isAuthor reports whether a word is an author on the lists.
func (ix *Index) isAuthor(k string) bool { return ix.spelling.authors()[k] }
