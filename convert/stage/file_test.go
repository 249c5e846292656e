package stage_test

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"sync"
	"testing"

	"fieldfare/convert/stage"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func text(s string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, s)
		return err
	}
}

func TestFileWholeOrNotAtAll(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "Grüne Eule, 2021")
	require.NoError(t, os.Mkdir(folder, 0o755))
	path := filepath.Join(folder, "a b.txt")
	require.NoError(t, stage.File(path, text("earlier")))
	broken := errors.New("broken")
	err := stage.File(path, func(w io.Writer) error {
		io.WriteString(w, "half wr")
		return broken
	})
	require.ErrorIs(t, err, broken)
	ctx, cancel := context.WithCancel(context.Background())
	err = stage.File(path, func(w io.Writer) error {
		w = stage.Until(ctx, w)
		require.NoError(t, text("half wr")(w))
		cancel()
		return text("itten")(w)
	})
	require.ErrorIs(t, err, context.Canceled)
	pending, err := stage.Prepare(path, text("given up"))
	require.NoError(t, err)
	pending.Discard()
	assert.Equal(t, "earlier", read(t, path))
	require.Error(t, stage.NewFile(path, text("new")))
	assert.Equal(t, "earlier", read(t, path))
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Len(t, left, 1, "nothing is left beside it")
}

func TestFileSaysWhyNot(t *testing.T) {
	folder := t.TempDir()
	for path, says := range map[string]string{
		folder:                                  "this is a folder",
		filepath.Join(folder, "none", "a.txt"):  "there is no such folder",
		filepath.Join(folder, "a.txt", "b.txt"): "there is no such folder",
	} {
		require.NoError(t, stage.File(filepath.Join(folder, "a.txt"), text("a file")))
		err := stage.File(path, text("x"))
		assert.ErrorContains(t, err, says, path)
	}
}

// TestFileLeftHalfWritten: what a run that was killed has left of a single file
// is cleared away by the next at once; what another is writing at that moment,
// or has whole and not yet in its place, is not.
func TestFileLeftHalfWritten(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("an open file cannot be moved there, so age alone tells")
	}
	folder := t.TempDir()
	left, theirs := filepath.Join(folder, stage.Prefix+"123"), filepath.Join(folder, stage.Prefix+"list.txt")
	for _, path := range []string{left, theirs} {
		require.NoError(t, os.WriteFile(path, []byte("half wr"), 0o600))
	}
	path := filepath.Join(folder, "a.txt")
	err := stage.File(path, func(w io.Writer) error {
		require.NoError(t, stage.File(filepath.Join(folder, "b.txt"), text("b")))
		return text("a")(w)
	})
	require.NoError(t, err)
	pending, err := stage.Prepare(path, text("newer"))
	require.NoError(t, err)
	require.NoError(t, stage.File(filepath.Join(folder, "c.txt"), text("c")))
	require.NoError(t, pending.Commit())
	assert.Equal(t, "newer", read(t, path))
	assert.Equal(t, "b", read(t, filepath.Join(folder, "b.txt")))
	assert.NoFileExists(t, left)
	assert.FileExists(t, theirs, "a file of somebody's own that is named likewise")
}

// TestFilesAtOnce has many write into one folder: none takes away what another
// is writing.
func TestFilesAtOnce(t *testing.T) {
	folder := t.TempDir()
	var wait sync.WaitGroup
	for i := range 8 {
		name := filepath.Join(folder, strconv.Itoa(i))
		wait.Go(func() {
			for range 50 {
				assert.NoError(t, stage.File(name, text(name)))
			}
		})
	}
	wait.Wait()
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Len(t, left, 8)
}

// TestFileBehindALink: whoever keeps a file elsewhere and a link here finds it
// changed there, and the link as it was.
func TestFileBehindALink(t *testing.T) {
	folder, elsewhere := t.TempDir(), t.TempDir()
	path, kept := filepath.Join(folder, "answers.csv"), filepath.Join(elsewhere, "kept.csv")
	require.NoError(t, os.WriteFile(kept, []byte("earlier"), 0o644))
	if err := os.Symlink(kept, path); err != nil {
		t.Skip("no links can be made here")
	}
	require.NoError(t, stage.File(path, text("new")))
	assert.Equal(t, "new", read(t, kept))
	to, err := os.Readlink(path)
	require.NoError(t, err)
	assert.Equal(t, kept, to)
}
