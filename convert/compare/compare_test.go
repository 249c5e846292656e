package compare_test

import (
	"bytes"
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

	var text, json, book bytes.Buffer
	require.NoError(t, r.WriteText(&text))
	assert.True(t, strings.HasPrefix(text.String(), "1 new, 1 changed, 1 withdrawn, 1 unchanged\n"))
	assert.Contains(t, text.String(), `scientificName: "Noctua pronuba" -> "Noctua comes"`)
	require.NoError(t, r.WriteJSON(&json))
	assert.Contains(t, json.String(), `"unchanged": 1`)
	require.NoError(t, r.WriteWorkbook(&book))
	f, err := excelize.OpenReader(&book)
	require.NoError(t, err)
	rows, err := f.GetRows("changed")
	require.NoError(t, err)
	assert.Equal(t, []string{"2", "Noctua comes", "2021-06-12", "Sallowmere Reserve", "individualCount", "1", "3"}, rows[1])
}

func TestRecordWithoutIDCannotBeCompared(t *testing.T) {
	path := filepath.Join(t.TempDir(), "old.csv")
	require.NoError(t, os.WriteFile(path, []byte("occurrenceID,scientificName\n,Noctua pronuba\n"), 0o644))
	_, err := compare.Submissions(path, path)
	require.ErrorContains(t, err, "occurrenceID")
	require.ErrorContains(t, err, "line 2")
}
