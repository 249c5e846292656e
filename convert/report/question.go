// Package report writes what people read: the queries workbook, the report
// page and the summary.
package report

import (
	"slices"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
)

// Place is where a value stands.
type Place struct{ File, Sheet, Cell string }

// Question is one thing to be asked, however many rows it concerns.
type Question struct {
	// About, Written and Code identify the question from run to run.
	About, Written, Code string
	State                reading.State
	Message              string
	Candidates           []string
	// Records is how many records wait for the answer or carry the query.
	Records int
	// Places are the first places, Others how many more there are.
	Places []Place
	Others int
}

// oneOf begins the suggestion of a question with several candidates, which
// “yes” does not answer.
const oneOf = "one of: "

// suggestedAtMost is how many candidates a suggestion names; the list of the
// answer's cell has them all.
const suggestedAtMost = 3

// suggestion is what the workbook suggests: the one candidate, or some of
// several.
func (q *Question) suggestion() string {
	n := len(q.Candidates)
	switch {
	case n == 0 || DecisionsOnly(q.About):
		return ""
	case n == 1:
		return q.Candidates[0]
	}
	text := oneOf + strings.Join(q.Candidates[:min(n, suggestedAtMost)], "; ")
	if n > suggestedAtMost {
		text += "; and " + strconv.Itoa(n-suggestedAtMost) + " more"
	}
	return text
}

// placesKept is how many places a question names; the Rows page has them all.
const placesKept = 20

// placesShown is how many of its places a question's own row names.
const placesShown = 3

// where names the first places of a question, each once: many rows may go by
// one cell, such as a title.
func (q *Question) where() []string {
	var where []string
	more := q.Others
	for _, at := range q.Places {
		switch text := at.String(); {
		case slices.Contains(where, text):
		case len(where) < placesShown:
			where = append(where, text)
		default:
			more++
		}
	}
	switch {
	case more > 0 && len(where) < min(placesShown, len(q.Places)): // there may be no others
		where = append(where, "and perhaps elsewhere")
	case more > 0:
		where = append(where, "and "+strconv.Itoa(more)+" more")
	}
	return where
}
