package tally

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"fieldfare/convert/reading"
)

// breakdown reads an item together with what stands in brackets behind it.
func (it *item) breakdown(parts []Part, s string) ([]Part, reading.Verdict, bool) {
	in := it.inside
	base := *it
	base.inside = nil
	kept := s[in.text.start:in.text.end]
	if !in.ok {
		base.remarks = append(base.remarks, in.text)
		p, v, ok := base.part(s)
		if doubtful(kept) {
			v = v.And(reading.QueryOf("words-beside-count", fmt.Sprintf("“%s” stands beside the count and is kept as a remark. Please check that it does not change the count.", kept)))
		}
		return append(parts, p), v, ok && (base.counted() || base.labelled() || base.present)
	}
	sum, allCounted, anyCounted, labelled := in.sums()
	switch {
	case base.counted() && in.qualifies(): // 15 (approx.)
		base.inexact = true
		base.quantity = []span{{base.quantity[0].start, min(in.text.end+1, len(s))}}
		if end := base.quantity[0].end; end < len(s) && s[end-1] == '.' {
			base.quantity[0].end++ // the bracket behind the full stop
		}
		p, v, ok := base.part(s)
		return append(parts, p), v, ok
	case !anyCounted && len(in.items) == 1: // 1 (f), 2 (larvae), 1 (worn)
		return base.qualified(parts, s, &in.items[0])
	case !anyCounted: // 5 (m & f)
		base.remarks = append(base.remarks, in.text)
		p, v, ok := base.part(s)
		return append(parts, p), v, ok
	case !base.counted() && !base.zero: // larvae (3), several (20+) is below
		return base.counting(parts, s, in)
	case base.exact && !base.inexact && base.sign == nil && allCounted && labelled:
		return base.split(parts, s, in, sum)
	case base.inexact && !allCounted && len(in.items) == 1 && !in.items[0].labelled(): // several (20+)
		base.quantity = []span{{base.quantity[0].start, in.text.end + 1}}
		base.quantity[0].end = min(base.quantity[0].end, len(s))
		p, v, ok := base.part(s)
		return append(parts, p), v, ok
	}
	base.remarks = append(base.remarks, in.text)
	p, v, ok := base.part(s)
	said := reading.QueryOf("second-count", fmt.Sprintf("Beside the count stands “%s”, which may be another count. It is kept as a remark; please check which is right.", kept))
	if onlyRemarked(in.items, base.n, base.exact) {
		said = reading.Verdict{}
	}
	if p.IndividualCount != "" && sum > 0 && said.State != reading.Fair {
		said.Candidates = []string{p.IndividualCount, strconv.Itoa(sum)}
	}
	return append(parts, p), v.And(said), ok
}

// only tells whether the brackets can be about the one item before them alone:
// a remark, or a breakdown of all n of it.
func (in *inside) only(n int) bool {
	if !in.ok {
		return true
	}
	sum, allCounted, _, labelled := in.sums()
	if allCounted && labelled {
		return sum == n
	}
	for i := range in.items {
		if in.items[i].labelled() || in.items[i].counted() {
			return false
		}
	}
	return true
}

// qualifies: the brackets only say that the number before them is inexact.
func (in *inside) qualifies() bool {
	if len(in.items) != 1 {
		return false
	}
	it := in.items[0]
	return it.inexact && !it.exact && !it.labelled() && len(it.remarks) == 0 && it.said.State == reading.Fair
}

// onlyRemarked: the brackets say something of a part of those counted that is
// no label: "3m (1 worn)".
func onlyRemarked(items []item, n int, exact bool) bool {
	sum := 0
	for i := range items {
		it := &items[i]
		if it.labelled() || !it.exact || it.inexact || len(it.remarks) == 0 || it.said.State != reading.Fair {
			return false
		}
		sum += it.n
	}
	return exact && sum <= n
}

// sums adds up the counts in brackets.
func (in *inside) sums() (sum int, allCounted, anyCounted, labelled bool) {
	allCounted, labelled = true, true
	for i := range in.items {
		it := &in.items[i]
		exact := it.exact && !it.inexact && it.sign == nil && it.inside == nil
		allCounted = allCounted && exact
		anyCounted = anyCounted || it.counted()
		labelled = labelled && (it.labelled() || it.unsexed)
		if exact {
			sum += it.n
		}
	}
	return sum, allCounted, anyCounted, labelled
}

// partsOfSum: labels with counts that could add up to the number before them.
func (in *inside) partsOfSum() bool {
	_, allCounted, _, labelled := in.sums()
	return allCounted && labelled
}

// qualified gives the labels in brackets to the whole item.
func (it *item) qualified(parts []Part, s string, q *item) ([]Part, reading.Verdict, bool) {
	if !it.take(q) {
		return parts, reading.Verdict{}, false
	}
	p, v, ok := it.part(s)
	if q.zero { // "3 (none)", "1 (no f)"
		v = v.And(reading.QueryOf("words-beside-count", "The words in brackets may change the count. Please check."))
	}
	return append(parts, p), v.And(it.said), ok
}

// counting gives the count in brackets to the label before it.
func (it *item) counting(parts []Part, s string, in *inside) ([]Part, reading.Verdict, bool) {
	if !it.labelled() && in.items[0].labelled() { // present (3m)
		return resolve(parts, s, in.items)
	}
	if len(in.items) != 1 || in.items[0].labelled() {
		return parts, reading.Verdict{}, false
	}
	q := in.items[0]
	it.n, it.exact, it.inexact, it.quantity = q.n, q.exact, q.inexact, q.quantity
	if it.sign != nil && s[it.sign.end-1] != 's' && s[it.sign.end-1] != 'e' && (!it.exact || it.n > 1) {
		// One sign with a number behind it: of signs, or of animals in it?
		it.sign = nil
		it.said = it.said.And(reading.QueryOf("number-of-what", "The number in brackets was read as a number of individuals. Please check."))
	}
	it.remarks = append(it.remarks, q.remarks...)
	p, v, ok := it.part(s)
	return append(parts, p), v.And(q.said).And(it.said), ok
}

// split makes a part of every count in brackets, and one of those left over.
func (it *item) split(parts []Part, s string, in *inside, sum int) ([]Part, reading.Verdict, bool) {
	var said reading.Verdict
	for i := range in.items {
		q := in.items[i]
		if q.nothing() {
			continue
		}
		for _, t := range [...]struct{ to, from *string }{{&q.sex, &it.sex}, {&q.stage, &it.stage}, {&q.caste, &it.caste}, {&q.vitality, &it.vitality}} {
			if *t.to == "" {
				*t.to = *t.from
			}
		}
		p, v, ok := q.part(s)
		if !ok {
			return parts, v, false
		}
		said = said.And(v).And(q.said)
		parts = append(parts, p)
	}
	switch {
	case sum > it.n:
		said = said.And(reading.QueryOf("sum-disagrees",
			fmt.Sprintf("“%s” gives %d in all, but its parts add up to %d. The parts were used; please check.", s, it.n, sum),
			strconv.Itoa(sum), strconv.Itoa(it.n)))
	case sum < it.n:
		rest := *it
		rest.n = it.n - sum
		p, v, ok := rest.part(s)
		if !ok {
			return parts, v, false
		}
		said = said.And(v)
		parts = append(parts, p)
		if in.bare && it.stage == "" && in.items[0].stage != "" { // "14 (3 juv)": 14 birds, or 14 and 3 young ones
			said = said.And(reading.QueryOf("part-of-whole", fmt.Sprintf("The numbers in brackets were taken to be a part of the %d. Please check that they do not come on top of it.", it.n), strconv.Itoa(it.n), strconv.Itoa(it.n+sum)))
		}
	}
	return parts, said, true
}

// doubtful tells whether words in brackets could bear on the count: they hold
// a figure, a question, a denial, a doubt, or a letter that could mean anything.
func doubtful(words string) bool {
	for _, w := range strings.FieldsFunc(strings.ToLower(words), func(r rune) bool { return !unicode.IsLetter(r) && r != '?' && !unicode.IsDigit(r) }) {
		switch w {
		case "not", "no", "none", "prob", "probably", "poss", "possibly", "maybe", "perhaps", "mistake", "wrong", "error", "or", "uncertain", "unsure", "count", "counted", "estimate", "estimated", "absent", "duplicate", "dup", "repeat", "same":
			return true
		}
		if strings.ContainsAny(w, "?0123456789") || len(strings.Trim(words, " .")) == 1 {
			return true
		}
	}
	return false
}
