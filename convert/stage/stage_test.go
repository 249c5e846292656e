package stage_test

import (
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/stage"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func write(t *testing.T, f *stage.Folder, name, text string) {
	t.Helper()
	file, err := f.Create(name)
	require.NoError(t, err)
	_, err = file.WriteString(text)
	require.NoError(t, err)
	require.NoError(t, file.Close())
}

func read(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(b)
}

func TestOutputsAppearTogether(t *testing.T) {
	out := filepath.Join(t.TempDir(), "handed in", "2021")
	f, err := stage.New(out)
	require.NoError(t, err)
	write(t, f, "a.txt", "first")
	assert.NoDirExists(t, out, "nothing may be seen before the end")
	require.NoError(t, f.Commit())
	assert.Equal(t, "first", read(t, filepath.Join(out, "a.txt")))
	left, _ := filepath.Glob(filepath.Join(out, "..", stage.Prefix+"*"))
	assert.Empty(t, left)
}

func TestDiscardLeavesEarlierOutputs(t *testing.T) {
	out := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(out, "a.txt"), []byte("earlier"), 0o644))
	f, err := stage.New(out)
	require.NoError(t, err)
	write(t, f, "a.txt", "half wr")
	f.Discard()
	assert.Equal(t, "earlier", read(t, filepath.Join(out, "a.txt")))
	entries, err := os.ReadDir(out)
	require.NoError(t, err)
	assert.Len(t, entries, 1)
}

func TestFailedMovePutsEverythingBack(t *testing.T) {
	out := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(out, "a.txt"), []byte("earlier"), 0o644))
	f, err := stage.New(out)
	require.NoError(t, err)
	defer f.Discard()
	write(t, f, "a.txt", "new")
	f.Path("b.txt") // promised, never written: its move must fail
	require.Error(t, f.Commit())
	assert.Equal(t, "earlier", read(t, filepath.Join(out, "a.txt")))
	assert.NoFileExists(t, filepath.Join(out, "b.txt"))
}

func TestCommitKeepsForeignFiles(t *testing.T) {
	out := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(out, "mine.txt"), []byte("mine"), 0o644))
	f, err := stage.New(out)
	require.NoError(t, err)
	write(t, f, "a.txt", "new")
	require.NoError(t, f.Commit())
	assert.Equal(t, "mine", read(t, filepath.Join(out, "mine.txt")))
}

func TestFileInTheWay(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	_, err := stage.New(path)
	require.ErrorContains(t, err, "the outputs need a folder")
}
