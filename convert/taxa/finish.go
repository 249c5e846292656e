package taxa

import (
	"strings"
	"sync"
)

// finish resolves what pointed forward, reports what is wrong, and returns
// the list.
func (b *builder) finish() (*List, []Problem) {
	l := b.list
	b.settleCommas()
	byName := b.nameTable(len(l.taxa))
	l.names = make([]listName, 0, len(l.taxa)+len(b.synonyms)+len(b.extra))
	var buf [96]byte
	for i := range l.taxa {
		t := &l.taxa[i]
		k := appendKey(buf[:0], plainCanonical(t.ScientificName))
		if first, twice := byName.of(k); twice {
			b.twice(t, &l.taxa[first])
		} else {
			byName.add(hashKey(k), int32(i))
		}
		l.names = append(l.names, listName{text: t.ScientificName, taxon: int32(i), kind: acceptedName})
	}
	b.resolveSynonyms(byName)
	for _, e := range b.extra {
		l.names = append(l.names, listName{text: e.text, taxon: e.taxon, kind: e.kind})
	}
	b.resolveParents(byName)
	b.numbersTwice()
	b.authorAggregates(byName)
	return l, b.problems
}

// authorAggregates gives an aggregate that has no author of its own those of
// the species whose names it bears: "Epirrita dilutata agg." the one of
// Epirrita dilutata, "Acronicta psi/tridens" both.
func (b *builder) authorAggregates(byName *nameTable) {
	for i := range b.list.taxa {
		t := &b.list.taxa[i]
		genus, rest, found := strings.Cut(t.ScientificName, " ")
		if t.Rank != RankAggregate || t.Authorship != "" || !found {
			continue
		}
		epithets, _, _ := strings.Cut(rest, " ")
		var authors []string
		for epithet := range strings.SplitSeq(epithets, "/") {
			species, there := byName.named(genus + " " + epithet)
			if !there || b.list.taxa[species].Authorship == "" {
				authors = nil
				break
			}
			authors = append(authors, b.list.taxa[species].Authorship)
		}
		t.Authorship = b.intern(strings.Join(authors, "/"))
	}
}

// nameTable finds accepted taxa by the key of their name.
type nameTable struct {
	refTable
	taxa []Taxon
}

func (b *builder) nameTable(taxa int) *nameTable {
	return &nameTable{newRefTable(taxa), b.list.taxa}
}

func (t *nameTable) of(k []byte) (int32, bool) {
	return t.find(hashKey(k), func(at int32) bool {
		var buf [96]byte
		return string(appendKey(buf[:0], plainCanonical(t.taxa[at].ScientificName))) == string(k)
	})
}

// named finds the taxon of a name as another line gives it.
func (t *nameTable) named(text string) (int32, bool) {
	return t.of([]byte(key(plainCanonical(splitName(capitalised(text)).canonical))))
}

// twice reports an accepted name that stands on the list more than once.
func (b *builder) twice(t, first *Taxon) {
	if t.Authorship != first.Authorship && t.Authorship != "" && first.Authorship != "" || t.Kingdom != first.Kingdom || t.Order != first.Order || t.Family != first.Family {
		b.problem(t.Line, inName, "Two accepted taxa are spelt %s: this line and line %d. Which one is meant is decided by the taxon group of the page or of the project, or asked.", t.ScientificName, first.Line)
		return
	}
	b.problem(t.Line, inName, "%s is on the list twice as an accepted name: on this line and on line %d.", t.ScientificName, first.Line)
}

// plainCanonical is a scientific name without its subgenus.
func plainCanonical(s string) string {
	if i := strings.Index(s, " ("); i > 0 {
		if j := strings.Index(s[i:], ") "); j > 0 {
			return s[:i] + s[i+j+1:]
		}
	}
	return s
}

// resolveSynonyms follows every synonym to its accepted taxon.
func (b *builder) resolveSynonyms(byName *nameTable) {
	bySynonym := map[string]int32{}
	for i, s := range b.synonyms {
		if k := key(plainCanonical(s.text)); s.acceptedID != "" || s.acceptedIs != "" {
			if _, there := bySynonym[k]; !there {
				bySynonym[k] = int32(i)
			}
		}
	}
	byNumber := sync.OnceValue(b.numbers)
	next := func(s *synonym) (ref, string, bool) {
		if s.acceptedID != "" {
			r, ok := b.ids.of(s.acceptedID)
			return r, s.acceptedID, ok
		}
		k := key(plainCanonical(splitName(capitalised(s.acceptedIs)).canonical))
		if t, ok := byName.of([]byte(k)); ok {
			return ref{t, false}, s.acceptedIs, true
		}
		if i, ok := bySynonym[k]; ok {
			return ref{i, true}, s.acceptedIs, true
		}
		if r, ok := b.ids.of(s.acceptedIs); ok {
			return r, s.acceptedIs, true
		}
		if t, ok := byNumber()[numberKey(s.acceptedIs)]; ok {
			return ref{t, false}, s.acceptedIs, true
		}
		return ref{}, s.acceptedIs, false
	}
	for i := range b.synonyms {
		s := &b.synonyms[i]
		taxon, reason := none, ""
		for at, steps := s, 0; ; steps++ {
			if at.acceptedID == "" && at.acceptedIs == "" {
				reason = "is not an accepted name there, and the list does not say of which taxon it is a synonym"
				b.problem(s.line, []field{fStatus, fAccepted}, "%s is marked as not accepted, but the line does not say which name is.", s.text)
				break
			}
			r, target, ok := next(at)
			if !ok {
				reason = "is a synonym of “" + target + "” there, which the list does not have"
				b.problem(s.line, inAccepted, "%s is a synonym of “%s”, which is not on the list.", s.text, target)
				break
			}
			if !r.synonym {
				taxon = r.index
				break
			}
			if at = &b.synonyms[r.index]; at == s || steps > len(b.synonyms) || steps > 50 {
				reason = "goes round in a circle of synonyms there and never comes to an accepted name"
				b.problem(s.line, inAccepted, "%s is a synonym of “%s”, which leads back to it in a circle: none of them is an accepted name.", s.text, target)
				break
			}
		}
		kind := synonymName
		if taxon == none {
			kind = brokenName
		}
		b.list.names = append(b.list.names, listName{text: s.text, taxon: taxon, kind: kind, reason: reason})
		for _, v := range s.vernaculars {
			if taxon == none {
				continue
			}
			b.extra = append(b.extra, extraName{v, taxon, vernacularName})
			if t := &b.list.taxa[taxon]; t.Vernacular == "" {
				t.Vernacular = v
			}
		}
	}
}

// numbersTwice reports checklist numbers that stand for several taxa, unless so
// many do that the column is hardly one of numbers of taxa.
func (b *builder) numbersTwice() {
	first, numbered := map[string]int32{}, 0
	var twice []int32
	for i := range b.list.taxa {
		t := &b.list.taxa[i]
		if t.Number == "" {
			continue
		}
		numbered++
		if k := numberKey(t.Number); first[k] == 0 {
			first[k] = int32(i) + 1
		} else {
			twice = append(twice, int32(i))
		}
	}
	if len(twice) > max(3, numbered/10) {
		return
	}
	for _, i := range twice {
		t := &b.list.taxa[i]
		b.problem(t.Line, []field{fNumber}, "The number “%s” of %s stands on line %d too, for another taxon; alone it is read as neither.", t.Number, t.ScientificName, b.list.taxa[first[numberKey(t.Number)]-1].Line)
	}
}

// numbers are the accepted taxa by checklist number.
func (b *builder) numbers() map[string]int32 {
	numbers := map[string]int32{}
	for i := range b.list.taxa {
		if n := b.list.taxa[i].Number; n != "" {
			numbers[numberKey(n)] = int32(i)
		}
	}
	return numbers
}

// resolveParents points every taxon to its parent and fills the
// classification from above where the line itself leaves it open.
func (b *builder) resolveParents(byName *nameTable) {
	taxa := b.list.taxa
	any := false
	for i := range taxa {
		p := b.parents[i]
		if p.id == "" && p.name == "" {
			continue
		}
		var target int32
		var found bool
		if p.id != "" {
			r, ok := b.ids.of(p.id)
			for ok && r.synonym {
				n := b.list.names[len(taxa)+int(r.index)]
				r, ok = ref{n.taxon, false}, n.taxon != none
			}
			target, found = r.index, ok
		} else if target, found = byName.named(p.name); !found {
			p.id = p.name
		}
		switch {
		case !found:
			b.problem(taxa[i].Line, inParent, "The parent of %s, “%s”, is not on the list.", taxa[i].ScientificName, p.id)
		case target == int32(i):
			b.problem(taxa[i].Line, inParent, "%s is its own parent.", taxa[i].ScientificName)
		default:
			taxa[i].parent = target
			any = true
		}
	}
	if !any {
		return
	}
	state := make([]uint8, len(taxa)) // 1 on the way up, 2 done
	var path []int32
	for i := range taxa {
		path = path[:0]
		at := int32(i)
		for at != none && state[at] == 0 {
			state[at] = 1
			path = append(path, at)
			at = taxa[at].parent
		}
		if at != none && state[at] == 1 {
			b.problem(taxa[at].Line, inParent, "The parents of %s go round in a circle.", taxa[at].ScientificName)
			taxa[path[len(path)-1]].parent = none
		}
		for j := len(path) - 1; j >= 0; j-- {
			b.inherit(path[j])
			state[path[j]] = 2
		}
	}
}

func (b *builder) inherit(i int32) {
	t := &b.list.taxa[i]
	if t.parent == none {
		return
	}
	p := &b.list.taxa[t.parent]
	if s := p.slot(p.Rank); s != nil && *s == "" {
		*s = b.intern(p.ScientificName)
	}
	for _, r := range append(higherRanks[:], "subgenus") {
		if mine, above := t.slot(r), p.at(r); *mine == "" && above != "" {
			*mine = above
		}
	}
	if t.Code == "" {
		t.Code = codeOf("", t.Kingdom)
	}
}
