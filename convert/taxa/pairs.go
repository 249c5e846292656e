package taxa

import (
	"slices"
	"strings"

	"fieldfare/convert/reading"
)

// readPair reads names that are given together and not told apart: "Acronicta
// psi/tridens", "Grey or Dark Dagger", "Common Rustic / Lesser Common Rustic".
func (r *resolver) readPair(s string, toks []token) (outcome, bool) {
	var cuts []int
	for i := range toks {
		t := &toks[i]
		if t.sign("/") || t.sign("|") || t.key == "or" && t.kind == wordToken && t.lower() && i > 0 && i+1 < len(toks) {
			cuts = append(cuts, i)
		}
	}
	if len(cuts) == 0 || cuts[0] == 0 || cuts[len(cuts)-1] == len(toks)-1 {
		return outcome{}, false
	}
	if o, ok := r.listedPair(s, toks); ok {
		return o, true
	}
	var sides [][]token
	start := 0
	for _, c := range append(cuts, len(toks)) {
		side := toks[start:c]
		// "and/or"
		if len(side) > 1 && side[len(side)-1].key == "and" {
			side = side[:len(side)-1]
		}
		if len(side) == 0 || len(side) == 1 && side[0].key == "and" {
			start = c + 1
			continue
		}
		sides = append(sides, side)
		start = c + 1
	}
	if len(sides) < 2 {
		return outcome{}, false
	}
	outs := r.readSides(s, sides)
	if outs == nil {
		return outcome{}, false
	}
	return r.joinSides(s, sides, outs)
}

// listedPair: the list itself has a name of that wording.
func (r *resolver) listedPair(s string, toks []token) (outcome, bool) {
	for n := len(toks); n >= 3; n-- {
		slash := slices.ContainsFunc(toks[:n], func(t token) bool { return t.sign("/") })
		if !slash {
			break
		}
		at, there := r.ix.named(joinKey(toks[:n]))
		if !there || !strings.Contains(r.ix.names[at].text, "/") {
			continue
		}
		o := r.decide(at, s)
		t := r.readTail(s, toks[n:], baseSpecies)
		if len(t.unknown) > 0 {
			continue
		}
		return r.applyTail(o, s, toks[:n], &t), true
	}
	return outcome{}, false
}

// readSides reads every side, lending the genus or the last words of one side
// to the others: "psi/tridens", "Grey/Dark Dagger". It returns nil where no
// side is a name.
func (r *resolver) readSides(s string, sides [][]token) []outcome {
	outs := make([]outcome, len(sides))
	lastText := written(s, sides[len(sides)-1])
	any := false
	genus := ""
	if f := sides[0]; len(f) >= 2 && f[0].kind == wordToken && upperFirst(f[0].text) {
		genus = f[0].text
	}
	read := func(text string) (outcome, bool) {
		toks := tokenize(text)
		o, ok := r.readOne(text, toks)
		if ok && o.taxon != none && o.state() == 0 {
			return o, true
		}
		return outcome{}, false
	}
	for i, side := range sides {
		text := written(s, side)
		outs[i] = outcome{taxon: none}
		if o, ok := read(text); ok && !(len(side) == 1 && i+1 < len(sides) && r.lends(text, lastText)) {
			outs[i], any = o, true
			continue
		}
		// An epithet alone, or with a shortened genus.
		if i > 0 && genus != "" && side[0].kind == wordToken && side[0].lower() {
			if o, ok := read(genus + " " + text); ok {
				outs[i], any = o, true
				continue
			}
		}
		// The last words of the last side complete the earlier ones.
		if i+1 < len(sides) {
			if o, ok := r.lent(text, lastText, read); ok {
				outs[i], any = o, true
				continue
			}
		}
		// The last words of the first side complete the later ones.
		if i > 0 {
			first := written(s, sides[0])
			if o, ok := r.lent(text, first, read); ok {
				outs[i], any = o, true
				continue
			}
			// Its first words begin them: "Heart and Dart/Club".
			if words := strings.Fields(first); len(side) == 1 && len(words) > 1 {
				if o, ok := read(strings.Join(words[:len(words)-1], " ") + " " + text); ok {
					outs[i], any = o, true
				}
			}
		}
	}
	if !any {
		return nil
	}
	r.settleByKin(s, sides, outs)
	// A side may be misspelt.
	for i, side := range sides {
		if outs[i].taxon != none {
			continue
		}
		text := written(s, side)
		if i > 0 && genus != "" && side[0].kind == wordToken && side[0].lower() {
			text = genus + " " + text
		}
		if o := r.misspelt(text, tokenize(text)); o.taxon != none {
			outs[i] = o
		}
	}
	return outs
}

// settleByKin chooses for a side whose name several taxa share the one that
// is of the same family as another side: "Common Blue/Brown Argus".
func (r *resolver) settleByKin(s string, sides [][]token, outs []outcome) {
	for i, side := range sides {
		if outs[i].taxon != none {
			continue
		}
		o, ok := r.readOne(written(s, side), tokenize(written(s, side)))
		if !ok || o.verdict.Code != CodeAmbiguous || len(o.rest) > 0 {
			continue
		}
		var kin []int32
		for _, c := range o.cands {
			for j := range outs {
				if j != i && outs[j].taxon != none && r.ix.taxa[c].Family != "" && r.ix.taxa[c].Family == r.ix.taxa[outs[j].taxon].Family && !contains32(kin, c) {
					kin = append(kin, c)
				}
			}
		}
		if len(kin) == 1 {
			outs[i] = outcome{taxon: kin[0], name: none}
		}
	}
}

// lends: the text becomes a vernacular name with the last words of another.
func (r *resolver) lends(text, from string) bool {
	words := strings.Fields(from)
	for k := 1; k < len(words); k++ {
		if _, there := r.ix.named(vernacularKey(text + " " + strings.Join(words[k:], " "))); there {
			return true
		}
	}
	return false
}

func (r *resolver) lent(text, from string, read func(string) (outcome, bool)) (outcome, bool) {
	words := strings.FieldsFunc(from, func(r rune) bool { return r == ' ' || r == '-' })
	for k := len(words) - 1; k >= 0; k-- {
		for end := len(words); end > k; end-- {
			if o, ok := read(text + " " + strings.Join(words[k:end], " ")); ok {
				return o, true
			}
		}
	}
	return outcome{}, false
}

// joinSides finds the list's aggregate of all that is named, or else the
// lowest taxon that they share.
func (r *resolver) joinSides(s string, sides [][]token, outs []outcome) (outcome, bool) {
	ix := r.ix
	var species []string
	genus := ""
	same, known := true, 0
	o := outcome{taxon: none, name: none}
	for i := range outs {
		o.rest = append(o.rest, outs[i].rest...)
		if outs[i].taxon == none {
			continue
		}
		t := ix.taxa[outs[i].taxon]
		known++
		if outs[i].state() == reading.Query {
			o.and(outs[i].verdict)
		}
		o.cands = append(o.cands, outs[i].taxon)
		o.named = append(o.named, nameInPair(&outs[i], t))
		if genus == "" {
			genus = t.Genus
		}
		same = same && t.Genus == genus && genus != ""
		if e := key(t.SpecificEpithet()); e != "" {
			species = append(species, e)
		} else if t.Rank == RankAggregate {
			// "Dark Dagger / Grey Dagger agg."
			for _, a := range ix.aggs[key(t.Genus)] {
				if a.taxon == outs[i].taxon {
					species = append(species, a.epithets...)
				}
			}
		}
	}
	if known < len(outs) {
		// One side is not on the list; a stated genus still holds for both.
		if f := sides[0]; known > 0 && same && len(f) >= 2 && key(genus) == f[0].key && allEpithets(sides[1:]) {
			return r.pairGenus(s, o, genus, true)
		}
		h := held(CodeNotListed, "%s names taxa together, and not all of them are on the list.", quoted(s))
		h.cands = o.cands
		return h, true
	}
	first := outs[0].taxon
	if !slices.ContainsFunc(outs, func(p outcome) bool { return p.taxon != first }) {
		outs[0].rest = o.rest
		return outs[0], true
	}
	if same {
		for pass := range 3 {
			for _, a := range ix.aggs[key(genus)] {
				all := func(list []string) bool {
					return !slices.ContainsFunc(species, func(e string) bool { return !contains(list, e) })
				}
				covers := pass == 0 && all(a.epithets) && len(a.epithets) == len(species) ||
					pass == 1 && (all(a.members) || all(append(slices.Clone(a.epithets), a.members...))) ||
					pass == 2 && slices.ContainsFunc(species, func(e string) bool { return contains(a.epithets, e) })
				if !covers || len(species) == 0 {
					continue
				}
				o.taxon = a.taxon
				r.step("The list's aggregate %s covers them.", ix.taxa[a.taxon].ScientificName)
				if pass == 2 {
					o.and(query(CodeAggregate, "%s was read as %s, the list's aggregate named after one of them. Say if it does not cover both.", quoted(s), ix.taxa[a.taxon].ScientificName))
				} else {
					o.and(fair("", "%s was read as the aggregate %s.", quoted(s), ix.taxa[a.taxon].ScientificName))
				}
				o.cands = nil
				return o, true
			}
		}
		return r.pairGenus(s, o, genus, false)
	}
	up := ix.lowestCommon(o.cands)
	if up == none {
		h := held(CodeAmbiguous, "%s names taxa together that share no group on the list.", quoted(s))
		h.cands = o.cands
		return h, true
	}
	return r.pairUp(s, o, up)
}

// nameInPair is the name that one side gives, although it was doubted or an
// aggregate and so lifted to its genus.
func nameInPair(o *outcome, t *Taxon) string {
	if words := strings.Fields(o.qualifier); t.Rank == RankGenus && len(words) == 2 {
		epithet := words[0]
		if !startsLower(epithet) || doubtWords[key(epithet)] != "" {
			epithet = words[1] // "? comes", not "comes agg."
		}
		return t.ScientificName + " " + epithet
	}
	return t.ScientificName
}

func allEpithets(sides [][]token) bool {
	for _, side := range sides {
		if side[0].kind != wordToken || !side[0].lower() || !latinLook(side[0].key) {
			return false
		}
	}
	return true
}

func (r *resolver) pairGenus(s string, o outcome, genus string, part bool) (outcome, bool) {
	up := r.ix.above(r.ix.taxa[o.cands[0]], RankGenus)
	if up == none {
		return outcome{}, false
	}
	o, ok := r.pairUp(s, o, up)
	if part {
		o.and(query(CodeAggregate, "Not all of the names in %s are on the list; the genus %s was taken.", quoted(s), genus))
	}
	return o, ok
}

// pairUp reads names given together as a taxon that holds them all.
func (r *resolver) pairUp(s string, o outcome, up int32) (outcome, bool) {
	t := r.ix.taxa[up]
	r.step("No aggregate on the list covers them: read as the %s %s.", t.Rank, t.ScientificName)
	names := o.named
	o.remark("Recorded as %s, not told apart.", orList(names))
	short := names
	if t.Rank == RankGenus {
		short = nil
		for _, n := range names {
			short = append(short, strings.TrimPrefix(n, t.ScientificName+" "))
		}
	}
	o.qualifier = strings.Join(short, "/")
	o.taxon, o.cands = up, nil
	o.and(fair("", "%s was read as the %s %s, as the list has no aggregate of them.", quoted(s), t.Rank, t.ScientificName))
	return o, true
}

// lowestCommon is the lowest higher taxon that all belong to, or none.
func (ix *Index) lowestCommon(taxa []int32) int32 {
	if len(taxa) == 0 {
		return none
	}
	first := ix.taxa[taxa[0]]
	for _, rank := range higherRanks {
		name := first.at(rank)
		if name == "" {
			continue
		}
		shared := true
		for _, t := range taxa[1:] {
			shared = shared && strings.EqualFold(ix.taxa[t].at(rank), name)
		}
		if shared {
			if up := ix.above(first, rank); up != none {
				return up
			}
		}
	}
	return none
}

// readHybrid reads a cross: "Smerinthus ocellata × Laothoe populi".
func (r *resolver) readHybrid(s string, toks []token) (outcome, bool) {
	cut := slices.IndexFunc(toks, func(t token) bool {
		return t.sign("×") || t.kind == wordToken && (t.text == "x" || t.text == "X")
	})
	if cut <= 0 || cut+1 >= len(toks) || toks[cut+1].kind != wordToken || countLike(&toks[cut+1]) {
		return outcome{}, false
	}
	if at, there := r.ix.named(joinKey(append(slices.Clone(toks[:cut]), toks[cut+1:]...))); there {
		if n := &r.ix.names[at]; strings.Contains(n.text, "×") || strings.Contains(n.text, " x ") {
			return r.decide(at, s), true
		}
	}
	if at, there := r.ix.named(joinKey(toks)); there && (strings.Contains(r.ix.names[at].text, " x ") || strings.Contains(r.ix.names[at].text, " X ")) {
		return r.decide(at, s), true
	}
	outs := r.readSides(s, [][]token{toks[:cut], toks[cut+1:]})
	if outs == nil || outs[0].taxon == none || outs[1].taxon == none {
		if second := &toks[cut+1]; outs != nil && outs[0].taxon != none && (toks[cut].sign("×") || latinLook(second.key)) && second.lower() && !noteWords[second.key] {
			h := held(CodeHybrid, "%s is a cross, and not both of its parents are on the list.", quoted(s))
			h.cands = []int32{outs[0].taxon}
			return h, true
		}
		return outcome{}, false
	}
	o := outcome{taxon: none, name: none, cands: []int32{outs[0].taxon, outs[1].taxon}}
	up := r.ix.lowestCommon(o.cands)
	a, b := r.ix.taxa[o.cands[0]], r.ix.taxa[o.cands[1]]
	if up == none {
		h := held(CodeHybrid, "%s is a cross of two taxa that share no group on the list.", quoted(s))
		h.cands = o.cands
		return h, true
	}
	t := r.ix.taxa[up]
	r.step("A cross that is not on the list: read as what both parents belong to, %s.", t.ScientificName)
	o.taxon, o.cands = up, nil
	o.qualifier = "hybrid"
	o.remark("Recorded as the hybrid %s × %s.", a.ScientificName, b.ScientificName)
	o.and(query(CodeHybrid, "%s is a cross that the list does not have; the %s %s was taken. Say if it should go in under another name.", quoted(s), t.Rank, t.ScientificName))
	return o, true
}
