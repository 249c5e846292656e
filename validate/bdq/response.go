package bdq

import (
	"encoding/json"
	"strconv"
	"strings"
)

// Status says how a test ended (bdqffdq:ResponseStatus).
type Status string

// The statuses that a response may have.
const (
	// HasResult: the test ran and Result holds its answer.
	HasResult Status = "RUN_HAS_RESULT"
	// Amended: a change of what is stated is proposed.
	Amended Status = "AMENDED"
	// FilledIn: a value for what is not stated is proposed.
	FilledIn Status = "FILLED_IN"
	// NotAmended: the test ran and proposes nothing.
	NotAmended Status = "NOT_AMENDED"
	// InternalUnmet: the record does not hold what the test needs.
	InternalUnmet Status = "INTERNAL_PREREQUISITES_NOT_MET"
	// ExternalUnmet: the named source authority is not one that is at hand.
	ExternalUnmet Status = "EXTERNAL_PREREQUISITES_NOT_MET"
)

// The results of validations and issues. A measure's result is a number.
const (
	Compliant      = "COMPLIANT"
	NotCompliant   = "NOT_COMPLIANT"
	PotentialIssue = "POTENTIAL_ISSUE"
	NotIssue       = "NOT_ISSUE"
)

// Change is a value that an amendment proposes for a term.
type Change struct {
	// Term is the term's qualified name, as in "dwc:eventDate".
	Term string
	// Value is the proposed value.
	Value string
}

// Response is what a test answers about one record.
type Response struct {
	Status Status
	// Result is the answer of a validation, an issue or a measure where
	// Status is HasResult; empty otherwise.
	Result string
	// Changes are what an amendment proposes where Status is Amended or
	// FilledIn, in the order of the test's information elements.
	Changes []Change

	reason      string
	term, value string
}

// Comment says in a sentence why the test answered so, quoting the value that
// decided it where there is one.
func (r Response) Comment() string {
	if r.term == "" {
		return r.reason
	}
	if r.value == "" {
		return r.term + " " + r.reason
	}
	return r.term + " " + strconv.Quote(r.value) + " " + r.reason
}

// ResultText is the result as the standard writes it: the word or number of a
// validation, issue or measure; the changes of an amendment as a JSON object
// from term to value; empty where there is none.
func (r Response) ResultText() string {
	if len(r.Changes) == 0 {
		return r.Result
	}
	var b strings.Builder
	for i, c := range r.Changes {
		b.WriteByte("{,"[min(i, 1)])
		for j, text := range [...]string{c.Term, c.Value} {
			if j == 1 {
				b.WriteByte(':')
			}
			quoted, err := json.Marshal(text)
			if err != nil { // a string always marshals
				panic(err)
			}
			b.Write(quoted)
		}
	}
	b.WriteByte('}')
	return b.String()
}

// The answers below keep the reason, the term and its value apart, so that
// nothing is put together for a comment that nobody reads.

func compliant(reason string) Response {
	return Response{Status: HasResult, Result: Compliant, reason: reason}
}

func notCompliant(reason string) Response {
	return Response{Status: HasResult, Result: NotCompliant, reason: reason}
}

func notAmended(reason string) Response {
	return Response{Status: NotAmended, reason: reason}
}

func unmet(reason string) Response {
	return Response{Status: InternalUnmet, reason: reason}
}

func filledIn(reason string, changes ...Change) Response {
	return Response{Status: FilledIn, Changes: changes, reason: reason}
}

func amended(reason string, changes ...Change) Response {
	return Response{Status: Amended, Changes: changes, reason: reason}
}

// of names the term that the reason is about and the value found in it.
func (r Response) of(term, value string) Response {
	r.term, r.value = term, value
	return r
}

func verdict(ok bool, yes, no string) Response {
	if ok {
		return compliant(yes)
	}
	return notCompliant(no)
}
