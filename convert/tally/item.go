package tally

import (
	"strings"

	"fieldfare/convert/reading"
)

// item is one thing counted: what becomes a Part, and what it was made from.
type item struct {
	n        int
	exact    bool // n is an exact number
	quantity []span
	inexact  bool // the quantity is kept in words
	lead     bool // the label stood before the number ("m 2")
	sep      byte // the sign before the item: , + / & or 0

	sex, stage, caste, vitality string
	sign                        *span // what was counted is a sign, as written
	zero                        bool
	present                     bool
	remarks                     []span
	free                        bool // a remark runs to the next separator
	unsexed                     bool // it was said that the sex is not known
	mating                      bool // takes two
	all                         bool // its labels are those of all that were counted
	total                       bool // it was said to be the sum
	shared                      bool // labels that share one count: the whole cell is kept
	said                        reading.Verdict
	inside                      *inside
}

// span is a stretch of the cell's text.
type span struct{ start, end int }

// inside is what stands in brackets behind an item, or after "of which".
type inside struct {
	items []item
	text  span
	ok    bool // it could be read
	bare  bool // brackets that do not say "of which"
}

func (it *item) empty() bool {
	return !it.counted() && !it.labelled() && !it.zero && !it.present && len(it.remarks) == 0 && it.inside == nil
}

// counted tells whether a quantity was given, exact or not.
func (it *item) counted() bool { return it.exact || it.inexact || len(it.quantity) > 0 }

// labelled tells whether the item says what was counted.
func (it *item) labelled() bool {
	return it.sex != "" || it.stage != "" || it.caste != "" || it.vitality != "" || it.sign != nil
}

func (it *item) doubt(v reading.Verdict) { it.said = it.said.And(v) }

// addQuantity notes a stretch of the quantity; stretches with nothing between
// them become one.
func (it *item) addQuantity(s string, t token) { it.quantity = extend(s, it.quantity, t) }

// multiply reads a word such as "dozen", which multiplies the number before it
// or is a number itself.
func (it *item) multiply(s string, t token) {
	n := 1
	if it.exact {
		n = it.n
	}
	it.n, it.exact = n*t.n, true
	it.addQuantity(s, t)
}

func (it *item) addRemark(s string, t token) { it.remarks = extend(s, it.remarks, t) }

func extend(s string, list []span, t token) []span {
	if n := len(list); n > 0 && strings.Trim(s[list[n-1].end:t.start], " .'’,-:") == "" {
		list[n-1].end = t.end
		return list
	}
	return append(list, span{t.start, t.end})
}

// words joins the stretches in order, each as written, with the full stop of
// an abbreviation.
func words(s string, list []span) string {
	var b strings.Builder
	for i, p := range list {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(s[p.start:p.end])
		if p.end < len(s) && s[p.end] == '.' && p.end > p.start && !isDigit(s[p.end-1]) {
			b.WriteByte('.')
		}
	}
	return b.String()
}
