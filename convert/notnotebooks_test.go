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

// A folder of notebooks holds lists, answers and earlier outputs too; they are
// not read as notebooks.
func TestFolderOfNotebooks(t *testing.T) {
	folder, paths := demoNotebooks(t)
	job := convert.Job{Files: []string{folder}, Out: filepath.Join(folder, "handed-in"), Project: filepath.Join(folder, "fieldfare.toml")}
	for range 2 { // the second time with the outputs of the first beside
		result := run(t, job)
		assert.Len(t, result.Summary.Files, len(paths))
	}
	list := filepath.Join(folder, "mylist.csv")
	require.NoError(t, os.WriteFile(list, []byte("Latin name,English name\nNoctua pronuba,Large Yellow Underwing\n"), 0o644))
	job.Taxa = []string{list}
	assert.Len(t, run(t, job).Summary.Files, len(paths))
	job.Files = []string{list}
	assert.Len(t, run(t, job).Summary.Files, 1, "a file that is named alone is read, whatever it is")
}

// A terminal writes *.* out as every file of the folder before the program
// sees it: lists, answers and the project file among them.
func TestEveryFileOfAFolder(t *testing.T) {
	folder, paths := demoNotebooks(t)
	job := convert.Job{Out: folder}
	for range 2 { // the second time with the outputs of the first among them
		all, err := filepath.Glob(filepath.Join(folder, "*.*"))
		require.NoError(t, err)
		require.Greater(t, len(all), len(paths))
		job.Files = all
		result := run(t, job)
		assert.Len(t, result.Summary.Files, len(paths))
		assert.Contains(t, strings.Join(result.Notes, " "), "Passed over")
	}
}
