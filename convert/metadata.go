package convert

import (
	"math"
	"strings"

	"fieldfare/convert/project"
	"fieldfare/dwc"
)

// metadata describes the submission, from the project file and from the
// records as they leave.
func (s *settings) metadata(c *coverage) *dwc.Dataset {
	d := &s.project.Dataset
	m := &dwc.Dataset{
		PackageID: d.ID,
		Title:     d.Title,
		Abstract:  d.Abstract,
		Language:  d.Language,
		PubDate:   d.Date,
		Creators:  parties(d.Creators),
		Contacts:  parties(d.Contacts),
		Keywords:  d.Keywords,
		License:   s.licence,
		Citation:  d.Citation,
	}
	if m.Citation == "" {
		m.Citation = citation(m)
	}
	m.MetadataProviders = m.Creators
	if d.Institution != "" {
		m.Publisher = dwc.Party{Organisation: d.Institution}
	}
	if c.placed {
		m.Geographic = dwc.GeographicCoverage{
			Description: "The smallest box around the records handed in, with their uncertainty.",
			West:        math.Floor(c.west*boxParts) / boxParts, East: math.Ceil(c.east*boxParts) / boxParts,
			South: math.Floor(c.south*boxParts) / boxParts, North: math.Ceil(c.north*boxParts) / boxParts, HasBox: true,
		}
	}
	m.Temporal = dwc.TemporalCoverage{Begin: c.first, End: c.last}
	for _, g := range commonest(c.groups.all(), func(g taxonGroup) string { return g.name }) {
		m.Taxonomic.Taxa = append(m.Taxonomic.Taxa, dwc.TaxonCoverage{Rank: g.rank, Name: g.name})
	}
	if d.Methods != "" {
		m.Methods.Steps = []string{d.Methods}
	} else {
		m.Methods.Steps = commonest(c.methods.all(), func(m string) string { return m })
	}
	m.Methods.QualityControl = "Names were matched to a taxon list, grid references converted and every record checked with Fieldfare " + Version + ". Records with an open question that would change them were held back."
	return m
}

// boxParts are the parts of a degree to which the box is rounded, outwards:
// about a kilometre, so that it shows no single place more finely.
const boxParts = 100

// citation is how the dataset is cited where nothing else is said: creators,
// year and title; empty where one of them is not given.
func citation(m *dwc.Dataset) string {
	if m.Title == "" || len(m.Creators) == 0 || len(m.PubDate) < 4 {
		return ""
	}
	var names []string
	for _, p := range m.Creators {
		if name := p.Name(); name != "" {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	list := names[len(names)-1]
	if n := len(names); n > 1 {
		list = strings.Join(names[:n-1], ", ") + " and " + list
	}
	return list + " (" + m.PubDate[:4] + "). " + strings.TrimRight(m.Title, ". ") + "."
}

func parties(list []project.Contact) []dwc.Party {
	var parties []dwc.Party
	for _, c := range list {
		parties = append(parties, dwc.Party{GivenName: c.Given, Surname: c.Surname, Organisation: c.Organisation, Position: c.Position, OnlineURL: c.URL, ORCID: c.ORCID})
	}
	return parties
}
