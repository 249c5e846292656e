package validate

import (
	"fmt"

	"fieldfare/convert/reading"
)

// pages finds records without a determiner on pages that name one nearly
// everywhere: on nine records of ten, and at least on twenty (common practice,
// no source).
type pages struct {
	records, named []int32 // by sheet
}

const leastNamed = 20

func (p *pages) add(g *Glance) {
	for len(p.records) <= g.sheet {
		p.records, p.named = append(p.records, 0), append(p.named, 0)
	}
	p.records[g.sheet]++
	if g.named {
		p.named[g.sheet]++
	}
}

// concerns tells whether the record stands without a determiner on such a page.
func (p *pages) concerns(e *Entry) bool {
	if e.IdentifiedBy != "" || e.Sheet >= len(p.records) {
		return false
	}
	n, named := p.records[e.Sheet], p.named[e.Sheet]
	return named >= leastNamed && named*10 >= n*9
}

func (p *pages) find(e *Entry) (reading.Finding, bool) {
	if !p.concerns(e) {
		return reading.Finding{}, false
	}
	n, named := p.records[e.Sheet], p.named[e.Sheet]
	return queryOf(aboutRecord, written(nameOf(e.Occurrence), siteOf(e.Occurrence, e.Facts), dayOf(e), "no determiner"), "determiner-missing", fmt.Sprintf(
		"Nobody is named as having determined this %s, though %d of %d records of the page name somebody. Add who named it.", nameOf(e.Occurrence), named, n)), true
}
