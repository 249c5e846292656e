package convert

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/answers"
	"fieldfare/convert/ledger"
	"fieldfare/convert/project"
)

// notNotebooks takes out of the files found those that are no notebooks but
// belong to the work: the project file, the lists in use, the remembered
// answers and ids, and in folders also the outputs of earlier runs. A pattern
// such as *.* may stand for them too, and then they come as if each had been
// named; where nothing else was named, they are read. It returns what is left,
// and a note where something was passed over.
func (j Job) notNotebooks(s *settings, paths []string) (notebooks, notes []string) {
	var passed []string
	for _, path := range paths {
		named := slices.Contains(j.Files, path)
		if j.belongsToWork(s, path) || j.isOutput(path, named) {
			if name := filepath.Base(path); !slices.Contains(ownFiles, name) {
				passed = append(passed, name)
			}
			continue
		}
		notebooks = append(notebooks, path)
	}
	if len(notebooks) == 0 {
		return paths, nil
	}
	if len(passed) > 0 {
		notes = append(notes, "Passed over, since they are lists or outputs and no notebooks: "+strings.Join(passed, ", ")+".")
	}
	return notebooks, notes
}

// ownFiles are those that stand beside the notebooks by their own names.
var ownFiles = []string{project.FileName, answers.FileName, ledger.FileName}

func (j Job) belongsToWork(s *settings, path string) bool {
	if slices.Contains(ownFiles, filepath.Base(path)) {
		return true
	}
	for _, list := range slices.Concat(j.listsInUse(s), j.Answers) {
		if list != "" && sameFile(path, list) {
			return true
		}
	}
	return false
}

// listsInUse are the files that are read beside the notebooks and the answers;
// some are empty.
func (j Job) listsInUse(s *settings) []string {
	lists := slices.Concat(j.Taxa, []string{s.project.Path, s.project.Resolve(s.project.Lists.Places), s.project.Resolve(s.project.Lists.People), j.Against})
	for _, list := range [][]string{s.project.Lists.Taxa, s.project.Lists.Past} {
		for _, name := range list {
			lists = append(lists, s.project.Resolve(name))
		}
	}
	for _, area := range s.project.Lists.Areas {
		lists = append(lists, s.project.Resolve(area.File))
	}
	return lists
}

// isOutput tells whether the file lies in a folder that an earlier run wrote:
// the output folder of this run, or one with a submission and its summary. One
// that is named is an output only where this run would replace it.
func (j Job) isOutput(path string, named bool) bool {
	folder := filepath.Dir(path)
	if named {
		return j.Out != "" && slices.Contains(usualOutputs, filepath.Base(path)) && sameFile(folder, j.Out)
	}
	if j.Out != "" && sameFile(folder, j.Out) {
		return true
	}
	for _, name := range []string{SubmissionFile, SummaryFile} {
		if _, err := os.Stat(filepath.Join(folder, name)); err != nil {
			return false
		}
	}
	return true
}

// sameFile tells whether two paths lead to one file or folder.
func sameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}
