package convert_test

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The map of the package names files that are there, each once.
func TestMapOfThePackage(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	require.NoError(t, err)
	named := map[string]int{}
	for _, file := range regexp.MustCompile(`[a-z_]+\.go`).FindAllString(string(doc), -1) {
		named[file]++
		assert.FileExists(t, file)
	}
	require.NotEmpty(t, named)
	for file, n := range named {
		assert.Equal(t, 1, n, file)
	}
}
