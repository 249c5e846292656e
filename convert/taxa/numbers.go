package taxa

import "strings"

// numberFirst reads a checklist number alone, or in front of a name.
func (r *resolver) numberFirst(s string, toks []token) (outcome, bool) {
	ix := r.ix
	if len(ix.numbers) == 0 || len(toks) == 0 || !hasDigit(toks[0].text) {
		return outcome{}, false
	}
	whole := strings.TrimRight(s, ". ")
	if t, there := ix.numbers[numberKey(whole)]; there {
		if t == none {
			return held(CodeAmbiguous, "The number %s stands for more than one taxon on the list.", quoted(s)), true
		}
		return r.takeNumber(t, s), true
	}
	end := 1
	for end < len(toks) && !toks[end].spaced && (toks[end].kind == numberToken || toks[end].kind == wordToken && hasDigit(toks[end].text)) {
		end++
	}
	t, there := ix.numbers[numberKey(written(s, toks[:end]))]
	rest := toks[end:]
	for len(rest) > 0 && rest[0].kind == signToken && strings.Contains("-–—:.,;)", rest[0].text) {
		rest = rest[1:]
	}
	if !there || len(rest) == 0 || t == none {
		return outcome{}, false
	}
	// The words may be a name together with their number: "7-spot Ladybird".
	if o, ok := r.readOne(s, toks); ok {
		return o, true
	}
	text := written(s, rest)
	return r.withNumber(r.readText(text), t, written(s, toks[:end]), text), true
}

func (r *resolver) takeNumber(t int32, s string) outcome {
	taxon := r.ix.taxa[t]
	r.step("%s is the checklist number of %s.", quoted(s), taxon)
	return outcome{taxon: t, name: none, rank: taxon.Rank, remarks: []string{"Recorded by its number on the list."}}
}

// withNumber weighs a name that was read against the checklist number beside
// it.
func (r *resolver) withNumber(o outcome, t int32, number, text string) outcome {
	ix := r.ix
	taxon := ix.taxa[t]
	if o.taxon == t || o.taxon != none && (r.within(o.taxon, t) || o.qualifier != "" && (ix.above(taxon, o.rank) == o.taxon || r.within(t, o.taxon))) {
		r.step("The number %s agrees.", quoted(number))
		return o
	}
	if o.taxon != none {
		r.step("The number %s is that of %s.", quoted(number), taxon)
		o.and(query(CodeNumber, "%s was read as %s, but the number %s is that of %s. The name was taken; say which is right.", quoted(text), ix.taxa[o.taxon], quoted(number), taxon))
		o.verdict.Candidates = nil
		o.cands = []int32{o.taxon, t}
		return o
	}
	for _, c := range o.cands {
		if c == t && !o.spelling && (o.verdict.Code == CodeAmbiguous || o.verdict.Code == CodeAbbreviated) {
			// The name alone could be several taxa; the number says which.
			p := r.takeNumber(t, number)
			p.rest = o.rest
			p.remarks = []string{"Recorded as " + quoted(text) + " with the number " + number + "."}
			return p
		}
		if c == t {
			p := r.takeNumber(t, number)
			p.remarks = nil
			p.rest = o.rest
			p.and(query(CodeMisspelt, "%s was read as %s: the number %s is its, and the name is close.", quoted(text), taxon, quoted(number)))
			p.remark("Spelt %s; read with the help of the number %s.", quoted(text), number)
			return p
		}
	}
	if len(o.cands) == 0 || o.spelling {
		o.cands = append([]int32{t}, o.cands...)
	} else {
		o.cands = append(o.cands, t)
	}
	o.verdict.Message += " The number " + quoted(number) + " beside it is that of " + taxon.String() + "."
	return o
}
