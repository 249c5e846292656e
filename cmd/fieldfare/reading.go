package main

import (
	"fmt"
	"io"

	"fieldfare/convert"
	"fieldfare/convert/project"
	"fieldfare/convert/stage"
)

// writeReading writes how the sheets were read as parts of a project file. A
// file that is there already is left alone.
func writeReading(path string, result *convert.Result) error {
	err := stage.NewFile(path, func(w io.Writer) error {
		for _, r := range result.Readings {
			if err := project.WriteEntries(w, r.Entries); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("--write-reading: %w", err)
	}
	return nil
}
