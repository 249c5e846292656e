package taxa

import (
	"cmp"
	"slices"
	"strings"
)

// nearVernacular finds vernacular names close to the tokens: written out
// where words were cut short, in another order, or misspelt.
func (r *resolver) nearVernacular(s string, toks []token) []suggestion {
	limit := 0
	for limit < len(toks) && limit < 10 && (toks[limit].kind == wordToken || toks[limit].kind == numberToken || toks[limit].sign("&") || toks[limit].sign("+") || toks[limit].sign("-") && limit > 0) {
		limit++
	}
	for n := limit; n > 0; n-- {
		if openWords[toks[n-1].key] != "" {
			continue
		}
		t := r.readTail(s, toks[n:], baseVernacular)
		if len(t.unknown) > 0 || n < limit && r.mayBeLonger(toks[n:], &t) {
			continue
		}
		words := vernacularWords(written(s, toks[:n]))
		if len(words) > 1 && (words[0] == "the" || words[0] == "a") && !toks[0].dotted() {
			words = words[1:]
		}
		if len(words) == 0 {
			continue
		}
		if found := r.nearWords(words, toks[:n], n); len(found) > 0 {
			return found
		}
	}
	return nil
}

func (r *resolver) nearWords(words []string, toks []token, used int) []suggestion {
	ix := r.ix
	k := strings.Join(words, "")
	known := ix.known.english[k]
	if found := r.writtenOut(words, toks, used); len(found) > 0 {
		return found
	}
	if found := r.longForms(words, used); len(found) > 0 {
		return found
	}
	if found := r.reordered(words, used); len(found) > 0 && !known {
		return found
	}
	x := &ix.spelling.english
	sound := soundKey(k, true)
	var found []suggestion
	x.near(k, vernacularReach(len(k)), func(at int32) {
		found = append(found, suggestion{name: ix.spelling.names[x.ids[at]], cost: cost(k, x.words[at], sound, x.sounds[at], 3), used: used})
	})
	// Word by word, for those that could be taken or come near to it.
	slices.SortStableFunc(found, func(a, b suggestion) int { return cmp.Compare(a.cost, b.cost) })
	found = found[:min(len(found), 12)]
	for i := range found {
		f := &found[i]
		if f.cost >= found[0].cost+margin {
			break
		}
		f.apply, f.why = r.sameWords(words, vernacularWords(ix.names[f.name].text), f.cost)
		if known {
			f.apply, f.why = false, "It is the name of another taxon."
		}
	}
	return found
}

// vernacularReach is how many letters off a vernacular name of a length, all
// words together, may be.
func vernacularReach(length int) int {
	switch {
	case length <= 5:
		return 1
	case length <= 18:
		return 2
	}
	return 3
}

// sameWords compares word by word: a written word that is a word of its own
// in other names is not a misspelling.
func (r *resolver) sameWords(words, candidate []string, total int) (bool, string) {
	if len(candidate) > 1 && candidate[0] == "the" {
		candidate = candidate[1:]
	}
	left, right := unmatched(words, candidate)
	if len(left) == 0 || len(right) == 0 {
		return false, ""
	}
	for _, w := range left {
		if r.ix.isVernacularWord(w) && len(w) > 1 {
			return false, "All of its words are words of names, so it may be another taxon."
		}
	}
	if len(left) != len(right) {
		// Joined or parted words that are misspelt besides.
		return total <= 10 && len(left) <= 2 && len(right) <= 3, ""
	}
	for i, w := range left {
		c := right[i]
		n := min(len(w), len(c))
		wc := cost(w, c, soundKey(w, true), soundKey(c, true), 3)
		switch {
		case n <= 4 && len(words) == 1:
			return false, ""
		case wc < 10 && n >= 3, n >= 4 && endingDropped(w, c):
		case n <= 2 || hasDigit(w) || hasDigit(c):
			return false, ""
		case n <= 4 && len(words) > 1 && len(w) != len(c) && wc <= 10:
		case n == 4 && isSwap(w, c):
		case n == 3 && isSwap(w, c) && len(words) > 1:
		case n <= 4:
			return false, ""
		case n == 5 && len(words) == 1 && !isSwap(w, c):
			return false, ""
		case wc > limitFor(n):
			return false, ""
		case w[0] != c[0] && len(words) == 1:
			return false, ""
		}
	}
	return len(left) <= 2, ""
}

// endingDropped: a word without its -ed, -d or -s.
func endingDropped(w, c string) bool {
	rest, ok := strings.CutPrefix(c, w)
	return ok && (rest == "ed" || rest == "d" || rest == "s" || rest == "es")
}

// isSwap: two letters changed places.
func isSwap(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// unmatched are the words of each side that the other side lacks, in order.
func unmatched(a, b []string) (left, right []string) {
	rest := slices.Clone(b)
	for _, w := range a {
		if i := slices.Index(rest, w); i >= 0 {
			rest = slices.Delete(rest, i, i+1)
		} else {
			left = append(left, w)
		}
	}
	return left, rest
}

// reordered finds names of the same words in another order.
func (r *resolver) reordered(words []string, used int) []suggestion {
	if len(words) < 2 {
		return nil
	}
	sp := &r.ix.spelling
	length := len(joinWords(words))
	var found []suggestion
	for _, at := range sp.postings[r.rarest(words)] {
		// The same words have as many letters, but for an article before them.
		if n := len(sp.keys[at]); n > length+3 || n < length-3 {
			continue
		}
		name := sp.names[at]
		if turnedRound(words, vernacularWords(r.ix.names[name].text)) {
			found = append(found, suggestion{name: name, cost: 5, used: used, apply: true})
		}
	}
	return found
}

// turnedRound: the last words of one stand first in the other, and nothing
// else differs. Bright-line Brown-eye and Brown-line Bright-eye are two.
func turnedRound(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := 1; i < len(a); i++ {
		if slices.Equal(a[i:], b[:len(b)-i]) && slices.Equal(a[:i], b[len(b)-i:]) {
			return true
		}
	}
	return false
}

// rarest is the word that the fewest names have.
func (r *resolver) rarest(words []string) string {
	best, count := "", 1<<30
	for _, w := range words {
		if n := len(r.ix.spelling.postings[w]); n < count {
			best, count = w, n
		}
	}
	return best
}

// writtenOut finds names whose words the written ones are cut short from:
// "Lge Yell. Underwing".
func (r *resolver) writtenOut(words []string, toks []token, used int) []suggestion {
	dotted := map[string]bool{}
	for i := range toks {
		if toks[i].dotted() && len(toks[i].key) > 0 {
			dotted[toks[i].key] = true
		}
	}
	var full []string
	short := 0
	for _, w := range words {
		if r.ix.isVernacularWord(w) && !dotted[w] && !isInitial(w) {
			full = append(full, w)
		} else if dotted[w] || shortForms[w] != "" || isInitial(w) || isInitials(w) {
			short++
		} else {
			return nil
		}
	}
	sp := &r.ix.spelling
	if len(full) == 0 && len(words) > 1 && len(dotted) == len(words) {
		full = sp.beginning(words)
	}
	if short == 0 || len(full) == 0 {
		return nil
	}
	var found []suggestion
	for _, at := range sp.postings[r.rarest(full)] {
		name := sp.names[at]
		candidate := vernacularWords(r.ix.names[name].text)
		if shortenedFrom(words, candidate, dotted) {
			found = append(found, suggestion{name: name, cost: 5, used: used, apply: true})
		}
	}
	return found
}

// longForms finds the name that the words make with usual short forms written
// out: "Hummingbird HM" where the list has Humming-bird Hawk-moth.
func (r *resolver) longForms(words []string, used int) []suggestion {
	long, short := "", false
	for _, w := range words {
		if full := shortForms[w]; full != "" && len(words) > 1 {
			w, short = full, true
		}
		long += w
	}
	if !short {
		return nil
	}
	var found []suggestion
	for at := range r.ix.chain(long) {
		if n := &r.ix.names[at]; n.kind == vernacularName && n.taxon != none {
			found = append(found, suggestion{name: at, cost: 5, used: used, apply: true})
		}
	}
	return found
}

// beginning is the word of vernacular names that begins with the longest of the
// words cut short, where there is only one.
func (sp *spelling) beginning(words []string) []string {
	long := ""
	for _, w := range words {
		if len(w) > len(long) {
			long = w
		}
	}
	var found []string
	if len(long) < 3 {
		return nil
	}
	for w := range sp.postings {
		if strings.HasPrefix(w, long) && !strings.HasSuffix(w, "s") {
			if found = append(found, w); len(found) > 1 {
				return nil
			}
		}
	}
	return found
}

// shortenedFrom: each written word is the candidate's word or cut short from
// it, in order.
func shortenedFrom(words, candidate []string, dotted map[string]bool) bool {
	j := 0
	for _, w := range words {
		if j >= len(candidate) {
			return false
		}
		c := candidate[j]
		full := shortForms[w]
		switch {
		case w == c, full == c, (dotted[w] || isInitial(w)) && strings.HasPrefix(c, w):
			j++
		case full != "" && j+1 < len(candidate) && full == c+candidate[j+1]:
			j += 2
		case isInitials(w) && j+len(w) <= len(candidate):
			for i := range len(w) {
				if candidate[j+i][0] != w[i] {
					return false
				}
			}
			j += len(w)
		default:
			return false
		}
	}
	return j == len(candidate)
}

func isInitial(w string) bool { return len(w) == 1 && w[0] >= 'a' }

// isInitials: two or three letters without a vowel, as "LBB" for Lesser
// Broad-bordered.
func isInitials(w string) bool {
	if len(w) < 2 || len(w) > 4 {
		return false
	}
	for i := range len(w) {
		if isVowel(w[i]) || w[i] < 'a' || w[i] > 'z' {
			return false
		}
	}
	return true
}

// sharingWords finds names that have all the written words and more, to be
// offered where nothing is close.
func (r *resolver) sharingWords(s string, toks []token) []int32 {
	var words []string
	for _, w := range vernacularWords(written(s, toks)) {
		if len(r.ix.spelling.postings[w]) == 0 {
			return nil
		}
		words = append(words, w)
	}
	sp := &r.ix.spelling
	if len(words) == 0 || len(words) == 1 && (len(words[0]) < 5 || len(sp.postings[words[0]]) > 3) {
		return nil
	}
	var found []int32
	for _, at := range sp.postings[r.rarest(words)] {
		n := &r.ix.names[sp.names[at]]
		if left, _ := unmatched(words, vernacularWords(n.text)); len(left) == 0 && !contains32(found, n.taxon) {
			if found = append(found, n.taxon); len(found) == 5 {
				break
			}
		}
	}
	return found
}
