package dwc_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/htmlindex"

	"fieldfare/dwc"
)

// awkward are pieces of text that delimited files break on.
var awkward = []string{
	"\t", "\n", "\r", "\r\n", `"`, `""`, `"""`, `\`, `\t`, `\n`, ",", ";", "|", "'", " ", "\u00a0", "\ufeff", "\u2028", "\x00", "\x1b", "\v",
	"🦋", "👩‍🔬", "Hübner", "é", "♀", "½", "NULL", "a", "worn", "Sallowmere", "<b>", "&amp;", "\ufffd", "=1+1", "-", "+", "0",
}

func awkwardText(random *rand.Rand) string {
	var b strings.Builder
	for range random.IntN(7) {
		b.WriteString(awkward[random.IntN(len(awkward))])
	}
	return b.String()
}

// Any records whatever read back equal.
func TestAnyRecordReadsBackEqual(t *testing.T) {
	random := rand.New(rand.NewPCG(20, 24))
	for range 40 {
		var want []*dwc.Occurrence
		for i := range 1 + random.IntN(40) {
			o := &dwc.Occurrence{OccurrenceID: fmt.Sprint(i, awkwardText(random))}
			for range random.IntN(30) {
				*o.Field(random.IntN(len(dwc.Terms()))) = awkwardText(random)
			}
			want = append(want, o)
		}
		a := opened(t, occurrenceArchive(t, want...))
		assert.Empty(t, a.Notes)
		var got []*dwc.Occurrence
		for row, err := range a.Core.Rows() {
			require.NoError(t, err)
			assert.Empty(t, row.Notes)
			o := new(dwc.Occurrence)
			row.Fill(o)
			got = append(got, o)
		}
		require.Equal(t, want, got)
	}
}

// Records written by somebody else, in any dialect and encoding that a
// descriptor can state, read back equal.
func TestAnyDialectReadsBackEqual(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 7))
	pick := func(of ...string) string { return of[random.IntN(len(of))] }
	escape := strings.NewReplacer("\t", `\t`, "\n", `\n`, "\r", `\r`, `"`, "&quot;", "&", "&amp;", "\\", `\\`)
	for range 400 {
		delimiter, quote := pick(",", "\t", ";", "|", "||", "~", "¦", " "), pick(`"`, "'", "", "^")
		terminator, encodingName := pick("\n", "\r\n", "\r", "#\n", "\\"), pick("UTF-8", "UTF-16LE", "windows-1252", "")
		if delimiter == " " && quote == "" {
			continue // "x y" could not be enclosed
		}
		header, rows := random.IntN(3), random.IntN(20)
		var want [][]string
		var text strings.Builder
		for range header {
			text.WriteString("occurrenceID" + delimiter + "heading" + terminator)
		}
		for i := range rows {
			row := []string{fmt.Sprint("r", i)}
			for range 2 {
				v := pick("", "a", "worn", "Hübner", "x y", "5\" wide", "it's", "a,b", "a;b", "a|b", "one\ntwo", "one\rtwo", "half½", "^", "''", "q\"\"q", "~")
				if quote == "" && (strings.Contains(v, delimiter) || strings.ContainsAny(v, "\n\r#\\")) {
					v = "plain"
				}
				row = append(row, v)
			}
			want = append(want, row)
			for j, v := range row {
				if j > 0 {
					text.WriteString(delimiter)
				}
				if quote != "" && (random.IntN(3) == 0 || strings.Contains(v, delimiter) || strings.ContainsAny(v, "\n\r#\\") || strings.HasPrefix(v, quote)) {
					v = quote + strings.ReplaceAll(v, quote, quote+quote) + quote
				}
				text.WriteString(v)
			}
			if i < rows-1 || random.IntN(2) == 0 {
				text.WriteString(terminator)
			}
		}
		attrs := fmt.Sprintf(`fieldsTerminatedBy="%s" fieldsEnclosedBy="%s" linesTerminatedBy="%s" ignoreHeaderLines="%d" encoding="%s"`,
			escape.Replace(delimiter), escape.Replace(quote), escape.Replace(terminator), header, encodingName)
		encoded := text.String()
		if enc, err := htmlindex.Get(encodingName); err == nil {
			encoded, err = enc.NewEncoder().String(encoded)
			require.NoError(t, err)
		}
		a := opened(t, zipped(t, map[string]string{"meta.xml": meta(attrs, three("o.txt")), "o.txt": encoded}))
		require.Equal(t, want, values(t, a.Core), "%s\n%q", attrs, text.String())
	}
}

func TestAnyDatasetReadsBackEqual(t *testing.T) {
	whole := sallowmere()
	read := func(d *dwc.Dataset) *dwc.Dataset {
		back, err := dwc.ReadEML(strings.NewReader(eml(t, d)))
		require.NoError(t, err)
		return back
	}
	want := *whole
	want.License = "http://creativecommons.org/licenses/by-nc/4.0/legalcode"
	want.Temporal = dwc.TemporalCoverage{Begin: "2003-05-01", End: "2023-10-31"}
	assert.Equal(t, &want, read(whole))
	assert.Equal(t, &want, read(read(whole)))
	assert.Equal(t, &dwc.Dataset{PackageID: "p"}, read(&dwc.Dataset{PackageID: "p"}), "nothing is made up")
	for _, d := range []dwc.Dataset{
		{License: "ask Ines", PackageID: "p"},
		{Methods: dwc.Methods{Sampling: "Light trap"}, PackageID: "p"},
		{Methods: dwc.Methods{Extent: "All year", QualityControl: "Checked"}, PackageID: "p"},
		{Creators: []dwc.Party{{Position: "Warden", Organisation: "Sallowmere Reserve"}, {Surname: "Calloway"}}, PackageID: "p"},
		{Geographic: dwc.GeographicCoverage{West: 170, East: -170, South: -90, North: 1e-7, HasBox: true}, PackageID: "p"},
		{Temporal: dwc.TemporalCoverage{Begin: "2021-06-12", End: "2021-06-12"}, PackageID: "p"},
		{Keywords: []string{"moths & more", "<light>"}, PackageID: "p"},
	} {
		assert.Equal(t, &d, read(&d))
	}
}

// A document of the older version 2.1.1, as other programs write it: text in
// sections, a licence as a link, a citation in the additional metadata.
func TestReadOlderEML(t *testing.T) {
	d, err := dwc.ReadEML(strings.NewReader(`<?xml version="1.0" encoding="utf-8"?>
<eml:eml xmlns:eml="eml://ecoinformatics.org/eml-2.1.1" packageId="sallowmere/1.3" system="http://example.org">
  <dataset>
    <title xml:lang="en">Moths of
      Sallowmere Reserve</title>
    <creator><individualName><givenName>Ines</givenName><givenName>M.</givenName><surName>Calloway</surName></individualName>
      <address><city>Ely</city></address><phone>01632 960000</phone><electronicMailAddress>ines@example.org</electronicMailAddress>
      <userId directory="http://orcid.org/">0000-0002-1825-0097</userId></creator>
    <abstract><section><title>What</title><para>Moths at <emphasis>light</emphasis>.</para></section><para>Since 2003.</para></abstract>
    <intellectualRights><para>This work is under <ulink url="https://creativecommons.org/licenses/by/4.0/legalcode"><citetitle>CC BY 4.0</citetitle></ulink>.</para></intellectualRights>
    <coverage>
      <temporalCoverage><rangeOfDates><beginDate><calendarDate>2010</calendarDate></beginDate><endDate><calendarDate>2012-05-01</calendarDate></endDate></rangeOfDates></temporalCoverage>
      <temporalCoverage><singleDateTime><calendarDate>2003-05-01</calendarDate></singleDateTime></temporalCoverage>
      <taxonomicCoverage><taxonomicClassification><taxonRankName>order</taxonRankName><taxonRankValue>Lepidoptera</taxonRankValue>
        <taxonomicClassification><taxonRankName>family</taxonRankName><taxonRankValue>Noctuidae</taxonRankValue></taxonomicClassification></taxonomicClassification></taxonomicCoverage>
    </coverage>
    <contact><organizationName>Sallowmere Recorders</organizationName></contact>
  </dataset>
  <additionalMetadata><metadata><own><citation identifier="x">Calloway I (2012)</citation></own></metadata></additionalMetadata>
</eml:eml>`))
	require.NoError(t, err)
	assert.Equal(t, &dwc.Dataset{
		PackageID: "sallowmere/1.3", Title: "Moths of Sallowmere Reserve",
		Creators:  []dwc.Party{{GivenName: "Ines M.", Surname: "Calloway", ORCID: "0000-0002-1825-0097"}},
		Contacts:  []dwc.Party{{Organisation: "Sallowmere Recorders"}},
		Abstract:  "What\n\nMoths at light.\n\nSince 2003.",
		License:   "http://creativecommons.org/licenses/by/4.0/legalcode",
		Rights:    "This work is under CC BY 4.0.",
		Temporal:  dwc.TemporalCoverage{Begin: "2003-05-01", End: "2012-05-01"},
		Taxonomic: dwc.TaxonomicCoverage{Taxa: []dwc.TaxonCoverage{{Rank: "order", Name: "Lepidoptera"}, {Rank: "family", Name: "Noctuidae"}}},
		Citation:  "Calloway I (2012)",
	}, d)
}

// Metadata of any kind is read or refused, and what was read can be written.
func FuzzReadEML(f *testing.F) {
	f.Add([]byte(eml(f, sallowmere())))
	f.Add([]byte("<dataset><title>A</title><coverage><geographicCoverage/></coverage></dataset>"))
	f.Fuzz(func(t *testing.T, content []byte) {
		d, err := dwc.ReadEML(bytes.NewReader(content))
		if err != nil {
			return
		}
		var b bytes.Buffer
		if d.WriteEML(&b) != nil {
			return // a date or a coordinate that is none
		}
		again, err := dwc.ReadEML(&b)
		require.NoError(t, err)
		assert.Equal(t, d.Title, again.Title)
		assert.Equal(t, d.Keywords, again.Keywords)
	})
}

// Values are judged without a crash, and dates judged good are made of the
// characters that ISO 8601 has.
func FuzzCheck(f *testing.F) {
	for _, c := range checkCases {
		for _, v := range append(c.good, c.bad...) {
			f.Add(c.term, v)
		}
	}
	f.Fuzz(func(t *testing.T, term, value string) {
		o := dwc.Occurrence{OccurrenceID: "a"}
		if !o.Set(term, value) || value == "" {
			return
		}
		if len(dwc.Check(&o)) == 0 && (term == "eventDate" || term == "modified") {
			assert.Empty(t, strings.Trim(value, "0123456789-/:.TZW+"))
		}
	})
}
