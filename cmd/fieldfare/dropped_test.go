package main_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const walk = "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n"

// TestDropped: notebooks without a command, as when they are dropped on the
// program's icon, whatever they are called.
func TestDropped(t *testing.T) {
	for _, name := range []string{
		"season.csv", "Tinker's Row 2021 (copy).csv", "Carnet d’été à l’étang.csv", "Cafe\u0301 walks.csv",
		"100% moths & #2; $HOME.csv", "convert.csv", "夜の蛾.csv", "a [b] {c}.csv", " leading.csv",
	} {
		folder := filepath.Join(t.TempDir(), "Été à Sallowmere, no. 2")
		require.NoError(t, os.MkdirAll(folder, 0o755))
		path := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(path, []byte(walk), 0o644))
		r := fieldfare(t, "", path)
		assert.Zero(t, r.status, "%s: %s", name, r.err)
		assert.Contains(t, r.err, "1 occurrence to hand in", name)
		assert.NotContains(t, r.err, "Press Enter", "nobody is there to press it")
		assert.FileExists(t, filepath.Join(folder, "fieldfare-out", "submission.zip"), name)
		assert.FileExists(t, filepath.Join(folder, "fieldfare-out", "queries.xlsx"), name)
	}
}

func TestSeveralDropped(t *testing.T) {
	one := write(t, "walks one.csv", walk)
	other := write(t, "walks two.csv", "Date,Species,Count,Grid ref,Recorder\n13/6/2021,Buff-tip,1,TL4588,Tom Achterberg\n")
	r := fieldfare(t, "", one, other)
	assert.Zero(t, r.status, r.err)
	assert.Contains(t, r.err, "4 rows in 2 notebooks")
	assert.FileExists(t, filepath.Join(filepath.Dir(one), "fieldfare-out", "report.html"), "beside the first")
	assert.NoDirExists(t, filepath.Join(filepath.Dir(other), "fieldfare-out"))
	again := fieldfare(t, "", one, other)
	assert.Zero(t, again.status, "a second time into the same folder: %s", again.err)
}
