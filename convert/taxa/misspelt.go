package taxa

import (
	"slices"
	"sort"
	"strings"
)

// suggestion is a name that is close to what was written.
type suggestion struct {
	name  int32 // in Index.names
	cost  int   // tenths of a letter
	apply bool  // close enough to be taken, if nothing else is
	used  int   // tokens that the name takes
	// why is why it is only suggested, as the end of a message; may be empty.
	why string
}

// margin is how much farther, in tenths of a letter, the next taxon must be
// for the nearest to be taken.
const margin = 10

// misspelt reads a name that is not on the list as it is spelt.
func (r *resolver) misspelt(s string, toks []token) outcome {
	text := written(s, toks)
	if o, ok := r.sharing(s, toks); ok {
		return o
	}
	var found []suggestion
	sci := r.nearScientific(toks)
	if len(sci) == 0 || r.allVernacular(toks) {
		found = append(sci, r.nearVernacular(s, toks)...)
	} else {
		found = sci
	}
	if len(found) == 0 {
		found = r.nearSingle(s, toks)
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].cost < found[j].cost })
	if len(found) == 0 {
		return r.notListed(s, toks)
	}
	o := r.suggest(s, text, toks, found)
	if o.taxon == none && o.verdict.Code == CodeMisspelt && len(sci) == 0 {
		o.cands = unite(r.cutNames(s, toks), o.cands)
	}
	return o
}

// unite are the taxa of both lists, each once, as many as are offered.
func unite(first, more []int32) []int32 {
	for _, t := range more {
		if !contains32(first, t) {
			first = append(first, t)
		}
	}
	return first[:min(len(first), mostCutShort)]
}

// allVernacular: the first two words are words of vernacular names, so that
// the text is hardly a scientific name.
func (r *resolver) allVernacular(toks []token) bool {
	return len(toks) >= 2 && r.ix.isVernacularWord(toks[0].key) && r.ix.isVernacularWord(toks[1].key)
}

// suggest takes the only close name, or holds with those that there are.
func (r *resolver) suggest(s, text string, toks []token, found []suggestion) outcome {
	ix := r.ix
	best := found[0]
	var taxa []int32
	rival := false
	for _, f := range found {
		t := ix.names[f.name].taxon
		if t == none || contains32(taxa, t) {
			continue
		}
		if len(taxa) > 0 && f.cost < best.cost+margin {
			rival = true
		}
		taxa = append(taxa, t)
	}
	if len(taxa) == 0 {
		return r.notListed(s, toks)
	}
	if rival && r.group.understood() {
		// Of close names, those of the page's group count.
		var in []suggestion
		for _, f := range found {
			if t := ix.names[f.name].taxon; t != none && r.group.has(ix.taxa[t]) {
				in = append(in, f)
			}
		}
		if len(in) > 0 && len(in) < len(found) {
			return r.suggest(s, text, toks, in)
		}
	}
	for _, f := range found {
		if t := ix.names[f.name].taxon; t != none {
			r.step("%s is close to %s (%s), off by %.1f letters.", quoted(text), quoted(ix.names[f.name].text), ix.taxa[t].ScientificName, float64(f.cost)/10)
		}
	}
	if n := &ix.names[best.name]; !best.apply || rival || n.taxon == none {
		o := held(CodeMisspelt, "%s is not on the list.", quoted(text))
		if best.why != "" {
			o.verdict.Message += " " + best.why
		}
		o.spelling = true
		o.cands = taxa[:min(len(taxa), 6)]
		return o
	}
	n := &ix.names[best.name]
	base := baseSpecies
	if n.kind == vernacularName {
		base = baseVernacular
	} else if t := ix.taxa[n.taxon]; !t.IsSpeciesOrBelow() && t.Rank != RankAggregate {
		base = baseHigher
	}
	r.baseEpithet = key(ix.taxa[n.taxon].SpecificEpithet())
	t := r.readTail(s, toks[best.used:], base)
	spelt := written(s, toks[:best.used])
	o := r.take(best.name, spelt)
	o.and(query(CodeMisspelt, "%s was read as %s, the only name on the list close to it. Say if another was meant.", quoted(spelt), quoted(n.text)+nameAfter(n, ix.taxa[n.taxon])))
	o.verdict.Candidates = nil
	o.cands = []int32{n.taxon}
	o.remark("Spelt %s; read as %s.", quoted(spelt), n.text)
	cands := o.cands
	o = r.applyTail(o, s, toks[:best.used], &t)
	if o.taxon != none {
		o.cands = cands
	}
	if len(t.unknown) > 0 && o.taxon != none {
		rest := written(s, t.unknown)
		o.and(query(CodeLeft, "%s was not understood and is kept as a note.", quoted(rest)))
		o.rest = append(o.rest, rest)
	}
	return o
}

// nameAfter is the accepted name in brackets, where another kind of name was
// matched.
func nameAfter(n *indexName, t *Taxon) string {
	if n.kind == acceptedName || n.text == t.ScientificName {
		return ""
	}
	return " (" + t.ScientificName + ")"
}

func contains32(list []int32, id int32) bool { return slices.Contains(list, id) }

// notListed holds a name that is on no list and close to none.
func (r *resolver) notListed(s string, toks []token) outcome {
	text := written(s, toks)
	o := held(CodeNotListed, "%s is not on the list, nor is a name close to it.", quoted(text))
	if len(toks) >= 2 && toks[0].kind == wordToken && toks[1].kind == wordToken && r.ix.genusTaxon(toks[0].key) != none && toks[1].lower() {
		o.verdict.Message = quoted(text) + " is not on the list, which has the genus, but no species of that name."
		r.step("The genus %s is on the list, the species is not.", toks[0].text)
	}
	if r.isKnown(toks) {
		r.step("It is the name of another taxon, which the list does not have.")
		o.verdict.Message = quoted(text) + " is the name of a taxon that is not on the list."
	}
	// The second part of a name alone.
	if len(toks) == 1 && toks[0].kind == wordToken && toks[0].lower() && len(toks[0].key) > 3 && len(o.cands) == 0 {
		for at := r.ix.firstEpithet(toks[0].key); at != none; at = r.ix.sci[at].nextEpithet {
			if e := &r.ix.sci[at]; e.epithet == toks[0].key {
				if t := r.ix.names[e.name].taxon; t != none && !contains32(o.cands, t) && len(o.cands) < 6 {
					o.cands = append(o.cands, t)
				}
			}
		}
		if len(o.cands) > 0 {
			o.verdict.Message = quoted(text) + " is only the second part of a name."
			return o
		}
	}
	// The same epithet in another genus: an old combination, perhaps.
	if len(toks) >= 2 && toks[0].kind == wordToken && toks[1].kind == wordToken && upperFirst(toks[0].text) && len(toks[1].key) > 3 {
		for at := r.ix.firstEpithet(toks[1].key); at != none; at = r.ix.sci[at].nextEpithet {
			if e := &r.ix.sci[at]; sameButForEnding(e.epithet, toks[1].key) {
				if t := r.ix.names[e.name].taxon; t != none && !contains32(o.cands, t) && len(o.cands) < 6 {
					o.cands = append(o.cands, t)
				}
			}
		}
		for _, a := range r.ix.aggs[toks[0].key] {
			if contains(a.epithets, toks[1].key) {
				o.cands = append(o.cands, a.taxon)
				o.verdict.Message = quoted(text) + " is not on the list, which has it only as an aggregate."
				return o
			}
		}
		if len(o.cands) > 0 {
			r.step("The epithet stands on the list in another genus.")
			o.verdict.Message = quoted(text) + " is not on the list; the same second part is, in another genus."
			return o
		}
	}
	if o.cands = r.cutNames(s, toks); len(o.cands) > 0 && o.verdict.Code == CodeNotListed {
		o.verdict.Message = quoted(text) + " is not on the list; it may be short for a name that is."
		return o
	}
	if o.cands = r.sharingWords(s, toks); len(o.cands) > 0 && o.verdict.Code == CodeNotListed {
		o.verdict.Message = strings.TrimSuffix(o.verdict.Message, ", nor is a name close to it.")
		o.verdict.Message = strings.TrimSuffix(o.verdict.Message, ".") + "; names with the same words are."
	}
	return o
}

// genusTaxon is the taxon of a genus by its key, or none.
func (ix *Index) genusTaxon(k string) int32 {
	for at := range ix.chain(k) {
		if n := &ix.names[at]; n.taxon != none && ix.taxa[n.taxon].Rank == RankGenus {
			return n.taxon
		}
	}
	return none
}

// isKnown: the tokens are the correctly spelt name of a taxon that the list
// does not have.
func (r *resolver) isKnown(toks []token) bool {
	for n := len(toks); n > 0; n-- {
		if _, ok := nameTokens(toks[:n]); !ok {
			continue
		}
		if n <= 2 && n > 1 && toks[0].kind == wordToken && r.ix.known.names[joinKey(toks[:n])] {
			return true
		}
		if n == len(toks) {
			var words []string
			for i := range toks {
				words = append(words, toks[i].text)
			}
			if r.ix.known.english[vernacularKey(strings.Join(words, " "))] {
				return true
			}
		}
	}
	return false
}

// nearScientific finds names of genus and epithet that are close, part by part.
func (r *resolver) nearScientific(toks []token) []suggestion {
	used := 2
	if len(toks) < 2 || toks[0].kind != wordToken {
		return nil
	}
	second := &toks[1]
	if second.kind == groupToken && len(toks) > 2 {
		second, used = &toks[2], 3
	}
	if second.kind != wordToken || len(second.key) < 3 || !second.lower() && toks[0].text != strings.ToUpper(toks[0].text) || noteWords[second.key] || doubtWords[second.key] != "" || openWords[second.key] != "" {
		return nil
	}
	known := r.ix.known.names[toks[0].key+second.key]
	if toks[0].dotted() || len(toks[0].key) == 1 {
		if found := r.cutShort(toks[0].key, second, used); len(found) > 0 {
			return found
		}
		return r.nearAbbreviated(toks[0].key, second.key, used)
	}
	g, e := toks[0].key, second.key
	if len(g) < 4 {
		return nil
	}
	soundG, soundE := soundKey(g, false), soundKey(e, false)
	ix := r.ix
	var found []suggestion
	genera := map[int32]bool{}
	try := func(genus int32) {
		if genera[genus] {
			return
		}
		genera[genus] = true
		candidate := ix.genusKey[genus]
		if distance(g, candidate, reach(len(g))) > reach(len(g)) && soundKey(candidate, false) != soundG {
			return
		}
		costG := cost(g, candidate, soundG, soundKey(candidate, false), 2)
		span := ix.genera[candidate]
		for i := span.first; i < span.end; i++ {
			s := &ix.sci[i]
			if s.infra != "" || s.epithet != e && distance(e, s.epithet, reach(len(e))) > reach(len(e)) && soundKey(s.epithet, false) != soundE {
				continue
			}
			costE := 0
			if s.epithet != e && !sameButForEnding(s.epithet, e) {
				costE = cost(e, s.epithet, soundE, soundKey(s.epithet, false), 2)
			} else if s.epithet != e {
				costE = 1
			}
			f := suggestion{name: s.name, cost: costG + costE, used: used}
			f.apply, f.why = r.mayApply(g, e, candidate, s.epithet, costG, costE)
			if known {
				f.apply, f.why = false, "It is the name of another taxon."
			}
			found = append(found, f)
		}
	}
	if span, there := ix.genera[g]; there {
		try(span.id)
		if len(found) > 0 && cheapest(found) <= 13 {
			return found
		}
	}
	ix.spelling.genera.near(g, 2, func(at int32) { try(ix.spelling.genera.ids[at]) })
	return found
}

func cheapest(found []suggestion) int {
	c := found[0].cost
	for _, f := range found {
		c = min(c, f.cost)
	}
	return c
}

// reach is how many letters off a word of a length may be to be suggested.
func reach(length int) int {
	if length <= 4 {
		return 1
	}
	return 2
}

// limitFor is the cost up to which a word of a length may be taken for another.
func limitFor(length int) int {
	switch {
	case length <= 3:
		return 0
	case length == 4:
		return 6
	case length <= 6:
		return 10
	case length <= 9:
		return 14
	}
	return 21
}

// mayApply decides whether a close name may be taken, each part on its own.
func (r *resolver) mayApply(g, e, genus, epithet string, costG, costE int) (bool, string) {
	ix := r.ix
	sameSound := costE < 10
	switch {
	case costG > limitFor(min(len(g), len(genus))), costE > limitFor(min(len(e), len(epithet))):
		return false, ""
	case costG >= 10 && costE >= 10 && (costG > 11 || costE > 11 || len(g) < 6 || len(e) < 6):
		return false, ""
	case costE >= 10 && (e[0] != epithet[0]) && len(e) < 8:
		return false, ""
	case costG > 1 && g != genus && ix.isGenus(g):
		return false, "There is another genus of that name."
	case costE > 1 && !sameSound && otherWord(e, epithet):
		return false, "It may be the name of another species."
	case costE > 1 && !sameSound && ix.isEpithet(e):
		return false, "Another taxon has that epithet."
	}
	return true, ""
}

func (ix *Index) isGenus(k string) bool {
	if _, there := ix.genera[k]; there {
		return true
	}
	return ix.known.genera[k] || ix.genusTaxon(k) != none
}

// isEpithet: some taxon of the lists or of the lexicon has that epithet.
func (ix *Index) isEpithet(k string) bool {
	if ix.known.epithets[k] {
		return true
	}
	for at := ix.firstEpithet(k); at != none; at = ix.sci[at].nextEpithet {
		if ix.sci[at].epithet == k {
			return true
		}
	}
	return false
}

// cutShort finds the names of which genus and epithet are both cut short:
// "A. exclam.".
func (r *resolver) cutShort(genus string, epithet *token, used int) []suggestion {
	if !epithet.dotted() || len(epithet.key) < 4 {
		return nil
	}
	var found []suggestion
	for _, k := range r.ix.genusKey {
		if !strings.HasPrefix(k, genus) {
			continue
		}
		span := r.ix.genera[k]
		for i := span.first; i < span.end; i++ {
			if e := &r.ix.sci[i]; e.infra == "" && strings.HasPrefix(e.epithet, epithet.key) {
				found = append(found, suggestion{name: e.name, cost: 5, used: used, apply: true})
			}
		}
	}
	return found
}

// nearAbbreviated finds close epithets in all genera with an initial.
func (r *resolver) nearAbbreviated(short, e string, used int) []suggestion {
	if len(e) < 6 {
		return nil
	}
	ix := r.ix
	soundE := soundKey(e, false)
	var found []suggestion
	for _, k := range ix.genusKey {
		if !strings.HasPrefix(k, short) {
			continue
		}
		span := ix.genera[k]
		for i := span.first; i < span.end; i++ {
			s := &ix.sci[i]
			if s.infra != "" || distance(e, s.epithet, 2) > 2 {
				continue
			}
			c := cost(e, s.epithet, soundE, soundKey(s.epithet, false), 2)
			f := suggestion{name: s.name, cost: c, used: used}
			f.apply = c <= 10 && !otherWord(e, s.epithet) && !ix.isEpithet(e) && e[0] == s.epithet[0]
			if r.genus != "" && k == r.genus {
				f.cost -= 2
			}
			found = append(found, f)
		}
	}
	return found
}

// nearSingle finds higher taxa close to a single word.
func (r *resolver) nearSingle(s string, toks []token) []suggestion {
	if len(toks) == 0 || toks[0].kind != wordToken || len(toks[0].key) < 5 {
		return nil
	}
	t := r.readTail(s, toks[1:], baseHigher)
	if len(t.unknown) > 0 || t.second != nil {
		return nil
	}
	k := toks[0].key
	sound := soundKey(k, false)
	var found []suggestion
	x := &r.ix.spelling.single
	x.near(k, 2, func(at int32) {
		c := cost(k, x.words[at], sound, x.sounds[at], 2)
		apply := c <= min(limitFor(len(k)), 13) && len(k) >= 6 && !r.ix.isGenus(k) && !r.ix.isVernacularWord(k)
		found = append(found, suggestion{name: x.ids[at], cost: c, used: 1, apply: apply})
	})
	return found
}
