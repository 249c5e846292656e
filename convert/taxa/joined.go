package taxa

import (
	"strings"
)

// hyphenJoined reads two names with no more than a hyphen between them:
// "Square-spot Rustic-Xestia xanthographa". Both must be names of one taxon.
func (r *resolver) hyphenJoined(s string) (outcome, bool) {
	for i := 1; i+1 < len(s); i++ {
		if s[i] != '-' || !upperFirst(s[i+1:]) || s[i-1] == ' ' {
			continue
		}
		front, back := s[:i], s[i+1:]
		a, ok := r.exactTokens(front, tokenize(front))
		if !ok || a.taxon == none {
			continue
		}
		if b, ok := r.exactTokens(back, tokenize(back)); ok && b.taxon == a.taxon {
			r.step("%s and %s are names of one taxon.", quoted(front), quoted(back))
			a.remarks = append(a.remarks, b.remarks...)
			return a, true
		}
	}
	return outcome{}, false
}

// bothMisspelt reads two names in one cell of which neither is spelt as on the
// list: each is looked for on its own, and both must be closest to one taxon.
func (r *resolver) bothMisspelt(s string, toks []token) (outcome, bool) {
	cut := 1
	for cut < len(toks) && toks[cut].kind == wordToken {
		cut++
	}
	if cut >= len(toks) {
		return outcome{}, false
	}
	front, back := written(s, toks[:cut]), ""
	switch t := &toks[cut]; {
	case t.kind == groupToken && cut == len(toks)-1:
		back = t.text
	case t.kind == signToken && strings.Contains("-–—=:;,", t.text) && cut+1 < len(toks):
		back = s[toks[cut+1].start:]
	default:
		return outcome{}, false
	}
	inner := tokenize(back)
	if len(inner) == 0 || inner[0].kind != wordToken || !upperFirst(back) {
		return outcome{}, false
	}
	a, b := r.misspelt(front, tokenize(front)), r.misspelt(back, inner)
	first := func(o *outcome) int32 {
		switch {
		case o.taxon != none:
			return o.taxon
		case o.spelling && len(o.cands) > 0:
			return o.cands[0]
		}
		return none
	}
	taxon := first(&a)
	if taxon == none || taxon != first(&b) {
		return outcome{}, false
	}
	r.step("Both names are closest to %s.", r.ix.taxa[taxon])
	if a.taxon == none && b.taxon != none {
		a, b = b, a
		back = front
	}
	if a.taxon != none {
		a.remark("The other name was written %s.", quoted(back))
	}
	return a, true
}
