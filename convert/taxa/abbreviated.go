package taxa

import (
	"slices"
	"strings"
)

// abbreviated reads a shortened genus with an epithet: "N. pronuba", "N
// pronuba", "Noct. pronuba". The genus above on the page decides, or that only
// one name of the list fits.
func (r *resolver) abbreviated(s string, toks []token) (outcome, bool) {
	if len(toks) == 3 && toks[1].kind == wordToken && len(toks[1].key) == 1 && toks[1].lower() && toks[2].kind == wordToken && toks[2].lower() {
		// "X. c nigrum"
		epithet := toks[1]
		epithet.key += toks[2].key
		epithet.end = toks[2].end
		toks = []token{toks[0], epithet}
	}
	if len(toks) < 2 || len(toks) > 3 || toks[0].kind != wordToken || toks[1].kind != wordToken || !upperFirst(toks[0].text) && !toks[0].dotted() {
		return outcome{}, false
	}
	short := toks[0].key
	if short == "" || hasDigit(short) || len(short) > 1 && !toks[0].dotted() || len(toks[1].key) < 3 || rankMarkers[toks[1].key] != "" && len(toks[1].key) < 3 {
		return outcome{}, false
	}
	if openWords[toks[1].key] != "" {
		return outcome{}, false
	}
	infra := ""
	if len(toks) == 3 {
		infra = toks[2].key
		if toks[2].kind != wordToken || noteWords[infra] || rankMarkers[infra] != "" {
			return outcome{}, false
		}
	}
	ix := r.ix
	found := r.namesCutShort(short, toks[1].key, infra)
	text := written(s, toks)
	switch len(found) {
	case 0:
		return outcome{}, false
	case 1:
		o := r.take(found[0], text)
		r.step("%s is %s: the only name on the list that fits.", quoted(text), ix.names[found[0]].text)
		return o, true
	}
	if r.genus != "" {
		kept := slices.DeleteFunc(slices.Clone(found), func(at int32) bool { return key(splitName(ix.names[at].text).genus) != r.genus })
		if len(kept) == 1 {
			o := r.take(kept[0], text)
			r.step("%s follows the genus above on the page: %s.", quoted(text), ix.names[kept[0]].text)
			o.and(fair("", "%s was read as %s, as that genus stands above it.", quoted(text), ix.names[kept[0]].text))
			return o, true
		}
	}
	if r.group.says() {
		if kept := r.keep(found, r.group.has); len(kept) == 1 {
			return r.take(kept[0], text), true
		}
	}
	o := held(CodeAbbreviated, "%s fits more than one name on the list. Write the genus out.", quoted(text))
	for _, at := range found {
		o.cands = append(o.cands, ix.names[at].taxon)
	}
	return o, true
}

// namesCutShort are the names whose genus is cut short to the letters given,
// with an epithet and, where infra says so, a third part. Names with the very
// epithet go before those with another ending.
func (r *resolver) namesCutShort(short, epithet, infra string) []int32 {
	ix := r.ix
	var found []int32
	add := func(e *sciEntry) {
		if n := &ix.names[e.name]; n.taxon != none && !r.sameTaxonAmong(found, n.taxon) {
			found = append(found, e.name)
		}
	}
	if infra != "" {
		for i := range ix.sci {
			if e := &ix.sci[i]; e.infra == infra && e.epithet == epithet && strings.HasPrefix(ix.genusKey[e.genus], short) {
				add(e)
			}
		}
		return found
	}
	exact := false
	for at := ix.firstEpithet(epithet); at != none; at = ix.sci[at].nextEpithet {
		e := &ix.sci[at]
		g := ix.genusKey[e.genus]
		if !strings.HasPrefix(g, short) || g == short || ix.names[e.name].taxon == none {
			continue
		}
		same := e.epithet == epithet
		if exact && !same {
			continue
		}
		if same && !exact {
			exact, found = true, nil
		}
		add(e)
	}
	return found
}

// firstEpithet is the first entry with an epithet, whatever its ending.
func (ix *Index) firstEpithet(k string) int32 {
	if at, there := ix.epithets[stem(k)]; there {
		return at
	}
	return none
}
