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
	write(t, f, "b.txt", "new")
	require.NoError(t, os.Remove(filepath.Join(f.Temp(), "b.txt"))) // so that its move must fail
	require.Error(t, f.Commit())
	assert.Equal(t, "earlier", read(t, filepath.Join(out, "a.txt")))
	assert.NoFileExists(t, filepath.Join(out, "b.txt"))
}

// TestCutOffCommit: the program ended between two moves. The next run puts the
// rest in its place, before it writes anything itself.
func TestCutOffCommit(t *testing.T) {
	for _, moved := range []int{0, 1, 2} {
		out := t.TempDir()
		temp := filepath.Join(out, stage.Prefix+"123")
		require.NoError(t, os.Mkdir(temp, 0o700))
		for i, name := range []string{"a.txt", "b.txt"} {
			require.NoError(t, os.WriteFile(filepath.Join(out, name), []byte("earlier"), 0o644))
			to := filepath.Join(temp, name)
			if i < moved {
				to = filepath.Join(out, name)
			}
			require.NoError(t, os.WriteFile(to, []byte("new"), 0o644))
		}
		for name, text := range map[string]string{"in-use": "", "for": out, "whole": "a.txt\nb.txt"} {
			require.NoError(t, os.WriteFile(filepath.Join(temp, name), []byte(text), 0o644))
		}
		f, err := stage.New(out)
		require.NoError(t, err)
		assert.Equal(t, "new", read(t, filepath.Join(out, "a.txt")), "%d moved", moved)
		assert.Equal(t, "new", read(t, filepath.Join(out, "b.txt")), "%d moved", moved)
		assert.NoDirExists(t, temp)
		f.Discard()
		left, err := os.ReadDir(out)
		require.NoError(t, err)
		assert.Len(t, left, 2)
	}
}

// TestCutOffWriting: the program ended before its outputs were whole. The next
// run clears them away and leaves the earlier ones.
func TestCutOffWriting(t *testing.T) {
	out := filepath.Join(t.TempDir(), "a [b]*") // no wildcard
	require.NoError(t, os.Mkdir(out, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(out, "a.txt"), []byte("earlier"), 0o644))
	for _, folder := range []string{out, filepath.Dir(out)} {
		temp := filepath.Join(folder, stage.Prefix+"123")
		require.NoError(t, os.Mkdir(temp, 0o700))
		for name, text := range map[string]string{"in-use": "", "for": out, "a.txt": "half wr"} {
			require.NoError(t, os.WriteFile(filepath.Join(temp, name), []byte(text), 0o644))
		}
	}
	f, err := stage.New(out)
	require.NoError(t, err)
	f.Discard()
	assert.Equal(t, "earlier", read(t, filepath.Join(out, "a.txt")))
	left, err := os.ReadDir(filepath.Dir(out))
	require.NoError(t, err)
	assert.Len(t, left, 1)
}

func TestTwoRunsInOneFolder(t *testing.T) {
	top := t.TempDir()
	for _, out := range []string{filepath.Join(top, "new"), t.TempDir()} {
		first, err := stage.New(out)
		require.NoError(t, err)
		_, err = stage.New(out)
		require.ErrorContains(t, err, "another run is writing into this folder at this moment")
		other, err := stage.New(filepath.Join(top, "other"))
		require.NoError(t, err, "into another folder beside it")
		other.Discard()
		write(t, first, "a.txt", "first")
		require.NoError(t, first.Commit())
		again, err := stage.New(out)
		require.NoError(t, err, "once it has ended")
		again.Discard()
		assert.Equal(t, "first", read(t, filepath.Join(out, "a.txt")))
	}
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

// TestScratchBesideOneThatBegins: another run has made its folder, but not said
// yet what it is for.
func TestScratchBesideOneThatBegins(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	first, err := stage.Scratch()
	require.NoError(t, err)
	defer first.Discard()
	require.NoError(t, os.Truncate(filepath.Join(first.Temp(), "for"), 0))
	second, err := stage.Scratch()
	require.NoError(t, err)
	second.Discard()
	assert.DirExists(t, first.Temp())
}

func TestFileInTheWay(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	_, err := stage.New(path)
	require.ErrorContains(t, err, "the outputs need a folder")
}
