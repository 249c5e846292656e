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

// textOnly requires every cell of a workbook to be text and none a formula.
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
				if text != "" {
					require.Contains(t, []excelize.CellType{excelize.CellTypeInlineString, excelize.CellTypeSharedString}, kind, "%s %s %q", sheet, cell, text)
				}
				texts = append(texts, text)
			}
		}
	}
	return texts
}

func workbook(t *testing.T, path string, questions []*report.Question) {
	w, err := report.NewWorkbook()
	require.NoError(t, err)
	at := report.Place{File: "walks.csv", Cell: "B2"}
	require.NoError(t, w.AddRow(reading.Held, at, 2, []reading.Finding{{Verdict: reading.HeldOf("x", unsafe[0])}}, unsafe))
	require.NoError(t, w.AddSkipped("title", at, 1, unsafe))
	out, err := os.Create(path)
	require.NoError(t, err)
	defer out.Close()
	require.NoError(t, w.Finish(out, filepath.Dir(path), []string{"Questions"}, questions))
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

	records, err := report.NewRecords([]string{"occurrenceRemarks", "individualCount"}, []string{"Further"})
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
