package convert_test

import (
	"os"
	"path/filepath"
	"strings"
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
	path := filepath.Join(filepath.Dir(notebooks[0]), "habitats.csv")
	require.NoError(t, os.WriteFile(path, []byte("Date,Species,Count,Site,Grid ref,Recorder,Method,Habitat\n"+
		"12/06/2021,Heart and Dart,3,Long Drove,TL4588,Ines Calloway,light trap,\n"+
		"12/06/2021,Buff-tip,2,Long Drove,TL4588,Ines Calloway,light trap,carr\n"+
		"15/06/2021,Heart and Dart,3,Long Drove,TL4588,Ines Calloway,light trap,reedbed\n"+
		"15/06/2021,Buff-tip,2,Long Drove,TL4588,Ines Calloway,light trap,carr\n"), 0o644))
	notebooks = append(notebooks, path)
	out := filepath.Join(t.TempDir(), "out")
	result := run(t, convert.Job{Files: notebooks, Out: out, Exact: true})
	require.Greater(t, result.Summary.Fair, 2000)
	require.Greater(t, result.Summary.Query, 5)
	require.Contains(t, strings.Join(result.Notes, " "), "On 2 visits the weather, field notes or habitat")
	want := results.In(t, out)
	for _, workers := range []int{1, 2, 5} {
		out := filepath.Join(t.TempDir(), "out")
		assert.Equal(t, result.Notes, run(t, convert.Job{Files: notebooks, Out: out, Workers: workers}).Notes)
		got := results.In(t, out)
		require.Len(t, got, 4)
		for name := range got {
			assert.True(t, want[name] == got[name], "%s, %d workers", name, workers)
		}
	}
}
