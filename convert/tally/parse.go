package tally

import (
	"strings"

	"fieldfare/convert/reading"
)

// parser puts tokens together to items, reading from left to right.
type parser struct {
	s     string
	list  []token
	items []item
	cur   item
	// lead: labels stand before their numbers in this cell ("m 2 f 1").
	lead bool
	sep  byte
	bad  bool
}

// parse reads tokens as a list of items. It returns false where they make no
// sense together.
func parse(s string, list []token) ([]item, bool) {
	p := parser{s: s, list: list, lead: labelsLead(list)}
	for i := 0; i < len(list) && !p.bad; {
		i = p.step(i)
	}
	p.flush()
	return p.items, !p.bad && len(p.items) > 0
}

// labelsLead tells whether the cell begins with a label and ends with a number.
func labelsLead(list []token) bool {
	first, last := unknown, unknown
	for _, t := range list {
		if t.kind == open {
			break
		}
		switch t.kind {
		case sex, stage, caste, sign, number:
			if first == unknown {
				first = t.kind
			}
			last = t.kind
		}
	}
	return first != unknown && first != number && last == number
}

func (p *parser) peek(i int) kind {
	if i >= 0 && i < len(p.list) {
		return p.list[i].kind
	}
	return skip
}

// flush ends the current item. A remark alone belongs to the item before it.
func (p *parser) flush() {
	it := p.cur
	p.cur = item{}
	if it.empty() {
		return
	}
	if it.inside != nil && !it.counted() && !it.labelled() && !it.present && !it.zero {
		p.bad = true // brackets about nothing
		return
	}
	it.sep, p.sep = p.sep, 0
	onlyRemark := !it.counted() && !it.labelled() && !it.zero && !it.present && it.inside == nil
	if n := len(p.items); onlyRemark && n > 0 {
		last := &p.items[n-1]
		last.remarks = append(last.remarks, it.remarks...)
		last.said = last.said.And(it.said)
		return
	}
	p.items = append(p.items, it)
}

// step takes the token at i and returns the next one to take.
func (p *parser) step(i int) int {
	t := p.list[i]
	cur := &p.cur
	if cur.free && t.kind != sep && t.kind != open && t.kind != shut {
		p.addFree(t)
		return i + 1
	}
	switch t.kind {
	case number:
		return p.number(i)
	case dozen:
		cur.multiply(p.s, t)
	case pair:
		p.bad = p.bad || cur.labelled() && cur.exact
		cur.multiply(p.s, t)
		cur.addRemark(p.s, t)
	case vague:
		if cur.counted() && cur.labelled() {
			p.flush()
		}
		p.cur.inexact = true
		p.cur.addQuantity(p.s, t)
	case approx:
		return p.approx(i)
	case sex, stage, caste, vitality, sign:
		p.labelled(i)
	case unit:
		p.unit(i)
	case remark:
		cur.addRemark(p.s, t)
		cur.mating = cur.mating || t.n == 2
		cur.all = cur.all || t.n == 3
	case place:
		p.bad = p.bad || cur.empty() && len(p.items) == 0 // of what?
		cur.addRemark(p.s, t)
		cur.free = true
	case presence:
		cur.present = true
	case none:
		p.none(i)
	case includes:
		return p.includes(i)
	case open:
		return p.brackets(i)
	case sep:
		return p.separator(i)
	case dash:
		return p.dash(i)
	case to:
		return p.to(i)
	case question:
		cur.doubt(reading.QueryOf("doubtful-count", "The question mark says that the recorder was not sure. Please check."))
		cur.addRemark(p.s, t)
		cur.unsexed = cur.unsexed || cur.exact && !cur.labelled() && len(p.items) > 0 // "6m 3f 1?"
	case times:
		if !(p.peek(i+1) == number || p.peek(i-1) == number) {
			p.bad = true
		}
	case glue:
		return p.glue(i)
	case other:
		if word := strings.ToLower(p.s[t.start:t.end]); word == "min" && p.peek(i+1) == number {
			p.list[i].kind = approx
			return p.approx(i)
		}
		p.bad = true
	default:
		p.unknown(t)
	}
	return i + 1
}

// none reads a word for nothing, which may also be short for number.
func (p *parser) none(i int) {
	cur := &p.cur
	if p.peek(i+1) == number || p.peek(i+1) == glue {
		return // "no. 3", "no: 3"
	}
	if cur.counted() && cur.exact && !cur.labelled() && p.peek(i+1) == skip {
		return // "3 no."
	}
	if !cur.empty() {
		p.flush()
	}
	p.cur.zero = true
}

// addFree adds a token to a remark in the recorder's own words. A number in
// it may be a count after all.
func (p *parser) addFree(t token) {
	p.cur.addRemark(p.s, t)
	if t.kind == number || t.kind == question {
		p.cur.doubt(reading.QueryOf("number-in-remark", "There is a number or a question mark in the words beside the count. Please check that the count is complete."))
	}
}

// unknown keeps a word that is not known as a remark, where there is something
// to remark on; it is then asked about.
func (p *parser) unknown(t token) {
	if !p.cur.counted() && !p.cur.labelled() && !p.cur.present && (len(p.items) == 0 || p.sep == 0) {
		p.bad = true
		return
	}
	if p.cur.counted() && !p.cur.labelled() && t.end-t.start == 1 {
		p.bad = true // "3 d": an abbreviation that is not known
		return
	}
	p.cur.addRemark(p.s, t)
	p.cur.free = true
	p.cur.doubt(reading.QueryOf("words-beside-count", "Some words beside the count are not known, and are kept as a remark. Please check that they do not change it."))
}

func (p *parser) number(i int) int {
	t := p.list[i]
	cur := &p.cur
	switch {
	case p.lead && cur.labelled() && !cur.counted():
		cur.lead = true
		if i > 0 && p.list[i-1].end == t.start && p.list[i-1].short && p.list[i-1].text == "larva" && t.n <= 6 {
			cur.doubt(reading.QueryOf("short-label", "An L with a figure could be a number of larvae or a larva's age. Please check."))
		}
	case p.lead && cur.labelled() && cur.counted():
		p.bad = true
	case cur.labelled() && (cur.counted() || cur.zero), cur.counted() && cur.inside != nil:
		p.flush()
	case cur.labelled() && !cur.counted():
		p.bad = true // "m 2 f": which number is whose?
	case cur.exact || cur.inexact && !onlyApprox(p.list[:i]):
		p.bad = true // two numbers side by side
	}
	cur = &p.cur
	cur.zero = false
	if len(cur.quantity) > 0 && !cur.inexact {
		p.bad = true
	}
	cur.n = t.n
	cur.exact = true
	cur.addQuantity(p.s, t)
	if t.doubt {
		cur.doubt(reading.QueryOf("round-number", "A number of hundreds or thousands in words may be a round one. Please check."))
	}
	return i + 1
}

// onlyApprox tells whether the last token only makes a number inexact.
func onlyApprox(list []token) bool {
	for len(list) > 0 && list[len(list)-1].kind == glue {
		list = list[:len(list)-1]
	}
	return len(list) > 0 && list[len(list)-1].kind == approx
}

func (p *parser) approx(i int) int {
	if p.cur.labelled() && p.cur.counted() && p.peek(i+1) == number {
		p.flush()
	}
	t := p.list[i]
	if t.doubt && p.cur.exact { // "2 prob. male"
		p.cur.doubt(reading.QueryOf("doubtful-count", "The recorder was not sure. Please check."))
		p.cur.addRemark(p.s, t)
		return i + 1
	}
	if t.doubt || p.cur.exact && (p.s[t.start] == '<' || p.s[t.start] == '>') {
		p.cur.doubt(reading.QueryOf("doubtful-count", "The recorder was not sure of the count. Please check."))
	}
	p.cur.inexact = true
	p.cur.addQuantity(p.s, t)
	return i + 1
}

// glue reads a colon or an equals sign: it joins a label to its number, or a
// sum to its parts ("3: 2m 1f", "2m + 1f = 3").
func (p *parser) glue(i int) int {
	cur := &p.cur
	switch {
	case cur.exact && !cur.inexact && !cur.labelled() && p.peek(i+1) == number && !p.lead:
		cur.total = true
		p.put(p.list[i+1:])
		if in := cur.inside; in == nil || !in.ok || !in.partsOfSum() {
			p.bad = true
		}
		return len(p.list)
	case cur.labelled() && cur.counted() && p.peek(i+1) == number && p.s[p.list[i].start] == '=':
		p.flush()
		p.cur.total = true
	}
	return i + 1
}

func (p *parser) dash(i int) int {
	switch {
	case p.cur.exact && !p.cur.labelled() && p.peek(i+1) == number && p.peek(i-1) == number:
		return p.rangeTo(i + 1)
	case p.cur.empty() && p.peek(i+1) == number:
		p.bad = true // a negative number
	case p.cur.exact && !p.cur.labelled() && p.peek(i+1) == skip:
		p.cur.doubt(reading.QueryOf("unfinished", "A dash stands behind the count, as if something were to follow. Please check."))
	}
	return i + 1 // a dash between words
}

// to joins two numbers to a range, or parts two labels ("males to females").
func (p *parser) to(i int) int {
	cur := &p.cur
	switch next := p.peek(i + 1); {
	case cur.exact && next == number && !cur.labelled():
		return p.rangeTo(i + 1)
	case cur.labelled() && (next == sex || next == stage):
		p.flush()
		p.sep = '/'
	default:
		p.bad = true
	}
	return i + 1
}

// rangeTo joins the number at i to the one before it.
func (p *parser) rangeTo(i int) int {
	t := p.list[i]
	cur := &p.cur
	if t.n <= cur.n {
		switch p.peek(i + 1) {
		case sex, stage, caste, vitality:
			p.bad = true // "3 - 1f"
		}
		cur.doubt(reading.QueryOf("reversed-range", "The second number is not larger than the first. Please check."))
	}
	if cur.n == 0 {
		cur.doubt(reading.QueryOf("range-from-nought", "The range begins with nought, so there may have been none. Please check that it was seen."))
	}
	cur.inexact = true
	cur.quantity[len(cur.quantity)-1].end = t.end
	return i + 1
}

func (p *parser) separator(i int) int {
	t := p.list[i]
	next := p.peek(i + 1)
	if p.between(i) {
		return p.rangeTo(i + 1)
	}
	if p.s[t.start] == '+' && p.quantityEnds(i) && next != number && p.cur.counted() && !p.cur.labelled() &&
		!(p.list[i-1].end < t.start && (next == remark || next == place || next == unknown)) { // "1 + photo"
		p.cur.inexact = true
		p.cur.addQuantity(p.s, t)
		return i + 1
	}
	if !p.cur.empty() {
		p.flush()
		p.sep = separatorSign(p.s[t.start])
	} else if p.s[t.start] == '+' && len(p.items) == 0 && next == number {
		p.cur.doubt(reading.QueryOf("counts-added", "The plus sign before the count says that it comes on top of another. Please check."))
	}
	return i + 1
}

// quantityEnds tells whether a number, or words for one, stand before i.
func (p *parser) quantityEnds(i int) bool {
	switch p.peek(i - 1) {
	case number, dozen, vague:
		return true
	}
	return false
}

// between: the "and" at i joins two numbers, as in "between 5 and 10".
func (p *parser) between(i int) bool {
	t := p.list[i]
	q := p.cur.quantity
	return p.cur.exact && p.peek(i+1) == number && len(q) == 1 && t.end-t.start == len("and") &&
		strings.HasPrefix(strings.ToLower(p.s[q[0].start:q[0].end]), "between ")
}

func separatorSign(c byte) byte {
	switch c {
	case ',', ';', '\n':
		return ','
	case '+', '/':
		return c
	}
	return '&'
}

// brackets reads what stands in brackets as a list of its own.
func (p *parser) brackets(i int) int {
	depth, j := 1, i+1
	for ; j < len(p.list) && depth > 0; j++ {
		switch p.list[j].kind {
		case open:
			depth++
		case shut:
			depth--
		}
	}
	end := j
	if depth == 0 {
		end--
	}
	p.put(p.list[i+1 : end])
	if in := p.cur.inside; in != nil {
		in.bare = p.peek(i+1) != includes
	}
	return j
}

// includes reads all that follows as a part of the item before it.
func (p *parser) includes(i int) int {
	if p.cur.empty() && len(p.items) == 0 {
		return i + 1 // "(of which 3 f)"
	}
	p.put(p.list[i+1:])
	if !p.cur.exact {
		p.bad = true
	}
	if p.cur.inside == nil || !p.cur.inside.ok {
		p.bad = true
	}
	return len(p.list)
}

func (p *parser) put(list []token) {
	if len(list) == 0 {
		return
	}
	if p.cur.empty() && len(p.items) > 0 {
		p.cur, p.items = p.items[len(p.items)-1], p.items[:len(p.items)-1]
		p.sep = p.cur.sep
	}
	if p.cur.inside != nil {
		p.bad = true
		return
	}
	items, ok := parse(p.s, list)
	p.cur.inside = &inside{items: items, text: span{list[0].start, list[len(list)-1].end}, ok: ok}
	p.cur.free = false
}
