//go:build !windows

package stage_test

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"fieldfare/convert/stage"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the system says is told as what to do about it, wherever it happens.
func TestErrorsSayWhatToDo(t *testing.T) {
	f, err := stage.New(filepath.Join(t.TempDir(), "out"))
	require.NoError(t, err)
	defer f.Discard()
	for _, c := range []struct {
		system      error
		folder, one string
	}{
		{syscall.EACCES, "you may not write here", "you may not write this file"},
		{syscall.EROFS, "nothing can be written on this disk. Give another", "nothing can be written on this disk"},
		{syscall.ENOTDIR, "a part of this name is a file", "there is no such folder"},
		{syscall.ENOENT, "cannot be written here", "there is no such folder"},
		{syscall.ENOSPC, "the disk is full. Nothing was changed", "the disk is full"},
		{syscall.EDQUOT, "the disk is full", "the disk is full"},
		{syscall.EFBIG, "the disk is full", "the disk is full"},
		{syscall.EIO, "(the system says: input/output error)", "(the system says: input/output error)"},
		{io.ErrShortWrite, "(the system says: short write)", "(the system says: short write)"},
	} {
		for _, wrapped := range []error{c.system, &fs.PathError{Op: "write", Path: "/somewhere", Err: c.system}, &os.LinkError{Op: "rename", Err: c.system}} {
			err := f.WriteError(wrapped)
			assert.ErrorContains(t, err, c.folder)
			assert.ErrorIs(t, err, c.system)
			assert.NotContains(t, err.Error(), "/somewhere")
			assert.Equal(t, err, f.WriteError(err), "a sentence stays as it is")

			path := filepath.Join(t.TempDir(), "a.csv")
			err = stage.File(path, func(io.Writer) error { return wrapped })
			assert.ErrorContains(t, err, c.one)
			assert.ErrorContains(t, err, path)
			assert.ErrorIs(t, err, c.system)
		}
	}
	assert.NoError(t, f.WriteError(nil))
}

func TestFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.csv")
	writing := func(text string, fails error) func(io.Writer) error {
		return func(w io.Writer) error {
			_, err := io.WriteString(w, text)
			return errors.Join(err, fails)
		}
	}
	require.NoError(t, stage.File(path, writing("first", nil)))
	require.NoError(t, stage.File(path, writing("second", nil)))
	require.Error(t, stage.File(path, writing("half wr", syscall.ENOSPC)))
	assert.Equal(t, "second", read(t, path))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, fs.FileMode(0o644), info.Mode(), "others may read it")
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Len(t, left, 1)

	assert.ErrorContains(t, stage.File(filepath.Join(folder, "none", "a.csv"), writing("", nil)), "there is no such folder")
	assert.ErrorContains(t, stage.File(filepath.Join(path, "a.csv"), writing("", nil)), "there is no such folder", "below a file")
	require.NoError(t, os.Mkdir(filepath.Join(folder, "b.csv"), 0o755))
	assert.ErrorContains(t, stage.File(filepath.Join(folder, "b.csv"), writing("", nil)), "this is a folder", "a folder of its name")
}

func TestFolderInPlaceOfAnOutput(t *testing.T) {
	out := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(out, "a.txt"), []byte("earlier"), 0o644))
	require.NoError(t, os.MkdirAll(filepath.Join(out, "b.txt", "mine"), 0o755))
	f, err := stage.New(out)
	require.NoError(t, err)
	defer f.Discard()
	write(t, f, "a.txt", "new")
	write(t, f, "b.txt", "new")
	assert.ErrorContains(t, f.Commit(), "there is a folder of this name where an output belongs")
	assert.Equal(t, "earlier", read(t, filepath.Join(out, "a.txt")))
	assert.DirExists(t, filepath.Join(out, "b.txt", "mine"))
}

// Where an output was not there before, a failed move leaves none.
func TestFailedMoveTakesNewOutputsAway(t *testing.T) {
	out := t.TempDir()
	f, err := stage.New(out)
	require.NoError(t, err)
	defer f.Discard()
	write(t, f, "a.txt", "new")
	write(t, f, "b.txt", "new")
	require.NoError(t, os.Remove(filepath.Join(f.Temp(), "b.txt")))
	assert.ErrorContains(t, f.Commit(), "the earlier outputs are as they were")
	assert.NoFileExists(t, filepath.Join(out, "a.txt"))
	f.Discard()
	left, err := os.ReadDir(out)
	require.NoError(t, err)
	assert.Empty(t, left, "and the next run finds nothing to go on with")
}

// What has no mark may be what another run is about to begin, or may be left
// of one; age tells.
func TestTemporaryThingsWithoutAMark(t *testing.T) {
	out := t.TempDir()
	fresh, old := filepath.Join(out, stage.Prefix+"fresh"), filepath.Join(out, stage.Prefix+"old")
	for _, path := range []string{fresh, old} {
		require.NoError(t, os.Mkdir(path, 0o700))
		require.NoError(t, os.WriteFile(filepath.Join(path, "part"), nil, 0o600))
	}
	longAgo := time.Now().Add(-2 * time.Hour)
	require.NoError(t, os.Chtimes(old, longAgo, longAgo))
	f, err := stage.New(out)
	require.NoError(t, err)
	f.Discard()
	assert.DirExists(t, fresh)
	assert.NoDirExists(t, old)
}

// Outputs that were whole, but for another folder, wait for the next run into
// that one.
func TestCutOffCommitIntoAnotherFolder(t *testing.T) {
	top := t.TempDir()
	temp, theirs := filepath.Join(top, stage.Prefix+"123"), filepath.Join(top, "theirs")
	require.NoError(t, os.Mkdir(temp, 0o700))
	for name, text := range map[string]string{"in-use": "", "for": theirs, "whole": "a.txt", "a.txt": "new"} {
		require.NoError(t, os.WriteFile(filepath.Join(temp, name), []byte(text), 0o644))
	}
	f, err := stage.New(filepath.Join(top, "ours"))
	require.NoError(t, err)
	f.Discard()
	require.DirExists(t, temp)
	require.NoError(t, os.Mkdir(theirs, 0o755))
	f, err = stage.New(theirs)
	require.NoError(t, err)
	f.Discard()
	assert.Equal(t, "new", read(t, filepath.Join(theirs, "a.txt")))
	assert.NoDirExists(t, temp)
}

func TestScratch(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	left := filepath.Join(os.TempDir(), stage.Prefix+"123")
	require.NoError(t, os.Mkdir(left, 0o700))
	for _, name := range []string{"in-use", "for", "rows"} {
		require.NoError(t, os.WriteFile(filepath.Join(left, name), nil, 0o600))
	}
	first, err := stage.Scratch()
	require.NoError(t, err)
	assert.NoDirExists(t, left, "of a run that was cut off")
	second, err := stage.Scratch()
	require.NoError(t, err, "two runs may check at once")
	assert.DirExists(t, first.Temp())
	assert.NotEqual(t, first.Temp(), second.Temp())
	first.Discard()
	second.Discard()
	entries, err := os.ReadDir(os.TempDir())
	require.NoError(t, err)
	assert.Empty(t, entries)

	t.Setenv("TMPDIR", filepath.Join(os.TempDir(), "none"))
	_, err = stage.Scratch()
	assert.ErrorContains(t, err, "cannot be written here")
}
