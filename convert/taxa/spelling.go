package taxa

import (
	"cmp"
	"math/bits"
	"slices"
)

// spelling is the index for names that are not spelt as on the lists.
type spelling struct {
	words    map[string]bool // of vernacular names
	authors  map[string]bool
	genera   wordIndex
	single   wordIndex // higher taxa, to be misspelt on their own
	english  wordIndex // vernacular names
	names    []int32   // the name of each entry of english
	postings map[string][]int32
}

// wordIndex finds the words within a few letters of another. It compares
// fingerprints of all words of a like length, which leaves few to be compared
// letter by letter, and so misses none.
type wordIndex struct {
	spoken bool
	words  []string // sorted by length
	sounds []string
	prints []uint64
	first  []int32 // first word of each length
	ids    []int32 // what each word stands for
	// the same by sound
	bySound []int32
	soundPr []uint64
	soundAt []int32
}

// fingerprint has a bit for each letter that occurs, and one for each that
// occurs twice. One letter put in, left out or changed alters at most two of
// its bits, a swap none.
func fingerprint(k string) uint64 {
	var once, twice uint64
	for i := 0; i < len(k); i++ {
		var bit uint64
		switch c := k[i]; {
		case 'a' <= c && c <= 'z':
			bit = 1 << (c - 'a')
		default:
			bit = 1 << (26 + c%6)
		}
		twice |= once & bit
		once |= bit
	}
	return once | twice<<32
}

func newWordIndex(words []string, ids []int32, spoken bool) wordIndex {
	x := wordIndex{spoken: spoken}
	order := make([]int32, len(words))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortStableFunc(order, func(a, b int32) int { return cmp.Compare(len(words[a]), len(words[b])) })
	n := len(order)
	x.words, x.sounds, x.prints, x.ids = make([]string, n), make([]string, n), make([]uint64, n), make([]int32, n)
	for i, o := range order {
		x.words[i], x.ids[i] = words[o], ids[o]
		x.sounds[i] = soundKey(words[o], spoken)
		x.prints[i] = fingerprint(words[o])
	}
	x.first = starts(n, func(i int) int { return len(x.words[i]) })
	x.bySound = make([]int32, n)
	for i := range x.bySound {
		x.bySound[i] = int32(i)
	}
	slices.SortStableFunc(x.bySound, func(a, b int32) int { return cmp.Compare(len(x.sounds[a]), len(x.sounds[b])) })
	x.soundPr = make([]uint64, n)
	for i, at := range x.bySound {
		x.soundPr[i] = fingerprint(x.sounds[at])
	}
	x.soundAt = starts(n, func(i int) int { return len(x.sounds[x.bySound[i]]) })
	return x
}

// starts gives for each length the first of n sorted entries that is as long
// or longer.
func starts(n int, length func(int) int) []int32 {
	var first []int32
	for i := range n {
		for len(first) <= length(i) {
			first = append(first, int32(i))
		}
	}
	return append(first, int32(n))
}

func span(first []int32, from, to int) (int32, int32) {
	clamp := func(l int) int32 { return first[min(max(l, 0), len(first)-1)] }
	return clamp(from), clamp(to + 1)
}

// near calls visit with every word within limit letters, and with every word
// whose sound is within one letter less; each word once.
func (x *wordIndex) near(w string, limit int, visit func(at int32)) {
	if len(x.words) == 0 || len(w) > maxKey {
		return
	}
	print := fingerprint(w)
	from, to := span(x.first, len(w)-limit, len(w)+limit)
	for i := from; i < to; i++ {
		if bits.OnesCount64(print^x.prints[i]) <= 2*limit && distance(w, x.words[i], limit) <= limit {
			visit(i)
		}
	}
	sound := soundKey(w, x.spoken)
	print = fingerprint(sound)
	from, to = span(x.soundAt, len(sound)-limit+1, len(sound)+limit-1)
	for i := from; i < to; i++ {
		if bits.OnesCount64(print^x.soundPr[i]) > 2*(limit-1) {
			continue
		}
		at := x.bySound[i]
		if distance(sound, x.sounds[at], limit-1) <= limit-1 && distance(w, x.words[at], limit) > limit {
			visit(at)
		}
	}
}

func (ix *Index) buildSpelling() {
	sp := &ix.spelling
	sp.words, sp.authors, sp.postings = map[string]bool{}, map[string]bool{}, map[string][]int32{}
	var keys []string
	var higher []string
	var higherIDs []int32
	for i := range ix.names {
		n := &ix.names[i]
		switch {
		case n.kind == vernacularName:
			words := vernacularWords(n.text)
			k := vernacularKey(n.text)
			if key(n.text) != k && i > 0 && ix.names[i-1].text == n.text && ix.names[i-1].taxon == n.taxon {
				continue // the same name under its second key
			}
			at := int32(len(sp.names))
			sp.names = append(sp.names, int32(i))
			keys = append(keys, k)
			for j, w := range words {
				sp.words[w] = true
				if !slices.Contains(words[:j], w) {
					sp.postings[w] = append(sp.postings[w], at)
				}
			}
		case n.taxon != none && !ix.taxa[n.taxon].IsSpeciesOrBelow() && ix.taxa[n.taxon].Rank != RankAggregate:
			higher = append(higher, key(n.text))
			higherIDs = append(higherIDs, int32(i))
		}
	}
	ids := make([]int32, len(keys))
	for i := range ids {
		ids[i] = int32(i)
	}
	sp.english = newWordIndex(keys, ids, true)
	genusIDs := make([]int32, len(ix.genusKey))
	for i := range genusIDs {
		genusIDs[i] = int32(i)
	}
	sp.genera = newWordIndex(ix.genusKey, genusIDs, false)
	sp.single = newWordIndex(higher, higherIDs, false)
	last := ""
	for _, t := range ix.taxa {
		if t.Authorship == last {
			continue
		}
		last = t.Authorship
		for _, n := range parseAuthorship(t.Authorship).names {
			sp.authors[n] = true
		}
	}
}
