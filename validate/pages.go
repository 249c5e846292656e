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

func (p *pages) add(e *Entry) {
	for len(p.records) <= e.Sheet {
		p.records, p.named = append(p.records, 0), append(p.named, 0)
	}
	p.records[e.Sheet]++
	if e.IdentifiedBy != "" {
		p.named[e.Sheet]++
	}
}

func (p *pages) find(e *Entry) (reading.Finding, bool) {
	if e.IdentifiedBy != "" || e.Sheet >= len(p.records) {
		return reading.Finding{}, false
	}
	n, named := p.records[e.Sheet], p.named[e.Sheet]
	if named < leastNamed || named*10 < n*9 {
		return reading.Finding{}, false
	}
	return queryOf(aboutRecord, written(nameOf(e.Occurrence), siteOf(e.Occurrence, e.Facts), dayOf(e), "no determiner"), "determiner-missing", fmt.Sprintf(
		"Nobody is named as having determined this %s, though %d of %d records of the page name somebody. Add who named it.", nameOf(e.Occurrence), named, n)), true
}
