package convert_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Against an earlier submission only what is new or changed is written: visits
// without a record and measurements count like records.
func TestAgainstWritesWhatChanged(t *testing.T) {
	folder := t.TempDir()
	notebook := filepath.Join(folder, "visits.csv")
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte("[dataset]\n"+described), 0o644))
	turn := func(text, out, against string) (*convert.Result, string) {
		require.NoError(t, os.WriteFile(notebook, []byte(text), 0o644))
		job := convert.Job{Files: []string{notebook}, Out: filepath.Join(folder, out)}
		if against != "" {
			job.Against = filepath.Join(folder, against, convert.SubmissionFile)
		}
		return run(t, job), job.Out
	}
	turn(visits, "first", "")
	for name, c := range map[string]struct {
		text                           string
		occurrences, events, withdrawn int
	}{
		"nothing":                  {visits, 0, 0, 0},
		"the weather of a visit":   {strings.Replace(visits, ",8,cold", ",8,cold and wet", 1), 0, 2, 0},
		"what was measured there":  {strings.Replace(visits, ",8,cold", ",9,cold", 1), 0, 2, 0},
		"a night's temperature":    {strings.ReplaceAll(visits, `6 hours",11`, `6 hours",12`), 2, 2, 0},
		"a visit that was none":    {strings.Replace(visits, "19/06/2021,22:30,no moths", "\n", 1), 0, 0, 1},
		"a new visit with nothing": {visits + "27/06/2021,,no moths,,Long Drove,TF4912,Tom Achterberg,walk,,,\n", 0, 2, 0},
	} {
		t.Run(name, func(t *testing.T) {
			result, out := turn(c.text, "again", "first")
			assert.Equal(t, []int{c.occurrences, c.events, c.withdrawn}, []int{result.Summary.Occurrences, result.Summary.Events, *result.Summary.Withdrawn})
			valid(t, filepath.Join(out, convert.SubmissionFile))
			list, err := os.ReadFile(filepath.Join(out, convert.WithdrawnFile))
			require.NoError(t, err)
			assert.Len(t, strings.Split(strings.TrimSpace(string(list)), "\n"), 1+c.withdrawn)
		})
	}
}
