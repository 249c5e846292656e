package taxa

// spelling is the index for names that are not spelt as on the lists.
type spelling struct {
	words   map[string]bool // of vernacular names
	authors map[string]bool
}

func (ix *Index) buildSpelling() {
	ix.spelling.words = map[string]bool{}
	ix.spelling.authors = map[string]bool{}
	for i := range ix.names {
		if n := &ix.names[i]; n.kind == vernacularName {
			for _, w := range vernacularWords(n.text) {
				ix.spelling.words[w] = true
			}
		}
	}
	last := ""
	for _, t := range ix.taxa {
		if t.Authorship == last {
			continue
		}
		last = t.Authorship
		for _, n := range parseAuthorship(t.Authorship).names {
			ix.spelling.authors[n] = true
		}
	}
}

func (r *resolver) misspelt(s string, toks []token) outcome {
	return held(CodeNotListed, "%s is not on the list, nor is a name close to it.", quoted(s))
}

func editDistance(a, b string) int {
	if a == b {
		return 0
	}
	return 99
}
