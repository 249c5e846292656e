package stage

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// File writes one file whole or not at all.
func File(path string, write func(io.Writer) error) error {
	temp, err := os.CreateTemp(filepath.Dir(path), Prefix)
	if err != nil {
		return fileError(path, err)
	}
	defer os.Remove(temp.Name())
	if err := write(temp); err != nil {
		temp.Close()
		return fileError(path, err)
	}
	if err := temp.Close(); err != nil {
		return fileError(path, err)
	}
	if err := os.Chmod(temp.Name(), 0o644); err != nil {
		return fileError(path, err)
	}
	if err := os.Rename(temp.Name(), path); err != nil {
		return fileError(path, err)
	}
	return nil
}

// fileError says why a single file could not be written; where it is to go
// instead, its writer knows.
func fileError(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return &Error{path, "you may not write this file, or another program has it open", err}
	case isReadOnly(err):
		return &Error{path, "nothing can be written on this disk", err}
	case isFull(err):
		return &Error{path, "the disk is full", err}
	case errors.Is(err, fs.ErrNotExist), isNoFolder(err):
		return &Error{path, "there is no such folder", err}
	}
	return &Error{path, fmt.Sprintf("the file cannot be written (the system says: %v)", cause(err)), err}
}
