package convert_test

import (
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestDittoAtTheTop: a mark that repeats nothing is asked about once, and its
// answer serves what is read from it.
func TestDittoAtTheTop(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "walks.csv")
	require.NoError(t, os.WriteFile(path, []byte("Date,Species,Count,Site,Grid ref,Recorder\n"+
		"do.,Dark Arches,3,Sallowmere Reserve,TL4881,Ines Calloway\n"+
		"4/7/2004,Silver Y,2,Sallowmere Reserve,TL4881,Ines Calloway\n"), 0o644))
	job := convert.Job{Files: []string{path}, Out: filepath.Join(folder, "out")}
	first := run(t, job)
	assert.Equal(t, 1, first.Summary.Held)
	require.Len(t, first.Questions, 1)
	assert.Equal(t, "ditto-of-nothing", first.Questions[0].Code)
	answer(t, job, map[string]string{"do.": "3/7/2004"})
	last := run(t, job)
	assert.Zero(t, last.Summary.Held)
	assert.Empty(t, last.Questions)
}
