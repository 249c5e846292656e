package convert_test

import (
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// readWith converts a notebook beside a project file and returns the records
// and what the reading was.
func readWith(t *testing.T, name, text, project string) ([]map[string]string, *convert.Result) {
	folder := t.TempDir()
	path, out := filepath.Join(folder, name), filepath.Join(folder, "out")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(project), 0o600))
	result, err := convert.Run(t.Context(), convert.Job{Files: []string{path}, Out: out, Today: today})
	require.NoError(t, err)
	return table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt"), result
}

// What the project file says of a page reaches its records.
func TestFactsOfTheProjectFile(t *testing.T) {
	records, _ := readWith(t, "list.csv", "Date,Species,Count\n12/6/2014,Flame,2\n", `
[[notebook]]
file = "list.csv"
facts = { site = "Old Drove", "grid reference" = "TL4682", recorder = "Ines Calloway" }
`)
	require.Len(t, records, 1)
	assert.Equal(t, "Old Drove", records[0]["locality"])
	assert.Equal(t, "TL4682", records[0]["verbatimCoordinates"])
	assert.Equal(t, "Ines Calloway", records[0]["recordedBy"])
}

// The reading of a page of terms, written to the project file, is the same
// again, and one line of it can be changed.
func TestEntriesOfAPageOfTerms(t *testing.T) {
	page := "occurrenceID\tbasisOfRecord\teventDate\tscientificName\tindividualCount\tlifeStage\tlocality\n" +
		"x1\tHumanObservation\t2019-05-01\tGonepteryx rhamni\t2\tadult\tOld Drove\n" +
		"x2\tHumanObservation\t2019-05-02\tGonepteryx rhamni\t1\tadult\tOld Drove\n"
	plain, result := readWith(t, "terms.tsv", page, "")
	require.Len(t, plain, 2)
	require.Len(t, result.Readings, 1)
	entries := result.Readings[0].Entries
	require.Len(t, entries, 1)
	written := func() string {
		data, err := toml.Marshal(map[string]any{"notebook": entries})
		require.NoError(t, err)
		return string(data)
	}
	again, _ := readWith(t, "terms.tsv", page, written())
	assert.Equal(t, plain, again)

	entries[0].Columns["F"] = "ignored"
	entries[0].Facts = map[string]string{"recorder": "Ines Calloway"}
	entries[0].Skip = []string{"3"}
	changed, _ := readWith(t, "terms.tsv", page, written())
	require.Len(t, changed, 1)
	for _, term := range []string{"eventDate", "scientificName", "individualCount", "locality"} {
		assert.Equal(t, plain[0][term], changed[0][term], term)
	}
	assert.Equal(t, "adult", plain[0]["lifeStage"])
	assert.Empty(t, changed[0]["lifeStage"])
	assert.Equal(t, "Ines Calloway", changed[0]["recordedBy"])
}
