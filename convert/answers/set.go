package answers

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"sync/atomic"
	"unicode"
)

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
	// From says where the answer was read: "queries.xlsx, Questions, cell F7".
	From string
}

// Set is a set of answers. The zero value is ready. Once it is complete, any
// number of goroutines may ask it.
type Set struct {
	byKey     map[Key]*entry
	disagreed map[Key]bool
	problems  []string
	changed   bool
}

type entry struct {
	Answer
	given bool // in this run, not remembered from an earlier one
	used  atomic.Bool
}

// longest is how many characters of a written value tell it from others.
const longest = 2000

// Plain is a written value in the form in which answers know it: on one line,
// single spaces, without what a spreadsheet cell cannot hold. Both sides of
// every comparison go through it, so that a value survives any spreadsheet
// program.
func Plain(written string) string {
	plain := true
	for i := range len(written) {
		if c := written[i]; c < ' ' || c > '~' || c == '_' || c == ' ' && (i == 0 || i+1 == len(written) || written[i+1] == ' ') {
			plain = false
			break
		}
	}
	if plain && len(written) <= longest {
		return written
	}
	written = strings.ToValidUTF8(written, "?")
	// A spreadsheet takes _x0041_ for an escaped character.
	written = strings.ReplaceAll(written, "_x", "_ x")
	fields := strings.FieldsFunc(written, func(r rune) bool {
		return unicode.IsSpace(r) || unicode.IsControl(r) || r == '\uFEFF' || r >= 0xFFFE && r <= 0xFFFF
	})
	written = strings.Join(fields, " ")
	if runes := []rune(written); len(runes) > longest {
		written = string(runes[:longest])
	}
	return written
}

func (k Key) plain() Key { return Key{Plain(k.About), Plain(k.Written), Plain(k.Check)} }

func (a Answer) says() string {
	if a.Decision == Replace {
		return a.Value
	}
	return string(a.Decision)
}

// Remember takes in an answer of an earlier run.
func (s *Set) Remember(a Answer) { s.add(a, false) }

// Give takes in an answer given with this run. It counts for more than a
// remembered one.
func (s *Set) Give(a Answer) { s.add(a, true) }

// add takes in an answer. Of two in one run that disagree neither counts, and
// the problem is noted.
func (s *Set) add(a Answer, given bool) {
	if a.Decision == Replace {
		a.Check = ""
	}
	a.Key = a.Key.plain()
	if s.byKey == nil {
		s.byKey, s.disagreed = map[Key]*entry{}, map[Key]bool{}
	}
	old := s.byKey[a.Key]
	switch {
	case s.disagreed[a.Key]:
		s.Problem(fmt.Sprintf("%s: “%s” is answered in more than one way, so no answer to it counts.", a.From, a.Written))
	case old == nil:
		s.byKey[a.Key] = &entry{Answer: a, given: given}
		s.changed = s.changed || given
	case old.Decision == a.Decision && old.Value == a.Value:
		old.given = old.given || given
		if a.Note != "" && a.Note != old.Note {
			old.Note, s.changed = a.Note, true
		}
	case given && !old.given:
		s.byKey[a.Key] = &entry{Answer: a, given: true}
		s.changed = true
	default:
		s.Problem(fmt.Sprintf("“%s” is answered in two ways: “%s” (%s) and “%s” (%s). Neither counts; remove one of the two.",
			a.Written, old.says(), old.From, a.says(), a.From))
		delete(s.byKey, a.Key)
		s.disagreed[a.Key] = true
		s.changed = s.changed || given
	}
}

// Onto returns the answers of latest, which the plain file has by now, under
// those given in this run.
func (s *Set) Onto(latest *Set) *Set {
	for key := range s.disagreed {
		delete(latest.byKey, key)
	}
	for key, e := range s.byKey {
		if !e.given {
			continue
		}
		if latest.byKey == nil {
			latest.byKey = map[Key]*entry{}
		}
		latest.byKey[key] = e
	}
	return latest
}

// Problem notes an answer that could not be taken in.
func (s *Set) Problem(sentence string) { s.problems = append(s.problems, sentence) }

// Problems are the answers that could not be taken in, in sentences.
func (s *Set) Problems() []string { return s.problems }

// Changed tells whether anything was given that was not remembered before.
func (s *Set) Changed() bool { return s.changed }

// Replacement returns the text to be read instead of what was written.
func (s *Set) Replacement(about, written string) (string, bool) {
	if len(s.byKey) == 0 {
		return "", false
	}
	e := s.byKey[Key{About: about, Written: Plain(written)}]
	if e == nil || e.Decision != Replace {
		return "", false
	}
	e.used.Store(true)
	return e.Value, true
}

// Decided returns the decision on one doubt about a value or record.
func (s *Set) Decided(about, written, check string) (Decision, bool) {
	if len(s.byKey) == 0 {
		return "", false
	}
	e := s.byKey[Key{about, Plain(written), check}]
	if e == nil || e.Decision == Replace {
		return "", false
	}
	e.used.Store(true)
	return e.Decision, true
}

// Asked returns the keys of the answers that were asked for, and Ask asks for
// one: what was asked for in one run can so be known in another.
func (s *Set) Asked() []Key {
	var keys []Key
	for _, e := range s.sorted() {
		if e.used.Load() {
			keys = append(keys, e.Key)
		}
	}
	return keys
}

// Ask notes that an answer was asked for.
func (s *Set) Ask(k Key) {
	if e := s.byKey[k]; e != nil {
		e.used.Store(true)
	}
}

// Len returns the number of answers.
func (s *Set) Len() int { return len(s.byKey) }

// Unused returns the answers that nobody asked for, those given in this run
// apart from those remembered.
func (s *Set) Unused() (given, remembered []Answer) {
	for _, e := range s.sorted() {
		switch {
		case e.used.Load():
		case e.given:
			given = append(given, e.Answer)
		default:
			remembered = append(remembered, e.Answer)
		}
	}
	return given, remembered
}

// Used returns how many answers were asked for.
func (s *Set) Used() int {
	n := 0
	for _, e := range s.byKey {
		if e.used.Load() {
			n++
		}
	}
	return n
}

// Sorted returns the answers in the order of the plain file.
func (s *Set) Sorted() []Answer {
	list := make([]Answer, 0, len(s.byKey))
	for _, e := range s.sorted() {
		list = append(list, e.Answer)
	}
	return list
}

func (s *Set) sorted() []*entry {
	list := make([]*entry, 0, len(s.byKey))
	for _, e := range s.byKey {
		list = append(list, e)
	}
	slices.SortFunc(list, func(a, b *entry) int {
		return cmp.Or(cmp.Compare(a.About, b.About), cmp.Compare(a.Written, b.Written), cmp.Compare(a.Check, b.Check))
	})
	return list
}
