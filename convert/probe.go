package convert

import (
	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
	"fieldfare/gridref"
)

// probe tells the layout what a text looks like, by the readers and lists of
// this run.
type probe struct {
	s     *settings
	names *taxa.Matcher
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
	return r.Taxon != nil && r.State == reading.Fair
}

func (p *probe) KnownPlace(text string) bool { return p.s.places.Find(text).Place != nil }

func (p *probe) KnownPerson(string) bool { return false }

func (p *probe) SameTaxon(a, b string) (same, known bool) {
	x := p.names.Match(taxa.Written{Name: a}, taxa.Context{})
	y := p.names.Match(taxa.Written{Name: b}, taxa.Context{})
	if x.Taxon == nil || y.Taxon == nil {
		return false, false
	}
	return x.Taxon == y.Taxon, true
}
