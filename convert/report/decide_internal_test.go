package report

import (
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/answers"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDecide(t *testing.T) {
	const held, query, several = "held", "query", "one of: Gonepteryx rhamni; Opisthograptis luteolata"
	for _, c := range []struct {
		asked
		said     string
		decision answers.Decision
		value    string
		problem  string
	}{
		{asked{"name", "x", query, "Noctua pronuba"}, "Yes.", answers.Replace, "Noctua pronuba", ""},
		{asked{"date", "03/09/21", query, "03/09/21"}, "yes", answers.Keep, "", ""},
		{asked{"date", "03/09/21", query, "03/09/21"}, "03/09/21", answers.Keep, "", ""},
		{asked{"name", "x", held, several}, "yes", "", "", "which of several"},
		{asked{"name", "x", query, several}, "OK", "", "", "which of several"},
		{asked{"name", "x", held, several}, several, "", "", "which of several"},
		{asked{"name", "x", held, several}, "Gonepteryx rhamni", answers.Replace, "Gonepteryx rhamni", ""},
		{asked{"name", "x", held, several}, "keep", answers.Keep, "", ""},
		{asked{"name", "x", held, ""}, "yes", "", "", "none here"},
		{asked{"date", "x", query, ""}, "y", answers.Keep, "", ""},
		{asked{"date", "x", held, ""}, "30 June 2018", answers.Replace, "30 June 2018", ""},
		{asked{"date", "x", held, ""}, "Leave  out!", answers.LeaveOut, "", ""},
		{asked{"date", "x", held, ""}, "don't know", "", "", "what should be read"},
		{asked{"record", "x", query, ""}, "another", "", "", "row as a whole"},
	} {
		decision, value, problem := c.decide(c.said)
		assert.Equal(t, c.decision, decision, c.said)
		assert.Equal(t, c.value, value, c.said)
		if c.problem == "" {
			assert.Empty(t, problem, c.said)
		} else {
			assert.Contains(t, problem, c.problem, c.said)
		}
	}
}

// FuzzDecide: whatever is written is one decision or one problem, and nothing
// is read instead but what somebody wrote or the one suggestion.
func FuzzDecide(f *testing.F) {
	f.Add("name", "held", "one of: a; b", "yes")
	f.Add("date", "query", "27 March 2022", " Yes ")
	f.Add("record", "query", "", "keep")
	f.Add("count", "held", "", "=1+1")
	f.Fuzz(func(t *testing.T, about, state, suggestion, said string) {
		if said == "" {
			return // an empty cell is no answer
		}
		decision, value, problem := asked{about, "written", state, suggestion}.decide(said)
		if (decision == "") != (problem != "") {
			t.Fatalf("%q: decision %q, problem %q", said, decision, problem)
		}
		if decision == answers.Replace && value != said && value != suggestion {
			t.Fatalf("%q became %q", said, value)
		}
		if decision != answers.Replace && value != "" || strings.HasPrefix(value, oneOf) {
			t.Fatalf("%q gives %q", said, value)
		}
	})
}

// TestNoteWithoutAnswer: what was written into the next column by mistake is
// told, and not lost.
func TestNoteWithoutAnswer(t *testing.T) {
	path := filepath.Join(t.TempDir(), "questions.csv")
	rows := [][]string{QuestionHeadings, make([]string, len(QuestionHeadings))}
	for i, heading := range QuestionHeadings {
		rows[1][i] = map[string]string{"State": "held", "About": "name", "Written": "Silky Wainscoat", "Your note": "Silky Wainscot", "Check": "name-not-listed"}[heading]
	}
	var text strings.Builder
	require.NoError(t, csv.NewWriter(&text).WriteAll(rows))
	require.NoError(t, os.WriteFile(path, []byte(text.String()), 0o644))
	given, err := ReadAnswers(context.Background(), path)
	require.NoError(t, err)
	assert.True(t, given.Filled)
	assert.Empty(t, given.Answers)
	require.Len(t, given.Problems, 1)
	assert.Contains(t, given.Problems[0], "“Silky Wainscot” stands under “Your note” and nothing under “Your answer”")
}

// TestWhere: rows that go by one cell, such as a title, name it once.
func TestWhere(t *testing.T) {
	at := func(cells ...string) (places []Place) {
		for _, cell := range cells {
			places = append(places, Place{File: "a.csv", Cell: cell})
		}
		return places
	}
	for want, q := range map[string]Question{
		"a.csv / A1":                                      {Places: at("A1", "A1", "A1")},
		"a.csv / A1, and perhaps elsewhere":               {Places: at("A1", "A1", "A1"), Others: 300},
		"a.csv / A1, a.csv / A2":                          {Places: at("A1", "A2")},
		"a.csv / A1, a.csv / A2, a.csv / A3, and 12 more": {Places: at("A1", "A2", "A3", "A4", "A5"), Others: 10},
	} {
		assert.Equal(t, want, strings.Join(q.where(), ", "))
	}
}
