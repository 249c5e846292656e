package dwc_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

// faults reads an archive through.
func faults(t testing.TB, path string) []string {
	t.Helper()
	var all []string
	require.NoError(t, dwc.ValidateArchive(path, func(f dwc.ArchiveFault) { all = append(all, f.String()) }))
	return all
}

func TestWrittenArchivesAreValid(t *testing.T) {
	assert.Empty(t, faults(t, saved(t, "a.zip", eventArchive(t, 10))))
	assert.Empty(t, faults(t, occurrenceArchive(t, fullOccurrence())))
}

func TestValidateFindsWhatIsWrong(t *testing.T) {
	var b bytes.Buffer
	core, occurrences, measurements := eventTables()
	occurrences.Columns = append(occurrences.Columns, "month", "http://example.org/lamp")
	w, err := dwc.NewWriter(&b, core, occurrences, measurements)
	require.NoError(t, err)
	for table, rows := range [][]string{
		{"n1,2021-06-12,light", "n2,12/6/21,light", "n1,2021-06-14,sugar", ",2021-06-15,light"},
		{"n1,o1,Agrotis puta,6,", "n1,o1,Noctua pronuba,6,", "n9,o2,Agrotis puta,June,", ",o3,Agrotis puta,,", "n2,,Agrotis puta,,"},
		{"n1,o1,forewing,14,mm", "n2,o7,forewing,14,mm", "n3,,temperature,9,°C"},
	} {
		for _, row := range rows {
			require.NoError(t, w.WriteRow(table, strings.Split(row, ",")))
		}
	}
	require.NoError(t, w.Close())
	assert.Equal(t, []string{
		"event.txt, line 3: eventDate: “12/6/21” is no date or interval as ISO 8601 writes it, such as 2021-06-12 or 2021-06-12/2021-06-13.",
		"event.txt, line 4: eventID: The id “n1” was there before, in line 2: an id must be used once only.",
		"event.txt, line 5: eventID: There is no eventID: every record needs one.",
		"occurrence.txt: http://example.org/lamp: This column is no term of Darwin Core.",
		"occurrence.txt, line 3: occurrenceID: The id “o1” was there before, in line 2: an id must be used once only.",
		"occurrence.txt, line 4: eventID: The row belongs to “n9”, which the core table does not have.",
		"occurrence.txt, line 4: month: “June” is no month: a month is a whole number from 1 to 12.",
		"occurrence.txt, line 5: eventID: The row does not say which record it belongs to.",
		"occurrence.txt, line 6: occurrenceID: There is no occurrenceID: every record needs one.",
		"measurementorfact.txt, line 3: occurrenceID: The measurement is of the occurrence “o7”, which the archive does not have.",
		"measurementorfact.txt, line 4: eventID: The row belongs to “n3”, which the core table does not have.",
	}, faults(t, saved(t, "a.zip", b.Bytes())))
}

func TestValidateReportsNotesAndRows(t *testing.T) {
	found := faults(t, saved(t, "r.csv", []byte("occurrenceid,scientificName,colour\na1,Agrotis puta,brown\na2,Noctua pronuba\na3,x,y,z\n")))
	assert.Equal(t, []string{
		"r.csv, line 1: The heading “occurrenceid” was read as occurrenceID.",
		"r.csv, line 1: It is not said which term the column “colour” is; its values go by that heading.",
		"r.csv, line 3: The row has 2 values where the table has 3 columns; the missing ones were taken for empty.",
		"r.csv, line 4: The row has 4 values where the table has 3 columns; left out was “z”.",
	}, found)
	found = faults(t, zipped(t, map[string]string{
		"meta.xml": meta("", `<files><location>o.txt</location></files><id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventID"/>`),
		"o.txt":    "a1,n1\na2,n2\na1,n3\n",
	}))
	assert.Equal(t, []string{"o.txt, line 3: occurrenceID: The id “a1” was there before, in line 1: an id must be used once only."}, found)
	assert.Error(t, dwc.ValidateArchive("no such archive", nil))
	assert.Error(t, dwc.ValidateArchive(zipped(t, map[string]string{
		"meta.xml": meta("", three("o.txt")), "o.txt": "a1,x,y\n", "eml.xml": "<eml>",
	}), nil), "the metadata cannot be read")
}

func ExampleValidateArchive() {
	err := dwc.ValidateArchive("submission.zip", func(f dwc.ArchiveFault) { fmt.Println(f) })
	fmt.Println(err)
	// Output: submission.zip: There is no such file or folder.
}
