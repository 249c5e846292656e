package project

import (
	"fmt"
	"io"
	"unicode/utf8"

	"fieldfare/convert/layout"

	"github.com/pelletier/go-toml/v2"
)

// WriteEntries writes [[notebook]] parts as they stand in a project file. A
// notebook whose name, or sheet, is no text (as a file's may be on some systems)
// cannot be named in one, which is an error.
func WriteEntries(w io.Writer, entries []layout.Entry) error {
	if len(entries) == 0 {
		return nil
	}
	for i := range entries {
		for _, name := range []string{entries[i].File, entries[i].Sheet, entries[i].Headings} {
			if !utf8.ValidString(name) {
				return fmt.Errorf("%q has signs in it that are no letters, so a project file cannot name it. Give the file or sheet another name", name)
			}
		}
	}
	return toml.NewEncoder(w).Encode(struct {
		Notebook []layout.Entry `toml:"notebook"`
	}{entries})
}

// checkEntries finds the first [[notebook]] part that cannot be understood.
func (p *Project) checkEntries() error {
	for i := range p.Notebook {
		e := &p.Notebook[i]
		problem := e.Check()
		if problem == "" {
			continue
		}
		about := fmt.Sprintf("[[notebook]] number %d", i+1)
		if e.File != "" {
			about += fmt.Sprintf(", for file %q", e.File)
		}
		if e.Sheet != "" {
			about += fmt.Sprintf(", sheet %q", e.Sheet)
		}
		return &Error{File: p.Path, Problem: about + ": " + problem}
	}
	return nil
}
