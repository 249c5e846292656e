package taxa

import (
	"slices"
	"strings"
)

// readOne reads a single name with what stands behind it: the longest run of
// tokens from the start that is a name, with a tail that is understood.
func (r *resolver) readOne(s string, toks []token) (outcome, bool) {
	var partial *outcome
	limit := 0
	for limit < len(toks) && limit < 14 && (toks[limit].kind != signToken || toks[limit].sign("&")) && (toks[limit].kind != groupToken || limit == 1) {
		limit++
	}
	for n := limit; n > 0; n-- {
		o, ok := r.exactTokens(s, toks[:n])
		if !ok && n >= 2 {
			o, ok = r.abbreviated(s, toks[:n])
		}
		if !ok && o.name == 0 && n == limit {
			o, ok = r.vernacularVariant(s, toks[:n])
		}
		if !ok && n < limit {
			o, ok = r.vernacularVariant(s, toks[:n])
		}
		if !ok {
			continue
		}
		base := r.baseOf(&o, toks[:n])
		if base == baseVernacular {
			if turned, ok := r.bracketTurned(o, s, toks, n); ok {
				return turned, true
			}
		}
		r.baseEpithet = ""
		if o.taxon != none {
			r.baseEpithet = key(r.ix.taxa[o.taxon].SpecificEpithet())
		}
		t := r.readTail(s, toks[n:], base)
		if len(t.unknown) == 0 && !(base == baseVernacular && r.mayBeLonger(toks[n:], &t)) {
			o = r.redecide(o, s, toks[:n], &t)
			o = r.byKind(o, s, toks[:n], &t)
			return r.applyTail(o, s, toks[:n], &t), true
		}
		if o.taxon != none && partial == nil {
			if close, ok := r.otherNameClose(o, s, toks[:n], &t, base); ok {
				return close, true
			}
		}
		if base == baseSpecies && partial == nil && o.taxon != none {
			o = r.redecide(o, s, toks[:n], &t)
			left := t.unknown
			o = r.applyTail(o, s, toks[:n], &t)
			if o.taxon != none {
				rest := written(s, left)
				o.and(query(CodeLeft, "%s was read as %s; %s was not understood and is kept as a note. Say if it changes the name.", quoted(s), r.ix.taxa[o.taxon], quoted(rest)))
				o.rest = append(o.rest, rest)
			}
			partial = &o
		}
	}
	if partial != nil {
		return *partial, true
	}
	if o, ok := r.inverted(s, toks); ok {
		return o, true
	}
	if o, ok := r.bracketTurned(outcome{taxon: none}, s, toks, limit); ok {
		return o, true
	}
	return r.nameWithin(s, toks)
}

// otherNameClose: what is left behind the name is the taxon's other name,
// misspelt.
func (r *resolver) otherNameClose(o outcome, s string, toks []token, t *tail, base baseKind) (outcome, bool) {
	if base == baseHigher || len(t.unknown) == 0 {
		return o, false
	}
	text, left := s, t.unknown
	if left[0].kind == groupToken && len(left) == 1 {
		text = left[0].text
		left = tokenize(text)
	}
	if len(left) == 0 || left[0].kind != wordToken || !upperFirst(left[0].text) {
		return o, false
	}
	other := r.misspelt(text, left)
	if other.taxon != o.taxon && (len(other.cands) == 0 || other.cands[0] != o.taxon) {
		return o, false
	}
	r.step("%s is close to the same taxon's other name.", quoted(written(text, left)))
	without := *t
	without.unknown = nil
	o = r.applyTail(o, s, toks, &without)
	o.remark("The other name was written %s.", quoted(written(text, left)))
	return o, true
}

// mayBeLonger: the words behind a vernacular name could make it another name
// ("Marbled White" and "Marbled White Spot"), so they are not taken as notes.
func (r *resolver) mayBeLonger(rest []token, t *tail) bool {
	if len(rest) == 0 || rest[0].kind != wordToken || t.second != nil {
		return false
	}
	k := rest[0].key
	if weakNotes[k] {
		return !(len(rest) > 1 && (rest[1].key == "form" || rest[1].key == "one" || rest[1].key == "specimen" || rest[1].key == "individual"))
	}
	return upperFirst(rest[0].text) && r.ix.isVernacularWord(k) && !noteWords[k] && openWords[k] == "" && !aggregateWords[k]
}

func (r *resolver) baseOf(o *outcome, toks []token) baseKind {
	if o.name != none && r.ix.names[o.name].kind == vernacularName {
		return baseVernacular
	}
	if o.taxon != none {
		if t := r.ix.taxa[o.taxon]; t.IsSpeciesOrBelow() || t.Rank == RankAggregate {
			return baseSpecies
		}
		return baseHigher
	}
	if len(o.cands) > 0 {
		if at, ok := r.ix.named(joinKey(toks)); ok && r.ix.names[at].kind == vernacularName {
			return baseVernacular
		}
		if t := r.ix.taxa[o.cands[0]]; !t.IsSpeciesOrBelow() {
			return baseHigher
		}
	}
	return baseSpecies
}

// redecide looks again where the author behind the name may choose.
func (r *resolver) redecide(o outcome, s string, toks []token, t *tail) outcome {
	if o.taxon != none || len(t.author) == 0 || o.verdict.Code != CodeAmbiguous {
		return o
	}
	with := *r
	with.author = authorshipOf(t.author)
	if p, ok := with.exactTokens(s, toks); ok {
		return p
	}
	return o
}

// vernacularVariant looks the tokens up as a vernacular name in the plural,
// or with a word like moth too many or left out.
func (r *resolver) vernacularVariant(s string, toks []token) (outcome, bool) {
	clean, ok := nameTokens(toks)
	if !ok || len(clean) != len(toks) {
		return outcome{}, false
	}
	text := written(s, toks)
	words := vernacularWords(text)
	if len(words) > 1 && (words[0] == "the" || words[0] == "a" || words[0] == "an") {
		words = words[1:]
	}
	if len(words) == 0 || len(words) > 8 {
		return outcome{}, false
	}
	look := func(variants []variant) (outcome, bool) {
		var found []int32
		unsure := false
		for _, v := range variants {
			for at := range r.ix.chain(v.key) {
				n := &r.ix.names[at]
				if n.kind != vernacularName || r.sameTaxonAmong(found, n.taxon) {
					continue
				}
				t := r.ix.taxa[n.taxon]
				if !isOfKind(t, v.kind) {
					if t.placed() {
						continue // a moth is not a butterfly of that name
					}
					unsure = true
				}
				found = append(found, at)
			}
		}
		switch len(found) {
		case 0:
			return outcome{}, false
		case 1:
			o := r.take(found[0], text)
			r.step("%s was taken for %s.", quoted(text), quoted(r.ix.names[found[0]].text))
			if unsure {
				o.and(query(CodeShortened, "%s was read as %s (%s), though the list does not say what kind of animal that is. Say if something else was meant.", quoted(text), quoted(r.ix.names[found[0]].text), r.ix.taxa[o.taxon].ScientificName))
			}
			return o, true
		}
		if r.group.says() {
			if kept := r.keep(found, r.group.has); len(kept) == 1 {
				return r.take(kept[0], text), true
			}
		}
		o := held(CodeAmbiguous, "%s could be more than one taxon.", quoted(text))
		for _, at := range found {
			o.cands = append(o.cands, r.ix.names[at].taxon)
		}
		return o, true
	}
	if o, ok := look(vernacularVariants(words)); ok {
		return o, true
	}
	// "Puss", "Elephant Hawk", "Red-tailed": the word like moth is left out. A
	// single short word says too little.
	if len(words) == 1 && r.ix.spelling.endings[words[0]] > 1 {
		return outcome{}, false // "Emerald" is the last word of several names
	}
	if len(words) > 1 || len(words[0]) >= 4 {
		if at, there := r.ix.named(strings.Join(words, "")); !there || r.ix.names[at].kind == vernacularName {
			var longer []variant
			for _, k := range withKindWord(words) {
				longer = append(longer, variant{k, ""})
			}
			o, ok := look(longer)
			return r.lengthened(o, text, words), ok
		}
	}
	return outcome{}, false
}

// lengthened weighs a name to which a word like moth was added. On a page
// about such taxa that is how people write. Elsewhere the name as it stands
// may be that of something else (a hornet is no Hornet Moth): it is held,
// unless its last word asks to be completed, as in "Elephant Hawk" and "7-spot".
func (r *resolver) lengthened(o outcome, text string, words []string) outcome {
	if o.taxon == none || r.group.understood() && r.group.has(r.ix.taxa[o.taxon]) {
		return o
	}
	n := &r.ix.names[o.name]
	last := strings.TrimSuffix(words[len(words)-1], "s")
	if r.ix.known.english[strings.Join(words, "")] || last != "hawk" && last != "spot" {
		h := held(CodeShortened, "%s is not on the list, but %s is.", quoted(text), quoted(n.text))
		h.cands = []int32{o.taxon}
		return h
	}
	o.and(query(CodeShortened, "%s was read as %s (%s). Say if something else was meant.", quoted(text), quoted(n.text), r.ix.taxa[o.taxon].ScientificName))
	o.remark("Written %s; read as %s.", quoted(text), n.text)
	return o
}

// bracketTurned reads "Footman (Common)". Where the words before the bracket
// are a name themselves, as in "Rustic (Common)", it holds both.
func (r *resolver) bracketTurned(o outcome, s string, toks []token, n int) (outcome, bool) {
	if n >= len(toks) || toks[n].kind != groupToken {
		if n < 2 || toks[n-1].kind != groupToken {
			return o, false
		}
		n--
	}
	text := toks[n].text + " " + written(s, toks[:n])
	if !plainName(text) {
		return o, false
	}
	at, there := r.ix.named(vernacularKey(text))
	if !there || r.ix.names[at].kind != vernacularName {
		return o, false
	}
	turned := r.decide(at, text)
	t := r.readTail(s, toks[n+1:], baseVernacular)
	if len(t.unknown) > 0 {
		return o, false
	}
	r.step("%s was read in the other order: %s.", quoted(s), quoted(text))
	if o.taxon == none || o.taxon == turned.taxon {
		return r.applyTail(turned, s, toks[:n+1], &t), true
	}
	h := held(CodeAmbiguous, "%s can be read in two ways.", quoted(s))
	if turned.taxon != none {
		h.cands = append(h.cands, turned.taxon)
	}
	h.cands = append(append(h.cands, turned.cands...), o.taxon)
	return h, true
}

// isOfKind: the taxon is a moth, a damselfly and so on, by its classification.
func isOfKind(t *Taxon, kind string) bool {
	if kind == "" {
		return true
	}
	g := groupOf(kind, func(string) bool { return false })
	return g.has(t)
}

// inverted reads index style: "Underwing, Large Yellow".
func (r *resolver) inverted(s string, toks []token) (outcome, bool) {
	comma := slices.IndexFunc(toks, func(t token) bool { return t.sign(",") })
	if comma <= 0 || comma+1 >= len(toks) || comma > 4 {
		return outcome{}, false
	}
	for end := len(toks); end > comma+1; end-- {
		turned := append(slices.Clone(toks[comma+1:end]), toks[:comma]...)
		if _, ok := nameTokens(turned); !ok {
			continue
		}
		var text []string
		for i := range turned {
			text = append(text, turned[i].text)
		}
		if at, there := r.ix.named(vernacularKey(strings.Join(text, " "))); there && r.ix.names[at].kind == vernacularName {
			o := r.decide(at, strings.Join(text, " "))
			t := r.readTail(s, toks[end:], baseVernacular)
			if len(t.unknown) == 0 {
				r.step("%s was read in the other order.", quoted(s))
				return r.applyTail(o, s, toks[:end], &t), true
			}
		}
	}
	return outcome{}, false
}

// nameWithin finds an exact scientific name further inside, with words before
// it that are close to the same taxon's other name, or are a note.
func (r *resolver) nameWithin(s string, toks []token) (outcome, bool) {
	for i := 1; i+1 < len(toks); i++ {
		if toks[i].kind != wordToken || toks[i+1].kind != wordToken || !upperFirst(toks[i].text) {
			if toks[i].kind != groupToken {
				continue
			}
		}
		o, ok := r.exactTokens(s, toks[i:i+2])
		if !ok {
			o, ok = r.abbreviated(s, toks[i:i+2])
		}
		if !ok || o.taxon == none || r.baseOf(&o, toks[i:i+2]) != baseSpecies {
			continue
		}
		t := r.readTail(s, toks[i+2:], baseSpecies)
		if len(t.unknown) > 0 {
			continue
		}
		before := toks[:i]
		for len(before) > 0 && before[len(before)-1].kind == signToken {
			before = before[:len(before)-1]
		}
		if _, rest := r.readLead(toks[:i+1]); len(rest) <= 1 {
			return outcome{}, false // counts, doubts and the like
		}
		return r.joinNames(s, before, r.applyTail(o, s, toks[i:i+2], &t))
	}
	if n := len(toks); n >= 2 && toks[n-1].kind == groupToken {
		inner := tokenize(toks[n-1].text)
		if len(inner) >= 2 && toks[0].kind == wordToken {
			if o, ok := r.readOne(toks[n-1].text, inner); ok && o.taxon != none && o.state() == 0 && r.baseOf(&o, inner) == baseSpecies {
				return r.joinNames(s, toks[:n-1], o)
			}
		}
	}
	return outcome{}, false
}

// joinNames weighs a name that is read against unread words before it.
func (r *resolver) joinNames(s string, before []token, o outcome) (outcome, bool) {
	text := written(s, before)
	for i := range before {
		if remarkDoubts[before[i].key] {
			h := held(CodeNoteDoubt, "%s seems to doubt or deny the name in it.", quoted(s))
			h.cands = []int32{o.taxon}
			return h, true
		}
	}
	left := r.misspelt(s, before)
	if left.taxon == o.taxon || slices.Contains(left.cands, o.taxon) {
		r.step("%s is close to the same taxon's other name.", quoted(text))
		o.remark("%s was read by its other name.", quoted(text))
		return o, true
	}
	o.and(query(CodeOtherName, "%s was read by the name %s; %s is not on the list and may be something else. Say which is right.", quoted(s), r.ix.taxa[o.taxon], quoted(text)))
	return o, true
}

// lead is what stands before a name.
type lead struct {
	doubt  string
	denied bool // "no", "not": it was not seen, or is not it
	notes  []string
}

// readLead takes counts, sexes, articles and doubts from before a name.
func (r *resolver) readLead(toks []token) (lead, []token) {
	var l lead
	i := 0
	for ; i < len(toks); i++ {
		t := &toks[i]
		switch {
		case t.sign("?"):
			l.doubt = "?"
		case t.kind == signToken:
			switch t.text {
			case "♂", "♀", "×", "+", "~", "*", "†", "!":
				l.notes = append(l.notes, t.text)
			case "-", "–", "—", ":", ".", ",", "\"", "'", "•", ";", "=", "#", "/":
			default:
				return l, toks[i:]
			}
		case t.kind == groupToken:
			if t.text == "?" {
				l.doubt = "?"
			} else if countLike(t) || noteWords[t.key] {
				l.notes = append(l.notes, t.text)
			} else {
				return l, toks[i:]
			}
		case denials[t.key] && !t.dotted() && i+1 < len(toks) && toks[i+1].kind == wordToken && !countLike(&toks[i+1]):
			l.denied = true
		case t.kind == numberToken, countLike(t):
			l.notes = append(l.notes, t.text)
		case doubtWords[t.key] != "" && i+1 < len(toks):
			l.doubt = doubtWords[t.key]
		case openWords[t.key] != "" && i+1 < len(toks) && t.key != "species" && t.key != "sp":
			l.doubt = "indet."
		case len(t.key) == 1 && t.dotted() && upperFirst(t.text):
			return l, toks[i:] // an abbreviated genus
		case t.text == "X" && i+1 < len(toks) && toks[i+1].kind == wordToken && toks[i+1].lower():
			return l, toks[i:] // an abbreviated genus without its full stop
		case (t.key == "the" || t.key == "a" || t.key == "an" || t.key == "x" || t.key == "c" || t.key == "ca" || t.key == "circa" || t.key == "about" || t.key == "of") && i+1 < len(toks):
			if t.dotted() && (t.key == "c" || t.key == "a") && i == 0 && toks[1].kind == wordToken || t.text == "C" && i == 0 && upperFirst(toks[1].text) {
				return l, toks[i:] // an abbreviated genus, or Common
			}
		case noteWords[t.key] && !weakNotes[t.key] && (t.lower() || len(t.key) > 2) && i+1 < len(toks) && !t.dotted():
			l.notes = append(l.notes, t.text)
		default:
			return l, toks[i:]
		}
	}
	return l, nil
}

func (r *resolver) applyLead(o outcome, l lead, s string) outcome {
	if l.denied {
		h := held(CodeNoteDoubt, "%s seems to doubt or deny the name in it.", quoted(s))
		if h.cands = o.cands; o.taxon != none {
			h.cands = []int32{o.taxon}
		}
		return h
	}
	o.rest = append(append([]string(nil), l.notes...), o.rest...)
	if l.doubt != "" && o.taxon != none && o.qualifier == "" {
		sci := o.name != none && r.ix.names[o.name].kind != vernacularName
		if l.doubt == "indet." {
			o.qualifier = "indet."
		} else {
			o = r.doubted(o, l.doubt, "", sci)
		}
	}
	return o
}
