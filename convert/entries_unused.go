package convert

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// unusedEntries names the notebooks that the project file says how to read and
// that are neither among those read nor beside the project file: a name that
// is misspelt there would do nothing, and nobody would notice.
func (s *settings) unusedEntries(books *bookRuns) []string {
	var notes []string
	for _, e := range s.project.Notebook {
		if e.File == "" || slices.ContainsFunc(books.books, func(b *bookRun) bool { return e.FitsFile(b.file) }) {
			continue
		}
		beside, err := os.ReadDir(filepath.Dir(s.project.Path))
		if err != nil || slices.ContainsFunc(beside, func(f os.DirEntry) bool { return e.FitsFile(f.Name()) }) {
			continue
		}
		note := fmt.Sprintf("The project file says how to read “%s”, but there is no notebook of that name. Check the name in its [[notebook]] part.", e.File)
		if !slices.Contains(notes, note) {
			notes = append(notes, note)
		}
	}
	return notes
}
