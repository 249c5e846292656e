// Package plainfile reads the small files beside the notebooks, such as lists
// and settings, without waiting for ever for one that never ends.
package plainfile

import (
	"errors"
	"io/fs"
	"os"
)

// ErrOdd says that a thing of that name is no ordinary file, but a device, a
// pipe or the like, from which reading may never end.
var ErrOdd = errors.New("it is not an ordinary file. Save it to a file first")

// ErrLarge says that a file is far larger than any of its kind.
var ErrLarge = errors.New("it is far larger than such a file can be. Check that it is the right one")

// Check returns ErrOdd where a path leads to something that is neither a file
// nor a folder; an error of looking is for whoever opens it.
func Check(path string) error {
	if info, err := os.Stat(path); err == nil && !info.IsDir() && !info.Mode().IsRegular() {
		return ErrOdd
	}
	return nil
}

// Read reads a whole file of at most so many bytes. The error is ErrOdd,
// ErrLarge or the system's.
func Read(path string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, &fs.PathError{Op: "read", Path: path, Err: errors.New("is a folder")}
	case !info.Mode().IsRegular():
		return nil, ErrOdd
	case info.Size() > most:
		return nil, ErrLarge
	}
	return os.ReadFile(path)
}

// IsOurs tells whether an error says by itself what to do.
func IsOurs(err error) bool { return errors.Is(err, ErrOdd) || errors.Is(err, ErrLarge) }
