package layout

import (
	"regexp"
	"strings"
)

// legendPart is one entry of a key to letters or numbers: "Trap A = Osier Bed",
// "R = Robinson", "Key: 1 = the bank".
var legendPart = regexp.MustCompile(`(?i)^(?:(?:key|legend|codes?|traps?|sites?|stations?|sections?|where)\s*:?\s+)?(?:(?:trap|site|station|section|plot|pond|box|transect|ditch|point|stop|ride)\s+)?(?-i:([A-Z][A-Z0-9]{0,3}|[0-9]{1,2}))\s*[=:]\s*(\pL[^=:]{2,60})$`)

// legendMeanings are those whose letters a key of the page may spell out.
var legendMeanings = map[Meaning]bool{Site: true, Method: true, Habitat: true, Taxon: true, TaxonNumber: true}

// findLegend gathers what a line of the page says that letters or numbers stand
// for: two of them at least.
func (p *page) findLegend() {
	p.legend = map[string]string{}
	for i := range p.rows {
		r := &p.rows[i]
		for c := range r.looks {
			if text := r.text(c); r.looks[c] != 0 && len(text) < 400 && strings.ContainsAny(text, "=:") {
				p.takeLegend(text)
			}
		}
	}
}

func (p *page) takeLegend(text string) {
	found := map[string]string{}
	for part := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ';' || r == ',' || r == '\n' }) {
		m := legendPart.FindStringSubmatch(trim(strings.Trim(trim(part), ".()")))
		if m == nil || spells(m[1], m[2]) && len(m[1]) > 1 {
			continue
		}
		found[m[1]] = trim(strings.TrimPrefix(m[2], "the "))
	}
	if len(found) < 2 {
		return
	}
	for k, v := range found {
		p.legend[k] = v
	}
}

// spelt returns what a letter stands for, where the page says so.
func (p *page) spelt(text string) (string, bool) {
	if len(p.legend) == 0 || len(text) > 12 {
		return "", false
	}
	if i := strings.LastIndexByte(text, ' '); i > 0 && strings.EqualFold(text[:i], "trap") {
		text = text[i+1:]
	}
	said, ok := p.legend[text]
	return said, ok
}

// spellLegend puts the words in place of letters that the page explains.
func (p *page) spellLegend(d *Draft) {
	for i := range d.Values {
		v := &d.Values[i]
		if !legendMeanings[v.Meaning] && !(v.Meaning == Remarks && v.Heading == "trap") {
			continue
		}
		if said, ok := p.spelt(v.Text); ok {
			if v.Verbatim == "" {
				v.Verbatim = v.Text
			}
			v.Text = said
			if v.Meaning == TaxonNumber {
				v.Meaning = Taxon
			}
			if v.Meaning == Remarks && looksPlace(said) {
				v.Meaning = Site
			}
		}
	}
}

// speltStats sums up a column as if its letters were written out, where the
// page explains all of them.
func (p *page) speltStats(st *stats) *stats {
	var out stats
	for t, n := range st.distinct {
		said, ok := p.spelt(t)
		if !ok {
			return st
		}
		for range n {
			out.add(said, p.eyes.lookText(said))
		}
	}
	out.blank, out.ditto = st.blank, st.ditto
	if out.n == 0 {
		return st
	}
	return &out
}
