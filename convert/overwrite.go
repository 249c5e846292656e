package convert

import (
	"path/filepath"
	"slices"

	"fieldfare/convert/notebook"
	"fieldfare/convert/stage"
)

// outputs are the names of the files that the job writes into its folder.
func (j Job) outputs() []string {
	names := slices.Clone(usualOutputs)
	for _, format := range j.Formats {
		names = append(names, formatFiles[format])
	}
	if j.Exact {
		names = append(names, ExactFile)
	}
	if j.Against != "" {
		names = append(names, WithdrawnFile)
	}
	return names
}

// spare refuses to write over what the run reads: a notebook, a list, the
// earlier submission. The queries workbook with the answers may be replaced,
// since what is filled in on it is remembered.
func (j Job) spare(s *settings, notebooks []string) error {
	inputs := slices.Concat(notebooks, j.listsInUse(s))
	if j.part != "" {
		if slices.ContainsFunc(inputs, func(path string) bool { return path != "" && sameFile(path, j.part) }) {
			return &notebook.Problem{File: j.part, Found: "it is one of the files to be read, and the part would be written over it", Advice: "Give the name of a new file after --part"}
		}
		if exists(j.part) && !isFolder(j.part) && !isPart(j.part) {
			return &notebook.Problem{File: j.part, Found: "there is a file of this name already, and it is no part of a set", Advice: "Give the name of a new file after --part"}
		}
		return nil
	}
	if !j.writes() {
		return nil
	}
	for _, name := range j.outputs() {
		to := filepath.Join(j.Out, name)
		if slices.ContainsFunc(inputs, func(path string) bool { return path != "" && sameFile(path, to) }) {
			return &stage.Error{Path: to, Problem: "this file is to be read, and an output would be written over it. Give another folder after --out"}
		}
	}
	return nil
}
