package convert

import (
	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
	"fieldfare/gridref"
)

// probe tells the layout what a text looks like, by the readers and lists of
// this run. In passing it learns which taxa a page has, by which names that
// several groups share are decided.
type probe struct {
	s     *settings
	names *taxa.Matcher
	taxa  map[*taxa.Taxon]bool
}

func newProbe(s *settings) *probe {
	return &probe{s: s, names: s.taxa.NewMatcher(), taxa: map[*taxa.Taxon]bool{}}
}

func (p *probe) LooksLikeDate(text string) bool {
	return when.Read(text, p.s.dateOptions).State < reading.Held
}

func (p *probe) LooksLikeGridRef(text string) bool {
	r, err := gridref.Parse(text)
	return err == nil && r.Doubt.Code == "" && !r.Geographic()
}

func (p *probe) LooksLikeCount(string) bool { return false }

func (p *probe) KnownTaxon(text string) bool {
	r := p.names.Match(taxa.Written{Name: text}, taxa.Context{})
	if r.Taxon == nil || r.State != reading.Fair {
		return false
	}
	p.taxa[r.Taxon] = true
	return true
}

// clearMajority is the share of a page's taxa that must be of one group before
// the page is taken to be about it, and leastTaxa how many taxa it must have
// (common practice, no source).
const (
	clearMajority = 0.8
	leastTaxa     = 4
)

// group returns what the page is about, in the list's own word; empty where
// it is about several groups or there is too little to tell.
func (p *probe) group() string {
	counts, all := map[string]int{}, 0
	for t := range p.taxa {
		if t.Group != "" {
			counts[t.Group]++
			all++
		}
	}
	for group, n := range counts {
		if all >= leastTaxa && float64(n) >= clearMajority*float64(all) {
			return group
		}
	}
	return ""
}

func (p *probe) KnownPlace(text string) bool { return p.s.places.Find(text).Place != nil }

func (p *probe) KnownPerson(text string) bool { return p.s.people.Knows(text) }

func (p *probe) SameTaxon(a, b string) (same, known bool) {
	x := p.names.Match(taxa.Written{Name: a}, taxa.Context{})
	y := p.names.Match(taxa.Written{Name: b}, taxa.Context{})
	if x.Taxon == nil || y.Taxon == nil {
		return false, false
	}
	return x.Taxon == y.Taxon, true
}
