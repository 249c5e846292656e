package dwc_test

import (
	"bytes"
	"encoding/csv"
	"encoding/hex"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

func TestOccurrenceArchive(t *testing.T) {
	var b bytes.Buffer
	w, err := dwc.NewWriter(&b, dwc.Table{RowType: dwc.RowOccurrence, Columns: []string{"occurrenceID", "scientificName", "occurrenceRemarks"}})
	require.NoError(t, err)
	w.SetMetadata(sallowmere())
	require.NoError(t, w.Write(0, &dwc.Occurrence{OccurrenceID: "a1", ScientificName: "Agrotis puta", OccurrenceRemarks: "worn\tand \"small\"\n🦋", Locality: "left out"}))
	require.NoError(t, w.WriteRow(0, []string{"a2", "Noctua pronuba", " outer space "}))
	require.NoError(t, w.Close())
	files := unzip(t, b.Bytes())
	require.Len(t, files, 3)
	assert.Equal(t, "occurrenceID\tscientificName\toccurrenceRemarks\n"+
		"a1\tAgrotis puta\t\"worn\tand \"\"small\"\"\n🦋\"\n"+
		"a2\tNoctua pronuba\t\" outer space \"\n", files["occurrence.txt"])
	requireValid(t, metaSchema, files["meta.xml"])
	requireValid(t, emlSchema, files["eml.xml"])
	assert.Contains(t, files["meta.xml"], `fieldsTerminatedBy="\t" linesTerminatedBy="\n" fieldsEnclosedBy="&#34;" ignoreHeaderLines="1"`)
}

func eventTables() (core, occurrences, measurements dwc.Table) {
	return dwc.Table{RowType: dwc.RowEvent, Columns: []string{"eventID", "eventDate", "samplingProtocol"}},
		dwc.Table{RowType: dwc.RowOccurrence, Columns: []string{"eventID", "occurrenceID", "scientificName"}},
		dwc.Table{RowType: dwc.RowMeasurement, Columns: []string{"eventID", "occurrenceID", "measurementType", "measurementValue", "measurementUnit"}}
}

// Rows of the three tables arrive mixed, as a notebook yields them.
func eventArchive(t testing.TB, nights int) []byte {
	var b bytes.Buffer
	core, occurrences, measurements := eventTables()
	w, err := dwc.NewWriter(&b, core, occurrences, measurements)
	require.NoError(t, err)
	for i := range nights {
		event := fmt.Sprintf("night-%d", i)
		require.NoError(t, w.Write(0, &dwc.Event{EventID: event, EventDate: "2021-06-12/13", SamplingProtocol: "Heath trap, 6 W actinic"}))
		for j := range i % 3 {
			id := fmt.Sprintf("%s-%d", event, j)
			require.NoError(t, w.Write(1, &dwc.Occurrence{EventID: event, OccurrenceID: id, ScientificName: "Agrotis puta"}))
			require.NoError(t, w.Write(2, &dwc.Measurement{EventID: event, OccurrenceID: id, MeasurementType: "forewing length", MeasurementValue: "14.5", MeasurementUnit: "mm"}))
		}
	}
	w.SetMetadata(sallowmere())
	require.NoError(t, w.Close())
	return b.Bytes()
}

func TestEventArchive(t *testing.T) {
	archive := eventArchive(t, 3)
	assert.Equal(t, archive, eventArchive(t, 3), "the same rows give the same bytes")
	files := unzip(t, archive)
	require.Len(t, files, 5)
	requireValid(t, metaSchema, files["meta.xml"])
	assert.Equal(t, "eventID\toccurrenceID\tscientificName\nnight-1\tnight-1-0\tAgrotis puta\nnight-2\tnight-2-0\tAgrotis puta\nnight-2\tnight-2-1\tAgrotis puta\n", files["occurrence.txt"])
	assert.Equal(t, 4, strings.Count(files["event.txt"], "\n"))
	assert.Contains(t, files["measurementorfact.txt"], "forewing length\t14.5\tmm\n")
	assert.Contains(t, files["meta.xml"], `<coreid index="0"/>`)
}

func TestChecklistArchive(t *testing.T) {
	var b bytes.Buffer
	w, err := dwc.NewWriter(&b,
		dwc.Table{RowType: dwc.RowTaxon, Columns: []string{"taxonID", "scientificName", "taxonRank"}, File: "names.txt"},
		dwc.Table{RowType: dwc.RowVernacularName, Columns: []string{"taxonID", "vernacularName", "isPreferredName", "http://example.org/terms/note"}})
	require.NoError(t, err)
	require.NoError(t, w.Write(1, &dwc.VernacularName{TaxonID: "1", VernacularName: "Shuttle-shaped Dart", IsPreferredName: "true"}))
	require.NoError(t, w.Write(0, &dwc.Taxon{TaxonID: "1", ScientificName: "Agrotis puta", TaxonRank: "species"}))
	require.NoError(t, w.Close())
	files := unzip(t, b.Bytes())
	requireValid(t, metaSchema, files["meta.xml"])
	assert.NotContains(t, files["meta.xml"], "eml.xml", "there is no metadata")
	assert.Equal(t, "taxonID\tscientificName\ttaxonRank\n1\tAgrotis puta\tspecies\n", files["names.txt"])
	assert.Equal(t, "taxonID\tvernacularName\tisPreferredName\thttp://example.org/terms/note\n1\tShuttle-shaped Dart\ttrue\t\n", files["vernacularname.txt"])
	assert.Equal(t, []string{"vernacularname.txt: http://example.org/terms/note: This column is no term of Darwin Core."}, faults(t, saved(t, "a.zip", b.Bytes())))
}

// Extensions of more than a few compressed megabytes go by way of a temporary
// file, which does not stay.
func TestLargeExtension(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("TMPDIR", dir)
	core, occurrences, _ := eventTables()
	var b bytes.Buffer
	w, err := dwc.NewWriter(&b, core, occurrences)
	require.NoError(t, err)
	var want strings.Builder
	want.WriteString("eventID\toccurrenceID\tscientificName\n")
	noise := rand.NewChaCha8([32]byte{1})
	bytes128 := make([]byte, 128)
	for i := range 50_000 {
		_, _ = noise.Read(bytes128) // never fails
		row := []string{"e", hex.EncodeToString(bytes128), fmt.Sprint(i)}
		want.WriteString(strings.Join(row, "\t") + "\n")
		require.NoError(t, w.WriteRow(1, row))
	}
	require.NoError(t, w.Close())
	assert.Greater(t, b.Len(), 5<<20, "the test is large enough to need the file")
	assert.True(t, want.String() == unzip(t, b.Bytes())["occurrence.txt"])
	after, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Empty(t, after)
}

func TestWriterRefuses(t *testing.T) {
	occurrence := func(columns ...string) dwc.Table {
		return dwc.Table{RowType: dwc.RowOccurrence, Columns: columns}
	}
	event := dwc.Table{RowType: dwc.RowEvent, Columns: []string{"eventID"}}
	for want, tables := range map[string][]dwc.Table{
		"no column occurrenceID":         {occurrence("scientificName")},
		"no column eventID":              {event, occurrence("occurrenceID")},
		"is no known term":               {occurrence("occurrenceID", "colour")},
		"has the column eventDate twice": {occurrence("occurrenceID", "eventDate", "dwc:eventDate")},
		"cannot be the core":             {{RowType: "http://example.org/Row", Columns: []string{"a"}}},
		"two files of the archive":       {event, {RowType: dwc.RowOccurrence, Columns: []string{"eventID"}, File: "Event.txt"}},
		"cannot be the name":             {{RowType: dwc.RowEvent, Columns: []string{"eventID"}, File: "../event.txt"}},
	} {
		_, err := dwc.NewWriter(io.Discard, tables[0], tables[1:]...)
		assert.ErrorContains(t, err, want)
	}
	w, err := dwc.NewWriter(io.Discard, event)
	require.NoError(t, err)
	assert.ErrorContains(t, w.WriteRow(0, []string{"a", "b"}), "has 1 columns, not 2")
	assert.ErrorContains(t, w.Write(0, &dwc.Occurrence{}), "is for http://rs.tdwg.org/dwc/terms/Event")
	require.NoError(t, w.Close())
	assert.Error(t, w.Close(), "closed twice")
}

type failing struct{ after int }

func (f *failing) Write(p []byte) (int, error) {
	if f.after -= len(p); f.after < 0 {
		return 0, io.ErrShortWrite
	}
	return len(p), nil
}

// However early or late the disk is full, Close says so.
func TestWriterReportsWhatCouldNotBeWritten(t *testing.T) {
	for _, after := range []int{0, 100, 400, 900} {
		w, err := dwc.NewWriter(&failing{after}, dwc.Table{RowType: dwc.RowOccurrence, Columns: []string{"occurrenceID"}})
		require.NoError(t, err)
		w.SetMetadata(sallowmere())
		for i := range 10_000 {
			if err := w.WriteRow(0, []string{fmt.Sprint(i * 7919)}); err != nil {
				break
			}
		}
		assert.Error(t, w.Close(), after)
	}
}

// Python's and RFC 4180's readers take a doubled quote inside an enclosed
// field for one; so does encoding/csv, the outside check here.
func TestFieldsReadBackByAnotherReader(t *testing.T) {
	values := []string{"plain", "", "a\tb", "a\nb", `say "hello"`, `"`, `""`, "🦋 ünï", " lead", "trail ", "a\\tb", "'", "\u00a0", "x\n", "NULL", `\N`}
	var b bytes.Buffer
	w, err := dwc.NewWriter(&b, dwc.Table{RowType: dwc.RowOccurrence, Columns: []string{"occurrenceID", "occurrenceRemarks", "locality"}})
	require.NoError(t, err)
	for i, v := range values {
		require.NoError(t, w.WriteRow(0, []string{fmt.Sprint(i), v, v}))
	}
	require.NoError(t, w.Close())
	r := csv.NewReader(strings.NewReader(unzip(t, b.Bytes())["occurrence.txt"]))
	r.Comma = '\t'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(values)+1)
	for i, v := range values {
		assert.Equal(t, []string{fmt.Sprint(i), v, v}, rows[i+1])
	}
}

func TestUsedColumns(t *testing.T) {
	u := dwc.NewUsed(dwc.RowOccurrence)
	assert.Equal(t, []string{"occurrenceID"}, u.Columns("occurrenceID"))
	u.Add(&dwc.Occurrence{OccurrenceID: "1", Year: "2021", ScientificName: "Agrotis puta"})
	u.Add(&dwc.Occurrence{OccurrenceID: "2", License: "x"})
	assert.Equal(t, []string{"eventID", "occurrenceID", "license", "year", "scientificName"}, u.Columns("eventID", "occurrenceID"))
}

func TestEventOfAnOccurrence(t *testing.T) {
	o := dwc.Occurrence{EventID: "n1", Locality: "Sallowmere Reserve", ScientificName: "Agrotis puta", DecimalLatitude: "52.5", DatasetName: "Moths"}
	assert.Equal(t, dwc.Event{EventID: "n1", Locality: "Sallowmere Reserve", DecimalLatitude: "52.5", DatasetName: "Moths"}, o.Event())
}

func ExampleWriter() {
	records := []dwc.Occurrence{
		{OccurrenceID: "s1", ScientificName: "Agrotis puta", EventDate: "2021-06-12/13"},
		{OccurrenceID: "s2", ScientificName: "Noctua pronuba", IndividualCount: "3"},
	}
	used := dwc.NewUsed(dwc.RowOccurrence)
	for i := range records {
		used.Add(&records[i])
	}
	var archive bytes.Buffer
	w, err := dwc.NewWriter(&archive, dwc.Table{RowType: dwc.RowOccurrence, Columns: used.Columns("occurrenceID")})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range records {
		if err := w.Write(0, &records[i]); err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Println(w.Close(), used.Columns("occurrenceID"))
	// Output: <nil> [occurrenceID individualCount eventDate scientificName]
}

func BenchmarkWriter(b *testing.B) {
	o := fullOccurrence()
	used := dwc.NewUsed(dwc.RowOccurrence)
	used.Add(o)
	w, err := dwc.NewWriter(io.Discard, dwc.Table{RowType: dwc.RowOccurrence, Columns: used.Columns("occurrenceID")})
	require.NoError(b, err)
	i := 0
	for b.Loop() {
		i++
		o.OccurrenceID = fmt.Sprintf("urn:uuid:3f0c9a1e-6a1c-4f0e-9a53-%012x", i*2654435761)
		o.DecimalLatitude = fmt.Sprintf("52.%07d", i*7919%10000000)
		if err := w.Write(0, o); err != nil {
			b.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		b.Fatal(err)
	}
}
