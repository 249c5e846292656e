package main_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// links makes a link, or skips the test where none can be made.
func link(t *testing.T, to, path string) {
	t.Helper()
	if err := os.Symlink(to, path); err != nil {
		t.Skip("no links can be made here")
	}
}

// TestOutputsBehindLinks: a folder may be a link, and is then written in; an
// output that is a link is replaced, and what it leads to is left alone.
func TestOutputsBehindLinks(t *testing.T) {
	notebook, folder := write(t, "small.csv", oneRow), t.TempDir()
	real := filepath.Join(folder, "real")
	require.NoError(t, os.Mkdir(real, 0o755))
	linked := filepath.Join(folder, "linked")
	link(t, real, linked)
	mine := write(t, "mine.xlsx", "my own workbook")
	link(t, mine, filepath.Join(real, "report.html"))
	r := fieldfare(t, "", "convert", notebook, "--out", linked)
	require.Zero(t, r.status, r.err)
	assert.Len(t, handedIn(t, real), 4)
	to, err := os.Readlink(linked)
	require.NoError(t, err)
	assert.Equal(t, real, to)
	kept, err := os.ReadFile(mine)
	require.NoError(t, err)
	assert.Equal(t, "my own workbook", string(kept))

	nowhere := filepath.Join(folder, "nowhere")
	link(t, filepath.Join(folder, "none"), nowhere)
	r = fieldfare(t, "", "convert", notebook, "--out", nowhere)
	assert.Equal(t, 3, r.status)
	assert.Contains(t, r.err, "this is a link that leads nowhere. Give another name after --out.")
}

// TestNamesOfEveryKind: folders and files may have any names that a system
// takes.
func TestNamesOfEveryKind(t *testing.T) {
	for _, name := range []string{"Tinker’s Row, 2021", "Grüne Eule – 鳥", "100% & more [final] {2}", "#1; $HOME `x`", "-v", "~", "..x", " ends in a dot."} {
		folder := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.Mkdir(folder, 0o755))
		notebook, out := filepath.Join(folder, name+".csv"), filepath.Join(folder, name+" out")
		require.NoError(t, os.WriteFile(notebook, []byte(oneRow), 0o644))
		require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), nil, 0o644))
		for range 2 {
			r := fieldfare(t, "", "convert", notebook, "--out", out)
			require.Zero(t, r.status, "%s: %s", name, r.err)
			assert.Len(t, handedIn(t, out), 4, name)
		}
		assert.Len(t, handedIn(t, folder+string(filepath.Separator)+"."+string(filepath.Separator)+name+" out"), 4)
		part := filepath.Join(folder, name+".part")
		require.Zero(t, fieldfare(t, "", "convert", notebook, "--part", part).status, name)
		require.Zero(t, fieldfare(t, "", "convert", part, "--out", out).status, name)
		changes := filepath.Join(folder, name+".json")
		submission := filepath.Join(out, "submission.zip")
		require.Zero(t, fieldfare(t, "", "compare", submission, submission, "--format", "json", "--out", changes).status, name)
		assert.FileExists(t, changes)
	}
}
