package main

import (
	"bytes"
	"fmt"
	"io"

	"fieldfare/convert"
	"fieldfare/convert/project"
	"fieldfare/convert/stage"
)

// writeReading writes how the sheets were read as parts of a project file. A
// file that is there already is left alone.
func writeReading(path string, result *convert.Result) error {
	var text bytes.Buffer
	for _, r := range result.Readings {
		if err := project.WriteEntries(&text, r.Entries); err != nil {
			return fmt.Errorf("--write-reading: %w", err)
		}
	}
	err := stage.NewFile(path, func(w io.Writer) error {
		_, err := w.Write(text.Bytes())
		return err
	})
	if err != nil {
		return fmt.Errorf("--write-reading: %w", err)
	}
	return nil
}
