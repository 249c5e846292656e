// Package reading holds the few words that every reader of a value shares:
// how sure a reading is, and the one sentence that says why.
package reading

import (
	"slices"
	"strings"
)

// State says what may be done with a value, a record or a row.
// The zero value is Fair. A larger state is a worse one.
type State uint8

const (
	// Fair: can be handed in as read.
	Fair State = iota
	// Query: can be handed in, but somebody should look: the reading is
	// likely, not certain.
	Query
	// Held: not handed in until somebody answers.
	Held
	// Skipped: no record (a title, a total, a blank); the reason is kept.
	Skipped
)

// String returns the word used in every output: fair, query, held, skipped.
func (s State) String() string {
	switch s {
	case Fair:
		return "fair"
	case Query:
		return "query"
	case Held:
		return "held"
	}
	return "skipped"
}

// Verdict is what a reader says about the value it has read. The zero value
// is a fair reading with nothing to say.
type Verdict struct {
	State State
	// Code is a stable name of what was noticed, in lower case with hyphens
	// ("weekday-disagrees"); several, worst first, are joined by a space. It
	// is empty for a plain fair reading.
	Code string
	// Message is plain sentences for a volunteer: what was noticed, and what
	// would settle it. It quotes what was written. A fair reading may have a
	// message too (what was understood), with an empty Code.
	Message string
	// Candidates are the possible readings, likeliest first, where there are
	// several or one that was not applied.
	Candidates []string
}

// QueryOf builds the verdict of a value read with a doubt.
func QueryOf(code, message string, candidates ...string) Verdict {
	return Verdict{State: Query, Code: code, Message: message, Candidates: candidates}
}

// HeldOf builds the verdict of a value that could not be read.
func HeldOf(code, message string, candidates ...string) Verdict {
	return Verdict{State: Held, Code: code, Message: message, Candidates: candidates}
}

// And joins two verdicts about the same value: the worse state counts, its
// code and message come first, and nothing said is lost.
func (v Verdict) And(w Verdict) Verdict {
	if w.State > v.State {
		v, w = w, v
	}
	v.Code = joinCodes(v.Code, w.Code)
	v.Message = join(v.Message, w.Message)
	if len(v.Candidates) == 0 {
		v.Candidates = w.Candidates
	}
	return v
}

// joinCodes keeps each code once; one code may be a part of another's name.
func joinCodes(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	have := strings.Fields(a)
	for _, code := range strings.Fields(b) {
		if !slices.Contains(have, code) {
			a += " " + code
		}
	}
	return a
}

// join does not say again what the other sentences say.
func join(a, b string) string {
	switch {
	case a == "" || strings.Contains(b, a):
		return b
	case b == "" || strings.Contains(a, b):
		return a
	}
	return a + " " + b
}
