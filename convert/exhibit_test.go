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

// TestNoBlurredNotebookIsNamed: the garden of the demonstration is private,
// and so are the names of its notebooks.
func TestNoBlurredNotebookIsNamed(t *testing.T) {
	folder, paths := demoNotebooks(t)
	out := filepath.Join(folder, "out")
	run(t, convert.Job{Files: paths, Out: out})
	for _, name := range []string{convert.SummaryFile, convert.ReportFile} {
		data, err := os.ReadFile(filepath.Join(out, name))
		require.NoError(t, err)
		text := string(data)
		assert.False(t, strings.Contains(text, "Tinkers Row"), name)
		assert.False(t, strings.Contains(text, "Garden 2021"), name)
		assert.False(t, strings.Contains(text, folder), name)
		assert.True(t, strings.Contains(text, "notebook 1"), name)
		assert.True(t, strings.Contains(text, "butterfly walks 2023.csv"), "%s: nothing in it is blurred", name)
	}
}
