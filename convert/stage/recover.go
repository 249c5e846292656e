package stage

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// The files of a temporary folder beside outputs in the making: lockFile is
// held by the run that makes them, forFile names the folder that they are for,
// and wholeFile names all of them once they are whole.
const (
	lockFile  = "in-use"
	forFile   = "for"
	wholeFile = "whole"
)

// settled is how long ago a thing without a mark must have been made to belong
// to no run any more.
const settled = time.Hour

// recoverAll sees to the temporary folders that runs have left in the folder.
// Those of a run that goes on are left alone; where it writes into final, that
// is an error.
func recoverAll(folder, final string) error {
	left, err := filepath.Glob(filepath.Join(literally(folder), Prefix+"*"))
	if err != nil {
		return nil // the name of the folder cannot be looked into
	}
	for _, temp := range left {
		if err := recoverOne(temp, final); err != nil {
			return err
		}
	}
	return nil
}

// literally keeps the signs of a folder's name from being taken for wildcards.
func literally(folder string) string {
	var b strings.Builder
	for _, c := range folder {
		if strings.ContainsRune("*?[", c) {
			b.WriteString("[" + string(c) + "]")
		} else {
			b.WriteRune(c)
		}
	}
	return b.String()
}

func recoverOne(temp, final string) error {
	info, err := os.Lstat(temp)
	if err != nil || !mine(info) {
		return nil
	}
	if info.Mode().IsRegular() && strings.Trim(filepath.Base(temp), "0123456789") == Prefix && takeAway(temp) {
		return nil
	}
	made, err := os.ReadFile(filepath.Join(temp, forFile))
	switch {
	case err != nil && time.Since(info.ModTime()) > settled:
		os.RemoveAll(temp) // a file that was never finished, or a folder never begun
		return nil
	case err != nil:
		return nil
	case held(filepath.Join(temp, lockFile)):
		if final != "" && string(made) == final {
			return &Error{final, "another run is writing into this folder at this moment. Wait until it has ended, and run again", nil}
		}
		return nil
	}
	names, err := os.ReadFile(filepath.Join(temp, wholeFile))
	switch {
	case err == nil && string(made) != final:
		return nil // for the next run into that folder
	case err == nil:
		for name := range strings.SplitSeq(string(names), "\n") {
			to := filepath.Join(final, filepath.Base(name))
			// What is not there any more is in its place already.
			if err := os.Rename(filepath.Join(temp, filepath.Base(name)), to); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return &Error{to, "a run that was cut off had its outputs whole, but this one cannot be put in its place. If it is open in another program, close it there and run again", err}
			}
		}
	}
	os.RemoveAll(temp)
	return nil
}
