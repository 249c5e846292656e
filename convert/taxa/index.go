package taxa

import (
	"slices"
	"strings"
	"sync"
)

// Index is the names of one or several lists, ready for matching. It does not
// change and may be shared by any number of Matchers.
type Index struct {
	lists    []*List
	taxa     []*Taxon // of all lists, then the higher taxa that they mention
	parents  []int32  // beside the listed taxa: parent or aggregate, or none
	higher   map[identity][]int32
	names    []indexName
	keys     keyTable
	sci      []sciEntry // names of genus and epithet, by genus
	genera   map[string]genusRange
	genusKey []string         // keys of genera in the order of genusRange.id
	epithets map[string]int32 // first sciEntry with an epithet
	numbers  numberIndex
	aggs     map[string][]aggregate
	spelling spelling
	known    *lexicon
	long     map[int32]*longChain // while the index is made
}

// indexName is a name of an index; next chains names with one key.
type indexName struct {
	listName
	next int32
}

// sciEntry is a name of genus and epithet for comparing part by part; the
// parts are keys.
type sciEntry struct {
	epithet, infra string
	name           int32 // in Index.names
	genus          int32
	nextEpithet    int32
}

type genusRange struct{ id, first, end int32 }

// aggregate is a taxon of several species that are not told apart.
type aggregate struct {
	taxon    int32
	epithets []string // named in its names
	members  []string // of the species whose parent it is
}

// NewIndex builds the index of lists in order of preference: where two lists
// give one name to different taxa, the earlier list decides; where a later
// list has a taxon of an earlier one, under its accepted name or a synonym,
// its names are added to that taxon.
func NewIndex(lists ...*List) *Index {
	ix := &Index{lists: lists, known: builtinLexicon()}
	total := 0
	for _, l := range lists {
		total += len(l.names)
	}
	ix.keys = newKeyTable(total + total/8)
	ix.spelling.init()
	ix.names = make([]indexName, 0, total+total/8)
	for order, l := range lists {
		ix.addList(l, uint8(min(order, 255)))
	}
	var wg sync.WaitGroup
	wg.Go(ix.buildEnglish)
	ix.implyHigherTaxa()
	ix.buildRivals()
	ix.buildScientific()
	ix.buildAggregates()
	ix.buildNumbers()
	ix.buildSpelling()
	ix.settlePlain()
	wg.Wait()
	ix.long = nil
	return ix
}

// Taxa yields every taxon of the index that stands on a list, in order.
func (ix *Index) Taxa(yield func(*Taxon) bool) {
	for _, t := range ix.taxa {
		if t.Line > 0 && !yield(t) {
			return
		}
	}
}

func (ix *Index) addList(l *List, order uint8) {
	base := int32(len(ix.taxa))
	place := make([]int32, len(l.taxa)) // where each taxon of the list went
	for i := range l.taxa {
		place[i] = base + int32(i)
		ix.taxa = append(ix.taxa, &l.taxa[i])
		if p := l.taxa[i].parent; p != none {
			ix.parents = append(ix.parents, base+p)
		} else {
			ix.parents = append(ix.parents, none)
		}
	}
	if order > 0 {
		ix.alias(l, place)
	}
	// An aggregate of this list is the parent that matters for pairs.
	var buf [96]byte
	for _, n := range l.names {
		n.list = order
		if n.taxon != none {
			n.taxon = place[n.taxon]
		}
		text := n.text
		if n.kind != vernacularName {
			text = plainCanonical(text)
		}
		k := appendKey(buf[:0], text)
		if len(k) == 0 {
			continue
		}
		at := ix.addName(k, n)
		if n.kind != vernacularName && at != none && (strings.Contains(text, "×") || strings.Contains(text, " x ")) {
			// the sign of a hybrid in both its writings
			ix.addName([]byte(key(strings.ReplaceAll(text, " x ", " "))), n)
		}
		if n.kind == vernacularName && at != none {
			words := vernacularWords(n.text)
			c := joinWords(words)
			if c != string(k) {
				ix.addName([]byte(c), n)
			}
			ix.spelling.addEnglish(c, words, at)
		}
	}
}

// identity is what a higher taxon is looked up by.
type identity struct{ rank, name string }

// above returns the taxon of a rank that t belongs to, or none.
func (ix *Index) above(t *Taxon, rank string) int32 {
	name := t.at(rank)
	if name == "" {
		return none
	}
	level := slices.Index(higherRanks[:], rank)
	for _, h := range ix.higher[identity{rank, name}] {
		if sameBranch(ix.taxa[h], t, level) {
			return h
		}
	}
	return none
}

// addName adds a name under a key, at the end of the chain of that key, so
// that names stay in the order of the lists. It returns the name's place, or
// none where the taxon has that spelling already.
func (ix *Index) addName(k []byte, n listName) int32 {
	at := int32(len(ix.names))
	s, made := ix.keys.add(k, at)
	if !made {
		last, has := ix.lastOf(s.name, n.taxon)
		if has {
			return none
		}
		ix.names[last].next = at
	}
	ix.names = append(ix.names, indexName{n, none})
	return at
}

// alias finds the taxa of a later list that earlier lists have.
func (ix *Index) alias(l *List, place []int32) {
	known := func(text string) int32 {
		found := none
		for at := range ix.chain(key(plainCanonical(text))) {
			n := &ix.names[at]
			if n.kind == vernacularName || n.taxon == none {
				continue
			}
			if found != none && found != n.taxon {
				return none
			}
			found = n.taxon
		}
		return found
	}
	moved := make([]bool, len(l.taxa))
	for i := range l.taxa {
		if t := known(l.taxa[i].ScientificName); t != none && compatible(ix.taxa[t], &l.taxa[i]) {
			place[i], moved[i] = t, true
		}
	}
	// A taxon whose accepted name is new may be there under a synonym: it is
	// the same where all its known synonyms lead to one taxon, and no other
	// taxon of this list is that one.
	taken := map[int32]bool{}
	for i, m := range moved {
		if m {
			taken[place[i]] = true
		}
	}
	bySynonym := map[int32]int32{}
	for _, n := range l.names {
		if n.kind != synonymName || n.taxon == none || moved[n.taxon] {
			continue
		}
		t := known(n.text)
		if t == none {
			continue
		}
		if old, there := bySynonym[n.taxon]; there && old != t {
			t = none
		}
		bySynonym[n.taxon] = t
	}
	for i := range l.taxa {
		if t, there := bySynonym[int32(i)]; there && t != none && !taken[t] && compatible(ix.taxa[t], &l.taxa[i]) {
			place[i] = t
		}
	}
}

// compatible: nothing in the classification says that two taxa of one name
// are different.
func compatible(a, b *Taxon) bool {
	differ := func(x, y string) bool { return x != "" && y != "" && !strings.EqualFold(x, y) }
	return !differ(a.Kingdom, b.Kingdom) && !differ(a.Order, b.Order) && !differ(a.Class, b.Class)
}

// chain yields the names with a key, in the order of the lists.
func (ix *Index) chain(k string) func(func(int32) bool) {
	return func(yield func(int32) bool) {
		at, there := ix.named(k)
		for there && at != none {
			if !yield(at) {
				return
			}
			at = ix.names[at].next
		}
	}
}

// implyHigherTaxa makes a taxon of every genus, family and so on that the
// lists mention in the classification of others without listing it.
func (ix *Index) implyHigherTaxa() {
	made := map[identity][]int32{}
	ix.higher = made
	for i, t := range ix.taxa {
		if t.slot(t.Rank) != nil {
			id := identity{t.Rank, t.ScientificName}
			made[id] = append(made[id], int32(i))
		}
	}
	listed := len(ix.taxa)
	seen := map[string]*Lineage{} // by genus: most taxa have the lineage of their genus
	last := &Lineage{}
	for i := range listed {
		t := ix.taxa[i]
		if *last == t.Lineage {
			continue
		}
		last = &t.Lineage
		if l := seen[t.Genus]; l != nil && *l == t.Lineage {
			continue
		}
		seen[t.Genus] = &t.Lineage
		for level, rank := range higherRanks {
			name := t.at(rank)
			if name == "" {
				continue
			}
			id := identity{rank, name}
			found := false
			for _, m := range made[id] {
				if sameBranch(ix.taxa[m], t, level) {
					found = true
					if ix.taxa[m].Line == 0 {
						fillAbove(ix.taxa[m], t, level)
					}
					break
				}
			}
			if found {
				continue
			}
			h := &Taxon{ScientificName: name, Rank: rank, Code: t.Code, List: t.List, parent: none}
			*h.slot(rank) = name
			fillAbove(h, t, level)
			at := int32(len(ix.taxa))
			ix.taxa = append(ix.taxa, h)
			made[id] = append(made[id], at)
			ix.addName([]byte(key(name)), listName{text: name, taxon: at, kind: impliedName})
		}
	}
}

// sameBranch: nothing above the level keeps a higher taxon and t's apart.
func sameBranch(h, t *Taxon, level int) bool {
	for _, r := range higherRanks[level+1:] {
		if a, b := h.at(r), t.at(r); a != "" && b != "" && !strings.EqualFold(a, b) {
			return false
		}
	}
	return true
}

func fillAbove(h, t *Taxon, level int) {
	for _, r := range higherRanks[level+1:] {
		if s := h.slot(r); *s == "" {
			*s = t.at(r)
		}
	}
}

// buildScientific orders names of genus and epithet by genus.
func (ix *Index) buildScientific() {
	genusIDs := map[string]int32{}
	genus, id := "", int32(0) // most names have the genus of the one before
	ix.sci = make([]sciEntry, 0, len(ix.names)/2)
	for at := range ix.names {
		n := &ix.names[at]
		if n.kind == vernacularName || n.kind == impliedName {
			continue
		}
		s := splitName(n.text)
		if s.epithet == "" || s.aggregate {
			continue
		}
		if s.genus != genus {
			genus = s.genus
			g := key(genus)
			there := false
			if id, there = genusIDs[g]; !there {
				id = int32(len(ix.genusKey))
				genusIDs[g] = id
				ix.genusKey = append(ix.genusKey, g)
			}
		}
		ix.sci = append(ix.sci, sciEntry{epithet: key(s.epithet), infra: key(s.infra), name: int32(at), genus: id, nextEpithet: none})
	}
	ix.sci = byGenus(ix.sci, len(ix.genusKey))
	ix.genera = make(map[string]genusRange, len(ix.genusKey))
	ix.epithets = make(map[string]int32, len(ix.sci)/2)
	for i := 0; i < len(ix.sci); {
		end := i
		for end < len(ix.sci) && ix.sci[end].genus == ix.sci[i].genus {
			end++
		}
		ix.genera[ix.genusKey[ix.sci[i].genus]] = genusRange{ix.sci[i].genus, int32(i), int32(end)}
		i = end
	}
	for i := len(ix.sci) - 1; i >= 0; i-- {
		e := &ix.sci[i]
		if e.infra != "" {
			continue
		}
		s := stem(e.epithet)
		if head, there := ix.epithets[s]; there {
			e.nextEpithet = head
		}
		ix.epithets[s] = int32(i)
	}
}

// byGenus orders entries by genus and keeps the order within one.
func byGenus(entries []sciEntry, genera int) []sciEntry {
	place := make([]int32, genera+1)
	for i := range entries {
		place[entries[i].genus+1]++
	}
	for g := 1; g < len(place); g++ {
		place[g] += place[g-1]
	}
	sorted := make([]sciEntry, len(entries))
	for i := range entries {
		g := entries[i].genus
		sorted[place[g]] = entries[i]
		place[g]++
	}
	return sorted
}

// buildAggregates notes which epithets every aggregate covers, by genus.
func (ix *Index) buildAggregates() {
	ix.aggs = map[string][]aggregate{}
	at := map[int32]*aggregate{}
	for i, t := range ix.taxa {
		if t.Rank == RankAggregate {
			at[int32(i)] = &aggregate{taxon: int32(i)}
		}
	}
	if len(at) == 0 {
		return
	}
	for _, n := range ix.names {
		if a := at[n.taxon]; a != nil && n.kind != vernacularName {
			for _, e := range strings.Split(splitName(n.text).epithet, "/") {
				if e = key(e); e != "" && !slices.Contains(a.epithets, e) {
					a.epithets = append(a.epithets, e)
				}
			}
		}
	}
	for i, p := range ix.parents {
		if p != none && at[p] != nil {
			if e := key(ix.taxa[i].SpecificEpithet()); e != "" {
				at[p].members = append(at[p].members, e)
			}
		}
	}
	for i, t := range ix.taxa {
		if a := at[int32(i)]; a != nil {
			g := key(t.Genus)
			ix.aggs[g] = append(ix.aggs[g], *a)
		}
	}
}

// onceIDs makes the taxa by taxonID when they are first asked for.
func onceIDs(ix *Index) func() map[string]int32 {
	return sync.OnceValue(func() map[string]int32 {
		ids := map[string]int32{}
		for i, t := range ix.taxa {
			if _, there := ids[t.ID]; t.ID != "" && !there {
				ids[t.ID] = int32(i)
			}
		}
		return ids
	})
}
