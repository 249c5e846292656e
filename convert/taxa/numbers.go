package taxa

import (
	"slices"
	"strings"
)

// numberIndex finds taxa by their checklist numbers.
type numberIndex struct {
	exact map[string]int32 // none where one number stands for several taxa
	// short is by number without the zeros at its end, which a spreadsheet
	// takes from "73.010"; loose is by number without the zeros behind its
	// point, which people leave out.
	short, loose map[string][]int32
	ids          func() map[string]int32 // by taxonID, made when first asked for
}

// numbered is what a number stands for.
type numbered struct {
	taxa []int32 // more than one where it could be several
	// repaired is set where the number is on the list only with zeros more.
	repaired bool
}

// buildNumbers indexes checklist numbers.
func (ix *Index) buildNumbers() {
	n := numberIndex{exact: map[string]int32{}, short: map[string][]int32{}, loose: map[string][]int32{}}
	for i, t := range ix.taxa {
		if t.Number == "" {
			continue
		}
		k := numberKey(t.Number)
		if old, there := n.exact[k]; there && old != int32(i) {
			if old != none && ix.taxa[old].List != t.List {
				continue // the earlier list decides
			}
			n.exact[k] = none
			continue
		}
		n.exact[k] = int32(i)
		if s := withoutLastZeros(k); strings.Contains(k, ".") || s != k {
			n.short[s] = append(n.short[s], int32(i))
			l := withoutFirstZeros(k)
			n.loose[l] = append(n.loose[l], int32(i))
		}
	}
	n.ids = onceIDs(ix)
	ix.numbers = n
}

// number finds what a number as written stands for; ok is false where the
// lists do not have it.
func (ix *Index) number(s string) (n numbered, ok bool) {
	x := &ix.numbers
	if len(x.exact) > 0 {
		for _, k := range [...]string{numberKey(s), numberKey(withoutNumberWord(s))} {
			if n, ok = x.find(k); ok {
				return n, true
			}
		}
	}
	if t, there := x.ids()[strings.TrimSpace(s)]; there {
		return numbered{taxa: []int32{t}}, true
	}
	return numbered{}, false
}

func (x *numberIndex) find(k string) (numbered, bool) {
	short := withoutLastZeros(k)
	t, there := x.exact[k]
	switch {
	case there && t == none:
		return numbered{}, true
	case there && short == k && len(x.short[k]) > 1:
		// 10.1 is on the list, and 10.10 too, which a spreadsheet makes 10.1.
		return numbered{taxa: append([]int32{t}, slices.DeleteFunc(slices.Clone(x.short[k]), func(o int32) bool { return o == t })...)}, true
	case there:
		return numbered{taxa: []int32{t}}, true
	}
	found := slices.Clone(x.short[short])
	if t, there := x.exact[short]; there && t != none && len(found) == 0 {
		found = append(found, t) // 2107.0, as databases write it
	}
	if short != k {
		for _, t := range x.loose[k] { // 73.10 for 73.010
			if !contains32(found, t) {
				found = append(found, t)
			}
		}
	}
	return numbered{taxa: found, repaired: true}, len(found) > 0
}

// numberKey makes one writing of a checklist number: capitals, spaces, leading
// zeros and the kind of decimal point do not matter.
func numberKey(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(s), ""))
	s = strings.ReplaceAll(s, ",", ".")
	if t := strings.TrimLeft(s, "0"); t != "" && t[0] >= '0' && t[0] <= '9' {
		return t
	}
	return s
}

// withoutLastZeros is a number as a spreadsheet shows it: 73.01 for 73.010.
func withoutLastZeros(k string) string {
	if !strings.Contains(k, ".") || strings.Trim(k, "0123456789.") != "" {
		return k
	}
	return strings.TrimSuffix(strings.TrimRight(k, "0"), ".")
}

// withoutFirstZeros leaves out the zeros behind the point: 73.10 for 73.010.
func withoutFirstZeros(k string) string {
	whole, part, _ := strings.Cut(k, ".")
	return whole + "." + strings.TrimLeft(part, "0")
}

// numberWords stand before a checklist number, by their keys: B&F and ABH are
// the checklists of British and Irish moths (from memory) by whose numbers
// moths are often recorded.
var numberWords = wordSet("no", "nr", "num", "number", "code", "checklist", "checklistno", "listno", "speciesno", "spno", "bf", "bandf", "abh", "bradley")

// withoutNumberWord takes "No.", "#" or "B&F" from before a number.
func withoutNumberWord(s string) string {
	first := strings.IndexAny(s, "0123456789")
	if first <= 0 {
		return s
	}
	if w := key(s[:first]); w == "" && strings.Contains(s[:first], "#") || numberWords[w] {
		return s[first:]
	}
	return s
}

// numberFirst reads a checklist number alone, or in front of a name.
func (r *resolver) numberFirst(s string, toks []token) (outcome, bool) {
	ix := r.ix
	start := 0
	for start < len(toks) && start < 4 && !hasDigit(toks[start].text) {
		start++
	}
	if len(ix.numbers.exact) == 0 || start == len(toks) || !hasDigit(toks[start].text) {
		return outcome{}, false
	}
	if start > 0 && withoutNumberWord(s[toks[0].start:]) != s[toks[start].start:] {
		return outcome{}, false
	}
	whole := strings.TrimRight(s, ". ")
	if n, there := ix.number(whole); there {
		return r.takeNumber(n, whole), true
	}
	end := start + 1
	for end < len(toks) && !toks[end].spaced && (toks[end].kind == numberToken || toks[end].kind == wordToken && hasDigit(toks[end].text)) {
		end++
	}
	number := written(s, toks[:end])
	n, there := ix.number(number)
	rest := toks[end:]
	for len(rest) > 0 && rest[0].kind == signToken && strings.Contains("-–—:.,;)=/", rest[0].text) {
		rest = rest[1:]
	}
	if !there || len(rest) == 0 || len(n.taxa) == 0 {
		return outcome{}, false
	}
	// The words may be a name together with their number: "7-spot Ladybird".
	if o, ok := r.readOne(s, toks); ok {
		return o, true
	}
	text := s[rest[0].start:]
	return r.withNumber(r.readText(text), n, number, text), true
}

// numberLast reads a checklist number behind a name: "Dark Arches (2321)",
// "Dark Arches B&F 2321", "Dark Arches 73.162". A whole number with nothing
// that marks it as one may be a count, and is taken only if it is the name's.
func (r *resolver) numberLast(s string, toks []token) (outcome, bool) {
	if len(r.ix.numbers.exact) == 0 || len(toks) < 2 {
		return outcome{}, false
	}
	last := len(toks) - 1
	number, at := toks[last].text, last
	if toks[last].kind != groupToken {
		if !hasDigit(number) {
			return outcome{}, false
		}
		for k := last - 1; k > 0 && k >= last-3; k-- {
			if text := written(s, toks[k:]); withoutNumberWord(text) != text {
				number, at = text, k
			}
		}
	}
	bare := withoutNumberWord(number)
	if strings.Trim(numberKey(bare), "0123456789.abcd") != "" || !hasDigit(bare) {
		return outcome{}, false
	}
	n, there := r.ix.number(number)
	marked := bare != number || strings.Contains(numberKey(bare), ".")
	if !there && !marked {
		return outcome{}, false
	}
	for at > 1 && toks[at-1].kind == signToken && strings.Contains("-–—:,;=/", toks[at-1].text) {
		at--
	}
	text := written(s, toks[:at])
	o := r.readText(text)
	switch {
	case !there && o.taxon != none:
		o.and(query(CodeNumberListed, "%s was read as %s; the number %s beside it is not on the list.", quoted(text), r.ix.taxa[o.taxon], quoted(number)))
	case !there:
		return outcome{}, false
	case marked, o.taxon != none && contains32(n.taxa, o.taxon):
		return r.withNumber(o, n, number, text), true
	default:
		return outcome{}, false
	}
	return o, true
}

// takeNumber reads a number that stands alone.
func (r *resolver) takeNumber(n numbered, s string) outcome {
	switch {
	case len(n.taxa) == 0:
		return held(CodeAmbiguous, "The number %s stands for more than one taxon on the list.", quoted(s))
	case len(n.taxa) > 1:
		h := held(CodeAmbiguous, "The number %s may have lost a zero, as spreadsheets take those at the end away, and then fits more than one taxon on the list.", quoted(s))
		h.cands = n.taxa
		return h
	}
	t := n.taxa[0]
	taxon := r.ix.taxa[t]
	r.step("%s is the checklist number of %s.", quoted(s), taxon)
	o := outcome{taxon: t, name: none, remarks: []string{"Recorded by its number on the list."}}
	if n.repaired {
		o.and(query(CodeNumberZeros, "The number %s is not on the list as it stands. It was read as %s, %s, as spreadsheets take zeros at the end away. Say if another was meant.", quoted(s), taxon.Number, taxon))
	}
	return o
}

// withNumber weighs a name that was read against the checklist number beside
// it.
func (r *resolver) withNumber(o outcome, n numbered, number, text string) outcome {
	if len(n.taxa) == 0 {
		return o // the number says nothing: several taxa have it
	}
	ix := r.ix
	for _, t := range n.taxa {
		if o.taxon == t || o.taxon != none && (r.within(o.taxon, t) || o.qualifier != "" && (ix.above(ix.taxa[t], ix.taxa[o.taxon].Rank) == o.taxon || r.within(t, o.taxon))) {
			r.step("The number %s agrees.", quoted(number))
			return o
		}
	}
	t := n.taxa[0]
	taxon := ix.taxa[t]
	if o.taxon != none {
		r.step("The number %s is that of %s.", quoted(number), taxon)
		o.and(query(CodeNumber, "%s was read as %s, but the number %s is that of %s. The name was taken; say which is right.", quoted(text), ix.taxa[o.taxon], quoted(number), taxon))
		o.verdict.Candidates = nil
		o.cands = append([]int32{o.taxon}, n.taxa...)
		return o
	}
	for _, t := range n.taxa {
		if contains32(o.cands, t) {
			return r.numberDecides(o, t, number, text)
		}
	}
	if len(o.cands) == 0 || o.spelling {
		o.cands = append(slices.Clone(n.taxa), o.cands...)
	} else {
		o.cands = append(o.cands, n.taxa...)
	}
	o.verdict.Message += " The number " + quoted(number) + " beside it is that of " + taxon.String() + "."
	return o
}

// numberDecides takes that candidate of a held name that has the number
// beside it.
func (r *resolver) numberDecides(o outcome, t int32, number, text string) outcome {
	p := r.takeNumber(numbered{taxa: []int32{t}}, number)
	p.rest = o.rest
	if !o.spelling && (o.verdict.Code == CodeAmbiguous || o.verdict.Code == CodeAbbreviated) {
		p.remarks = []string{"Recorded as " + quoted(text) + " with the number " + number + "."}
		return p
	}
	p.remarks = nil
	p.and(query(CodeMisspelt, "%s was read as %s: the number %s is its, and the name is close.", quoted(text), r.ix.taxa[t], quoted(number)))
	p.remark("Spelt %s; read with the help of the number %s.", quoted(text), number)
	return p
}
