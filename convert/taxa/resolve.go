package taxa

import (
	"slices"
	"strings"
)

// resolver reads one name. It looks at nothing but the index, the genus above
// on the page and the page's group.
type resolver struct {
	ix        *Index
	group     group
	groupText string
	genus     string // key of the genus above, or empty
	author    authorship
	trace     func(string, ...any)

	baseEpithet string // of the name whose tail is being read
}

func (r *resolver) step(format string, args ...any) {
	if r.trace != nil {
		r.trace(format, args...)
	}
}

// readText reads a cell that holds a name of any kind.
func (r *resolver) readText(s string) outcome {
	s = andSigns.Replace(tidy(s))
	if nothingWords[key(s)] || key(s) == "" {
		return held(CodeNoName, "%s names no taxon.", quoted(s))
	}
	if plainName(s) {
		if o, ok := r.exactKey(key(s), s); ok {
			return r.wordOfDoubt(o, s)
		}
	}
	toks := tokenize(s)
	if len(toks) > mostWords {
		return held(CodeNotListed, "%s is too long for a name.", quoted(s))
	}
	if o, ok := r.numberFirst(s, toks); ok {
		return o
	}
	if o, ok := r.numberLast(s, toks); ok {
		return o
	}
	return r.readTokens(s, toks)
}

// mostWords bounds the words and signs of a name with all that may stand
// around it. What is longer is a text, and trying each of its parts as a name
// would take time by the square of its length.
const mostWords = 200

// andSigns are ways of writing "and" in a name, "cf.", and "underwing" with a
// stroke that parts no names.
var andSigns = strings.NewReplacer(" + ", " & ", " 'n' ", " & ", " 'n ", " & ", " n' ", " & ", "c.f.", "cf.", "C.f.", "cf.", "C.F.", "cf.",
	"U/wing", "Underwing", "u/wing", "underwing", "U/W", "Underwing", "U/w", "Underwing", "u/w", "underwing")

func (r *resolver) readTokens(s string, toks []token) outcome {
	if o, ok := r.readPair(s, toks); ok {
		return o
	}
	if o, ok := r.readHybrid(s, toks); ok {
		return o
	}
	if o, ok := r.readOne(s, toks); ok {
		return o
	}
	lead, rest := r.readLead(toks)
	if len(rest) == 0 {
		return held(CodeNoName, "%s names no taxon.", quoted(s))
	}
	if len(rest) < len(toks) {
		if o, ok := r.readOne(s, rest); ok {
			return r.applyLead(o, lead, s)
		}
	}
	if o, ok := r.generic(s, rest); ok {
		o = r.applyLead(o, lead, s)
		if lead.doubt != "" && lead.doubt != "indet." && o.taxon != none {
			o.and(query(CodeNoteDoubt, "%s says that even the group was not certain. Say if it was one.", quoted(s)))
		}
		return o
	}
	if o, ok := r.hyphenJoined(s[rest[0].start:]); ok {
		return r.applyLead(o, lead, s)
	}
	o := r.misspelt(s, rest)
	if both, ok := r.bothMisspelt(s, rest); ok && o.taxon == none {
		o = both
	}
	return r.applyLead(o, lead, s)
}

// exactKey looks a whole key up.
func (r *resolver) exactKey(k, s string) (outcome, bool) {
	at, there := r.ix.named(k)
	if !there {
		return outcome{}, false
	}
	return r.decide(at, s), true
}

// decide chooses among the names with one key. Earlier lists come first; of
// several taxa the author or the group decides, or nobody.
func (r *resolver) decide(head int32, s string) outcome {
	ix := r.ix
	first := &ix.names[head]
	if first.next == none && first.kind != vernacularName && first.kind != brokenName {
		return r.take(head, s)
	}
	var names []int32
	for at := head; at != none; at = ix.names[at].next {
		if n := &ix.names[at]; n.list == first.list && n.kind != brokenName && !r.sameTaxonAmong(names, n.taxon) {
			names = append(names, at)
		}
	}
	if len(names) == 0 {
		n := &ix.names[head]
		return held(CodeListError, "%s is on the list but %s. Correct the list, or write the accepted name.", quoted(n.text), n.reason)
	}
	if n := &ix.names[names[0]]; n.kind == vernacularName {
		if len(r.ix.spelling.rivals) > 0 {
			names = append(names, r.kindRivals(names[0], names)...)
		}
	}
	if len(names) == 1 {
		return r.take(names[0], s)
	}
	if !r.author.empty() {
		if kept := r.keep(names, func(t *Taxon) bool {
			listed := parseAuthorship(t.Authorship)
			return r.author.agrees(listed) && (r.author.year == "" || listed.year == "" || r.author.year == listed.year)
		}); len(kept) == 1 {
			r.step("Of the taxa of that name only %s has the author that was written.", ix.taxa[ix.names[kept[0]].taxon])
			return r.take(kept[0], s)
		}
	}
	if r.group.says() {
		if kept := r.keep(names, r.group.has); len(kept) == 1 {
			o := r.take(kept[0], s)
			t := ix.taxa[o.taxon]
			r.step("Several taxa have that name; %s is the one that belongs to the group %s.", t, quoted(r.groupText))
			o.and(fair("", "%s stands for several taxa; %s was taken, as the page is about %s.", quoted(s), t, quoted(r.groupText)))
			return o
		} else if len(kept) > 1 {
			names = kept
		}
	}
	var accepted []int32
	vernacular := false
	for _, at := range names {
		switch ix.names[at].kind {
		case acceptedName:
			accepted = append(accepted, at)
		case vernacularName:
			vernacular = true
		}
	}
	if len(accepted) == 1 && !vernacular {
		o := r.take(accepted[0], s)
		var others []string
		for _, at := range names {
			if at != accepted[0] {
				others = append(others, ix.taxa[ix.names[at].taxon].String())
			}
		}
		o.and(query(CodeAlsoSynonym, "%s is the accepted name of one taxon, and also a synonym of %s; the accepted one was taken. Say which was meant.", quoted(s), orList(others)))
		return o
	}
	o := held(CodeAmbiguous, "%s stands for more than one taxon.", quoted(s))
	for _, at := range names {
		o.cands = append(o.cands, ix.names[at].taxon)
	}
	return o
}

func (r *resolver) keep(names []int32, ok func(*Taxon) bool) []int32 {
	var kept []int32
	for _, at := range names {
		if ok(r.ix.taxa[r.ix.names[at].taxon]) {
			kept = append(kept, at)
		}
	}
	return kept
}

// sameTaxonAmong: the taxon is there already, or is a second line for one
// that is: same name, author and classification.
func (r *resolver) sameTaxonAmong(names []int32, taxon int32) bool {
	t := r.ix.taxa[taxon]
	for _, at := range names {
		other := r.ix.names[at].taxon
		if other == taxon {
			return true
		}
		o := r.ix.taxa[other]
		if o.ScientificName == t.ScientificName && o.Rank == t.Rank && o.Lineage == t.Lineage &&
			(o.Authorship == t.Authorship || o.Authorship == "" || t.Authorship == "") {
			return true
		}
	}
	return false
}

// kindRivals finds taxa whose vernacular name is the one written with a word
// like moth added: Brimstone and Brimstone Moth are two, and who writes the
// first may mean the second.
func (r *resolver) kindRivals(head int32, names []int32) []int32 {
	var rivals []int32
	for _, at := range r.ix.spelling.rivals[vernacularKey(r.ix.names[head].text)] {
		if taxon := r.ix.names[at].taxon; !r.sameTaxonAmong(names, taxon) && !r.sameTaxonAmong(rivals, taxon) {
			rivals = append(rivals, at)
		}
	}
	return rivals
}

// take makes the outcome of one name.
func (r *resolver) take(at int32, s string) outcome {
	ix := r.ix
	n := &ix.names[at]
	t := ix.taxa[n.taxon]
	o := outcome{taxon: n.taxon, name: at}
	switch n.kind {
	case synonymName:
		r.step("%s is a synonym of %s.", quoted(n.text), t)
		o.verdict = fair(CodeSynonym, "%s is a synonym of %s.", quoted(n.text), t)
		o.remark("Recorded as %s, a synonym of %s.", n.text, t.ScientificName)
	case vernacularName:
		r.step("%s is a vernacular name of %s.", quoted(n.text), t.ScientificName)
	case impliedName:
		r.step("%s is a %s in the list's classification.", quoted(n.text), t.Rank)
	default:
		r.step("%s is an accepted name.", quoted(n.text))
	}
	if n.kind == vernacularName && r.group.understood() && !r.group.has(t) && r.ix.groupListed(&r.group) {
		o.and(query(CodeGroup, "%s is %s, which does not belong to the page's group %s. Say whether it was meant.", quoted(s), t, quoted(r.groupText)))
	}
	return o
}

// groupListed: the lists have taxa of the group at all.
func (ix *Index) groupListed(g *group) bool {
	for _, name := range g.in {
		for _, rank := range higherRanks {
			if len(ix.higher[identity{rank, name}]) > 0 {
				return true
			}
		}
	}
	return false
}

// exactTokens looks up the tokens as one whole name: as they stand, with the
// subgenus left out, with the usual variants of vernacular names, in another
// gender.
func (r *resolver) exactTokens(s string, toks []token) (outcome, bool) {
	toks, ok := nameTokens(toks)
	if !ok {
		return outcome{}, false
	}
	k := joinKey(toks)
	text := written(s, toks)
	if o, ok := r.exactKey(k, text); ok {
		return o, true
	}
	if len(toks) > 1 || strings.Contains(text, "-") {
		if v := vernacularKey(text); v != k && v != "" {
			if o, ok := r.exactKey(v, text); ok {
				return o, true
			}
		}
	}
	if len(toks) >= 2 && toks[0].kind == wordToken && toks[1].kind == wordToken {
		if o, ok := r.otherEnding(s, toks); ok {
			return o, true
		}
	}
	return outcome{}, false
}

// nameTokens leaves a subgenus out of a name; ok is false where signs or
// other brackets stand among the tokens.
func nameTokens(toks []token) ([]token, bool) {
	for i := range toks {
		t := &toks[i]
		if t.kind == wordToken || t.kind == numberToken || t.sign("&") {
			continue
		}
		if i == 1 && t.kind == groupToken && len(toks) > 2 && toks[2].kind == wordToken && toks[2].lower() && upperFirst(t.text) && !strings.ContainsAny(t.text, " ,") {
			return append(slices.Clone(toks[:1]), toks[2:]...), true
		}
		return nil, false
	}
	return toks, len(toks) > 0
}

// otherEnding finds a name of the same genus whose epithets differ by nothing
// but their endings in gender or case.
func (r *resolver) otherEnding(s string, toks []token) (outcome, bool) {
	if len(toks) > 3 {
		return outcome{}, false
	}
	g, there := r.ix.genera[toks[0].key]
	if !there {
		return outcome{}, false
	}
	var found []int32
	infra := ""
	if len(toks) == 3 {
		infra = toks[2].key
	}
	for i := g.first; i < g.end; i++ {
		e := &r.ix.sci[i]
		if sameButForEnding(e.epithet, toks[1].key) && (infra == "" && e.infra == "" || infra != "" && e.infra != "" && sameButForEnding(e.infra, infra)) {
			n := &r.ix.names[e.name]
			if n.taxon != none && !r.sameTaxonAmong(found, n.taxon) {
				found = append(found, e.name)
			}
		}
	}
	if len(found) != 1 {
		return outcome{}, false
	}
	o := r.take(found[0], s)
	text := r.ix.names[found[0]].text
	r.step("%s is %s with another ending.", quoted(written(s, toks)), text)
	o.and(fair("", "%s was read as %s; only the ending differs.", quoted(written(s, toks)), text))
	o.remark("Written %s; the ending was corrected to %s.", written(s, toks), text)
	return o, true
}
