package convert_test

import (
	"path/filepath"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// stages keeps the length that each stage was said to have.
type stages map[string]int

func (s stages) Stage(name string, steps int) { s[name] = steps }
func (stages) Step(int)                       {}

// The rows of a workbook are known once it has been looked through, so that
// the time left can be told while it is read.
func TestTimeLeftOfAWorkbook(t *testing.T) {
	f := excelize.NewFile()
	require.NoError(t, f.SetSheetRow("Sheet1", "A1", &[]any{"Date", "Species", "Count", "Site"}))
	for i := range 2000 {
		cell, err := excelize.CoordinatesToCellName(1, i+2)
		require.NoError(t, err)
		require.NoError(t, f.SetSheetRow("Sheet1", cell, &[]any{"12/6/2014", "Flame", 1 + i%9, "Old Drove"}))
	}
	path := filepath.Join(t.TempDir(), "season.xlsx")
	require.NoError(t, f.SaveAs(path))
	seen := stages{}
	run(t, convert.Job{Files: []string{path}, Progress: seen})
	assert.Equal(t, -1, seen["Looking through season.xlsx Sheet1"])
	assert.Equal(t, 2001, seen["Reading season.xlsx Sheet1"])
}
