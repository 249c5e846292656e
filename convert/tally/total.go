package tally

import (
	"fmt"
	"slices"

	"fieldfare/convert/reading"
)

// settleTotal takes away a number that is only the sum of the others: one
// that is said to be ("2m 1f = 3", "2m 1f total 3"), stands in brackets at the
// end ("2m 1f (3)"), or stands first and equals it ("3, 2m 1f"). A sum that
// was said and does not agree is asked about.
func settleTotal(s string, items []item) ([]item, reading.Verdict) {
	n := len(items)
	if n < 2 {
		return items, reading.Verdict{}
	}
	if last := &items[n-1]; last.inside != nil && last.inside.ok && len(last.inside.items) == 1 {
		if in := last.inside.items[0]; in.bareNumber() {
			bare := *last
			bare.inside = nil
			if sum, ok := sumOf(append(items[:n-1:n-1], bare)); ok && sum == in.n {
				return append(items[:n-1:n-1], bare), reading.Verdict{}
			}
		}
		return items, reading.Verdict{}
	}
	for _, at := range [...]int{0, n - 1} {
		it := &items[at]
		if !it.bareNumber() {
			continue
		}
		rest := slices.Delete(slices.Clone(items), at, at+1)
		sum, ok := sumOf(rest)
		switch {
		case !ok:
		case sum == it.n && (it.total || at == 0 && items[1].sep != '+'):
			return rest, reading.Verdict{}
		case it.total && sum > it.n:
			return rest, reading.QueryOf("sum-disagrees", fmt.Sprintf("“%s” gives %d in all, but its parts add up to %d. The parts were used; please check.", s, it.n, sum))
		case it.total:
			left := *it
			left.n, left.total, left.unsexed = it.n-sum, false, true
			return append(rest, left), reading.QueryOf("sum-disagrees", fmt.Sprintf("“%s” gives %d in all, but its parts add up to %d. The rest went out without a sex or life stage; please check.", s, it.n, sum))
		}
	}
	return items, reading.Verdict{}
}

// mention makes a remark of a last number that only says more of those before
// it: "5 m, 1 worn".
func mention(items []item) []item {
	n := len(items)
	if n < 2 {
		return items
	}
	a, b := &items[n-2], &items[n-1]
	if !b.exact || b.inexact || b.labelled() || b.unsexed || len(b.remarks) == 0 || b.inside != nil || b.sep == '+' ||
		!a.exact || a.inexact || a.inside != nil || b.n > a.n || b.n == 0 || !a.labelled() && len(a.remarks) > 0 {
		return items
	}
	a.remarks = append(a.remarks, span{b.quantity[0].start, b.remarks[len(b.remarks)-1].end})
	a.said = a.said.And(b.said).And(partOfWhole)
	return items[:n-1]
}

// bareNumber: an exact number and nothing else.
func (it *item) bareNumber() bool {
	return it.exact && !it.inexact && !it.labelled() && len(it.remarks) == 0 && it.inside == nil && it.said.State == reading.Fair
}

// sumOf adds up items that each have a label and an exact number.
func sumOf(items []item) (int, bool) {
	sum := 0
	for i := range items {
		it := &items[i]
		if !it.exact || it.inexact || !it.labelled() || it.sign != nil || it.inside != nil {
			return 0, false
		}
		sum += it.n
	}
	return sum, len(items) > 0
}

var partOfWhole = reading.QueryOf("part-of-whole", "The numbers behind the first were taken to be a part of it. Please check that they do not come on top of it.")

// gather joins items that speak of the same animals: a web and the larvae in
// it, adults and how many of them were female, larvae and how many of them
// were dead.
func gather(items []item) []item {
	for i := 0; i+1 < len(items); i++ {
		a, b := &items[i], &items[i+1]
		switch {
		case a.sign != nil && !a.counted() && a.inside == nil && b.sign == nil && b.stage == a.stage && b.sex == "" && a.stage != "":
			b.remarks = append(a.remarks, b.remarks...)
			items = slices.Delete(items, i, i+1)
			i--
		case a.counted() && a.inside == nil && !b.counted() && b.inside == nil && len(b.remarks) > 0 && b.stage == a.stage && b.stage != "" &&
			b.sex == "" && b.caste == "" && b.vitality == "" && b.sign == nil: // "1 larva, L3"
			a.remarks, a.said = append(a.remarks, b.remarks...), a.said.And(b.said)
			items = slices.Delete(items, i+1, i+2)
			i--
		case b.onlyWithin(a):
			within, sum := []item{}, 0
			j := i + 1
			for ; j < len(items) && items[j].onlyWithin(a) && sum+items[j].n <= a.n; j++ {
				part := items[j]
				a.said = a.said.And(part.said)
				part.said = reading.Verdict{}
				within, sum = append(within, part), sum+part.n
			}
			a.inside = &inside{items: within, ok: true}
			a.said = a.said.And(partOfWhole)
			items = slices.Delete(items, i+1, j)
		}
	}
	return items
}

// onlyWithin: b gives a smaller number and only says more of a's animals:
// "12 larvae, 2 dead", "5 ad, 3f".
func (b *item) onlyWithin(a *item) bool {
	plain := func(it *item) bool {
		return it.exact && !it.inexact && it.sign == nil && it.caste == "" && it.n > 0
	}
	if !plain(a) || !plain(b) || b.n > a.n || b.inside != nil || b.sep == '+' {
		return false
	}
	switch {
	case a.inside != nil:
		return false
	case b.vitality != "" && b.sex == "" && b.stage == "":
		return a.vitality == "" && a.labelled()
	case b.sex != "" && b.stage == "" && b.vitality == "":
		return a.stage == "adult" && a.sex == "" && a.vitality == ""
	}
	return false
}
