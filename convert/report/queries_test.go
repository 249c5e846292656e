package report_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// unsafe are texts that a spreadsheet program would take for a formula if they
// were typed into it (OWASP, CSV injection, names the signs).
var unsafe = []string{"=1+1", "+44 moths", "-3", "@SUM(A1)", "=HYPERLINK(\"x\")", "\t=1", "12/06/2021", "007"}

// numbers are the columns that hold numbers of ours, so that they sort as such.
var numbers = map[string]int{"Questions": 7, "Rows concerned": 3, "Skipped": 3}

// textOnly requires every cell of a workbook to be text and none a formula, but
// for numbers of ours.
func textOnly(t *testing.T, file *excelize.File) (texts []string) {
	for _, sheet := range file.GetSheetList() {
		rows, err := file.GetRows(sheet)
		require.NoError(t, err)
		for i, row := range rows {
			for j, text := range row {
				cell, _ := excelize.CoordinatesToCellName(j+1, i+1)
				formula, err := file.GetCellFormula(sheet, cell)
				require.NoError(t, err)
				require.Empty(t, formula, "%s %s", sheet, cell)
				kind, err := file.GetCellType(sheet, cell)
				require.NoError(t, err)
				if column, found := numbers[sheet]; found && j == column && i > 0 {
					require.Regexp(t, `^[0-9]+$`, text)
				} else if text != "" {
					require.Contains(t, []excelize.CellType{excelize.CellTypeInlineString, excelize.CellTypeSharedString}, kind, "%s %s %q", sheet, cell, text)
				}
				texts = append(texts, text)
			}
		}
	}
	return texts
}

func workbook(t *testing.T, path string, questions []*report.Question) {
	w, err := report.NewWorkbook(t.TempDir())
	require.NoError(t, err)
	at := report.Place{File: "walks.csv", Cell: "B2"}
	require.NoError(t, w.AddRow(reading.Held, at, 2, []reading.Finding{{Verdict: reading.HeldOf("x", unsafe[0])}}, unsafe))
	require.NoError(t, w.AddSkipped("title", at, 1, unsafe))
	out, err := os.Create(path)
	require.NoError(t, err)
	defer out.Close()
	require.NoError(t, w.Finish(out, filepath.Dir(path), []string{"Questions"}, func(yield func(*report.Question, error) bool) {
		for _, q := range questions {
			if !yield(q, nil) {
				return
			}
		}
	}))
}

func TestTextStaysText(t *testing.T) {
	var questions []*report.Question
	for _, text := range unsafe {
		questions = append(questions, &report.Question{About: "count", Written: text, Code: "c", State: reading.Held, Message: text, Candidates: []string{text}, Records: 1, Places: []report.Place{{File: "walks.csv", Cell: "B2"}}})
	}
	path := filepath.Join(t.TempDir(), "queries.xlsx")
	workbook(t, path, questions)
	file, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer file.Close()
	assert.Subset(t, textOnly(t, file), unsafe)

	records, err := report.NewRecords([]string{"occurrenceRemarks", "individualCount"}, []string{"Further"}, t.TempDir())
	require.NoError(t, err)
	for _, text := range unsafe {
		require.NoError(t, records.Add(&dwc.Occurrence{OccurrenceRemarks: text, IndividualCount: text}, []string{text}))
	}
	path = filepath.Join(t.TempDir(), "records.xlsx")
	out, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, records.Finish(out))
	require.NoError(t, out.Close())
	again, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer again.Close()
	assert.Subset(t, textOnly(t, again), unsafe)
}

// TestSuggestions: only a single candidate is one that “yes” accepts; the
// drop-down has them all.
func TestSuggestions(t *testing.T) {
	path := filepath.Join(t.TempDir(), "queries.xlsx")
	var pugs []string
	for _, epithet := range strings.Fields("vulgata tenuiata abbreviata nanata pulchellata centaureata haworthiata exiguata icterata linariata") {
		pugs = append(pugs, "Eupithecia "+epithet)
	}
	workbook(t, path, []*report.Question{
		{About: "name", Written: "Pug sp.", Code: "name-ambiguous", State: reading.Held, Candidates: pugs},
		{About: "name", Written: "Larg Emerald", Code: "name-misspelt", State: reading.Query, Candidates: pugs[:1]},
		{About: "record", Written: "x", Code: "duplicate", State: reading.Query, Candidates: pugs},
	})
	file, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer file.Close()
	rows, err := file.GetRows("Questions")
	require.NoError(t, err)
	assert.Equal(t, "one of: Eupithecia vulgata; Eupithecia tenuiata; Eupithecia abbreviata; and 7 more", rows[1][4])
	assert.Equal(t, pugs[0], rows[2][4])
	assert.Empty(t, rows[3][4])
	choices, err := file.GetRows("Choices")
	require.NoError(t, err)
	assert.Equal(t, append(append([]string{}, pugs...), "keep", "leave out"), choices[0])
	assert.Equal(t, []string{"yes", pugs[0], "keep", "leave out"}, choices[1])
	assert.Equal(t, []string{"keep", "leave out"}, choices[2])
}

// TestAnswersOfEveryFormat: the page as spreadsheet programs save it, moved
// about as people do, and as delimited text.
func TestAnswersOfEveryFormat(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "queries.xlsx")
	workbook(t, path, []*report.Question{
		{About: "date", Written: "31.vi.21", Code: "no-such-day", State: reading.Held, Records: 12},
		{About: "name", Written: "Larg Emerald", Code: "name-misspelt", State: reading.Query, Candidates: []string{"Geometra papilionaria"}},
		{About: "record", Written: "=1+1", Code: "duplicate", State: reading.Query},
	})
	file, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer file.Close()
	for cell, text := range map[string]string{"F2": "30.6.2021", "F3": "YES", "F4": " Leave out ", "G4": "twice; typed"} {
		require.NoError(t, file.SetCellStr("Questions", cell, text))
	}
	require.NoError(t, file.InsertRows("Questions", 2, 1))
	require.NoError(t, file.DuplicateRowTo("Questions", 3, 6))
	require.NoError(t, file.RemoveRow("Questions", 3))
	require.NoError(t, file.InsertCols("Questions", "A", 1))
	require.NoError(t, file.Save())
	want := []string{
		"date|31.vi.21|read as|30.6.2021|", "name|Larg Emerald|read as|Geometra papilionaria|", "record|=1+1|leave out||twice; typed",
	}
	rows, err := file.GetRows("Questions")
	require.NoError(t, err)
	for _, delimiter := range []string{",", ";", "\t"} {
		var b strings.Builder
		for _, row := range rows {
			for i, text := range row {
				if i > 0 {
					b.WriteString(delimiter)
				}
				b.WriteString(`"` + strings.ReplaceAll(text, `"`, `""`) + `"`)
			}
			b.WriteString("\r\n")
		}
		name := filepath.Join(folder, "copy.csv")
		require.NoError(t, os.WriteFile(name, []byte("\uFEFF"+b.String()), 0o644))
		assert.ElementsMatch(t, want, said(t, name), "separated by %q", delimiter)
	}
	assert.ElementsMatch(t, want, said(t, path))

	other := filepath.Join(folder, "walks.csv")
	require.NoError(t, os.WriteFile(other, []byte("Date,Species\n12/6/2021,Buff-tip\n"), 0o644))
	_, err = report.ReadAnswers(t.Context(), other)
	assert.ErrorContains(t, err, "the column “State” is missing")
	_, err = report.ReadAnswers(t.Context(), filepath.Join(folder, "none.xlsx"))
	assert.ErrorContains(t, err, "there is no such file. Give the queries.xlsx of an earlier run")
}

func said(t *testing.T, path string) (list []string) {
	given, err := report.ReadAnswers(t.Context(), path)
	require.NoError(t, err)
	assert.Empty(t, given.Problems)
	assert.True(t, given.Filled)
	for _, a := range given.Answers {
		list = append(list, strings.Join([]string{a.About, a.Written, string(a.Decision), a.Value, a.Note}, "|"))
	}
	return list
}

// TestRowAsWideAsAWorksheet: a row of as many columns as a worksheet has, with
// ours before them, is listed whole.
func TestRowAsWideAsAWorksheet(t *testing.T) {
	w, err := report.NewWorkbook(t.TempDir())
	require.NoError(t, err)
	cells := make([]string, excelize.MaxColumns+3)
	cells[0], cells[excelize.MaxColumns-7], cells[excelize.MaxColumns-6], cells[excelize.MaxColumns+2] = "first", "one", "two", "=last"
	at := report.Place{File: "wide.csv"}
	require.NoError(t, w.AddRow(reading.Held, at, 2, []reading.Finding{{Verdict: reading.HeldOf("x", "why")}}, cells))
	require.NoError(t, w.AddSkipped("title", at, 1, cells))
	path := filepath.Join(t.TempDir(), "queries.xlsx")
	out, err := os.Create(path)
	require.NoError(t, err)
	defer out.Close()
	require.NoError(t, w.Finish(out, filepath.Dir(path), []string{"Questions"}, func(func(*report.Question, error) bool) {}))
	file, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer file.Close()
	for cell, want := range map[string]string{"F2": "first", "XFC2": "one", "XFD2": "two | =last"} {
		got, err := file.GetCellValue("Rows concerned", cell)
		require.NoError(t, err)
		assert.Equal(t, want, got, cell)
	}
	got, err := file.GetCellValue("Skipped", "XFD2") // which has a column less before it
	require.NoError(t, err)
	assert.Equal(t, "=last", got)
}
