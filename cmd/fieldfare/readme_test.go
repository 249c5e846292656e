package main_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The README shows what the demonstration really prints.
func TestREADMEShowsTheDemonstration(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	c := exec.Command(program, "demo")
	c.Dir = t.TempDir()
	said, err := c.CombinedOutput()
	require.NoError(t, err, string(said))
	for line := range strings.Lines(string(said)) {
		if line = strings.TrimRight(line, " \n"); line != "" {
			assert.Contains(t, string(readme), "\n    "+line+"\n")
		}
	}
	for _, command := range []string{"go run ./cmd/fieldfare demo", "go test ./..."} {
		assert.Contains(t, string(readme), "\n    "+command+"\n")
	}
}

// The project file that the README shows can be used as it stands.
func TestREADMEShowsAProjectFile(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, text, found := strings.Cut(string(readme), "\n      [dataset]\n")
	require.True(t, found)
	text, _, found = strings.Cut("[dataset]\n"+text, "\n\n  The demonstration")
	require.True(t, found)
	folder := t.TempDir()
	for name, content := range map[string]string{
		"fieldfare.toml": text,
		"my list.csv":    "Scientific name,English name\nPhalera bucephala,Buff-tip\nPhragmataecia castaneae,Reed Leopard\n",
		"places.csv":     "Name,Also written,Grid reference,Private\nTinker's Row,the garden,TF 491 012,yes\n",
		"people.csv":     "Name,Initials\nInes Calloway,IC\n",
		"season.csv":     "Date,Species,Count,Site\n12/6/2021,Buff-tip,1,Tinker's Row\n13/6/2021,Reed Leopard,1,Tinker's Row\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(content), 0o644))
	}
	said, err := exec.Command(program, "convert", filepath.Join(folder, "season.csv"), "--out", filepath.Join(folder, "out")).CombinedOutput()
	require.NoError(t, err, string(said))
	assert.Contains(t, string(said), "2 occurrences to hand in")
	assert.NotContains(t, string(said), "is on none of the taxon lists")
}
