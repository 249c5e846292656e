package notebook

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Problem is a plain sentence about a notebook that cannot be read, with what
// to do about it. Every error of this package is one, except an error that
// the caller's own function returned from Walk and the context's.
//
// (The name Error belongs to the kind of a cell that holds an error mark.)
type Problem struct {
	// File is the notebook's path as given; Sheet the sheet's name where the
	// trouble lies in one sheet.
	File, Sheet string
	// Found says what was found, as a whole sentence without the full stop.
	Found string
	// Advice says what to do, as a whole sentence without the full stop. It
	// may be empty.
	Advice string
	// Cause is the underlying error, for errors.Is; it is never shown.
	Cause error
}

// Error returns one or two plain sentences that name the file.
func (p *Problem) Error() string {
	var b strings.Builder
	b.WriteString(shown(p.File))
	if p.Sheet != "" {
		b.WriteString(", sheet \"" + p.Sheet + "\"")
	}
	b.WriteString(": ")
	b.WriteString(p.Found)
	b.WriteString(".")
	if p.Advice != "" {
		b.WriteString(" ")
		b.WriteString(p.Advice)
		b.WriteString(".")
	}
	return b.String()
}

func (p *Problem) Unwrap() error { return p.Cause }

// Stdin is the path that stands for standard input.
const Stdin = "-"

func shown(path string) string {
	if path == Stdin {
		return "Standard input"
	}
	return path
}

// trouble turns an error of the operating system or of a lower reader into a
// Problem; a Problem is returned as it is.
func trouble(file, sheet string, err error) error {
	var p *Problem
	switch {
	case err == nil || isContext(err):
		return err
	case errors.As(err, &p):
		if p.File == "" {
			p.File = file
		}
		if p.Sheet == "" {
			p.Sheet = sheet
		}
		return p
	}
	p = &Problem{File: file, Sheet: sheet, Cause: err}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		p.Found = "there is no such file"
		p.Advice = "Check the spelling and the folder"
		if dir := filepath.Dir(file); dir != "." {
			if _, e := os.Stat(dir); e != nil {
				p.Found = "there is no such file, and no folder " + dir
			}
		}
	case errors.Is(err, fs.ErrPermission):
		p.Found = "the file is there but may not be read"
		p.Advice = "Change its permissions, close the program that has it open, or copy it to your own folder"
	case errors.Is(err, errChanged):
		p.Found = "the file changed while it was being read"
		p.Advice = "Save and close it in the other program, then start again"
	case errors.Is(err, errDeep):
		p.Found = "the file is nested far deeper than any notebook, so it is damaged or was made to do harm"
		p.Advice = resave
	case errors.Is(err, errTooBig):
		p.Found = "one piece of the file is far larger than a notebook can be, so it is damaged or was made to do harm"
		p.Advice = raise("cell_bytes", "split it")
	case errors.Is(err, errNoLimit):
		p.Found = "one piece of the file is far larger than a notebook can be, so it is damaged or was made to do harm"
		p.Advice = resave
	case isTruncated(err):
		p.Found = "the file is cut short or damaged: part of it is missing"
		p.Advice = "Copy it again from where it came, or open it in a spreadsheet program and save it afresh"
	default:
		p.Found = "the file could not be read"
		p.Advice = "Copy it to another disk and try again, or open it in a spreadsheet program and save it afresh"
	}
	return p
}

func isContext(err error) bool {
	return errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded)
}

const resave = "Open it in a spreadsheet program and save it afresh as .xlsx"

var (
	errChanged = errors.New("notebook: file changed while being read")
	errDeep    = errors.New("notebook: markup nested too deep")
	errTooBig  = errors.New("notebook: piece over the limit of a cell")
	errNoLimit = errors.New("notebook: piece over a bound that cannot be set")
)
