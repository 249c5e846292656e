package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// meddler changes the notebook once the first rows have been read.
type meddler struct {
	change func()
	steps  *int
}

func (meddler) Stage(string, int) {}

func (m meddler) Step(int) {
	if *m.steps++; *m.steps == 1 {
		m.change()
	}
}

// TestNotebookThatChangesWhileRead cuts a notebook short, or empties it, while
// it is read. The run says so, and the earlier submission stays as it was.
func TestNotebookThatChangesWhileRead(t *testing.T) {
	lines := strings.SplitAfterN(season, "\n", 3)
	long := lines[0] + strings.Repeat(lines[1], 50_000)
	for _, size := range []int64{0, 1000, int64(len(long)) / 2} {
		path := write(t, "season.csv", long)
		out := t.TempDir()
		earlier := filepath.Join(out, convert.SubmissionFile)
		require.NoError(t, os.WriteFile(earlier, []byte("earlier"), 0o600))
		steps := 0
		_, err := convert.Run(context.Background(), convert.Job{Files: []string{path}, Out: out, Today: today,
			Progress: meddler{func() { assert.NoError(t, os.Truncate(path, size)) }, &steps}})
		require.Positive(t, steps)
		if assert.Error(t, err, "cut to %d bytes", size) {
			var problem *notebook.Problem
			assert.ErrorAs(t, err, &problem)
			data, err := os.ReadFile(earlier)
			require.NoError(t, err)
			assert.Equal(t, "earlier", string(data))
		}
	}
}
