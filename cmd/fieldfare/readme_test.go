package main_test

import (
	"os"
	"os/exec"
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
