package report

import (
	"fmt"
	"path/filepath"
	"strings"

	"fieldfare/convert/answers"

	"github.com/xuri/excelize/v2"
)

// ReadAnswers takes the answers of a filled-in queries workbook into the set.
func ReadAnswers(path string, into *answers.Set) error {
	file, err := excelize.OpenFile(path)
	if err != nil {
		return fmt.Errorf("%s: this is no queries workbook that can be opened. Give the queries.xlsx of an earlier run, saved as .xlsx", path)
	}
	defer file.Close()
	rows, err := file.GetRows(pageQuestions, excelize.Options{RawCellValue: true})
	if err != nil || len(rows) == 0 {
		return fmt.Errorf("%s: there is no page “%s” in it. Give the queries.xlsx of an earlier run", path, pageQuestions)
	}
	column := map[string]int{}
	for i, h := range rows[0] {
		column[h] = i
	}
	for _, h := range QuestionHeadings {
		if _, found := column[h]; !found {
			return fmt.Errorf("%s, page %s: the column “%s” is missing. Leave the headings as they were", path, pageQuestions, h)
		}
	}
	for i, row := range rows[1:] {
		cell := func(heading string) string {
			if n := column[heading]; n < len(row) {
				return strings.TrimSpace(row[n])
			}
			return ""
		}
		said := cell("Your answer")
		if said == "" {
			continue
		}
		a := answers.Answer{
			Key:  answers.Key{About: cell("About"), Written: cell("Written"), Check: cell("Check")},
			Note: cell("Your note"),
			From: fmt.Sprintf("%s, %s, row %d", filepath.Base(path), pageQuestions, i+2),
		}
		switch strings.ToLower(said) {
		case "yes", "y", "ok":
			a.Decision, a.Value = answers.Replace, cell("Suggestion")
			if a.Value == "" {
				a.Decision = answers.Keep
			}
		case "keep":
			a.Decision = answers.Keep
		case "leave out":
			a.Decision = answers.LeaveOut
		default:
			a.Decision, a.Value = answers.Replace, said
		}
		if err := into.Add(a); err != nil {
			return err
		}
	}
	return nil
}
