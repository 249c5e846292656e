package stage

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// File writes one file whole or not at all. Where path is a link, the file that
// it leads to is written.
func File(path string, write func(io.Writer) error) error {
	p, err := Prepare(path, write)
	if err != nil {
		return err
	}
	return p.Commit()
}

// NewFile is File for a file that must not be there yet.
func NewFile(path string, write func(io.Writer) error) error {
	if _, err := os.Lstat(path); err == nil {
		return &Error{path, "this file is there already. Give the name of a new one", fs.ErrExist}
	}
	return File(path, write)
}

// Pending is a file that is whole, but not in its place yet.
type Pending struct {
	path, final, temp string
	lock              *os.File // held until then; nil where the system knows no such lock
}

// Prepare writes a file beside its place. The caller must call Commit or
// Discard.
func Prepare(path string, write func(io.Writer) error) (*Pending, error) {
	p := &Pending{path: path, final: path}
	if to, err := filepath.EvalSymlinks(path); err == nil {
		p.final = to
	}
	if info, err := os.Stat(p.final); err == nil && info.IsDir() {
		return nil, &Error{path, "this is a folder, and a file is to be written. Give another name", nil}
	}
	folder := filepath.Dir(p.final)
	if err := recoverAll(folder, ""); err != nil {
		return nil, err
	}
	temp, err := p.begin(folder)
	if err != nil {
		return nil, fileError(path, err)
	}
	err = write(temp)
	if closed := temp.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Chmod(p.temp, 0o644)
	}
	if err != nil {
		p.Discard()
		return nil, fileError(path, err)
	}
	return p, nil
}

// begin makes the file under a name for the time being, and holds it as long as
// it bears that name, so that others can tell it from one whose maker is gone.
func (p *Pending) begin(folder string) (*os.File, error) {
	for {
		temp, err := os.CreateTemp(folder, Prefix)
		if err != nil {
			return nil, err
		}
		var mine bool
		if p.lock, mine = keep(temp.Name()); mine {
			p.temp = temp.Name()
			return temp, nil
		}
		// Somebody took it for one left behind, in the moment before it was held.
		temp.Close()
		os.Remove(temp.Name())
	}
}

// Commit puts the file in its place.
func (p *Pending) Commit() error {
	if err := os.Rename(p.temp, p.final); err != nil {
		p.Discard()
		return fileError(p.path, err)
	}
	p.letGo()
	return nil
}

// Discard gives the file up.
func (p *Pending) Discard() {
	os.Remove(p.temp)
	p.letGo()
}

func (p *Pending) letGo() {
	if p.lock != nil {
		p.lock.Close()
	}
}

// Until returns a writer that fails with the context's error once that has
// ended.
func Until(ctx context.Context, w io.Writer) io.Writer { return until{ctx, w} }

type until struct {
	ctx context.Context
	w   io.Writer
}

func (u until) Write(b []byte) (int, error) {
	if err := u.ctx.Err(); err != nil {
		return 0, err
	}
	return u.w.Write(b)
}

// fileError says why a single file could not be written; where it is to go
// instead, its writer knows.
func fileError(path string, err error) error {
	var ours *Error
	switch {
	case errors.As(err, &ours), errors.Is(err, context.Canceled):
		return err
	case isOpen(err):
		return &Error{path, "another program has this file open. Close it there and run again", err}
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

// StreamError says why a stream, such as standard output, did not take what was
// written to it.
func StreamError(name string, err error) error {
	switch {
	case err == nil, errors.Is(err, context.Canceled):
		return err
	case isFull(err):
		return &Error{name, "the disk is full, so what is written there is cut off. Make room and run again", err}
	}
	return &Error{name, fmt.Sprintf("it took nothing more, so what is written there is cut off (the system says: %v)", cause(err)), err}
}
