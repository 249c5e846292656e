package convert_test

import (
	"path/filepath"
	"testing"

	"fieldfare/convert"
	"fieldfare/testdata/results"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestPlainRowsLeaveAsAllOthers: rows of which there is nothing to say are
// written in another way than the rest, but not where a full copy is asked for
// too. What leaves is the same, whatever the number of workers.
func TestPlainRowsLeaveAsAllOthers(t *testing.T) {
	notebooks := manyNotebooks(t)
	out := filepath.Join(t.TempDir(), "out")
	result := run(t, convert.Job{Files: notebooks, Out: out, Exact: true})
	require.Greater(t, result.Summary.Fair, 2000)
	require.Greater(t, result.Summary.Query, 5)
	want := results.In(t, out)
	for _, workers := range []int{1, 2, 5} {
		out := filepath.Join(t.TempDir(), "out")
		run(t, convert.Job{Files: notebooks, Out: out, Workers: workers})
		got := results.In(t, out)
		require.Len(t, got, 4)
		for name := range got {
			assert.True(t, want[name] == got[name], "%s, %d workers", name, workers)
		}
	}
}
