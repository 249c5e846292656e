package tally

import (
	"strings"

	"fieldfare/convert/reading"
)

// article: the word is the "a" of "a male".
func (p *parser) article(i int) bool {
	t := p.list[i]
	if w := p.s[t.start:t.end]; w != "a" && w != "A" || !p.cur.empty() || p.lead {
		return false
	}
	switch p.peek(i + 1) {
	case sex, stage, caste, vitality, sign, unit, remark, unknown, dozen, pair:
		return true
	}
	return false
}

// labelled reads a word that says what was counted, unless here it means
// something else.
func (p *parser) labelled(i int) {
	t, cur := p.list[i], &p.cur
	if p.article(i) {
		cur.n, cur.exact = 1, true
		cur.addQuantity(p.s, t)
		return
	}
	if t.kind == sex && t.short && p.peek(i+1) == unknown && strings.HasPrefix(p.s[t.end:], ".") {
		cur.addRemark(p.s, t) // "1 f. nigra": a form
		cur.free = true
		cur.doubt(reading.QueryOf("words-beside-count", "The words after “f.” were taken to be the name of a form, not a sex. Please check."))
		return
	}
	if t.short && t.text == "pupa" && p.peek(i+1) == open && cur.empty() && len(p.items) == 0 {
		cur.present = true // "P (3)"
		return
	}
	if next := p.peek(i + 1); p.s[t.start:t.end] == "n" && cur.empty() && (next == glue || next == number) {
		return // "n=12"
	}
	p.label(t)
}

// unit reads a word for the things counted ("3 moths"); some of them say that
// the number is of all.
func (p *parser) unit(i int) {
	t, cur := p.list[i], &p.cur
	if cur.zero && p.peek(i+1) == number && !cur.labelled() {
		cur.zero = false
	}
	if t.n == 1 {
		if cur.labelled() && cur.counted() && p.peek(i+1) == number {
			p.flush()
		}
		p.cur.total = true
	}
}

// label gives the item a sex, stage, caste, vitality or sign.
func (p *parser) label(t token) {
	cur := &p.cur
	if p.lead && cur.labelled() && cur.counted() || clash(cur, t) {
		if !p.lead && cur.counted() && clash(cur, t) {
			p.bad = true
			return
		}
		p.flush()
		cur = &p.cur
	}
	switch t.kind {
	case sex:
		cur.sex = t.text
	case stage:
		cur.stage = t.text
	case caste:
		cur.caste = t.text
		if implied := casteSex(t.text); implied != "" {
			cur.sex = implied
		}
	case vitality:
		cur.vitality = t.text
	case sign:
		cur.sign = &span{t.start, t.end}
		if cur.stage == "" {
			cur.stage = t.meaning.stage
		}
		cur.addRemark(p.s, t)
	}
	if t.keep {
		cur.addRemark(p.s, t)
		cur.unsexed = cur.unsexed || t.kind == sex
	}
	if cur.sex != "" && cur.stage == "egg" {
		cur.doubt(reading.QueryOf("sex-of-egg", "An egg has no sex that could be seen. Please check what was counted."))
	}
	if t.doubt {
		p.bad = p.bad || p.lead // "l2" is as likely 12
		cur.doubt(reading.QueryOf("short-label", "The letters behind the count could mean more than one thing. Please check the sex or life stage."))
	}
}

// clash tells whether the item already says something else of the same kind.
func clash(it *item, t token) bool {
	switch t.kind {
	case sex:
		return it.sex != "" && t.text != "" && it.sex != t.text
	case stage:
		return it.stage != "" && it.stage != t.text
	case caste:
		return it.caste != ""
	case vitality:
		return it.vitality != "" && it.vitality != t.text
	}
	return it.sign != nil
}
