package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNothingReadIsWrittenOver gives places for outputs that are the very files
// to be read. Each is refused before anything is done.
func TestNothingReadIsWrittenOver(t *testing.T) {
	for name, c := range map[string]struct {
		make string // a file in the output folder
		job  convert.Job
		part string
		says string
	}{
		"a notebook":             {make: "records.csv", job: convert.Job{Files: []string{"out/records.csv"}, Formats: []string{"csv"}, Out: "out"}, says: "an output would be written over it"},
		"the only notebook":      {job: convert.Job{Files: []string{"out/submission.zip"}, Out: "out"}, says: "an output would be written over it"},
		"by another path":        {make: "records.csv", job: convert.Job{Files: []string{"out/../out/records.csv"}, Formats: []string{"csv"}, Out: "./out/"}, says: "an output would be written over it"},
		"the earlier submission": {job: convert.Job{Files: []string{"season.csv"}, Against: "out/submission.zip", Out: "out"}, says: "Give another folder after --out"},
		"a taxon list":           {make: "records.csv", job: convert.Job{Files: []string{"season.csv"}, Taxa: []string{"out/records.csv"}, Formats: []string{"csv"}, Out: "out"}, says: "an output would be written over it"},
		"a part":                 {job: convert.Job{Files: []string{"season.csv"}}, part: "season.csv", says: "the part would be written over it"},
		"a part over a list":     {job: convert.Job{Files: []string{"season.csv"}, Taxa: []string{"taxa.csv"}}, part: "./taxa.csv", says: "the part would be written over it"},
		"a part over a letter":   {job: convert.Job{Files: []string{"season.csv"}}, part: "letter.txt", says: "it is no part of a set"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			for file, text := range map[string]string{"season.csv": season, "letter.txt": "Dear Ines", "taxa.csv": "scientificName,taxonRank\nAgrotis exclamationis,species\n"} {
				require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
			}
			run(t, convert.Job{Files: []string{"season.csv"}, Out: "out"})
			if c.make != "" {
				text, err := os.ReadFile("season.csv")
				require.NoError(t, err)
				if len(c.job.Taxa) > 0 {
					text, err = os.ReadFile("taxa.csv")
					require.NoError(t, err)
				}
				require.NoError(t, os.WriteFile(filepath.Join("out", c.make), text, 0o644))
			}
			before, beforeHere := contents(t, "out"), filesHere(t)
			var err error
			c.job.Today = today
			if c.part != "" {
				_, err = convert.ReadPart(context.Background(), c.job, c.part)
			} else {
				_, err = convert.Run(context.Background(), c.job)
			}
			assert.ErrorContains(t, err, c.says)
			assert.Equal(t, before, contents(t, "out"))
			assert.Equal(t, beforeHere, filesHere(t))
		})
	}
}

// filesHere are the plain files of the working folder, name to content.
func filesHere(t *testing.T) map[string]string {
	entries, err := os.ReadDir(".")
	require.NoError(t, err)
	files := map[string]string{}
	for _, e := range entries {
		if e.Type().IsRegular() {
			data, err := os.ReadFile(e.Name())
			require.NoError(t, err)
			files[e.Name()] = string(data)
		}
	}
	return files
}

// TestPartReadAgain: a batch engine may run a task twice.
func TestPartReadAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "season.part")
	for range 2 {
		_, err := convert.ReadPart(context.Background(), convert.Job{Files: []string{write(t, "season.csv", season)}, Today: today}, path)
		require.NoError(t, err)
	}
}
