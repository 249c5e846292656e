package taxa

import "strings"

// generic reads an everyday word for a group in place of a name: "moth sp.",
// "bumblebee", "unidentified ladybird". It stands for the higher taxon that
// all of the group belong to.
func (r *resolver) generic(s string, toks []token) (outcome, bool) {
	var words []string
	open, rest := "", 0
	var t tail
	for i := range toks {
		k := &toks[i]
		if k.kind == wordToken && openWords[k.key] != "" && (i == 0 || len(words) > 0) {
			if open == "" {
				open = openWords[k.key]
			}
			if len(words) > 0 {
				rest = i + 1
				break
			}
			continue
		}
		if k.kind != wordToken || len(words) == 2 || noteWords[k.key] && kindOf(k.key) == "" && groupPhrases[k.key] == "" {
			rest = i
			break
		}
		words = append(words, k.key)
		rest = i + 1
	}
	if len(words) == 0 {
		return outcome{}, false
	}
	phrase := strings.Join(words, "")
	word, known := groupPhrases[phrase]
	if !known && len(words) == 2 && groupPhrases[words[0]] != "" && kindOf(words[1]) == groupPhrases[words[0]] {
		word, known = groupPhrases[words[0]], true // "micro moth"
	}
	if !known && len(words) == 1 {
		word = words[0]
		_, known = groupWords[word]
		for _, one := range singular(word) {
			if _, there := groupWords[one]; there && !known {
				word, known = one, true
			}
		}
	}
	if !known && len(words) == 1 { // a noctuid is one of the Noctuidae
		if stem := strings.TrimSuffix(words[0], "s"); len(stem) > 5 && strings.HasSuffix(stem, "id") {
			word = capitalised(stem) + "ae"
			known = r.ix.ofGroup(word) != none
		}
	}
	if !known {
		return outcome{}, false
	}
	t = r.readTail(s, toks[rest:], baseHigher)
	if len(t.unknown) > 0 || t.second != nil {
		return outcome{}, false
	}
	up := r.ix.ofGroup(word)
	if up == none {
		return outcome{}, false
	}
	if t.open == "" {
		t.open = open
	}
	if t.open == "" {
		t.open = "sp."
	}
	r.step("%s is a word for a group: all of it belongs to %s.", quoted(strings.Join(words, " ")), r.ix.taxa[up].ScientificName)
	o := outcome{taxon: up, name: none}
	return r.applyTail(o, s, toks, &t), true
}

// ofGroup is the lowest taxon of the lists that holds the whole of an
// everyday group, or none.
func (ix *Index) ofGroup(word string) int32 {
	var members []int32
	names := groupWords[word]
	if names == nil {
		names = []string{word}
	}
	for _, name := range names {
		if strings.HasPrefix(name, "-") {
			continue
		}
		for _, rank := range higherRanks {
			members = append(members, ix.higher[identity{rank, name}]...)
		}
	}
	switch {
	case len(members) == 0:
		return none
	case len(names) == 1 || strings.HasPrefix(names[1], "-"):
		return members[0]
	}
	// Several families: what they all belong to, whatever else does.
	for _, rank := range [...]string{RankOrder, "class"} {
		if up := ix.above(ix.taxa[members[0]], rank); up != none {
			return up
		}
	}
	return none
}
