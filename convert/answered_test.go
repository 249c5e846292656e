package convert_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/answers"
	"fieldfare/convert/report"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// fill writes answers into a queries workbook, as a person would: it gives
// each row's question to answer, and what that returns into the answer's cell.
func fill(t *testing.T, path string, answer func(row map[string]string) string) (questions int) {
	t.Helper()
	file, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer file.Close()
	rows, err := file.GetRows("Questions")
	require.NoError(t, err)
	for i, row := range rows[1:] {
		q := map[string]string{}
		for j, h := range report.QuestionHeadings {
			if j < len(row) {
				q[h] = row[j]
			}
		}
		cell, _ := excelize.CoordinatesToCellName(6, i+2)
		require.NoError(t, file.SetCellStr("Questions", cell, answer(q)))
	}
	require.NoError(t, file.Save())
	return len(rows) - 1
}

// sensible answers every question in the way that its kind allows: with yes
// where there is a suggestion, another value, keep, or leave out.
func sensible(q map[string]string) string {
	several, found := strings.CutPrefix(q["Suggestion"], "one of: ")
	switch {
	case found && q["About"] == "date":
		first, _, _ := strings.Cut(several, "; ")
		return first
	case q["Suggestion"] != "" && q["About"] != "grid reference":
		return "yes"
	case q["State"] == "query":
		return "keep"
	case q["About"] == "date":
		return "12 June 2018"
	case q["About"] == "name":
		return "Heart and Dart"
	case q["About"] == "grid reference":
		return "TL4587"
	case q["About"] == "site":
		return "Sallowmere Reserve"
	case q["About"] == "count":
		return "3"
	}
	return "leave out"
}

func TestNothingIsAskedTwice(t *testing.T) {
	folder, paths := demoNotebooks(t)
	out := filepath.Join(folder, "out")
	job := convert.Job{Files: paths, Out: out}
	first := run(t, job)
	require.NotZero(t, first.Summary.Held)
	queries := filepath.Join(out, convert.QueriesFile)
	n := 0
	require.Equal(t, len(first.Questions), fill(t, queries, func(q map[string]string) string {
		n++
		if n%4 == 0 {
			return "leave out"
		}
		return sensible(q)
	}))
	given := filepath.Join(folder, "my answers.xlsx")
	require.NoError(t, os.Rename(queries, given))

	job.Answers = []string{given}
	second := run(t, job)
	assert.Zero(t, second.Summary.Held)
	for _, q := range second.Questions {
		t.Errorf("asked again: %s %q (%s): %s", q.About, q.Written, q.Code, q.Message)
	}
	assert.Empty(t, second.Notes)
	accountsBalance(t, &second.Summary)

	// The answers are remembered, and the run can be repeated without them.
	require.FileExists(t, filepath.Join(folder, answers.FileName))
	require.NoError(t, os.Remove(given))
	job.Answers = nil
	before, err := os.ReadFile(filepath.Join(out, convert.SubmissionFile))
	require.NoError(t, err)
	third := run(t, job)
	assert.Empty(t, third.Questions)
	after, err := os.ReadFile(filepath.Join(out, convert.SubmissionFile))
	require.NoError(t, err)
	assert.True(t, string(before) == string(after), "the same notebooks, project file and answers give the same bytes")
}

// faulty raises as many kinds of question as a list can.
const faulty = `Date,Species,Count,Sex,Site,Grid ref,Recorder,Comments,Status,Time
31/06/2021,Heart and Dart,1,,Sallowmere Reserve,TL4588,Ines Calloway,,,
12/06/2021,Hart and Dart,2,,Sallowmere Reserve,TL4588,Ines Calloway,,,
12/06/2021,Scarce Silver Rustic,2,,Sallowmere Reserve,TL4588,Ines Calloway,,,
12/06/2021,Buff-tip,umpteen?,,Sallowmere Reserve,TL4588,Ines Calloway,,,
12/06/2021,Buff-tip,1,,Sallowmere Reserve,TL 458 83,Ines Calloway,,,
,Buff-tip,1,,Sallowmere Reserve,TL4588,Ines Calloway,,,
13/06/2021,,1,,Sallowmere Reserve,TL4588,Ines Calloway,,,
13/06/2021,Buff-tip,1,,,,Ines Calloway,,,
13/06/2021,Buff-tip,2,,Sallowmere Reserve,TL4588,,,,
13/06/2021,Peppered Moth,2m,f,Sallowmere Reserve,TL4588,Ines Calloway,,,
14/06/2021,Heart and Dart,=1+1,,Sallowmere Reserve,TL4588,Ines Calloway,"=HYPERLINK(""x"")  two  spaces",,
14/06/2021,Elephant Hawk-moth,5,,Sallowmere Reserve,TL4588,Ines Calloway,,absent,
15/06/2031,Elephant Hawk-moth,5,,Sallowmere Reserve,TL4588,Ines Calloway,,,
15/01/2021,Elephant Hawk-moth,5,,Sallowmere Reserve,TL4588,Ines Calloway,,,
12/06/2021,Hart and Dart,2,,Sallowmere Reserve,TL4588,Ines Calloway,,,
June,Buff-tip,1,,Sallowmere Reserve,TL4588,Ines Calloway,,,
16/06/2021,Buff-tip,1,,Sallowmere Reserve,NZ4588,Ines Calloway,probably a mistake,maybe,25:70
16/06/2021,Large Yellow Underwing,1,,Lost Place,,Ines Calloway,,,
`

func TestEveryKindOfQuestionCanBeAnswered(t *testing.T) {
	for name, say := range map[string]func(map[string]string) string{
		"sensibly":  sensible,
		"keep":      func(map[string]string) string { return "keep" },
		"leave out": func(map[string]string) string { return "leave out" },
	} {
		t.Run(name, func(t *testing.T) {
			out := t.TempDir()
			job := convert.Job{Files: []string{write(t, "faulty.csv", faulty)}, Out: out}
			first := run(t, job)
			require.Greater(t, len(first.Questions), 12)
			result := first
			// An answer may lead to one more question: about the value given.
			for round := 0; len(result.Questions) > 0 && round < 2; round++ {
				seen := map[string]bool{}
				for _, q := range result.Questions {
					seen[q.About+q.Written+q.Code] = true
				}
				fill(t, filepath.Join(out, convert.QueriesFile), say)
				result = run(t, job)
				for _, q := range result.Questions {
					assert.False(t, seen[q.About+q.Written+q.Code], "asked twice: %s %q (%s): %s", q.About, q.Written, q.Code, q.Message)
				}
				for _, note := range result.Notes {
					if name == "leave out" {
						break // one answer may leave out what another is about
					}
					assert.Contains(t, note, "were used", "every answer fits something")
				}
			}
			assert.Empty(t, result.Questions)
			assert.Zero(t, result.Summary.Held)
			accountsBalance(t, &result.Summary)
		})
	}
}

func TestAnswersThatDisagreeAreReported(t *testing.T) {
	folder := t.TempDir()
	notebook := write(t, "season.csv", strings.Replace(season, "Buff-tip", "Scarce Silver Rustic", 1))
	var given []string
	for _, answer := range []string{"Buff-tip", "Heart and Dart"} {
		out := filepath.Join(folder, answer)
		run(t, convert.Job{Files: []string{notebook}, Out: out})
		path := filepath.Join(out, convert.QueriesFile)
		fill(t, path, func(map[string]string) string { return answer })
		given = append(given, path)
	}
	result := run(t, convert.Job{Files: []string{notebook}, Out: filepath.Join(folder, "out"), Answers: given})
	assert.Equal(t, 1, result.Summary.Held, "neither counts")
	require.Len(t, result.Notes, 1)
	assert.Contains(t, result.Notes[0], "Buff-tip")
	assert.Contains(t, result.Notes[0], "queries.xlsx, Questions, cell F2")
}

func TestAnswersThatFitNothingAreReported(t *testing.T) {
	out := t.TempDir()
	wrong := strings.Replace(season, "Buff-tip", "Scarce Silver Rustic", 1)
	path := write(t, "season.csv", wrong)
	run(t, convert.Job{Files: []string{path}, Out: out})
	fill(t, filepath.Join(out, convert.QueriesFile), func(map[string]string) string { return "Buff-tip" })
	require.NoError(t, os.WriteFile(path, []byte(season), 0o644)) // corrected meanwhile
	result := run(t, convert.Job{Files: []string{path}, Out: out, Answers: []string{filepath.Join(out, convert.QueriesFile)}})
	require.Len(t, result.Notes, 1)
	assert.Contains(t, result.Notes[0], "Scarce Silver Rustic")
}

func TestAnswersInTheOutputFolderAreNotLost(t *testing.T) {
	out := t.TempDir()
	job := convert.Job{Files: []string{write(t, "season.csv", strings.Replace(season, "Buff-tip", "Scarce Silver Rustic", 1))}, Out: out}
	run(t, job)
	queries := filepath.Join(out, convert.QueriesFile)
	fill(t, queries, func(map[string]string) string { return "Buff-tip" })
	result := run(t, job)
	assert.Zero(t, result.Summary.Held, "they are used without being named")
	require.Len(t, result.Notes, 1)

	// Neither is a workbook that cannot be used.
	require.NoError(t, os.WriteFile(queries, []byte("something else"), 0o644))
	result = run(t, job)
	assert.Contains(t, strings.Join(result.Notes, "\n"), "queries-kept-1.xlsx")
	kept, err := os.ReadFile(filepath.Join(out, "queries-kept-1.xlsx"))
	require.NoError(t, err)
	assert.Equal(t, "something else", string(kept))
}

func TestAnAnswerSurvivesNewRows(t *testing.T) {
	out := t.TempDir()
	wrong := strings.Replace(season, "Buff-tip", "Scarce Silver Rustic", 1)
	path := write(t, "season.csv", wrong)
	job := convert.Job{Files: []string{path}, Out: out}
	run(t, job)
	fill(t, filepath.Join(out, convert.QueriesFile), func(map[string]string) string { return "Buff-tip" })
	lines := strings.SplitAfter(wrong, "\n")
	next := lines[0] + "01/06/2021,Scarce Silver Rustic,7,Sallowmere Reserve,TL4588,Ines Calloway,actinic light trap,\n" + strings.Join(lines[1:], "")
	require.NoError(t, os.WriteFile(path, []byte(next), 0o644))
	result := run(t, job)
	assert.Zero(t, result.Summary.Held)
	rows := table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt")
	assert.Equal(t, "Phalera bucephala", rows[0]["scientificName"])
	assert.Equal(t, "Scarce Silver Rustic", rows[0]["verbatimIdentification"])
}
