package tally

import (
	"fmt"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
)

// resolve turns items into parts, with what has to be said about them. No
// parts and no verdict mean that the cell was not understood.
func resolve(parts []Part, s string, items []item) ([]Part, reading.Verdict, bool) {
	var said reading.Verdict
	from := len(parts)
	for i := range items {
		items[i].takeBrackets()
	}
	items, v := settleTotal(s, items)
	said = said.And(v)
	items = mention(items)
	v, ok := together(s, items)
	if !ok {
		return parts, v, false
	}
	said = said.And(v)
	items = drop(items)
	if len(items) == 1 && items[0].mating && items[0].exact && items[0].n == 1 {
		said = said.And(reading.QueryOf("one-of-a-pair", "One alone cannot be mating. Please say how many there were."))
	}
	items = behindLabel(gather(items))
	for i := range items {
		it := &items[i]
		if it.nothing() && (it.said.State != reading.Fair || it.inside != nil && it.zero) {
			return parts, reading.Verdict{}, false // "0?", "nil (1 outside)"
		}
		if it.inside != nil && i > 0 && i == len(items)-1 && !it.inside.only(it.n) {
			said = said.And(reading.QueryOf("brackets-of-whom", "It is not certain whether the words in brackets are about all that were counted, or the last only. Please check."))
		}
		said = said.And(it.said)
		var v reading.Verdict
		var ok bool
		if parts, v, ok = it.parts(parts, s); !ok {
			return parts[:from], v, false
		}
		said = said.And(v)
	}
	if len(parts) == from {
		return parts, reading.Verdict{}, false
	}
	parts, merged := merge(parts, from)
	if merged {
		said = said.And(reading.QueryOf("counts-added", fmt.Sprintf("“%s” gives several counts of the same kind; they were added up. Please check.", s)))
	}
	return parts, said, true
}

// together looks at the items side by side. A count that does not say of
// what, beside one that does, may be the sum of the others or stand beside
// them.
func together(s string, items []item) (reading.Verdict, bool) {
	bare, remarked, counted := 0, 0, 0
	added := true
	for i := range items {
		it := &items[i]
		if it.counted() {
			counted++
			switch {
			case it.labelled() || it.unsexed:
			case len(it.remarks) > 0:
				remarked++
			default:
				bare++
			}
		}
		added = added && (i == 0 || it.sep == '+')
	}
	switch {
	case counted < 2 || bare == 0 && (remarked == 0 || remarked == counted):
		return reading.Verdict{}, true
	case added && bare == counted:
		return reading.Verdict{}, true // merge says so
	case added:
		return reading.QueryOf("counts-added", "The counts joined by a plus sign were added up. Please check."), true
	}
	return sumOrPart(s, items), false
}

// sumOrPart holds a count that may be the sum of those beside it or not. It
// is empty where the numbers do not allow both.
func sumOrPart(s string, items []item) reading.Verdict {
	a := items[0]
	rest, ok := sumOf(items[1:])
	if !ok || !a.bareNumber() || rest > a.n {
		return reading.Verdict{}
	}
	both := strconv.Itoa(a.n + rest)
	return reading.HeldOf("sum-or-part", fmt.Sprintf("“%s” could mean %d in all, or %s. Please say how many there were.", s, a.n, both), strconv.Itoa(a.n), both)
}

// drop leaves out what was not seen beside something that was, and joins
// labels that share a count or have none.
func drop(items []item) []item {
	kept := items[:0:0]
	for _, it := range items {
		if it.nothing() && it.said.State == reading.Fair && it.inside == nil {
			continue
		}
		if n := len(kept); n > 0 && kept[n-1].onlyPresent() {
			it.remarks = append(kept[n-1].remarks, it.remarks...)
			it.said = it.said.And(kept[n-1].said)
			kept = kept[:n-1]
		} else if n > 0 && it.onlyPresent() {
			kept[n-1].said = kept[n-1].said.And(it.said)
			continue
		}
		if len(kept) == 1 && it.all && !it.counted() && it.inside == nil && kept[0].take(&it) {
			continue
		}
		if n := len(kept); n > 0 && !it.counted() && it.labelled() && (it.sep == '/' || it.sep == '&' && kept[n-1].counted() && sameKind(&it, &kept[n-1])) {
			shareLabel(&kept[n-1], &it)
			continue
		}
		kept = append(kept, it)
	}
	if len(kept) == 0 {
		return items[:1]
	}
	return kept
}

// behindLabel gives a count behind a comma the label before it: "larvae, 3",
// "mines, many".
func behindLabel(items []item) []item {
	if len(items) != 2 || items[1].sep == '+' {
		return items
	}
	label, count := &items[0], &items[1]
	if label.counted() || !label.labelled() || label.inside != nil || !count.counted() || count.labelled() || count.inside != nil || !count.take(label) {
		return items
	}
	return items[1:]
}

// onlyPresent: a tick or "seen", with nothing counted.
func (it *item) onlyPresent() bool {
	return it.present && !it.counted() && !it.labelled() && it.inside == nil
}

// take gives the labels of o to it, where they do not contradict its own.
func (it *item) take(o *item) bool {
	pairs := [...]struct{ to, from *string }{{&it.sex, &o.sex}, {&it.stage, &o.stage}, {&it.caste, &o.caste}, {&it.vitality, &o.vitality}}
	for _, t := range pairs {
		if *t.to != "" && *t.from != "" && *t.to != *t.from {
			return false
		}
	}
	for _, t := range pairs {
		if *t.to == "" {
			*t.to = *t.from
		}
	}
	if o.sign != nil {
		it.sign = o.sign
	}
	it.remarks = append(it.remarks, o.remarks...)
	it.said = it.said.And(o.said)
	return true
}

// takeBrackets gives a bare count the labels in its brackets: "1 (f), 2 (m)".
func (it *item) takeBrackets() {
	if it.inside == nil || !it.inside.ok || len(it.inside.items) != 1 || it.labelled() || !it.counted() {
		return
	}
	if q := it.inside.items[0]; !q.counted() && q.labelled() && !q.zero && q.inside == nil && it.take(&q) {
		it.inside = nil
	}
}

func (it *item) nothing() bool { return it.zero || it.exact && !it.inexact && it.n == 0 }

func sameKind(a, b *item) bool {
	return a.sex != "" && b.sex != "" || a.stage != "" && b.stage != "" && a.sex == b.sex
}

// shareLabel makes one item of two labels of which it is not said how many
// each has.
func shareLabel(it, o *item) {
	if it.sex != o.sex {
		it.sex = ""
	}
	if it.stage != o.stage {
		it.stage = ""
	}
	if it.caste != o.caste {
		it.caste = ""
	}
	it.shared = true
	it.said = it.said.And(o.said).And(reading.QueryOf("shared-label", "It is not said how many there were of each sex or stage. Please say if you know."))
}

// parts appends what the item stands for.
func (it *item) parts(parts []Part, s string) ([]Part, reading.Verdict, bool) {
	if it.inside != nil {
		return it.breakdown(parts, s)
	}
	p, v, ok := it.part(s)
	if !ok {
		return parts, v, false
	}
	return append(parts, p), v, true
}

// part returns the one part that an item without brackets stands for.
func (it *item) part(s string) (Part, reading.Verdict, bool) {
	p := Part{Sex: it.sex, LifeStage: it.stage, Caste: it.caste, Vitality: it.vitality, Remarks: it.remark(s)}
	switch {
	case it.nothing():
		return p, reading.Verdict{}, true
	case it.inexact:
		p.OrganismQuantity, p.OrganismQuantityType = strings.TrimSuffix(words(s, it.quantity), " of"), IndividualsType
		if !hasCount(p.OrganismQuantity) {
			return p, reading.Verdict{}, false
		}
	case it.exact && it.sign != nil:
		p.OrganismQuantity = strconv.Itoa(it.n)
	case it.exact:
		v, ok := plausible(it.n, s)
		if !ok {
			return p, v, false
		}
		p.IndividualCount = strconv.Itoa(it.n)
		return p, v, true
	}
	if it.sign != nil && it.counted() {
		p.OrganismQuantityType = strings.ToLower(s[it.sign.start:it.sign.end])
	}
	return p, reading.Verdict{}, true
}

// remark joins the item's remarks as they were written.
func (it *item) remark(s string) string {
	if it.shared {
		return s
	}
	return words(s, it.remarks)
}

// hasCount guards against words that only qualify a number ("about").
func hasCount(q string) bool {
	list, ok := lex(q)
	if !ok {
		return false
	}
	for _, t := range list {
		switch t.kind {
		case number, vague, dozen, pair:
			return true
		}
	}
	return false
}

// merge adds up parts that are alike and have exact counts.
func merge(parts []Part, from int) ([]Part, bool) {
	merged := false
	for i := from; i < len(parts); i++ {
		for j := i + 1; j < len(parts); {
			a, b := &parts[i], &parts[j]
			if a.IndividualCount == "" || b.IndividualCount == "" || a.Sex != b.Sex || a.LifeStage != b.LifeStage || a.Caste != b.Caste || a.Vitality != b.Vitality || a.Remarks != b.Remarks {
				j++
				continue
			}
			n, _ := digits(a.IndividualCount)
			m, _ := digits(b.IndividualCount)
			a.IndividualCount = strconv.Itoa(n + m)
			parts = append(parts[:j], parts[j+1:]...)
			merged = true
		}
	}
	return parts, merged
}
