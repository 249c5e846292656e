package compare_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/compare"
	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// submission writes an archive of occurrences.
func submission(t *testing.T, records ...dwc.Occurrence) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "submission.zip")
	file, err := os.Create(path)
	require.NoError(t, err)
	defer file.Close()
	w, err := dwc.NewWriter(file, dwc.Table{RowType: dwc.RowOccurrence, Columns: dwc.Terms()})
	require.NoError(t, err)
	for i := range records {
		require.NoError(t, w.Write(0, &records[i]))
	}
	require.NoError(t, w.Close())
	return path
}

func moth(id, name, count string) dwc.Occurrence {
	return dwc.Occurrence{OccurrenceID: id, ScientificName: name, IndividualCount: count, EventDate: "2021-06-12", Locality: "Sallowmere Reserve"}
}

func TestSubmissions(t *testing.T) {
	same, modified := moth("1", "Agrotis exclamationis", "4"), moth("1", "Agrotis exclamationis", "4")
	modified.Modified = "2024-01-01"
	before := submission(t, same, moth("2", "Noctua pronuba", "1"), moth("3", "Phalera bucephala", "2"))
	after := submission(t, moth("4", "Laothoe populi", "1"), moth("2", "Noctua comes", "3"), modified)
	r, err := compare.Submissions(before, after)
	require.NoError(t, err)
	assert.Equal(t, 1, r.Same, "a date of modification is no change of the record")
	require.Len(t, r.New, 1)
	assert.Equal(t, "4", r.New[0].ID)
	require.Len(t, r.Withdrawn, 1)
	assert.Equal(t, "3", r.Withdrawn[0].ID)
	require.Len(t, r.Changed, 1)
	assert.Equal(t, []compare.TermChange{{Term: "individualCount", Old: "1", New: "3"}, {Term: "scientificName", Old: "Noctua pronuba", New: "Noctua comes"}}, r.Changed[0].Changes)

	var text, json bytes.Buffer
	require.NoError(t, r.WriteText(&text))
	assert.True(t, strings.HasPrefix(text.String(), "1 new, 1 changed, 1 withdrawn, 1 unchanged\n"))
	assert.Contains(t, text.String(), `scientificName: "Noctua pronuba" -> "Noctua comes"`)
	require.NoError(t, r.WriteJSON(&json))
	assert.Contains(t, json.String(), `"unchanged": 1`)
	assert.Equal(t, []string{"2", "Noctua comes", "2021-06-12", "Sallowmere Reserve", "individualCount", "1", "3"}, sheet(t, r, "changed")[1])
}

func sheet(t *testing.T, r *compare.Result, name string) [][]string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, r.WriteWorkbook(&b))
	f, err := excelize.OpenReader(&b)
	require.NoError(t, err)
	rows, err := f.GetRows(name)
	require.NoError(t, err)
	return rows
}

func TestWhatIsWritten(t *testing.T) {
	r := &compare.Result{
		New:       []compare.Record{{ID: "4"}},
		Withdrawn: []compare.Record{{EventID: "n2", What: "nothing found", When: "2021-06-19", Where: "TL4588"}},
		Repeated:  []string{"1", "2"},
	}
	var text bytes.Buffer
	require.NoError(t, r.WriteText(&text))
	assert.Equal(t, `1 new, 0 changed, 1 withdrawn, 0 unchanged
new: not stated, not stated, not stated (4)
withdrawn: nothing found, 2021-06-19, TL4588 (n2)
Take care: the id 1 stands more than once in a submission; only the first of its records was compared.
Take care: the id 2 stands more than once in a submission; only the first of its records was compared.
`, text.String())
	assert.Equal(t, [][]string{{"occurrenceID", "scientificName", "eventDate", "locality", "eventID"}, {"4"}}, sheet(t, r, "new"))
	assert.Equal(t, [][]string{{"occurrenceID", "scientificName", "eventDate", "locality", "term", "old", "new", "eventID"}}, sheet(t, r, "changed"))
	assert.Equal(t, []string{"", "nothing found", "2021-06-19", "TL4588", "n2"}, sheet(t, r, "withdrawn")[1])
	r.New[0].Where = "Row & Drove <N>"
	var json bytes.Buffer
	require.NoError(t, r.WriteJSON(&json))
	assert.Contains(t, json.String(), "Row & Drove <N>", "as a person reads it")
	assert.ErrorIs(t, r.WriteText(full{}), io.ErrShortWrite)
	assert.ErrorIs(t, r.WriteJSON(full{}), io.ErrShortWrite)
	assert.ErrorIs(t, r.WriteWorkbook(full{}), io.ErrShortWrite)
}

// full is a disk with no room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWithdrawn(t *testing.T) {
	nowhere := moth("2", "Noctua pronuba", "1")
	nowhere.Locality, nowhere.VerbatimCoordinates = "", "TL4588"
	path := submission(t, moth("1", "Agrotis exclamationis", "4"), nowhere, moth("3", "Phalera bucephala", "2"), nowhere)
	list, err := compare.Withdrawn(path, func(id compare.Mark) bool { return id != compare.IDMark("2") })
	require.NoError(t, err)
	assert.Equal(t, []compare.Record{{ID: "2", What: "Noctua pronuba", When: "2021-06-12", Where: "TL4588"}}, list)
}

func TestWhatCannotBeCompared(t *testing.T) {
	good := submission(t, moth("1", "Agrotis exclamationis", "4"))
	names := filepath.Join(t.TempDir(), "names.csv")
	require.NoError(t, os.WriteFile(names, []byte("taxonID,scientificName,taxonRank\n1,Noctua pronuba,species\n"), 0o644))
	for _, bad := range []string{filepath.Join(t.TempDir(), "none.zip"), names} {
		_, err := compare.Submissions(bad, good)
		assert.Error(t, err, bad)
		_, err = compare.Submissions(good, bad)
		assert.Error(t, err, bad)
		_, err = compare.Withdrawn(bad, func(compare.Mark) bool { return true })
		assert.Error(t, err, bad)
	}
	_, err := compare.Submissions(names, good)
	assert.ErrorContains(t, err, "there are no occurrences in it")
}

func TestRecordWithoutIDCannotBeCompared(t *testing.T) {
	path := filepath.Join(t.TempDir(), "old.csv")
	require.NoError(t, os.WriteFile(path, []byte("occurrenceID,scientificName\n,Noctua pronuba\n"), 0o644))
	_, err := compare.Submissions(path, path)
	require.ErrorContains(t, err, "occurrenceID")
	require.ErrorContains(t, err, "line 2")
}
