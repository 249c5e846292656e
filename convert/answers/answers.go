// Package answers keeps the recorder's decisions about what could not be read
// for certain. An answer belongs to what was written, not to a row, so it
// serves every row that says the same, in this run and the next.
package answers

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/plainfile"
)

// FileName is the usual name of the plain file that remembers answers, beside
// the project file.
const FileName = "fieldfare-answers.csv"

var heading = []string{"about", "written", "check", "decision", "value", "note"}

// Write writes the plain file: one line an answer, sorted, so that two copies
// merge line by line.
func (s *Set) Write(w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write(heading); err != nil {
		return err
	}
	for _, a := range s.Sorted() {
		if err := out.Write([]string{a.About, a.Written, a.Check, string(a.Decision), a.Value, a.Note}); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// IsFile tells whether the file begins as the plain file does.
func IsFile(path string) bool {
	if plainfile.Check(path) != nil {
		return false
	}
	file, err := os.Open(path)
	if err != nil {
		return false
	}
	defer file.Close()
	line, _ := bufio.NewReader(file).ReadString('\n')
	return strings.HasPrefix(strings.TrimPrefix(line, "\uFEFF"), strings.Join(heading[:2], ","))
}

// LoadFile reads the plain file, handing each answer to take; a missing file
// has none.
func LoadFile(path string, take func(Answer)) error {
	if err := plainfile.Check(path); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	file, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("%s: the answers cannot be opened. Check that you may read the file", path)
	}
	defer file.Close()
	if info, err := file.Stat(); err == nil && info.IsDir() {
		return fmt.Errorf("%s: this is a folder, and the remembered answers are a file of that name. Rename the folder", path)
	}
	return load(file, path, take)
}

func load(r io.Reader, path string, take func(Answer)) error {
	text := bufio.NewReader(r)
	if mark, _ := text.Peek(3); string(mark) == "\uFEFF" {
		text.Discard(3) // a spreadsheet program has saved it
	}
	in := csv.NewReader(text)
	in.FieldsPerRecord = len(heading)
	for first := true; ; first = false {
		row, err := in.Read()
		if err == io.EOF {
			return nil
		}
		line := 1
		if len(row) > 0 {
			line, _ = in.FieldPos(0)
		}
		if err != nil || first && !slices.Equal(row, heading) {
			var bad *csv.ParseError
			if errors.As(err, &bad) {
				line = bad.Line
			}
			return fmt.Errorf("%s, line %d: this is no line of answers. The first line must be %q, and every other line must have as many values", path, line, strings.Join(heading, ","))
		}
		if first {
			continue
		}
		a := Answer{Key{row[0], row[1], row[2]}, Decision(row[3]), row[4], row[5], fmt.Sprintf("%s, line %d", filepath.Base(path), line)}
		if !slices.Contains([]Decision{Replace, Keep, LeaveOut}, a.Decision) || a.Decision == Replace && a.Value == "" {
			return fmt.Errorf("%s, line %d: %q is no decision. Write %q (with a value), %q or %q", path, line, a.Decision, Replace, Keep, LeaveOut)
		}
		take(a)
	}
}
