package plainfile_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/plainfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRead(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.csv")
	require.NoError(t, os.WriteFile(path, []byte("0123456789"), 0o644))
	text, err := plainfile.Read(path, 10)
	require.NoError(t, err)
	assert.Equal(t, "0123456789", string(text))
	_, err = plainfile.Read(path, 9)
	assert.ErrorIs(t, err, plainfile.ErrLarge)
	assert.True(t, plainfile.IsOurs(err))
	_, err = plainfile.Read(filepath.Join(folder, "none"), 10)
	assert.ErrorIs(t, err, fs.ErrNotExist)
	assert.False(t, plainfile.IsOurs(err))
	_, err = plainfile.Read(folder, 10)
	assert.Error(t, err)
	assert.NoError(t, plainfile.Check(path))
	assert.NoError(t, plainfile.Check(folder))
	assert.NoError(t, plainfile.Check(filepath.Join(folder, "none")))
}

// A device has no end.
func TestReadOfADevice(t *testing.T) {
	const endless = "/dev/zero"
	if _, err := os.Stat(endless); err != nil {
		t.Skip("there is no such device here")
	}
	_, err := plainfile.Read(endless, 1<<20)
	assert.ErrorIs(t, err, plainfile.ErrOdd)
	assert.ErrorIs(t, plainfile.Check(endless), plainfile.ErrOdd)
}
