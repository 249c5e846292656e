package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"fieldfare/convert"
	"fieldfare/convert/project"
)

// writeReading writes how the sheets were read as parts of a project file. A
// file that is there already is left alone.
func writeReading(path string, result *convert.Result) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("--write-reading: %s is there already; give the name of a new file", path)
	case err != nil:
		return fmt.Errorf("--write-reading: %s cannot be written; check that its folder exists", path)
	}
	for _, r := range result.Readings {
		if err := project.WriteEntries(f, r.Entries); err != nil {
			f.Close()
			return fmt.Errorf("--write-reading: %s could not be written whole", path)
		}
	}
	return f.Close()
}
