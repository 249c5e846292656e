package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestLimitsOfTheProjectFile refuses an ordinary notebook under a limit that
// is too low for it, and reads it under one that is just high enough.
func TestLimitsOfTheProjectFile(t *testing.T) {
	long := strings.Replace(season, "light trap,\n", "light trap,"+strings.Repeat("rain ", 60_000)+"\n", 1)
	for _, c := range []struct{ low, enough string }{
		{"columns = 7", "columns = 8"},
		{"cell_bytes = 200000", "cell_bytes = 300000"},
		{"row_bytes = 100000", "row_bytes = 400000"},
	} {
		path := write(t, "season.csv", long)
		project := filepath.Join(filepath.Dir(path), "fieldfare.toml")
		require.NoError(t, os.WriteFile(project, []byte("[limits]\n"+c.low+"\n"), 0o600))
		_, err := convert.Run(context.Background(), convert.Job{Files: []string{path}, Today: today})
		if assert.Error(t, err, c.low) {
			assert.Contains(t, err.Error(), "raise the limits in the project file", c.low)
		}
		require.NoError(t, os.WriteFile(project, []byte("[limits]\n"+c.enough+"\n"), 0o600))
		result := run(t, convert.Job{Files: []string{path}})
		assert.Equal(t, 3, result.Summary.Fair, c.enough)
	}
}
