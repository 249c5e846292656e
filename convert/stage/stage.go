// Package stage makes a run's outputs appear whole or not at all: they are
// written to a temporary folder beside the wanted one and moved in together
// at the end.
package stage

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
)

// Prefix begins the name of every temporary folder, so that a left-over one
// (after a power cut) can be told and removed.
const Prefix = ".fieldfare-"

// Error says why outputs could not be written, in a sentence for a volunteer.
type Error struct {
	Path    string
	Problem string
	Err     error
}

func (e *Error) Error() string { return e.Path + ": " + e.Problem }

// Unwrap returns the system's own error.
func (e *Error) Unwrap() error { return e.Err }

// Folder is an output folder in the making.
type Folder struct {
	final string
	temp  string
	names map[string]bool
}

// New prepares to write into the folder final, which need not exist yet. The
// caller must call Discard at the end; after a Commit it does nothing more.
func New(final string) (*Folder, error) {
	final, err := filepath.Abs(final)
	if err != nil {
		return nil, &Error{final, "this is no usable folder name", err}
	}
	if info, err := os.Stat(final); err == nil && !info.IsDir() {
		return nil, &Error{final, "this is a file, and the outputs need a folder. Give another name after --out", nil}
	}
	parent := filepath.Dir(final)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return nil, writeError(parent, err)
	}
	// Inside an existing folder where it can be, since the folder above may
	// not be ours to write in.
	if info, err := os.Stat(final); err == nil && info.IsDir() {
		parent = final
	}
	temp, err := os.MkdirTemp(parent, Prefix)
	if err != nil {
		return nil, writeError(parent, err)
	}
	return &Folder{final: final, temp: temp, names: map[string]bool{}}, nil
}

// Temp returns the temporary folder, for work files that are not outputs.
func (f *Folder) Temp() string { return f.temp }

// Create opens an output for writing. Name is a plain file name.
func (f *Folder) Create(name string) (*os.File, error) {
	file, err := os.Create(filepath.Join(f.temp, name))
	if err != nil {
		return nil, writeError(f.final, err)
	}
	f.names[name] = true
	return file, nil
}

// Path registers an output that the caller writes itself and returns where.
func (f *Folder) Path(name string) string {
	f.names[name] = true
	return filepath.Join(f.temp, name)
}

// Commit moves every output into the final folder. Where that fails for one,
// all are put back as they were.
func (f *Folder) Commit() error {
	if err := os.MkdirAll(f.final, 0o755); err != nil {
		return writeError(f.final, err)
	}
	old, err := os.MkdirTemp(f.temp, "old-")
	if err != nil {
		return writeError(f.final, err)
	}
	names := make([]string, 0, len(f.names))
	for name := range f.names {
		names = append(names, name)
	}
	sort.Strings(names)
	var undo []func()
	rollBack := func() {
		for i := len(undo) - 1; i >= 0; i-- {
			undo[i]()
		}
	}
	for _, name := range names {
		from, to, kept := filepath.Join(f.temp, name), filepath.Join(f.final, name), filepath.Join(old, name)
		if info, err := os.Lstat(to); err == nil && info.IsDir() {
			// Whatever it holds is not ours to clear away.
			rollBack()
			return &Error{to, "there is a folder of this name where an output belongs; the earlier outputs are as they were. Rename it, or give another folder after --out", nil}
		}
		switch err := os.Rename(to, kept); {
		case err == nil:
			undo = append(undo, func() { os.Rename(kept, to) })
		case !errors.Is(err, fs.ErrNotExist):
			rollBack()
			return moveError(to, err)
		}
		if err := os.Rename(from, to); err != nil {
			rollBack()
			return moveError(to, err)
		}
		undo = append(undo, func() { os.Rename(to, from) })
	}
	f.Discard()
	return nil
}

// Discard removes the temporary folder and all that is still in it.
func (f *Folder) Discard() { os.RemoveAll(f.temp) }

func writeError(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return &Error{path, "you may not write here. Give another folder after --out, for example one in your documents", err}
	case isFull(err):
		return &Error{path, "the disk is full. Nothing was changed; make room and run again", err}
	}
	return &Error{path, fmt.Sprintf("the outputs cannot be written here (the system says: %v). Give another folder after --out", err), err}
}

func moveError(path string, err error) error {
	return &Error{path, "this file could not be replaced; the earlier outputs are as they were. If it is open in another program, close it there and run again", err}
}

// WriteError turns an error met while writing an output into a sentence.
func (f *Folder) WriteError(err error) error {
	var ours *Error
	if err == nil || errors.As(err, &ours) {
		return err
	}
	return writeError(f.final, err)
}

// Scratch makes a folder for work files alone, in the system's place for
// temporary files. It is never committed.
func Scratch() (*Folder, error) {
	temp, err := os.MkdirTemp("", Prefix)
	if err != nil {
		return nil, writeError(os.TempDir(), err)
	}
	return &Folder{final: os.TempDir(), temp: temp, names: map[string]bool{}}, nil
}
