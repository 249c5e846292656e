package dwc

import (
	"fmt"
	"slices"
	"strings"
)

// Dataset is what is said of a dataset as a whole: its metadata, after
// Ecological Metadata Language 2.2.0. The zero value of any field says
// nothing. There is no room for postal addresses, e-mail addresses or
// telephone numbers, on purpose: they must not leave with the records.
type Dataset struct {
	// PackageID names this edition of the dataset for good. Where it is
	// empty, one is made from the content.
	PackageID string
	// AlternateIDs are other names of the dataset: a DOI, a web page.
	AlternateIDs []string
	Title        string
	// Abstract is a description; a blank line separates paragraphs.
	Abstract string
	// Language is the records' language, as RFC 5646 has it: "en".
	Language string
	// PubDate is a day or a year: "2024-03-01", "2024".
	PubDate  string
	Creators []Party
	// MetadataProviders wrote this description.
	MetadataProviders []Party
	Contacts          []Party
	Publisher         Party
	Keywords          []string
	// KeywordThesaurus is where the keywords come from, if from anywhere.
	KeywordThesaurus string
	// License is the licence's URL; see LicenseURL.
	License string
	// Rights says in words what may be done with the records.
	Rights string
	// Citation is how the dataset wishes to be cited.
	Citation   string
	Geographic GeographicCoverage
	Temporal   TemporalCoverage
	Taxonomic  TaxonomicCoverage
	Methods    Methods
	// AdditionalInfo is anything else; a blank line separates paragraphs.
	AdditionalInfo string
}

// Party is a person, an organisation, or a person in one.
type Party struct {
	GivenName    string
	Surname      string
	Organisation string
	Position     string
	// OnlineURL is a web address, with https:// or http:// before it.
	OnlineURL string
	// ORCID is a person's identifier: "0000-0002-1825-0097", with or without
	// https://orcid.org/ before it.
	ORCID string
}

// Name returns the party's name as people write it: that of the person, or
// else of the organisation, or else of the position.
func (p Party) Name() string {
	switch {
	case p.Surname != "":
		return strings.TrimSpace(p.GivenName + " " + p.Surname)
	case p.Organisation != "":
		return p.Organisation
	}
	return p.Position
}

// GeographicCoverage is where the records are from: a description, and the
// box that holds them, in degrees of WGS84. West may be greater than East
// where the box crosses the 180th meridian.
type GeographicCoverage struct {
	Description              string
	West, East, South, North float64
	// HasBox says that the four bounds are stated.
	HasBox bool
}

// TemporalCoverage is when the records are from: the first and the last day,
// month or year, as "2003-05-14", "2003-05" or "2003".
type TemporalCoverage struct{ Begin, End string }

// TaxonomicCoverage is what the records are of.
type TaxonomicCoverage struct {
	Description string
	Taxa        []TaxonCoverage
}

// TaxonCoverage is one taxon of a TaxonomicCoverage.
type TaxonCoverage struct{ Rank, Name, CommonName string }

// Methods is how the records were made. In each text a blank line separates
// paragraphs.
type Methods struct {
	// Steps are what was done, one after the other.
	Steps []string
	// Extent is the area and time span that was studied, Sampling how.
	Extent, Sampling string
	// QualityControl is how the records were checked.
	QualityControl string
}

func (m Methods) empty() bool {
	return len(m.steps()) == 0 && m.Sampling == "" && m.Extent == "" && m.QualityControl == ""
}

// steps returns the method steps that say something.
func (m Methods) steps() []string {
	var steps []string
	for _, s := range m.Steps {
		if strings.TrimSpace(s) != "" {
			steps = append(steps, s)
		}
	}
	return steps
}

// Missing names, in plain words, what is still to be said before the dataset
// may be called complete, in the order in which a person would fill it in. It
// returns nil when nothing is missing.
func (d *Dataset) Missing() []string {
	var missing []string
	ask := func(absent bool, what string, args ...any) {
		if absent {
			missing = append(missing, fmt.Sprintf(what, args...))
		}
	}
	blank := func(s string) bool { return strings.TrimSpace(s) == "" }
	ask(blank(d.Title), "a title")
	ask(blank(d.Abstract), "an abstract: a few sentences on what the records are")
	ask(len(named(d.Creators)) == 0, "a creator: who made the dataset")
	ask(len(named(d.Contacts)) == 0, "a contact: who answers questions about it")
	if blank(d.License) {
		ask(true, "a licence: CC0, CC BY or CC BY-NC")
	} else if _, ok := LicenseURL(d.License); !ok {
		ask(true, "a licence that is one of CC0, CC BY and CC BY-NC: “%s” is none of them", d.License)
	}
	ask(blank(d.Citation), "a citation: how the dataset wishes to be cited")
	ask(blank(d.Language), "the language of the records, such as “en”")
	if blank(d.PubDate) {
		ask(true, "the date of publication")
	} else if !isYearOrDate(d.PubDate) {
		ask(true, "a date of publication as year-month-day, such as 2024-03-01: “%s” is none", d.PubDate)
	}
	ask(blank(d.Geographic.Description), "a description of the area")
	ask(!d.Geographic.HasBox, "the bounds of the area: west, east, south and north")
	ask(blank(d.Temporal.Begin) || blank(d.Temporal.End), "the first and the last date")
	ask(len(d.Taxonomic.Taxa) == 0, "the taxa that the records are of")
	ask(d.Methods.empty(), "the methods: how the records were made")
	for _, p := range slices.Concat(d.Creators, d.MetadataProviders, d.Contacts, []Party{d.Publisher}) {
		_, ok := webAddress(p.OnlineURL)
		ask(!blank(p.OnlineURL) && !ok, "a web address of %s that begins with https://: “%s” does not", p.Name(), p.OnlineURL)
	}
	return missing
}

// named returns the parties that have any name.
func named(parties []Party) []Party {
	var out []Party
	for _, p := range parties {
		if strings.TrimSpace(p.Name()) != "" {
			out = append(out, p)
		}
	}
	return out
}
