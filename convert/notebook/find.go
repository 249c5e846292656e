package notebook

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// notebookEnds are the name endings that are looked for in folders; elseEnds
// those of notebooks that cannot be read and must not be passed over in
// silence.
var (
	notebookEnds = []string{".xlsx", ".xlsm", ".xltx", ".xltm", ".xls", ".xlt", ".ods", ".ots", ".fods", ".csv", ".tsv", ".tab", ".psv", ".txt", ".zip"}
	elseEnds     = []string{".xlsb", ".numbers", ".sxc"}
)

// settingsEnd is the ending of settings, which nobody takes for a notebook.
const settingsEnd = ".toml"

// Find turns the arguments of a command line into the notebooks to read:
// files as they are, folders with every notebook below them, wildcards
// (for shells that do not expand them), and "-" for standard input. The order
// is that of the arguments, and within a folder or wildcard that of the
// names. A notebook that comes up twice, by the same path, as another name of
// the same file, or with the same content, is kept once, and a note says so.
//
// In folders, hidden files and the lock files of open workbooks are passed
// over, and what is no notebook is named in a note. A folder that holds a
// Darwin Core Archive (meta.xml) is one notebook.
func Find(args []string) (paths, notes []string, err error) {
	f := finder{}
	for _, arg := range args {
		if err := f.add(arg); err != nil {
			return nil, nil, trouble(arg, "", err)
		}
	}
	if len(f.paths) == 0 && len(args) > 0 {
		return nil, f.notes, &Problem{File: args[0], Found: "there is no notebook among what was given", Advice: "Check the spelling and the folder"}
	}
	f.dropCopies()
	return f.paths, f.notes, nil
}

type finder struct {
	paths, notes []string
}

func (f *finder) add(arg string) error {
	if arg == Stdin {
		f.paths = append(f.paths, arg)
		return nil
	}
	info, err := os.Stat(arg)
	switch {
	case err == nil && info.IsDir():
		return f.folder(arg)
	case err == nil && strings.HasPrefix(filepath.Base(arg), "~$"):
		// Shells expand *.xlsx to these as well.
		f.notes = append(f.notes, fmt.Sprintf("%s is only the mark of a workbook that is open, and was passed over. Save and close the workbook first.", arg))
		return nil
	case err == nil:
		f.paths = append(f.paths, arg)
		return nil
	case !errors.Is(err, fs.ErrNotExist) && !strings.ContainsAny(arg, "*?["):
		return err
	case strings.ContainsAny(arg, "*?["):
		matches, globErr := filepath.Glob(arg)
		if globErr != nil || len(matches) == 0 {
			return &Problem{Found: "no file has a name of this pattern", Advice: "Check the spelling and the folder", Cause: err}
		}
		slices.Sort(matches)
		return f.matched(matches)
	}
	return err
}

// matched adds what a wildcard stands for.
func (f *finder) matched(matches []string) error {
	for _, m := range matches {
		info, err := os.Stat(m)
		switch {
		case err != nil:
			return trouble(m, "", err)
		case passedOver(filepath.Base(m)):
		case info.IsDir():
			if err := f.folder(m); err != nil {
				return trouble(m, "", err)
			}
		default:
			f.paths = append(f.paths, m)
		}
	}
	return nil
}

// passedOver: hidden files, and the lock files that office programs leave
// beside a workbook that is open.
func passedOver(name string) bool {
	return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$")
}

func (f *finder) folder(root string) error {
	var left []string
	before := len(f.paths)
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return trouble(path, "", err)
		}
		name := d.Name()
		switch {
		case path != root && passedOver(name):
			if d.IsDir() {
				return filepath.SkipDir
			}
		case d.IsDir() && strings.HasSuffix(strings.ToLower(name), ".numbers"):
			f.unreadable(path)
			return filepath.SkipDir
		case d.IsDir():
			if _, err := os.Stat(filepath.Join(path, "meta.xml")); err == nil {
				f.paths = append(f.paths, path)
				return filepath.SkipDir
			}
		case hasSuffix(name, elseEnds...):
			f.unreadable(path)
		case hasSuffix(name, notebookEnds...):
			if info, err := os.Stat(path); err == nil && info.Mode().IsRegular() {
				f.paths = append(f.paths, path)
			}
		case hasSuffix(name, settingsEnd): // of the project, so no news
		default:
			left = append(left, path)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(left) > 0 {
		f.notes = append(f.notes, fmt.Sprintf("Left out of %s, since their names are not those of notebooks: %s.", root, listed(left)))
	}
	if len(f.paths) == before {
		return &Problem{Found: "the folder holds no notebook", Advice: "Notebooks end in .xlsx, .xls, .ods, .csv, .tsv or .txt; check that it is the right folder"}
	}
	return nil
}

func (f *finder) unreadable(path string) {
	f.notes = append(f.notes, fmt.Sprintf("%s was not read: its format is not one that can be. Save it as .xlsx beside the others.", path))
}

// listed names up to five things.
func listed(paths []string) string {
	const most = 5
	if len(paths) <= most {
		return strings.Join(paths, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(paths[:most], ", "), len(paths)-most)
}

// dropCopies keeps the first of each notebook that comes up twice.
func (f *finder) dropCopies() {
	type seen struct {
		path string
		info os.FileInfo
		sum  [sha256.Size]byte
		done bool
	}
	sizes := map[int64][]*seen{}
	names := map[string]bool{}
	kept := f.paths[:0:0]
	for _, path := range f.paths {
		clean := filepath.Clean(path)
		if path == Stdin {
			clean = Stdin
		}
		if names[clean] {
			f.notes = append(f.notes, fmt.Sprintf("%s was given twice and is read once.", shown(path)))
			continue
		}
		names[clean] = true
		info, err := os.Stat(path)
		if path == Stdin || err != nil || !info.Mode().IsRegular() || info.Size() == 0 {
			// What is wrong with a file is said when it is opened.
			kept = append(kept, path)
			continue
		}
		s := &seen{path: path, info: info}
		twin, same := "", ""
		for _, t := range sizes[info.Size()] {
			if os.SameFile(info, t.info) {
				twin, same = t.path, "is another name of the same file as"
				break
			}
			for _, x := range []*seen{s, t} {
				if !x.done {
					x.sum, x.done = contentSum(x.path), true
				}
			}
			if s.sum == t.sum && s.sum != [sha256.Size]byte{} {
				twin, same = t.path, "has the same content as"
				break
			}
		}
		if twin != "" {
			f.notes = append(f.notes, fmt.Sprintf("%s %s %s and is not read again.", path, same, twin))
			continue
		}
		sizes[info.Size()] = append(sizes[info.Size()], s)
		kept = append(kept, path)
	}
	f.paths = kept
}

// contentSum is zero where the file cannot be read.
func contentSum(path string) (sum [sha256.Size]byte) {
	f, err := os.Open(path)
	if err != nil {
		return sum
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return sum
	}
	return [sha256.Size]byte(h.Sum(nil))
}
