package dwc

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/google/uuid"
)

const (
	nsText = "http://rs.tdwg.org/dwc/text/"
	nsEML  = "https://eml.ecoinformatics.org/eml-2.2.0"

	orcidDirectory = "https://orcid.org/"
)

// WriteEML writes the metadata as an Ecological Metadata Language 2.2.0
// document. What EML demands and the dataset does not say (see Missing) is
// written as "not stated". The error tells, in plain words, of a date or a
// coordinate that is none.
//
// The way the dataset wishes to be cited, which EML has no element for, goes
// into additionalMetadata as dcterms:bibliographicCitation.
func (d *Dataset) WriteEML(w io.Writer) error {
	b, err := d.appendEML(nil)
	if err == nil {
		_, err = w.Write(b)
	}
	return err
}

const notStated = "not stated"

func or(value, otherwise string) string {
	if strings.TrimSpace(value) == "" {
		return otherwise
	}
	return value
}

func (d *Dataset) appendEML(b []byte) ([]byte, error) {
	var body xmlWriter
	body.path = []string{"eml:eml"}
	if err := d.writeDataset(&body); err != nil {
		return nil, err
	}
	if strings.TrimSpace(d.Citation) != "" {
		body.open("additionalMetadata")
		body.open("metadata")
		body.text("dcterms:bibliographicCitation", d.Citation, "xmlns:dcterms", nsDCTerms)
		body.close()
		body.close()
	}
	id := d.PackageID
	if strings.TrimSpace(id) == "" {
		id = uuid.NewSHA1(uuid.NameSpaceURL, append([]byte(nsEML), body.b...)).URN()
	}
	x := xmlWriter{b: b}
	x.declaration()
	x.open("eml:eml", "xmlns:eml", nsEML, "packageId", id, "system", "fieldfare", "xml:lang", "en")
	x.b = append(x.b, body.b...)
	x.close()
	return x.b, nil
}

// writeDataset writes the elements in the order that the schema demands.
func (d *Dataset) writeDataset(x *xmlWriter) error {
	x.open("dataset")
	for _, id := range d.AlternateIDs {
		x.text("alternateIdentifier", id)
	}
	x.text("title", or(d.Title, notStated))
	writeParties(x, "creator", d.Creators, true)
	writeParties(x, "metadataProvider", d.MetadataProviders, false)
	if date := strings.TrimSpace(d.PubDate); date != "" {
		if !isYearOrDate(date) {
			return fmt.Errorf("the date of publication “%s” is no date: write it as year-month-day, such as 2024-03-01", d.PubDate)
		}
		x.text("pubDate", date)
	}
	x.text("language", d.Language)
	writeText(x, "abstract", d.Abstract)
	d.writeKeywords(x)
	writeText(x, "additionalInfo", d.AdditionalInfo)
	d.writeRights(x)
	if err := d.writeCoverage(x); err != nil {
		return err
	}
	writeParties(x, "contact", d.Contacts, true)
	writeParties(x, "publisher", []Party{d.Publisher}, false)
	d.writeMethods(x)
	x.close()
	return nil
}

// writeParties writes each party that has a name, and where none has and EML
// demands one, one that is not stated.
func writeParties(x *xmlWriter, element string, parties []Party, demanded bool) {
	parties = named(parties)
	if len(parties) == 0 && demanded {
		parties = []Party{{Organisation: notStated}}
	}
	for _, p := range parties {
		x.open(element)
		if strings.TrimSpace(p.Surname) != "" {
			x.open("individualName")
			x.text("givenName", p.GivenName)
			x.text("surName", p.Surname)
			x.close()
		}
		x.text("organizationName", p.Organisation)
		x.text("positionName", p.Position)
		if address, ok := webAddress(p.OnlineURL); ok {
			x.text("onlineUrl", address)
		}
		x.text("userId", p.ORCID, "directory", orcidDirectory)
		x.close()
	}
}

// paragraphs splits a text at its blank lines.
func paragraphs(text string) []string {
	var out []string
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	var lines []string
	for line := range strings.SplitSeq(text+"\n", "\n") {
		if line = strings.TrimSpace(line); line != "" {
			lines = append(lines, line)
		} else if len(lines) > 0 {
			out = append(out, strings.Join(lines, "\n"))
			lines = nil
		}
	}
	return out
}

// writeText writes a text as paragraphs, and nothing where there is none.
func writeText(x *xmlWriter, element, text string) {
	paras := paragraphs(text)
	if len(paras) == 0 {
		return
	}
	x.open(element)
	for _, p := range paras {
		x.text("para", p)
	}
	x.close()
}

func (d *Dataset) writeKeywords(x *xmlWriter) {
	var keywords []string
	for _, k := range d.Keywords {
		if strings.TrimSpace(k) != "" {
			keywords = append(keywords, k)
		}
	}
	if len(keywords) == 0 {
		return
	}
	x.open("keywordSet")
	for _, k := range keywords {
		x.text("keyword", k)
	}
	x.text("keywordThesaurus", d.KeywordThesaurus)
	x.close()
}

func (d *Dataset) writeRights(x *xmlWriter) {
	writeText(x, "intellectualRights", d.Rights)
	licence := strings.TrimSpace(d.License)
	if licence == "" {
		return
	}
	x.open("licensed")
	if l := licenseFor(licence); l != nil {
		x.text("licenseName", l.name)
		x.text("url", l.url)
		x.text("identifier", l.spdx)
	} else {
		x.text("licenseName", licence)
		if address, ok := webAddress(licence); ok {
			x.text("url", address)
		}
	}
	x.close()
}

func (d *Dataset) writeCoverage(x *xmlWriter) error {
	empty := len(x.b)
	x.open("coverage")
	begun := len(x.b)
	if err := d.Geographic.write(x); err != nil {
		return err
	}
	if err := d.Temporal.write(x); err != nil {
		return err
	}
	d.Taxonomic.write(x)
	none := len(x.b) == begun
	x.close()
	if none {
		x.b = x.b[:empty]
	}
	return nil
}

// write needs a box: EML has no geographic coverage without one.
func (g GeographicCoverage) write(x *xmlWriter) error {
	if !g.HasBox {
		return nil
	}
	in := func(v, limit float64) bool { return v >= -limit && v <= limit }
	if !in(g.West, 180) || !in(g.East, 180) || !in(g.South, 90) || !in(g.North, 90) || g.South > g.North {
		return fmt.Errorf("the area's bounds are no place on Earth: west %v, east %v, south %v, north %v",
			g.West, g.East, g.South, g.North)
	}
	degrees := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	x.open("geographicCoverage")
	x.text("geographicDescription", or(g.Description, notStated))
	x.open("boundingCoordinates")
	x.text("westBoundingCoordinate", degrees(g.West))
	x.text("eastBoundingCoordinate", degrees(g.East))
	x.text("northBoundingCoordinate", degrees(g.North))
	x.text("southBoundingCoordinate", degrees(g.South))
	x.close()
	x.close()
	return nil
}

func (t TemporalCoverage) write(x *xmlWriter) error {
	begin, end := strings.TrimSpace(t.Begin), strings.TrimSpace(t.End)
	if begin == "" && end == "" {
		return nil
	}
	begin, end = or(begin, end), or(end, begin)
	first, ok := calendarDate(begin, false)
	if !ok {
		return fmt.Errorf("the first date “%s” is no date: write it as year-month-day, such as 2003-05-14", begin)
	}
	last, ok := calendarDate(end, true)
	if !ok {
		return fmt.Errorf("the last date “%s” is no date: write it as year-month-day, such as 2003-05-14", end)
	}
	date := func(element, value string) {
		x.open(element)
		x.text("calendarDate", value)
		x.close()
	}
	x.open("temporalCoverage")
	if first == last {
		date("singleDateTime", first)
	} else {
		x.open("rangeOfDates")
		date("beginDate", first)
		date("endDate", last)
		x.close()
	}
	x.close()
	return nil
}

// write needs a taxon: EML has no taxonomic coverage without one.
func (c TaxonomicCoverage) write(x *xmlWriter) {
	if len(c.Taxa) == 0 {
		return
	}
	x.open("taxonomicCoverage")
	x.text("generalTaxonomicCoverage", c.Description)
	for _, t := range c.Taxa {
		x.open("taxonomicClassification")
		x.text("taxonRankName", t.Rank)
		x.text("taxonRankValue", t.Name)
		x.text("commonName", t.CommonName)
		x.close()
	}
	x.close()
}

func (d *Dataset) writeMethods(x *xmlWriter) {
	m := d.Methods
	if m.empty() {
		return
	}
	// A method step comes first in EML, whatever else there is.
	steps := m.steps()
	if len(steps) == 0 {
		steps = []string{or(m.Sampling, notStated)}
	}
	x.open("methods")
	for _, s := range steps {
		x.open("methodStep")
		writeText(x, "description", s)
		x.close()
	}
	if m.Sampling != "" || m.Extent != "" {
		x.open("sampling")
		x.open("studyExtent")
		writeText(x, "description", or(m.Extent, notStated))
		x.close()
		writeText(x, "samplingDescription", or(m.Sampling, notStated))
		x.close()
	}
	if strings.TrimSpace(m.QualityControl) != "" {
		x.open("qualityControl")
		writeText(x, "description", m.QualityControl)
		x.close()
	}
	x.close()
}
