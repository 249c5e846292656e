// Package stage makes a run's outputs appear whole or not at all: they are
// written to a temporary folder beside the wanted one and moved in together
// at the end.
package stage

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Prefix begins the name of every temporary folder, so that one that is left
// behind (after a power cut) can be told and removed.
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
	lock  *os.File // held as long as the run lasts
	names map[string]bool
}

// New prepares to write into the folder final, which need not exist yet. The
// caller must call Discard at the end; after a Commit it does nothing more.
// What a run left behind that was cut off is cleared away first, and outputs
// that it had whole but not yet all in their place are put there. While another
// run writes into the same folder there is an error.
func New(final string) (*Folder, error) {
	final, err := filepath.Abs(final)
	if err != nil {
		return nil, &Error{final, "this is no usable folder name", err}
	}
	if info, err := os.Stat(final); err == nil && !info.IsDir() {
		return nil, &Error{final, "this is a file, and the outputs need a folder. Give another name after --out", nil}
	}
	if _, err := os.Stat(final); err != nil && isLink(final) {
		return nil, &Error{final, "this is a link that leads nowhere. Give another name after --out", err}
	}
	parent := filepath.Dir(final)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return nil, writeError(parent, err)
	}
	f := &Folder{final: final, names: map[string]bool{}}
	for _, folder := range []string{parent, final} {
		if err := recoverAll(folder, final); err != nil {
			return nil, err
		}
	}
	// Inside an existing folder where it can be, since the folder above may
	// not be ours to write in.
	if info, err := os.Stat(final); err == nil && info.IsDir() {
		parent = final
	}
	return f, f.begin(parent)
}

func isLink(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.Mode()&fs.ModeSymlink != 0
}

// begin makes the temporary folder, and marks it as in use and for whom.
func (f *Folder) begin(parent string) error {
	temp, err := os.MkdirTemp(parent, Prefix)
	if err != nil {
		return writeError(parent, err)
	}
	f.temp = temp
	if f.lock, err = hold(filepath.Join(temp, lockFile)); err == nil {
		err = os.WriteFile(filepath.Join(temp, forFile), []byte(f.final), 0o644)
	}
	if err != nil {
		f.Discard()
		return writeError(parent, err)
	}
	return nil
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

// Commit moves every output into the final folder. Where that fails for one,
// all are put back as they were. Where the program is cut off in between, the
// next run moves the rest.
func (f *Folder) Commit() error {
	if err := os.MkdirAll(f.final, 0o755); err != nil {
		return writeError(f.final, err)
	}
	old, err := os.MkdirTemp(f.temp, "old-")
	if err != nil {
		return writeError(f.final, err)
	}
	names := slices.Sorted(maps.Keys(f.names))
	for _, name := range names {
		to := filepath.Join(f.final, name)
		if info, err := os.Lstat(to); err == nil && info.IsDir() {
			// Whatever it holds is not ours to clear away.
			return &Error{to, "there is a folder of this name where an output belongs; the earlier outputs are as they were. Rename it, or give another folder after --out", nil}
		}
	}
	whole := filepath.Join(f.temp, wholeFile)
	if err := os.WriteFile(whole, []byte(strings.Join(names, "\n")), 0o644); err != nil {
		return writeError(f.final, err)
	}
	var undo []func()
	for _, name := range names {
		from, to, kept := filepath.Join(f.temp, name), filepath.Join(f.final, name), filepath.Join(old, name)
		back, err := replace(from, to, kept)
		if err != nil {
			os.Remove(whole) // the next run is not to go on with it
			for _, u := range slices.Backward(undo) {
				u()
			}
			return moveError(to, err)
		}
		undo = append(undo, back)
	}
	f.Discard()
	return nil
}

// replace puts the file from in the place of to, and keeps what was there as
// kept. Where the system can, there is no moment without a file. It returns how
// to put it back.
func replace(from, to, kept string) (back func(), err error) {
	err = os.Link(to, kept)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		err = os.Rename(to, kept) // no links on this disk
	}
	switch {
	case err == nil:
		back = func() { os.Rename(kept, to) }
	case errors.Is(err, fs.ErrNotExist):
		back = func() { os.Remove(to) }
	default:
		return nil, err
	}
	if err := os.Rename(from, to); err != nil {
		back()
		return nil, err
	}
	return back, nil
}

// Discard removes the temporary folder and all that is still in it.
func (f *Folder) Discard() {
	if f.lock != nil {
		f.lock.Close()
	}
	os.RemoveAll(f.temp)
}

const openElsewhere = "this file is open in another program, so it cannot be replaced; the earlier outputs are as they were. Close it there and run again"

// Free sees to it that none of the outputs named, where it is there already, is
// open in a program that keeps it from being replaced: better said before the
// work than after it.
func (f *Folder) Free(names ...string) error {
	for _, name := range names {
		path := filepath.Join(f.final, name)
		file, err := os.OpenFile(path, os.O_RDWR, 0)
		if err == nil {
			file.Close()
		} else if isOpen(err) {
			return &Error{path, openElsewhere, err}
		}
	}
	return nil
}

func writeError(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return &Error{path, "you may not write here. Give another folder after --out, for example one in your documents", err}
	case isReadOnly(err):
		return &Error{path, "nothing can be written on this disk. Give another folder after --out, for example one in your documents", err}
	case isNoFolder(err):
		return &Error{path, "a part of this name is a file and not a folder. Give another name after --out", err}
	case isFull(err):
		return &Error{path, "the disk is full. Nothing was changed; make room and run again", err}
	}
	return &Error{path, fmt.Sprintf("the outputs cannot be written here (the system says: %v). Give another folder after --out", cause(err)), err}
}

// cause is what the system says, without what was tried.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

func moveError(path string, err error) error {
	if isOpen(err) {
		return &Error{path, openElsewhere, err}
	}
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
	folder := os.TempDir()
	f := &Folder{final: folder, names: map[string]bool{}}
	if err := recoverAll(folder, ""); err != nil {
		return nil, err
	}
	return f, f.begin(folder)
}
