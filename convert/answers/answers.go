// Package answers keeps the recorder's decisions about what could not be read
// for certain. An answer belongs to what was written, not to a row, so it
// serves every row that says the same, in this run and the next.
package answers

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
)

// FileName is the usual name of the plain file that remembers answers, beside
// the project file.
const FileName = "fieldfare-answers.csv"

// Decision is what the recorder decided.
type Decision string

const (
	// Replace: read Value instead of what was written.
	Replace Decision = "read as"
	// Keep: it is right as it is; do not ask again.
	Keep Decision = "keep"
	// LeaveOut: the rows are no records to hand in.
	LeaveOut Decision = "leave out"
)

// Key is what an answer is about.
type Key struct {
	// About is the kind of value, or "record" (see reading.Finding).
	About string
	// Written is the value as it stands in the notebook.
	Written string
	// Check is the code of the doubt for Keep and LeaveOut; empty for Replace,
	// which settles the value whatever the doubt.
	Check string
}

// Answer is one decision.
type Answer struct {
	Key
	Decision Decision
	Value    string // for Replace
	Note     string
	// From says where the answer was read: "queries.xlsx, Questions, row 7".
	From string
}

// Set is a set of answers that agree with one another.
type Set struct {
	byKey map[Key]Answer
}

// Conflict is two answers to one question.
type Conflict struct{ First, Second Answer }

// Error says it in a sentence.
func (c Conflict) Error() string {
	return fmt.Sprintf("%q is answered in two ways: %q (%s) and %q (%s). Remove one of the two",
		c.First.Written, c.First.says(), c.First.From, c.Second.says(), c.Second.From)
}

func (a Answer) says() string {
	if a.Decision == Replace {
		return a.Value
	}
	return string(a.Decision)
}

// Add takes an answer into the set. A different answer to the same question is
// refused with a Conflict; the first one stays.
func (s *Set) Add(a Answer) error {
	if a.Decision == Replace {
		a.Check = ""
	}
	if s.byKey == nil {
		s.byKey = map[Key]Answer{}
	}
	old, found := s.byKey[a.Key]
	if found && (old.Decision != a.Decision || old.Value != a.Value) {
		return Conflict{old, a}
	}
	if !found {
		s.byKey[a.Key] = a
	}
	return nil
}

// Replacement returns the text to be read instead of what was written.
func (s *Set) Replacement(about, written string) (string, bool) {
	a, found := s.byKey[Key{About: about, Written: written}]
	return a.Value, found && a.Decision == Replace
}

// Decided returns the decision on one doubt about a value or record.
func (s *Set) Decided(about, written, check string) (Decision, bool) {
	a, found := s.byKey[Key{about, written, check}]
	return a.Decision, found
}

// Len returns the number of answers.
func (s *Set) Len() int { return len(s.byKey) }

// Sorted returns the answers in the order of the plain file.
func (s *Set) Sorted() []Answer {
	list := make([]Answer, 0, len(s.byKey))
	for _, a := range s.byKey {
		list = append(list, a)
	}
	slices.SortFunc(list, func(a, b Answer) int {
		return slices.Compare([]string{a.About, a.Written, a.Check}, []string{b.About, b.Written, b.Check})
	})
	return list
}

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

// LoadFile reads the plain file into the set; a missing file is an empty one.
func (s *Set) LoadFile(path string) error {
	file, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("%s: the answers cannot be opened. Check that you may read the file", path)
	}
	defer file.Close()
	in := csv.NewReader(file)
	in.FieldsPerRecord = len(heading)
	for line := 1; ; line++ {
		row, err := in.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil || line == 1 && !slices.Equal(row, heading) {
			return fmt.Errorf("%s, line %d: this is no line of answers. The first line must be %q, and every other line must have as many values", path, line, strings.Join(heading, ","))
		}
		if line == 1 {
			continue
		}
		a := Answer{Key{row[0], row[1], row[2]}, Decision(row[3]), row[4], row[5], fmt.Sprintf("%s, line %d", path, line)}
		if !slices.Contains([]Decision{Replace, Keep, LeaveOut}, a.Decision) {
			return fmt.Errorf("%s, line %d: %q is no decision. Write %q, %q or %q", path, line, a.Decision, Replace, Keep, LeaveOut)
		}
		if err := s.Add(a); err != nil {
			return err
		}
	}
}
