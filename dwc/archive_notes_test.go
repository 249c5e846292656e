package dwc_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/unicode"

	"fieldfare/dwc"
)

// Descriptors that leave something out, or say it twice.
func TestIncompleteDescriptors(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="about.xml"><core><files><location>o.txt</location></files><id index="0"/>
			<field index="1" term="http://rs.tdwg.org/dwc/terms/locality"/>
			<field index="2" term="http://rs.tdwg.org/dwc/terms/locality"/>
			<field term="http://rs.tdwg.org/dwc/terms/county"/>
			<field term="http://rs.tdwg.org/dwc/terms/eventDate" default="12.6.2021"/></core>
			<extension dateFormat="DD.MM.YYYY" rowType="http://example.org/terms/Lamp"><files><location>l.txt</location></files>
			<field index="0" term="http://rs.tdwg.org/dwc/terms/measurementValue"/></extension></archive>`,
		"o.txt": "a1,Sallowmere Reserve,Tinker's Row\na2,,Tinker's Row\na3,,\n",
		"l.txt": "6 W\n",
	}))
	for _, want := range []string{
		"No row type is stated; the rows were taken for occurrences.",
		"The term locality is there more than once; each row's first value counts.",
		"The field county has neither an index nor a default, and so no value.",
		"There is no <coreid> for l.txt, so that its rows belong to no record of the core.",
		"The metadata document “about.xml” is not in the archive.",
	} {
		assert.Contains(t, notes(a), want)
	}
	assert.Len(t, a.Notes, 5)
	assert.Equal(t, dwc.RowOccurrence, a.Core.RowType())
	assert.Equal(t, "http://example.org/terms/Lamp", a.Extensions[0].RowType())
	var localities []string
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		var o dwc.Occurrence
		row.Fill(&o)
		assert.Equal(t, o.Locality, row.Get("locality"))
		localities = append(localities, o.Locality)
	}
	assert.Equal(t, []string{"Sallowmere Reserve", "Tinker's Row", ""}, localities)
	for range a.Core.Rows() {
		break // a reader may stop early
	}
	d, err := a.Metadata()
	assert.NoError(t, err)
	assert.Nil(t, d)
}

func TestDefaultInTheStatedDateFormat(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"meta.xml": meta(`dateFormat="DD.MM.YYYY"`, `<files><location>o.txt</location></files><id index="0"/><field term="http://rs.tdwg.org/dwc/terms/eventDate" default="12.6.2021"/>`),
		"o.txt":    "a1\n",
	}))
	assert.Equal(t, [][]string{{"2021-06-12"}}, values(t, a.Core))
	a = opened(t, zipped(t, map[string]string{"meta.xml": meta(`dateFormat="DD.MM.YYYY"`, three("o.txt")), "o.txt": "a1,b,c\n"}))
	assert.Empty(t, a.Notes, "there are no dates")
}

func TestLongListsAreCutShort(t *testing.T) {
	files := map[string]string{"meta.xml": meta("", three("p.txt"))}
	for _, name := range strings.Fields("a b c d e f g h i j") {
		files[name+".txt"] = "x"
	}
	assert.ErrorContains(t, readAll(zipped(t, files)), "which holds a.txt, b.txt, c.txt, d.txt, e.txt, f.txt, g.txt, h.txt and 3 more.")
}

func TestUTF16DescriptorThatSaysSo(t *testing.T) {
	text := strings.Replace(meta("", three("o.txt")), "UTF-8", "UTF-16", 1)
	encoded, err := unicode.UTF16(unicode.BigEndian, unicode.UseBOM).NewEncoder().String(text)
	require.NoError(t, err)
	a := opened(t, zipped(t, map[string]string{"meta.xml": encoded, "o.txt": "a1,b,c"}))
	assert.Equal(t, [][]string{{"a1", "b", "c"}}, values(t, a.Core))
	odd := strings.Replace(text, "UTF-16", "Sallowmere", 1)
	assert.ErrorContains(t, readAll(zipped(t, map[string]string{"meta.xml": odd, "o.txt": "a1,b,c"})), "not well-formed")
}

func TestRowsOfNothing(t *testing.T) {
	var b bytes.Buffer
	w, err := dwc.NewWriter(&b, dwc.Table{RowType: dwc.RowTaxon, Columns: []string{"taxonID"}})
	require.NoError(t, err)
	for _, id := range []string{"1", "", "2"} {
		require.NoError(t, w.WriteRow(0, []string{id}))
	}
	require.NoError(t, w.Close())
	assert.Error(t, w.WriteRow(0, []string{"3"}), "the archive is closed")
	assert.Error(t, w.Write(0, &dwc.Taxon{}), "the archive is closed")
	path := saved(t, "a.zip", b.Bytes())
	assert.Equal(t, [][]string{{"1"}, {""}, {"2"}}, values(t, opened(t, path).Core))
	assert.Equal(t, []string{"taxon.txt, line 3: taxonID: The row has no id."}, faults(t, path))
}

func TestTablesThatAreNotThere(t *testing.T) {
	core, occurrences, _ := eventTables()
	w, err := dwc.NewWriter(&bytes.Buffer{}, core, occurrences)
	require.NoError(t, err)
	for _, table := range []int{-1, 2} {
		assert.ErrorContains(t, w.Write(table, &dwc.Event{EventID: "n1"}), "no table")
		assert.ErrorContains(t, w.WriteRow(table, nil), "no table")
		assert.ErrorContains(t, w.WriteRows(table, nil), "no table")
		assert.ErrorContains(t, w.WriteText(table, nil), "no table")
	}
	assert.NoError(t, w.Write(0, &dwc.Event{EventID: "n1"}), "the others can go on")
	assert.NoError(t, w.Close())
}

func TestAbortedArchive(t *testing.T) {
	core, occurrences, _ := eventTables()
	w, err := dwc.NewWriter(&bytes.Buffer{}, core, occurrences)
	require.NoError(t, err)
	w.Abort()
	w.Abort()
	assert.ErrorContains(t, w.WriteRow(0, []string{"a", "b", "c"}), "given up")
	assert.ErrorContains(t, w.WriteText(0, nil), "given up")
	assert.ErrorContains(t, w.Close(), "given up")
}

func TestExtensionThatContradictsItself(t *testing.T) {
	assert.Equal(t, []string{"l.txt, line 1: occurrenceID: The row belongs to “a1”, but its occurrenceID is “a2”."}, faults(t, zipped(t, map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>o.txt</location></files><id index="0"/>
			<field index="0" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/></core>
			<extension rowType="http://rs.tdwg.org/dwc/terms/MeasurementOrFact"><files><location>l.txt</location></files><coreid index="0"/>
			<field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/></extension></archive>`,
		"o.txt": "a1\na2\n", "l.txt": "a1,a2\n",
	})))
}
