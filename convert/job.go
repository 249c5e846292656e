package convert

import (
	"io"
	"os"
	"path/filepath"

	"fieldfare/convert/project"
	"fieldfare/convert/when"
)

// Job is one run of the main job, as the command line asks for it.
type Job struct {
	// Files are notebooks, folders of notebooks, wildcards, or "-".
	Files []string
	// Project is the project file; empty for fieldfare.toml beside the first
	// notebook, where there is one.
	Project string
	// Taxa are taxon lists, in order of preference, before those of the
	// project file.
	Taxa []string
	// Answers are filled-in queries workbooks or plain answers files.
	Answers []string
	// Against is an earlier submission: only what is new or changed since is
	// handed in, with a list of what is withdrawn.
	Against string
	// Formats are further forms in which the records are written (see
	// Formats).
	Formats []string
	// Standard asks for the report of the Biodiversity Data Quality tests on
	// the records as they leave.
	Standard bool
	// Exact asks for the full copy as well, in which nothing is blurred.
	Exact bool
	// Out is the output folder; empty to read and check only.
	Out string
	// Today is the day after which a date lies in the future.
	Today when.Date
	// Stdin is read for the file "-".
	Stdin io.Reader
	// Workers is how many rows are read at once; 0 for one a processor. It
	// changes nothing but the speed.
	Workers int
	// part is the file in which the rows are kept; empty but in ReadPart.
	part string
	// Progress is told how far the work is; nil for nobody.
	Progress Progress
}

// Progress is told how far a long piece of work is. Its methods are called
// from one goroutine.
type Progress interface {
	// Stage begins a new piece of work of so many steps, -1 where that is not
	// known.
	Stage(name string, steps int)
	// Step says that n more steps are done.
	Step(n int)
}

type silent struct{}

func (silent) Stage(string, int) {}
func (silent) Step(int)          {}

func (j Job) writes() bool { return j.Out != "" }

func (j Job) progress() Progress {
	if j.Progress == nil {
		return silent{}
	}
	return j.Progress
}

// folder is where the project file is looked for and answers are remembered:
// beside the first notebook. Where a folder of notebooks is given, that is the
// folder itself, unless the project file stands beside it.
func (j Job) folder() string {
	for _, f := range j.Files {
		if f == "-" {
			continue
		}
		beside := filepath.Dir(filepath.Clean(f))
		if !isFolder(f) || exists(filepath.Join(f, archiveDescriptor)) {
			return beside
		}
		if !exists(filepath.Join(f, project.FileName)) && exists(filepath.Join(beside, project.FileName)) {
			return beside
		}
		return f
	}
	return "."
}

// archiveDescriptor marks a folder that is a notebook itself: an unpacked
// Darwin Core Archive.
const archiveDescriptor = "meta.xml"

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}
