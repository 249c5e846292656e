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

// meddler changes the notebook once the first rows of a stage have been seen.
type meddler struct {
	during string
	change func()
	stage  string
	steps  int
}

func (m *meddler) Stage(name string, _ int) { m.stage = name }

func (m *meddler) Step(int) {
	if !strings.HasPrefix(m.stage, m.during) {
		return
	}
	if m.steps++; m.steps == 1 {
		m.change()
	}
}

// TestNotebookThatChangesWhileRead cuts a notebook short, or empties it, while
// it is read. The run says so, and the earlier submission stays as it was.
func TestNotebookThatChangesWhileRead(t *testing.T) {
	lines := strings.SplitAfterN(season, "\n", 3)
	long := lines[0] + strings.Repeat(lines[1], 50_000)
	for _, during := range []string{"Looking through", "Reading"} {
		for _, size := range []int64{0, 1000, int64(len(long)) / 2} {
			path := write(t, "season.csv", long)
			out := t.TempDir()
			earlier := filepath.Join(out, convert.SubmissionFile)
			require.NoError(t, os.WriteFile(earlier, []byte("earlier"), 0o600))
			m := &meddler{during: during, change: func() { assert.NoError(t, os.Truncate(path, size)) }}
			_, err := convert.Run(context.Background(), convert.Job{Files: []string{path}, Out: out, Today: today, Progress: m})
			require.Positive(t, m.steps)
			if assert.Error(t, err, "cut to %d bytes while %s", size, during) {
				var problem *notebook.Problem
				assert.ErrorAs(t, err, &problem)
				data, err := os.ReadFile(earlier)
				require.NoError(t, err)
				assert.Equal(t, "earlier", string(data))
			}
		}
	}
}
