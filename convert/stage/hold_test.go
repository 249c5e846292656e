package stage_test

import (
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"fieldfare/convert/stage"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestHold(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lock")
	release, err := stage.Hold(path)
	require.NoError(t, err)
	_, err = stage.Hold(path)
	require.ErrorIs(t, err, stage.ErrHeld)
	release()
	assert.NoFileExists(t, path, "nothing is left behind")

	require.NoError(t, os.WriteFile(path, nil, 0o644)) // left by a program that was killed
	release, err = stage.Hold(path)
	require.NoError(t, err)
	release()

	release, err = stage.Hold(filepath.Join(t.TempDir(), "no such folder", "lock"))
	require.NoError(t, err, "where nothing can be written, nothing can be lost")
	release()
}

// TestHoldByOneAlone has many take the same thing in turn: two never have it.
func TestHoldByOneAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lock")
	var wait sync.WaitGroup
	var at, turns atomic.Int32
	for range 8 {
		wait.Go(func() {
			for done := 0; done < 50; {
				release, err := stage.Hold(path)
				if err != nil {
					time.Sleep(time.Microsecond)
					continue
				}
				assert.Equal(t, int32(1), at.Add(1))
				at.Add(-1)
				release()
				done++
				turns.Add(1)
			}
		})
	}
	wait.Wait()
	assert.EqualValues(t, 8*50, turns.Load())
}

func TestSeen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.txt")
	none := stage.See(path)
	assert.False(t, none.Changed())
	require.NoError(t, os.WriteFile(path, []byte("a"), 0o644))
	assert.True(t, none.Changed(), "it is there now")
	one := stage.See(path)
	assert.False(t, one.Changed())
	require.NoError(t, os.WriteFile(path, []byte("ab"), 0o644))
	assert.True(t, one.Changed(), "it is longer")
	two := stage.See(path)
	require.NoError(t, os.Chtimes(path, time.Unix(1, 0), time.Unix(1, 0)))
	assert.True(t, two.Changed(), "it was written")
	three := stage.See(path)
	other := path + "2"
	require.NoError(t, os.WriteFile(other, []byte("xy"), 0o644))
	require.NoError(t, os.Chtimes(other, time.Unix(1, 0), time.Unix(1, 0)))
	require.NoError(t, os.Rename(other, path))
	assert.True(t, three.Changed(), "it is another file")
	require.NoError(t, os.Remove(path))
	assert.True(t, three.Changed(), "it is gone")
}
