package convert

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/answers"
	"fieldfare/convert/ledger"
)

// notNotebooks takes out of the files found in folders those that are no
// notebooks but belong to the work: the lists in use, the remembered answers,
// and the outputs of earlier runs. A file that is named itself is always read.
// It returns what is left, and a note where something was passed over.
func (j Job) notNotebooks(s *settings, paths []string) (notebooks, notes []string) {
	var passed []string
	for _, path := range paths {
		if !slices.Contains(j.Files, path) && j.belongsToWork(s, path) {
			passed = append(passed, filepath.Base(path))
			continue
		}
		notebooks = append(notebooks, path)
	}
	if len(passed) > 0 {
		notes = append(notes, "Passed over, since they are lists, answers or outputs and no notebooks: "+strings.Join(passed, ", ")+".")
	}
	return notebooks, notes
}

func (j Job) belongsToWork(s *settings, path string) bool {
	if name := filepath.Base(path); name == answers.FileName || name == ledger.FileName || j.isOutput(path) {
		return true
	}
	lists := slices.Concat(j.Taxa, j.Answers, []string{s.project.Resolve(s.project.Lists.Places), s.project.Resolve(s.project.Lists.People), j.Against})
	for _, list := range [][]string{s.project.Lists.Taxa, s.project.Lists.Past} {
		for _, name := range list {
			lists = append(lists, s.project.Resolve(name))
		}
	}
	for _, area := range s.project.Lists.Areas {
		lists = append(lists, s.project.Resolve(area.File))
	}
	for _, list := range lists {
		if list != "" && sameFile(path, list) {
			return true
		}
	}
	return false
}

// isOutput tells whether the file lies in a folder that an earlier run wrote:
// the output folder of this run, or one with a submission and its summary.
func (j Job) isOutput(path string) bool {
	folder := filepath.Dir(path)
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
