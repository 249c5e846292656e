package project_test

import (
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/project"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A setting that there is not is told with the one that was probably meant.
func TestSettingsThatThereAreNot(t *testing.T) {
	for text, says := range map[string]string{
		"[dataset]\ntitel = \"x\"\n":                `There is "title"`,
		"[list]\ntaxa = [\"x\"]\n":                  `There is "lists"`,
		"[[dataset.creator]]\ngivn = \"Ines\"\n":    `There is "given"`,
		"[[notebook]]\nfile = \"a\"\nheadngs = 2\n": `There is "headings"`,
		"evenings = true\n":                         "It belongs below a line [reading]",
		"title = \"x\"\n":                           "It belongs below a line [dataset]",
		"[dataset]\ncolour = \"x\"\n":               "Check its spelling, or remove the line",
		"[lists]\ntaxa = \"moths.csv\"\n":           "stands in square brackets even if it has one name only",
	} {
		path := filepath.Join(t.TempDir(), "fieldfare.toml")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		_, err := project.Load(path, "")
		assert.ErrorContains(t, err, says, text)
	}
}
