package taxa

import (
	"math/bits"
	"slices"
	"strings"
	"sync"
)

// spelling is the index for names that are not spelt as on the lists.
type spelling struct {
	authors  func() map[string]bool // surnames, found out when first asked for
	genera   wordIndex
	single   wordIndex          // higher taxa, to be misspelt on their own
	english  wordIndex          // vernacular names
	names    []int32            // the name of each entry of english
	keys     []string           // beside names
	postings map[string][]int32 // words of vernacular names: where in names
	endings  map[string]int32   // how many names of several words end in a word
	// rivals are, by the key of a vernacular name, names of other taxa that
	// have a word like moth more.
	rivals map[string][]int32
	// initials are the vernacular names by the first letters of their words,
	// found out when first asked for.
	initials func() map[string][]int32
}

// wordIndex finds the words within a few letters of another. It compares
// fingerprints of all words of a like length, which leaves few to be compared
// letter by letter, and so misses none.
type wordIndex struct {
	spoken bool
	words  []string // sorted by length
	sounds []string
	prints []uint64
	pairs  []uint64
	first  []int32 // first word of each length
	ids    []int32 // what each word stands for
	// the same by sound
	bySound []int32
	soundPr []uint64
	soundPa []uint64
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

// pairprint has a bit for each pair of neighbouring letters, by a hash. One
// letter put in, left out or changed alters at most four of its bits, a swap
// six.
func pairprint(k string) uint64 {
	var p uint64
	for i := 1; i < len(k); i++ {
		p |= 1 << ((uint32(k[i-1])*37 + uint32(k[i])*11) & 63)
	}
	return p
}

func newWordIndex(words []string, ids []int32, spoken bool) wordIndex {
	x := wordIndex{spoken: spoken}
	order := make([]int32, len(words))
	for i := range order {
		order[i] = int32(i)
	}
	sortByLength(order, func(i int32) int { return len(words[i]) })
	n := len(order)
	x.words, x.sounds, x.ids = make([]string, n), make([]string, n), make([]int32, n)
	x.prints, x.pairs = make([]uint64, n), make([]uint64, n)
	for i, o := range order {
		x.words[i], x.ids[i] = words[o], o
		if ids != nil {
			x.ids[i] = ids[o]
		}
		x.sounds[i] = soundKey(words[o], spoken)
		x.prints[i], x.pairs[i] = fingerprint(words[o]), pairprint(words[o])
	}
	x.first = starts(n, func(i int) int { return len(x.words[i]) })
	x.bySound = make([]int32, n)
	for i := range x.bySound {
		x.bySound[i] = int32(i)
	}
	sortByLength(x.bySound, func(i int32) int { return len(x.sounds[i]) })
	x.soundPr, x.soundPa = make([]uint64, n), make([]uint64, n)
	for i, at := range x.bySound {
		x.soundPr[i], x.soundPa[i] = fingerprint(x.sounds[at]), pairprint(x.sounds[at])
	}
	x.soundAt = starts(n, func(i int) int { return len(x.sounds[x.bySound[i]]) })
	return x
}

// sortByLength orders by length and keeps the order of equals.
func sortByLength(order []int32, length func(int32) int) {
	var counts []int
	for _, o := range order {
		l := length(o)
		for len(counts) <= l+1 {
			counts = append(counts, 0)
		}
		counts[l+1]++
	}
	for l := 1; l < len(counts); l++ {
		counts[l] += counts[l-1]
	}
	sorted := make([]int32, len(order))
	for _, o := range order {
		l := length(o)
		sorted[counts[l]] = o
		counts[l]++
	}
	copy(order, sorted)
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
	print, pair := fingerprint(w), pairprint(w)
	var pat pattern
	pat.set(w)
	from, to := span(x.first, len(w)-limit, len(w)+limit)
	for i, p := range x.prints[from:to] {
		if bits.OnesCount64(print^p) > 2*limit {
			continue
		}
		if at := from + int32(i); bits.OnesCount64(pair^x.pairs[at]) <= 6*limit && pat.distance(x.words[at], limit) <= limit {
			visit(at)
		}
	}
	sound := soundKey(w, x.spoken)
	print, pair = fingerprint(sound), pairprint(sound)
	var spat pattern
	spat.set(sound)
	from, to = span(x.soundAt, len(sound)-limit+1, len(sound)+limit-1)
	for n, p := range x.soundPr[from:to] {
		if bits.OnesCount64(print^p) > 2*(limit-1) {
			continue
		}
		i := from + int32(n)
		if bits.OnesCount64(pair^x.soundPa[i]) > 6*(limit-1) {
			continue
		}
		at := x.bySound[i]
		if spat.distance(x.sounds[at], limit-1) <= limit-1 && pat.distance(x.words[at], limit) > limit {
			visit(at)
		}
	}
}

func (sp *spelling) init() {
	sp.postings, sp.endings = map[string][]int32{}, map[string]int32{}
	sp.rivals = map[string][]int32{}
}

// addEnglish takes a vernacular name: its key, its words and its place among
// the index's names.
func (sp *spelling) addEnglish(k string, words []string, name int32) {
	at := int32(len(sp.names))
	sp.names = append(sp.names, name)
	sp.keys = append(sp.keys, k)
	if len(words) > 1 {
		sp.endings[words[len(words)-1]]++
	}
	for j, w := range words {
		if !slices.Contains(words[:j], w) {
			sp.postings[w] = append(sp.postings[w], at)
		}
	}
}

// buildEnglish makes ready the vernacular names that addEnglish has taken.
func (ix *Index) buildEnglish() {
	ix.spelling.english = newWordIndex(ix.spelling.keys, nil, true)
}

// buildRivals finds names that are others with a word like moth added.
func (ix *Index) buildRivals() {
	sp := &ix.spelling
	for _, kind := range kindWords {
		// Brimstone and Brimstone Moth
		for _, at := range sp.postings[kind] {
			k := sp.keys[at]
			if front, ok := strings.CutSuffix(k, kind); ok {
				for other := range ix.chain(front) {
					n := &ix.names[other]
					if n.kind == vernacularName && n.taxon != ix.names[sp.names[at]].taxon {
						sp.rivals[front] = append(sp.rivals[front], sp.names[at])
						break
					}
				}
			}
		}
	}
}

func (ix *Index) buildSpelling() {
	sp := &ix.spelling
	var higher []string
	var higherIDs []int32
	for i := range ix.names {
		if n := &ix.names[i]; n.kind != vernacularName && n.taxon != none && !ix.taxa[n.taxon].IsSpeciesOrBelow() && ix.taxa[n.taxon].Rank != RankAggregate {
			higher = append(higher, key(n.text))
			higherIDs = append(higherIDs, int32(i))
		}
	}
	sp.genera = newWordIndex(ix.genusKey, nil, false)
	sp.single = newWordIndex(higher, higherIDs, false)
	sp.authors = sync.OnceValue(ix.authorNames)
	sp.initials = sync.OnceValue(ix.buildInitials)
}

// surnames takes the names in an authorship of plain words, as most are, to
// authors; it reports false for others.
func surnames(s string, authors map[string]bool) bool {
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', c == ' ', c == ',', c == '(', c == ')', c == '&':
		default:
			return false
		}
	}
	var buf [64]byte
	for w := range strings.FieldsFuncSeq(s, func(r rune) bool { return strings.ContainsRune(" ,()&", r) }) {
		if hasDigit(w) {
			if strings.Trim(w, "0123456789") != "" {
				return false
			}
			continue
		}
		if k := appendKey(buf[:0], w); !authors[string(k)] && !particles[string(k)] {
			authors[string(k)] = true
		}
	}
	return true
}

// authorNames are the surnames in the lists' authorships.
func (ix *Index) authorNames() map[string]bool {
	authors, seen := map[string]bool{}, map[string]bool{}
	for _, t := range ix.taxa {
		if t.Authorship == "" || seen[t.Authorship] {
			continue
		}
		seen[t.Authorship] = true
		if surnames(t.Authorship, authors) {
			continue
		}
		for _, n := range parseAuthorship(t.Authorship).names {
			authors[n] = true
		}
	}
	return authors
}
