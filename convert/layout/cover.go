package layout

import (
	"regexp"
	"strings"
)

// coverWords say that the figures of a page are shares of the ground.
var coverWords = regexp.MustCompile(`(?i)(?:%|\bper ?cent(?:age)?) ?cover\b|\bcover (?:in|as) ?(?:%|per ?cent)|\bcover \(?%|\bcover ?%`)

// coverHeading is what such a figure is kept as.
const coverHeading = "% cover"

// findCover reports whether a line outside the table says that its figures are
// the cover of plants, and none of them is too great to be one.
func (b *block) findCover(p *page) {
	said := false
	for i := range p.rows {
		r := &p.rows[i]
		if c := r.single(); c >= 0 || r.n <= 3 {
			for c := range r.looks {
				said = said || r.looks[c] != 0 && len(r.cells[c].Text) < 200 && coverWords.MatchString(r.text(c))
			}
		}
	}
	for _, h := range b.heads { // the corner of the table
		said = said || h.first >= 0 && coverWords.MatchString(h.text(h.first))
	}
	if !said {
		return
	}
	for i := range b.sample {
		for j := range b.axis.cols {
			if n, ok := isInt(b.sample[i].text(b.axis.cols[j].col)); ok && n > 100 && b.axis.cols[j].left == "" {
				return
			}
		}
	}
	b.cover = true
}

// asCover keeps a figure as the cover that it is.
func (v *Value) asCover() {
	if strings.ContainsAny(v.Text, "0123456789") {
		v.Meaning, v.Heading = Measurement, coverHeading
	}
}
