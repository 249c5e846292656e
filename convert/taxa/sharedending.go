package taxa

import (
	"slices"
	"strings"
)

// sharing holds a word that many names of the list end in: "Pug sp.",
// "Yellow Underwing".
func (r *resolver) sharing(s string, toks []token) (outcome, bool) {
	n := 0
	for n < len(toks) && toks[n].kind == wordToken && openWords[toks[n].key] == "" && !aggregateWords[toks[n].key] && toks[n].text != "" &&
		(!noteWords[toks[n].key] || n == 0 && r.ix.spelling.endings[toks[n].key] > 0) {
		n++
	}
	for n < len(toks) && n > 0 && r.ix.isVernacularWord(toks[n].key) && openWords[toks[n].key] == "" && !aggregateWords[toks[n].key] {
		n++
	}
	if n == 0 || n > 3 {
		return outcome{}, false
	}
	t := r.readTail(s, toks[n:], baseHigher)
	if len(t.unknown) > 0 || t.second != nil {
		return outcome{}, false
	}
	words := r.parted(vernacularWords(written(s, toks[:n])))
	for _, w := range words {
		if !r.ix.isVernacularWord(w) && len(r.ix.spelling.postings[w]) == 0 && len(singular(w)) == 0 {
			return outcome{}, false
		}
	}
	up, members := r.sharedEnding(words)
	if members < 2 {
		return outcome{}, false
	}
	r.step("%d names on the list end in %s.", members, quoted(written(s, toks[:n])))
	o := held(CodeAmbiguous, "%d names on the list end in %s.", members, quoted(written(s, toks[:n])))
	o.spelling = true
	if up != none {
		o.cands = append(o.cands, up)
	}
	o.cands = append(o.cands, r.endingIn(words)...)
	if t.agg != "" {
		slices.SortStableFunc(o.cands, func(a, b int32) int { return rankAggregateFirst(r.ix.taxa[a]) - rankAggregateFirst(r.ix.taxa[b]) })
	}
	return o, true
}

func rankAggregateFirst(t *Taxon) int {
	if t.Rank == RankAggregate {
		return 0
	}
	return 1
}

// parted parts a single word that the list's names write as two: "hawkmoth"
// where they have "Hawk-moth".
func (r *resolver) parted(words []string) []string {
	if len(words) != 1 || len(r.ix.spelling.postings[words[0]]) > 0 {
		return words
	}
	w := words[0]
	for i := 3; i <= len(w)-3; i++ {
		if end := w[i:]; r.ix.spelling.endings[end] > 0 && len(r.ix.spelling.postings[w[:i]]) > 0 {
			return []string{w[:i], end}
		}
	}
	return words
}

// sharedEnding finds what all names that end in the given words belong to:
// "Pug sp." where the list has many pugs. It is offered, never taken, as the
// list may lack pugs of other kinds.
func (r *resolver) sharedEnding(words []string) (higher int32, members int) {
	if len(words) == 0 || len(r.ix.spelling.postings[words[len(words)-1]]) > 5000 {
		return none, 0
	}
	taxa := r.taxaEndingIn(words)
	if len(taxa) < 2 {
		return none, len(taxa)
	}
	return r.ix.lowestCommon(taxa), len(taxa)
}

// endingIn are the first taxa whose names end in the words, to be offered.
func (r *resolver) endingIn(words []string) []int32 {
	taxa := r.taxaEndingIn(words)
	return taxa[:min(len(taxa), 5)]
}

func (r *resolver) taxaEndingIn(words []string) []int32 {
	if one := singular(words[len(words)-1]); len(one) > 0 && len(r.ix.spelling.postings[words[len(words)-1]]) == 0 {
		words = append(append([]string(nil), words[:len(words)-1]...), one[0])
	}
	sp := &r.ix.spelling
	ending := strings.Join(words, "")
	var taxa []int32
	for _, at := range sp.postings[r.rarest(words)] {
		if !strings.HasSuffix(sp.keys[at], ending) {
			continue
		}
		n := &r.ix.names[sp.names[at]]
		name := vernacularWords(n.text)
		if len(name) > len(words) && strings.Join(name[len(name)-len(words):], "") == ending && !contains32(taxa, n.taxon) {
			taxa = append(taxa, n.taxon)
		}
	}
	return taxa
}
