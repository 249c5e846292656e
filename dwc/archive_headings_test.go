package dwc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

// A descriptor in the manner of the first example of the Darwin Core text
// guide (https://dwc.tdwg.org/text/): no id, a path that starts with "./", a
// simple Darwin Core record as row type, and a column of one value throughout.
func TestDescriptorInTheMannerOfTheGuide(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"meta.xml": `<?xml version="1.0"?>
<archive xmlns="http://rs.tdwg.org/dwc/text/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
    xsi:schemaLocation="http://rs.tdwg.org/dwc/text/ http://rs.tdwg.org/dwc/text/tdwg_dwc_text.xsd">
  <core encoding="UTF-8" linesTerminatedBy="\r\n" fieldsTerminatedBy="," fieldsEnclosedBy="&quot;" ignoreHeaderLines="1"
      rowType="http://rs.tdwg.org/dwc/xsd/simpledarwincore/SimpleDarwinRecord">
    <files><location>./specimens.csv</location></files>
    <field index="0" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/>
    <field index="1" term="http://rs.tdwg.org/dwc/terms/basisOfRecord"/>
    <field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
    <field term="http://rs.tdwg.org/dwc/terms/nomenclaturalCode" default="ICZN"/>
  </core>
</archive>`,
		"specimens.csv": "ID,Basis,Name\r\n123,PreservedSpecimen,\"Agrotis puta (Hübner, [1803])\"\r\n124,PreservedSpecimen,Noctua pronuba",
	}))
	assert.Equal(t, [][]string{{"123", "PreservedSpecimen", "Agrotis puta (Hübner, [1803])", "ICZN"}, {"124", "PreservedSpecimen", "Noctua pronuba", "ICZN"}}, values(t, a.Core))
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		assert.Equal(t, row.Get("occurrenceID"), row.ID())
	}
	assert.Empty(t, a.Notes)
}

func TestHeadingsThatTheDescriptorDoesNotMention(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": "occurrenceID,scientificname,occurrenceRemarks\na1,b,c\n"}))
	assert.Equal(t, [][]string{{"a1", "b", "c"}}, values(t, a.Core))
	assert.Contains(t, notes(a), "o.txt, line 1: The first line holds headings, although ignoreHeaderLines does not say so")
	// One value that is no heading, and the line is a row.
	a = opened(t, zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": "occurrenceID,scientificName,c\n"}))
	assert.Len(t, values(t, a.Core), 1)
	assert.Empty(t, notes(a))
}

// Of several header lines the last has the headings; the others may be
// anything.
func TestSeveralHeaderLines(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{"meta.xml": meta(`ignoreHeaderLines="3"`, three("o.txt")),
		"o.txt": "\"Moths of Sallowmere, by Ines\n\noccurrenceID,scientificName,occurrenceRemarks,lamp\na1,b,c,6 W\n"}))
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		assert.Equal(t, "6 W", row.Get("lamp"))
		assert.Equal(t, 4, row.Line)
	}
	for _, text := range []string{"one line", "a\nb\n", "a\nb\nc\n", "a\nb\nc"} {
		a = opened(t, zipped(t, map[string]string{"meta.xml": meta(`ignoreHeaderLines="3"`, three("o.txt")), "o.txt": text}))
		assert.Empty(t, values(t, a.Core), "%q", text)
	}
}

func TestBlankLinesOfOneColumn(t *testing.T) {
	a := opened(t, saved(t, "r.csv", []byte("occurrenceID\na1\n\n  \n\"\"\na2\n\n")))
	assert.Equal(t, [][]string{{"a1"}, {""}, {"a2"}}, values(t, a.Core))
}

func TestRowThatTheDescriptorTakesForHeadings(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{"meta.xml": meta(`ignoreHeaderLines="1"`, three("o.txt")), "o.txt": "a1,b,c\na2,b,c\n"}))
	assert.Equal(t, [][]string{{"a2", "b", "c"}}, values(t, a.Core), "the descriptor is followed")
	assert.Contains(t, notes(a), "The first line was left out as headings, as stated, though it looks like a row: “a1”, “b”, “c”.")
}

// The id of the core rows may be another than the id of the occurrences.
func TestRowNumbersBesideOccurrenceIDs(t *testing.T) {
	path := zipped(t, map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>o.txt</location></files>
			<id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/></core>
			<extension rowType="http://rs.tdwg.org/dwc/terms/MeasurementOrFact"><files><location>m.txt</location></files>
			<coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/measurementValue"/><field index="2" term="http://rs.tdwg.org/dwc/terms/measurementID"/></extension></archive>`,
		"o.txt": "1,a1\n2,a2\n3,a1\n3,a4\n",
		"m.txt": "1,14,m1\n2,15,m1\n9,16,\n",
	})
	a := opened(t, path)
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		var o dwc.Occurrence
		row.Fill(&o)
		assert.Equal(t, row.Get("occurrenceID"), o.OccurrenceID)
		assert.NotEqual(t, row.ID(), o.OccurrenceID)
	}
	for row, err := range a.Extensions[0].Rows() {
		require.NoError(t, err)
		var m dwc.Measurement
		row.Fill(&m)
		assert.Empty(t, m.OccurrenceID, "a row's number is no occurrenceID")
	}
	assert.Equal(t, []string{
		"o.txt, line 3: occurrenceID: The id “a1” was there before, in line 1: an id must be used once only.",
		"o.txt, line 4: occurrenceID: The id “3” was there before, in line 3: an id must be used once only.",
		"m.txt, line 2: measurementID: The id “m1” was there before, in line 1: an id must be used once only.",
		"m.txt, line 3: occurrenceID: The row belongs to “9”, which the core table does not have.",
	}, faults(t, path))
}
