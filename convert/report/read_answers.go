package report

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"fieldfare/convert/answers"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// Given is what a filled-in queries workbook says.
type Given struct {
	Answers []answers.Answer
	// Problems are the answers that say nothing that can be done, in
	// sentences that name the row.
	Problems []string
	// Filled: there is something in it that somebody has written.
	Filled bool
}

// ReadAnswers reads a filled-in queries workbook, its questions page saved as
// delimited text, or a plain answers file.
func ReadAnswers(ctx context.Context, path string) (*Given, error) {
	g := &Given{}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s: there is no such file. Give the queries.xlsx of an earlier run with your answers in it", path)
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s: this is a folder. Give the queries.xlsx in it", path)
	}
	if strings.EqualFold(filepath.Ext(path), ".csv") && answers.IsFile(path) {
		err := answers.LoadFile(path, func(a answers.Answer) { g.Answers = append(g.Answers, a) })
		return g, err
	}
	book, err := notebook.Open(ctx, path, notebook.Options{})
	if err != nil {
		return nil, err
	}
	defer book.Close()
	found := false
	for _, sheet := range book.Sheets() {
		if name := sheet.Name(); name == pageQuestions || strings.HasPrefix(name, pageQuestions+" ") || name == "" {
			found = true
			if err := g.read(path, sheet); err != nil {
				return nil, err
			}
		}
	}
	if !found {
		return nil, fmt.Errorf("%s: there is no page “%s” in it. Give the queries.xlsx of an earlier run", path, pageQuestions)
	}
	return g, nil
}

func (g *Given) read(path string, sheet notebook.Sheet) error {
	var column map[string]int
	return sheet.Walk(func(r *notebook.Row) error {
		if column == nil {
			column = map[string]int{}
			for i := range r.Cells {
				column[strings.TrimSpace(r.Cells[i].Text)] = i
			}
			for _, h := range QuestionHeadings {
				if _, found := column[h]; !found {
					return fmt.Errorf("%s: the column “%s” is missing from the page %s. Leave its headings as they were", path, h, pageQuestions)
				}
			}
			return nil
		}
		cell := func(heading string) string {
			n := column[heading]
			if n >= len(r.Cells) {
				return ""
			}
			c := &r.Cells[n]
			if c.Kind == notebook.Date && c.Raw != "" || c.Kind == notebook.Number && c.Raw != "" {
				return c.Raw // the whole of it, however it is shown
			}
			return strings.TrimSpace(c.Text)
		}
		said, note := cell(headingAnswer), cell("Your note")
		g.Filled = g.Filled || said != "" || note != ""
		if said == "" && note == "" {
			return nil
		}
		q := asked{about: cell("About"), written: cell("Written"), state: cell("State"), suggestion: cell("Suggestion")}
		a := answers.Answer{
			Key:  answers.Key{About: q.about, Written: cell("Written"), Check: cell("Check")},
			Note: note,
			From: fmt.Sprintf("%s, %s, cell %s", filepath.Base(path), cmp.Or(sheet.Name(), pageQuestions), notebook.Ref{Col: column[headingAnswer] + 1, Row: r.Number}),
		}
		if said == "" {
			g.Problems = append(g.Problems, fmt.Sprintf("%s, about “%s”: “%s” stands under “Your note” and nothing under “Your answer”, so the question stays open.", a.From, a.Written, note))
			return nil
		}
		var problem string
		if a.Decision, a.Value, problem = q.decide(said); problem != "" {
			g.Problems = append(g.Problems, fmt.Sprintf("%s, about “%s”: “%s” %s", a.From, a.Written, said, problem))
			return nil
		}
		g.Answers = append(g.Answers, a)
		return nil
	})
}

// asked is the question that an answer stands beside.
type asked struct{ about, written, state, suggestion string }

// The words that are understood as answers, in lower case. Anything else is
// what should be read instead.
var (
	yesWords   = []string{"yes", "y", "ok", "okay", "right", "correct", "accept"}
	keepWords  = []string{"keep", "keep it", "keep as it is", "keep as is", "as it is", "as written", "no change"}
	leaveWords = []string{"leave out", "leave it out", "leave them out", "left out", "leave-out", "leaveout", "omit", "delete"}
	noWords    = []string{"no", "n", "wrong", "not right", "?", "don't know", "dont know", "do not know", "unsure", "not sure"}
)

// decide turns what stands in the answer's cell into a decision, or says why
// it cannot be one.
func (q asked) decide(said string) (d answers.Decision, value, problem string) {
	switch word := strings.Trim(strings.ToLower(strings.Join(strings.Fields(said), " ")), ".!,;:"); {
	case strings.HasPrefix(said, oneOf) || is(word, yesWords) && strings.HasPrefix(q.suggestion, oneOf):
		return "", "", "does not say which of several is meant. Write one of them into “Your answer”, or keep, or leave out."
	case said == q.written && said == q.suggestion:
		return answers.Keep, "", ""
	case said == q.suggestion:
		return q.replace(said)
	case is(word, yesWords):
		switch {
		case q.suggestion != "" && q.suggestion != q.written:
			return q.replace(q.suggestion)
		case q.suggestion != "":
			return answers.Keep, "", ""
		case q.state == reading.Query.String():
			return answers.Keep, "", ""
		}
		return "", "", "is an answer to a suggestion, and there is none here. Write what should be read instead, keep, or leave out."
	case is(word, keepWords):
		return answers.Keep, "", ""
	case is(word, leaveWords):
		return answers.LeaveOut, "", ""
	case is(word, noWords):
		return "", "", "does not say what should be read instead. Write it there, or keep, or leave out; an empty cell leaves the question open."
	}
	return q.replace(said)
}

// replace is the answer with another value, where the question is about one.
func (q asked) replace(value string) (answers.Decision, string, string) {
	if DecisionsOnly(q.about) {
		return "", "", "cannot be filled in here: this question is about a row as a whole. Write keep or leave out; to change something, correct it in the notebook."
	}
	return answers.Replace, value, ""
}

// DecisionsOnly tells whether questions of the kind can be answered with keep
// and leave out alone, because no single value is in doubt.
func DecisionsOnly(about string) bool {
	return about == "record" || about == "cell" || about == "record id"
}

func is(word string, list []string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}
