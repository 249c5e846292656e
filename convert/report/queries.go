package report

import (
	"io"
	"iter"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"fieldfare/convert/answers"
	"fieldfare/convert/reading"
	"fieldfare/convert/report/book"

	"github.com/xuri/excelize/v2"
)

// The pages of the queries workbook.
const (
	pageStart     = "Start here"
	pageQuestions = "Questions"
	pageRows      = "Rows concerned"
	pageSkipped   = "Skipped"
	pageChoices   = "Choices"
)

// QuestionHeadings are the columns of the questions page. Answers are read
// back by these names.
var QuestionHeadings = []string{"State", "About", "Written", "What is the matter", "Suggestion", headingAnswer, "Your note", "Records", "Where", "Check"}

const headingAnswer = "Your answer"

// The column widths of the questions page, in characters, and the columns that
// other parts of the page point to.
var questionWidths = []float64{8, 13, 24, 46, 22, 22, 16, 9, 32, 18, 12}

const (
	answerColumn, noteColumn, recordsColumn, whereColumn, linkColumn = 6, 7, 8, 9, 11
)

// Workbook is the queries workbook in the making. Rows are added as they come
// and kept on disk, questions and the first page at the end.
type Workbook struct {
	file    *excelize.File
	temp    string // folder for work files
	styles  styles
	rows    *page
	skipped *page
}

// NewWorkbook begins a queries workbook. Temp is the folder for work files.
func NewWorkbook(temp string) (*Workbook, error) {
	w, err := newBook(pageStart, temp)
	if err != nil {
		return nil, err
	}
	for _, name := range []string{pageQuestions, pageRows, pageSkipped} {
		if _, err := w.file.NewSheet(name); err != nil {
			return nil, err
		}
	}
	w.file.SetActiveSheet(0) // while the sheets are empty: it reads them whole
	w.rows = &page{w: w, name: pageRows, made: true, headings: []string{"State", "File", "Sheet", "Row", "What is the matter", "The row as it stands"}, widths: []float64{8, 18, 12, 7, 44, 16}, least: 12, numbers: 4, repeated: 4}
	w.skipped = &page{w: w, name: pageSkipped, made: true, headings: []string{"Why", "File", "Sheet", "Row", "The row as it stands"}, widths: []float64{22, 18, 12, 7, 16}, least: 11, numbers: 4, repeated: 4}
	return w, nil
}

// AddRow lists a row that raises questions, whole.
func (w *Workbook) AddRow(state reading.State, at Place, row int, findings []reading.Finding, cells []string) error {
	var messages []string
	asked := map[[2]string]bool{} // what was written, and how it was asked about
	for i := range findings {
		f := &findings[i]
		k := [2]string{f.Code, f.Written}
		if f.Message == "" || has(messages, f.Message) || f.Written != "" && asked[k] {
			continue
		}
		asked[k] = true
		messages = append(messages, f.Message)
	}
	return w.rows.add(append([]string{state.String(), filepath.Base(at.File), at.Sheet, strconv.Itoa(row), strings.Join(messages, "\n")}, cells...))
}

// AddSkipped lists a row that is no record.
func (w *Workbook) AddSkipped(reason string, at Place, row int, cells []string) error {
	return w.skipped.add(append([]string{reason, filepath.Base(at.File), at.Sheet, strconv.Itoa(row)}, cells...))
}

// Finish writes the questions and the first page, and the workbook to out.
// Folder is where the workbook will stand, so that its links can find the
// notebooks from there.
func (w *Workbook) Finish(out io.Writer, folder string, lines []string, questions iter.Seq2[*Question, error]) error {
	defer w.file.Close()
	if err := w.start(lines); err != nil {
		return err
	}
	if err := w.questions(folder, questions); err != nil {
		return err
	}
	for _, p := range []*page{w.rows, w.skipped} {
		if err := p.finish(); err != nil {
			return err
		}
	}
	return book.Write(w.file, out, w.temp)
}

// startWidth is the width of the first page in characters: as much as goes on
// a sheet of A4 upright in any font.
const startWidth = 72

// start writes the first page; its first line is the title.
func (w *Workbook) start(lines []string) error {
	widths := &page{widths: []float64{startWidth}}
	for i, line := range lines {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		if err := w.file.SetCellStr(pageStart, cell, clip(line)); err != nil {
			return err
		}
		style, height := w.styles.start, widths.height([]string{line})
		if i == 0 {
			style, height = w.styles.title, 2*lineHeight
		}
		if err := w.file.SetRowHeight(pageStart, i+1, height); err != nil {
			return err
		}
		if err := w.file.SetCellStyle(pageStart, cell, cell, style); err != nil {
			return err
		}
	}
	if err := w.file.SetColWidth(pageStart, "A", "A", startWidth); err != nil {
		return err
	}
	return w.printSetup(pageStart, "portrait", true, excelize.PageLayoutOptions{})
}

// ownChoices is how many questions get a drop-down of their own candidates; a
// worksheet with many more of them opens slowly. The rest share one.
const ownChoices = 5000

func (w *Workbook) questions(folder string, questions iter.Seq2[*Question, error]) error {
	// The link has a column of its own: not every spreadsheet program wraps one.
	p := &page{w: w, name: pageQuestions, headings: append(slices.Clone(QuestionHeadings), "First of them"), widths: questionWidths, made: true, answers: true, numbers: recordsColumn, printed: whereColumn}
	c := &choices{w: w}
	i := -1
	for q, err := range questions {
		if err != nil {
			return err
		}
		i++
		where := q.where()
		open := ""
		if i < ownChoices && len(q.Places) > 0 {
			open = "open " + q.Places[0].firstCell()
		}
		if err := p.add([]string{q.State.String(), q.About, answers.Plain(q.Written), q.Message, q.suggestion(), "", "", strconv.Itoa(q.Records), strings.Join(where, "\n"), q.Code, open}); err != nil {
			return err
		}
		if i >= ownChoices {
			continue
		}
		if err := c.add(p.sheet, p.row, q); err != nil {
			return err
		}
		if len(q.Places) > 0 {
			if err := link(w.file, p.sheet, p.row, folder, q.Places[0]); err != nil {
				return err
			}
		}
	}
	if i >= ownChoices {
		first := ownChoices + 2
		if p.sheets > 1 {
			first = 2
		}
		if err := c.shared(p.sheet, first, p.row); err != nil {
			return err
		}
	}
	if err := c.finish(); err != nil {
		return err
	}
	return p.finish()
}

// firstCell is the cell's address, or the first of several.
func (p Place) firstCell() string {
	cell, _, _ := strings.Cut(p.Cell, ",")
	return cell
}

// String says where, without the folder.
func (p Place) String() string {
	text := filepath.Base(p.File)
	for _, part := range []string{p.Sheet, p.Cell} {
		if part != "" {
			text += " / " + part
		}
	}
	return text
}

func has(list []string, s string) bool { return is(s, list) }
