package main_test

import (
	"os"
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
}
