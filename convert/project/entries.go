package project

import (
	"fmt"
	"io"

	"fieldfare/convert/layout"

	"github.com/pelletier/go-toml/v2"
)

// WriteEntries writes [[notebook]] parts as they stand in a project file.
func WriteEntries(w io.Writer, entries []layout.Entry) error {
	if len(entries) == 0 {
		return nil
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
