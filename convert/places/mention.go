package places

import "strings"

// Mentioned returns the private places that a text names among other words,
// each once. Names of fewer letters than shortestPart turn up by chance and
// are not looked for.
func (l *List) Mentioned(text string) []*Place {
	if l == nil || l.privateWords == 0 || text == "" {
		return nil
	}
	words := foldedWords(strings.ReplaceAll(text, ".", " ")) // of files too
	var at []int
	for i := range words {
		key := ""
		for j := i; j < min(len(words), i+l.privateWords); j++ {
			key += words[j]
			if len([]rune(key)) < shortestPart {
				continue
			}
			for _, n := range l.keys[key] {
				if l.entries[n].Private {
					at = include(at, n)
				}
			}
		}
	}
	return l.possible(at)
}

// mostWords raises the number of words that a private place's name may have.
// A name written together may be written apart, so its letters count.
func (l *List) mostWords(p *Place) {
	if !p.Private {
		return
	}
	for _, s := range append([]string{p.Name}, p.Other...) {
		l.privateWords = max(l.privateWords, len(foldedWords(s))+1)
	}
}
