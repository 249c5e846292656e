package stage

import (
	"io"
	"os"
	"path/filepath"
)

// File writes one file whole or not at all.
func File(path string, write func(io.Writer) error) error {
	temp, err := os.CreateTemp(filepath.Dir(path), Prefix)
	if err != nil {
		return writeError(path, err)
	}
	defer os.Remove(temp.Name())
	if err := write(temp); err != nil {
		temp.Close()
		return writeError(path, err)
	}
	if err := temp.Close(); err != nil {
		return writeError(path, err)
	}
	if err := os.Chmod(temp.Name(), 0o644); err != nil {
		return writeError(path, err)
	}
	if err := os.Rename(temp.Name(), path); err != nil {
		return moveError(path, err)
	}
	return nil
}
