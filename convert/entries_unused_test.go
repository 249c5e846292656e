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

// A [[notebook]] part whose file's name is misspelt is told of; one for a
// notebook that is only not read this time is not.
func TestPartsOfTheProjectFileForNoNotebook(t *testing.T) {
	path := write(t, "season.csv", season)
	folder := filepath.Dir(path)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "walks.csv"), []byte(season), 0o600))
	settings := filepath.Join(folder, "fieldfare.toml")
	for file, told := range map[string]bool{"season.csv": false, "walks.csv": false, "sesaon.csv": true, "*.csv": false} {
		require.NoError(t, os.WriteFile(settings, []byte("[[notebook]]\nfile = \""+file+"\"\n"), 0o600))
		notes := strings.Join(run(t, convert.Job{Files: []string{path}, Project: settings}).Notes, "\n")
		assert.Equal(t, told, strings.Contains(notes, "there is no notebook of that name"), "%s: %s", file, notes)
	}
}
