package main_test

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every module that the program is built or tested with is listed for
// developers, with its licence.
func TestLicencesAreListed(t *testing.T) {
	mod, err := os.ReadFile("../../go.mod")
	require.NoError(t, err)
	page, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	modules := regexp.MustCompile(`(?m)^\s+(\S+\.\S+/\S+) v\d`).FindAllSubmatch(mod, -1)
	require.NotEmpty(t, modules)
	for _, m := range modules {
		listed := regexp.MustCompile("(?m)^\\| (MIT|BSD|Apache 2.0) \\|.*`" + regexp.QuoteMeta(string(m[1])) + "`")
		assert.Regexp(t, listed, string(page), "add %s and its licence to DEVELOPERS.md", m[1])
	}
	for _, m := range regexp.MustCompile(`(?m)^\s+(\S+\.\S+/\S+) v\S+$`).FindAllSubmatch(mod, -1) {
		why := regexp.MustCompile("(?m)^\\|[^|]*`" + regexp.QuoteMeta(string(m[1])) + "`[^|]*\\| [^|`]")
		assert.Regexp(t, why, string(page), "say in DEVELOPERS.md what %s is for", m[1])
	}
}

// What the page for developers names is there: a path is of the project, or of
// the pipeline's folder.
func TestDevelopersPageNamesWhatIsThere(t *testing.T) {
	page, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	paths := regexp.MustCompile("`([a-z_]+(?:/[a-z_.*]+)+|[a-z_*]+\\.go)`").FindAllSubmatch(page, -1)
	require.NotEmpty(t, paths)
	for _, m := range paths {
		path, found := string(m[1]), false
		if path == "encoding/csv" {
			continue // of the standard library
		}
		for _, folder := range []string{"../..", "../../convert"} {
			there, err := filepath.Glob(filepath.Join(folder, path))
			require.NoError(t, err)
			found = found || len(there) > 0
		}
		assert.True(t, found, path)
	}
}
