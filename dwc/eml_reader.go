package dwc

import (
	"strconv"
	"strings"
)

// datasetFromXML reads what a Dataset has room for. Elements are found by
// their names, whatever their namespaces: the versions of EML differ in those.
func datasetFromXML(file string, root *element) (*Dataset, error) {
	e := root.child("dataset")
	if root.name == "dataset" {
		e = root
	}
	if e == nil {
		return nil, unreadable(file, root.line, "The document is <%s> and has no <dataset>, so that it is no metadata in Ecological Metadata Language.", root.name)
	}
	d := &Dataset{
		Title:             words(e.child("title")),
		Abstract:          emlText(e.child("abstract")),
		Language:          words(e.child("language")),
		PubDate:           words(e.child("pubDate")),
		Creators:          emlParties(e, "creator"),
		MetadataProviders: emlParties(e, "metadataProvider"),
		Contacts:          emlParties(e, "contact"),
		AdditionalInfo:    emlText(e.child("additionalInfo")),
		Geographic:        emlGeographic(e.child("coverage")),
		Temporal:          emlTemporal(e.child("coverage")),
		Taxonomic:         emlTaxonomic(e.child("coverage")),
		Methods:           emlMethods(e.child("methods")),
		Citation:          emlCitation(root),
	}
	d.PackageID, _ = root.attr("packageId")
	if d.Title == notStated {
		d.Title = ""
	}
	for _, id := range e.all("alternateIdentifier") {
		d.AlternateIDs = append(d.AlternateIDs, id.content())
	}
	if publishers := emlParties(e, "publisher"); len(publishers) > 0 {
		d.Publisher = publishers[0]
	}
	for _, set := range e.all("keywordSet") {
		for _, k := range set.all("keyword") {
			d.Keywords = append(d.Keywords, words(k))
		}
		if d.KeywordThesaurus == "" {
			d.KeywordThesaurus = words(set.child("keywordThesaurus"))
		}
	}
	d.License, d.Rights = emlRights(e)
	return d, nil
}

// words returns an element's text with each run of white space as one space.
func words(e *element) string { return strings.Join(strings.Fields(e.content()), " ") }

// emlText returns a text's paragraphs with blank lines between.
func emlText(e *element) string {
	if e == nil {
		return ""
	}
	var paras []string
	for _, c := range e.children {
		text := c.content()
		if c.name == "section" {
			text = emlText(c)
		}
		paras = append(paras, paragraphs(text)...)
	}
	return strings.Join(paras, "\n\n")
}

func emlParties(e *element, name string) []Party {
	var parties []Party
	for _, p := range e.all(name) {
		party := Party{
			Surname:      words(p.child("individualName").child("surName")),
			Organisation: words(p.child("organizationName")),
			Position:     words(p.child("positionName")),
			OnlineURL:    words(p.child("onlineUrl")),
		}
		var given []string
		for _, g := range p.child("individualName").all("givenName") {
			given = append(given, words(g))
		}
		party.GivenName = strings.Join(given, " ")
		for _, id := range p.all("userId") {
			directory, _ := id.attr("directory")
			if strings.Contains(directory, "orcid.org") || strings.Contains(id.content(), "orcid.org") {
				party.ORCID = words(id)
			}
		}
		if party != (Party{}) && party != (Party{Organisation: notStated}) {
			parties = append(parties, party)
		}
	}
	return parties
}

// emlRights returns the licence's URL, from where EML 2.2 has it or from a
// link in the words, and the words.
func emlRights(e *element) (license, rights string) {
	rights = emlText(e.child("intellectualRights"))
	if licensed := e.child("licensed"); licensed != nil {
		for _, c := range []string{"url", "identifier", "licenseName"} {
			v := words(licensed.child(c))
			if url, ok := LicenseURL(v); ok {
				return url, rights
			}
			if license == "" {
				license = v
			}
		}
		return license, rights
	}
	var link func(*element) string
	link = func(e *element) string {
		for _, c := range e.children {
			if u, ok := c.attr("url"); ok && c.name == "ulink" {
				return u
			}
			if u := link(c); u != "" {
				return u
			}
		}
		return ""
	}
	if r := e.child("intellectualRights"); r != nil {
		license = link(r)
	}
	if url, ok := LicenseURL(license); ok {
		license = url
	}
	return license, rights
}

// emlCitation looks for the dataset's own citation in the additional metadata.
func emlCitation(root *element) string {
	var find func(*element) string
	find = func(e *element) string {
		for _, c := range e.children {
			if c.name == "bibliographicCitation" || c.name == "citation" {
				return words(c)
			}
			if found := find(c); found != "" {
				return found
			}
		}
		return ""
	}
	for _, a := range root.all("additionalMetadata") {
		if found := find(a); found != "" {
			return found
		}
	}
	return ""
}

func emlGeographic(coverage *element) GeographicCoverage {
	g := coverage.child("geographicCoverage")
	out := GeographicCoverage{Description: words(g.child("geographicDescription"))}
	if out.Description == notStated {
		out.Description = ""
	}
	box := g.child("boundingCoordinates")
	out.HasBox = true
	for name, bound := range map[string]*float64{
		"westBoundingCoordinate": &out.West, "eastBoundingCoordinate": &out.East,
		"southBoundingCoordinate": &out.South, "northBoundingCoordinate": &out.North,
	} {
		v, err := strconv.ParseFloat(words(box.child(name)), 64)
		*bound = v
		out.HasBox = out.HasBox && err == nil
	}
	if !out.HasBox {
		out = GeographicCoverage{Description: out.Description}
	}
	return out
}

// emlTemporal returns the span of all temporal coverages.
func emlTemporal(coverage *element) TemporalCoverage {
	var t TemporalCoverage
	include := func(begin, end string) {
		if begin != "" && (t.Begin == "" || begin < t.Begin) {
			t.Begin = begin
		}
		if end > t.End {
			t.End = end
		}
	}
	for _, c := range coverage.all("temporalCoverage") {
		for _, s := range c.all("singleDateTime") {
			date := words(s.child("calendarDate"))
			include(date, date)
		}
		r := c.child("rangeOfDates")
		include(words(r.child("beginDate").child("calendarDate")), words(r.child("endDate").child("calendarDate")))
	}
	return t
}

func emlTaxonomic(coverage *element) TaxonomicCoverage {
	var out TaxonomicCoverage
	var add func(e *element)
	add = func(e *element) {
		for _, c := range e.all("taxonomicClassification") {
			t := TaxonCoverage{Rank: words(c.child("taxonRankName")), Name: words(c.child("taxonRankValue")), CommonName: words(c.child("commonName"))}
			if t != (TaxonCoverage{}) {
				out.Taxa = append(out.Taxa, t)
			}
			add(c)
		}
	}
	for _, c := range coverage.all("taxonomicCoverage") {
		if out.Description == "" {
			out.Description = words(c.child("generalTaxonomicCoverage"))
		}
		add(c)
	}
	return out
}

func emlMethods(e *element) Methods {
	var m Methods
	for _, s := range e.all("methodStep") {
		if step := emlText(s.child("description")); step != "" && step != notStated {
			m.Steps = append(m.Steps, step)
		}
	}
	sampling := e.child("sampling")
	stated := func(text string) string {
		if text == notStated {
			return ""
		}
		return text
	}
	m.Extent = stated(emlText(sampling.child("studyExtent").child("description")))
	m.Sampling = stated(emlText(sampling.child("samplingDescription")))
	m.QualityControl = emlText(e.child("qualityControl").child("description"))
	if len(m.Steps) == 1 && m.Steps[0] == m.Sampling {
		m.Steps = nil // it is there because EML demands a step
	}
	return m
}
