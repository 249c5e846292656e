package layout

import (
	"regexp"
	"strings"
)

// bandKey explains the letters that stand for counts: "A=1-9, B=10-99, D=1000+".
var bandKey = regexp.MustCompile(`\b([A-Z])\s*[=:]\s*([0-9]+(?:,[0-9]{3})*(?:\s*(?:-|–|to)\s*[0-9]+(?:,[0-9]{3})*|\+)?)`)

// findBands gathers what a page says of such letters: two of them at least in
// one line, the cells of a row taken together.
func (p *page) findBands() {
	p.bands = map[string]string{}
	for i := range p.rows {
		r := &p.rows[i]
		found := map[string]string{}
		for c := range r.looks {
			if r.looks[c] == 0 || len(r.cells[c].Text) > 400 {
				continue
			}
			for _, m := range bandKey.FindAllStringSubmatch(r.text(c), -1) {
				found[m[1]] = m[2]
			}
		}
		if len(found) >= 2 {
			for k, v := range found {
				p.bands[k] = v
			}
		}
	}
}

// saysBands reports whether a text does nothing but explain such letters.
func (p *page) saysBands(text string) bool {
	return len(p.bands) > 0 && strings.Trim(bandKey.ReplaceAllString(text, ""), " ;,.") == "" && text != ""
}

// countBands puts the range in place of the letter.
func (p *page) countBands(d *Draft) {
	for i := range d.Values {
		v := &d.Values[i]
		if v.Meaning != Count {
			continue
		}
		if said, ok := p.bands[v.Text]; ok {
			v.Verbatim, v.Text = v.Text, said
		}
	}
}
