// Package report writes what people read: the queries workbook, the report
// page and the summary.
package report

import (
	"cmp"
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

// Questions collects findings into questions. The zero value is ready.
type Questions struct {
	byKey map[key]*Question
}

type key struct{ about, written, code string }

// Add counts one finding of one record at the place.
func (q *Questions) Add(f *reading.Finding, at Place) {
	if f.State == reading.Fair {
		return
	}
	k := key{f.About, f.Written, f.Code}
	question := q.byKey[k]
	if question == nil {
		if q.byKey == nil {
			q.byKey = map[key]*Question{}
		}
		question = &Question{About: f.About, Written: f.Written, Code: f.Code, State: f.State, Message: f.Message, Candidates: f.Candidates}
		q.byKey[k] = question
	}
	question.State = max(question.State, f.State)
	question.Records++
	if len(question.Places) < placesKept {
		question.Places = append(question.Places, at)
	} else {
		question.Others++
	}
}

// Sorted returns the questions: held first, then by how many records the
// answer frees, then by place in the notebooks.
func (q *Questions) Sorted() []*Question {
	list := make([]*Question, 0, len(q.byKey))
	for _, question := range q.byKey {
		list = append(list, question)
	}
	slices.SortFunc(list, func(a, b *Question) int {
		return cmp.Or(
			cmp.Compare(b.State, a.State),
			cmp.Compare(b.Records, a.Records),
			cmp.Compare(a.About, b.About),
			cmp.Compare(a.Written, b.Written),
			cmp.Compare(a.Code, b.Code),
		)
	})
	return list
}
