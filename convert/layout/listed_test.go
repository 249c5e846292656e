package layout

import (
	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
	"fieldfare/gridref"
)

// listed is the Probe of a run with lists: what it says of a text is what the
// readers of names, dates and references say.
type listed struct{ names *taxa.Matcher }

func newListed() listed { return listed{taxa.NewIndex(taxa.Starter()).NewMatcher()} }

func (l listed) LooksLikeDate(text string) bool {
	return when.Read(text, when.Options{}).State < reading.Held
}

func (l listed) LooksLikeGridRef(text string) bool {
	r, err := gridref.Parse(text)
	return err == nil && r.Doubt.Code == "" && !r.Geographic()
}

func (l listed) LooksLikeCount(string) bool { return false }

func (l listed) KnownTaxon(text string) bool {
	r := l.names.Match(taxa.Written{Name: text}, taxa.Context{})
	return r.Taxon != nil && r.State == reading.Fair
}

func (l listed) KnownPlace(string) bool { return false }

func (l listed) KnownPerson(string) bool { return false }

func (l listed) SameTaxon(a, b string) (same, known bool) {
	x, y := l.names.Match(taxa.Written{Name: a}, taxa.Context{}), l.names.Match(taxa.Written{Name: b}, taxa.Context{})
	return x.Taxon == y.Taxon && x.Taxon != nil, x.Taxon != nil && y.Taxon != nil
}
