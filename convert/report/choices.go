package report

import (
	"net/url"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// choices writes the drop-downs of the answers. Their lists stand on a page of
// their own, since a list within a cell may not be long or hold commas.
type choices struct {
	w     *Workbook
	lists map[string]string // formula, by the list
	next  int
}

// Words of the drop-downs, as ReadAnswers understands them.
const (
	sayYes      = "yes"
	sayKeep     = "keep"
	sayLeaveOut = "leave out"
)

// longestChoice is how many candidates a drop-down offers.
const longestChoice = 40

// add gives a question its drop-down. Where there are several candidates, none
// of them is what “yes” could mean.
func (c *choices) add(sheet string, row int, q *Question) error {
	var list []string
	if !DecisionsOnly(q.About) && len(q.Candidates) > 0 {
		if len(q.Candidates) == 1 {
			list = append(list, sayYes)
		}
		for _, candidate := range q.Candidates[:min(len(q.Candidates), longestChoice)] {
			if candidate = clip(candidate); candidate != "" && !has(list, candidate) {
				list = append(list, candidate)
			}
		}
	}
	return c.over(sheet, row, row, append(list, sayKeep, sayLeaveOut))
}

// shared gives the rows from first to last one drop-down.
func (c *choices) shared(sheet string, first, last int) error {
	return c.over(sheet, first, last, []string{sayYes, sayKeep, sayLeaveOut})
}

func (c *choices) over(sheet string, first, last int, list []string) error {
	formula, err := c.formula(list)
	if err != nil {
		return err
	}
	v := excelize.NewDataValidation(true)
	column, _ := excelize.ColumnNumberToName(answerColumn)
	v.Sqref = column + strconv.Itoa(first) + ":" + column + strconv.Itoa(last)
	v.SetSqrefDropList(formula)
	v.ShowErrorMessage = false // free text is welcome
	return c.w.file.AddDataValidation(sheet, v)
}

// formula returns the range in which the list stands.
func (c *choices) formula(list []string) (string, error) {
	key := strings.Join(list, "\x00")
	if f, found := c.lists[key]; found {
		return f, nil
	}
	if c.lists == nil {
		c.lists = map[string]string{}
		if _, err := c.w.file.NewSheet(pageChoices); err != nil {
			return "", err
		}
	}
	c.next++
	for i, text := range list {
		cell, _ := excelize.CoordinatesToCellName(i+1, c.next)
		if err := c.w.file.SetCellStr(pageChoices, cell, text); err != nil {
			return "", err
		}
	}
	end, _ := excelize.ColumnNumberToName(len(list))
	n := strconv.Itoa(c.next)
	f := pageChoices + "!$A$" + n + ":$" + end + "$" + n
	c.lists[key] = f
	return f, nil
}

func (c *choices) finish() error {
	if c.lists == nil {
		return nil
	}
	return c.w.file.SetSheetVisible(pageChoices, false)
}

// link makes a cell of the row a link to the place in its notebook.
func link(file *excelize.File, sheet string, row int, folder string, at Place) error {
	target, ok := target(folder, at)
	if !ok {
		return nil
	}
	cell, _ := excelize.CoordinatesToCellName(linkColumn, row)
	return file.SetCellHyperLink(sheet, cell, target, "External")
}

// longestLink is the most that spreadsheet programs take for an address.
const longestLink = 2079

// target is the address of a cell in a notebook, as seen from the folder.
func target(folder string, at Place) (string, bool) {
	from, errFrom := filepath.Abs(folder)
	to, errTo := filepath.Abs(at.File)
	if folder == "" || at.File == "" || at.File == "-" || errFrom != nil || errTo != nil {
		return "", false
	}
	var address string
	if path, err := filepath.Rel(from, to); err == nil {
		address = (&url.URL{Path: filepath.ToSlash(path)}).String()
	} else {
		address = whole(filepath.ToSlash(to)) // on another drive
	}
	if at.Sheet != "" {
		cell := at.firstCell()
		if cell == "" {
			cell = "A1"
		}
		address += "#" + url.PathEscape("'"+strings.ReplaceAll(at.Sheet, "'", "''")+"'!"+cell)
	}
	return address, len(address) <= longestLink
}

// whole is the address of a file by its full path with slashes, with or
// without a drive's letter, or on a share (RFC 8089, file URIs).
func whole(path string) string {
	escaped := (&url.URL{Path: path}).EscapedPath()
	if strings.HasPrefix(path, "//") {
		return "file:" + escaped
	}
	return "file:///" + strings.TrimPrefix(escaped, "/")
}
