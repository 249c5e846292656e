package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nextYear hands two notebooks in, and returns their folder and the submission.
func nextYear(t *testing.T) (folder, first string) {
	t.Helper()
	folder = t.TempDir()
	for name, text := range map[string]string{
		"fieldfare.toml": "[dataset]\n" + described,
		"a.csv":          "Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Heart and Dart,12,Carr Edge,TL4588,Ines Calloway\n13/6/2021,Buff-tip,3,Carr Edge,TL4588,Ines Calloway\n",
		"b.csv":          "Date,Species,Count,Site,Grid ref,Recorder\n14/6/2021,Buff Ermine,1,Carr Edge,TL4588,Ines Calloway\n15/6/2021,Flame,2,Carr Edge,TL4588,Ines Calloway\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	out := filepath.Join(folder, "2021")
	run(t, convert.Job{Files: []string{filepath.Join(folder, "a.csv"), filepath.Join(folder, "b.csv")}, Out: out})
	return folder, filepath.Join(out, convert.SubmissionFile)
}

// withdrawnOf are the records that a run lists as withdrawn.
func withdrawnOf(t *testing.T, out string) []string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(out, convert.WithdrawnFile))
	require.NoError(t, err)
	return strings.Split(strings.TrimSpace(string(data)), "\n")[1:]
}

// TestNotebookNotReadIsNotWithdrawn: who gives only the new year's notebook
// withdraws nothing of the others.
func TestNotebookNotReadIsNotWithdrawn(t *testing.T) {
	folder, first := nextYear(t)
	later := filepath.Join(folder, "c.csv")
	require.NoError(t, os.WriteFile(later, []byte("Date,Species,Count,Site,Grid ref,Recorder\n12/6/2022,Flame,1,Carr Edge,TL4588,Ines Calloway\n"), 0o644))
	out := filepath.Join(folder, "2022")
	result := run(t, convert.Job{Files: []string{later}, Out: out, Against: first})
	assert.Empty(t, withdrawnOf(t, out))
	assert.Contains(t, strings.Join(result.Notes, "\n"), "Of submission.zip 4 records are from notebooks that were not read (a.csv; b.csv): not withdrawn.")

	// One that was read and has lost its rows is another matter.
	require.NoError(t, os.WriteFile(filepath.Join(folder, "b.csv"), []byte("Date,Species,Count,Site,Grid ref,Recorder\n"), 0o644))
	run(t, convert.Job{Files: []string{later, filepath.Join(folder, "b.csv")}, Out: out, Against: first})
	assert.Len(t, withdrawnOf(t, out), 2)

	// Without the ledger nobody knows which notebook a record is of.
	require.NoError(t, os.Remove(filepath.Join(folder, "fieldfare-ledger.tsv")))
	result = run(t, convert.Job{Files: []string{later}, Out: out, Against: first})
	assert.Len(t, withdrawnOf(t, out), 4)
	assert.Contains(t, strings.Join(result.Notes, "\n"), "withdrawn.csv lists 4 of the 4 records of submission.zip. Were all notebooks given?")
}

// TestHeldCorrectionIsNotWithdrawn: a record that was corrected into something
// that must be asked about is neither withdrawn nor, once answered, another.
func TestHeldCorrectionIsNotWithdrawn(t *testing.T) {
	folder, first := nextYear(t)
	notebook := filepath.Join(folder, "a.csv")
	text, err := os.ReadFile(notebook)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(notebook, []byte(strings.Replace(string(text), "Buff-tip", "Wonder of the Fen", 1)), 0o644))
	job := convert.Job{Files: []string{notebook, filepath.Join(folder, "b.csv")}, Out: filepath.Join(folder, "2022"), Against: first}
	result := run(t, job)
	require.Equal(t, 1, result.Summary.Held)
	assert.Empty(t, withdrawnOf(t, job.Out))
	assert.Contains(t, strings.Join(result.Notes, "\n"), "Of submission.zip 1 record is held at present: not withdrawn")

	answer(t, job, map[string]string{"Wonder of the Fen": "Flame Shoulder"})
	result = run(t, job)
	assert.Zero(t, result.Summary.Held)
	assert.Empty(t, withdrawnOf(t, job.Out))
	diff := diff(t, first, filepath.Join(job.Out, convert.SubmissionFile))
	assert.Empty(t, diff.New)
	require.Len(t, diff.Changed, 1)
	assert.Equal(t, "Ochropleura plecta", diff.Changed[0].What)
}

// TestChangesAreNoSubmissionToCompareWith: what holds only the changes says so,
// and is not taken for the whole.
func TestChangesAreNoSubmissionToCompareWith(t *testing.T) {
	folder, first := nextYear(t)
	files := []string{filepath.Join(folder, "a.csv"), filepath.Join(folder, "b.csv")}
	changes := filepath.Join(folder, "changes", convert.SubmissionFile)
	run(t, convert.Job{Files: files, Out: filepath.Dir(changes), Against: first})
	valid(t, changes)
	diff, err := compare.Submissions(first, changes)
	require.NoError(t, err)
	assert.True(t, diff.ChangesOnly)
	assert.Empty(t, diff.Withdrawn)
	_, err = convert.Run(context.Background(), convert.Job{Files: files, Out: filepath.Join(folder, "next"), Against: changes, Today: today})
	assert.ErrorContains(t, err, "holds only what was new or changed since an earlier submission")
	assert.NotContains(t, err.Error(), "the system says")
}
