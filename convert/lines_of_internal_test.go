package convert

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLinesOf(t *testing.T) {
	path := filepath.Join(t.TempDir(), "Café walks.CSV")
	require.NoError(t, os.WriteFile(path, []byte(strings.Repeat("a,b\r\n", 70000)), 0o644))
	assert.Equal(t, 70000, linesOf(path))
	assert.Equal(t, -1, linesOf("season.xlsx"))
	assert.Equal(t, -1, linesOf("-"))
	assert.Equal(t, -1, linesOf(filepath.Join(t.TempDir(), "none.csv")))
}
