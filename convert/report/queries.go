package report

import (
	"io"
	"strconv"
	"strings"

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
)

// QuestionHeadings are the columns of the questions page. Answers are read
// back by these names.
var QuestionHeadings = []string{"State", "About", "Written", "What is the matter", "Suggestion", "Your answer", "Your note", "Records", "Where", "Check"}

// The column widths of the questions page, in characters.
var questionWidths = []float64{9, 16, 28, 60, 30, 30, 24, 9, 36, 22}

// sheetRows is the most rows that a worksheet holds (Office Open XML).
const sheetRows = 1 << 20

// Workbook is the queries workbook in the making. Rows are added as they come
// and kept on disk, questions and the first page at the end.
type Workbook struct {
	file    *excelize.File
	bold    int
	wrap    int
	rows    *page
	skipped *page
}

// NewWorkbook begins a queries workbook.
func NewWorkbook() (*Workbook, error) {
	w, err := newBook(pageStart)
	if err != nil {
		return nil, err
	}
	if _, err := w.file.NewSheet(pageQuestions); err != nil {
		return nil, err
	}
	w.rows = &page{w: w, name: pageRows, headings: []string{"State", "File", "Sheet", "Row", "What is the matter", "The row as it stands"}, widths: []float64{9, 24, 16, 8, 60, 24}}
	w.skipped = &page{w: w, name: pageSkipped, headings: []string{"Why", "File", "Sheet", "Row", "The row as it stands"}, widths: []float64{28, 24, 16, 8, 24}}
	return w, nil
}

// AddRow lists a row that raises questions, whole.
func (w *Workbook) AddRow(state reading.State, at Place, row int, findings []reading.Finding, cells []string) error {
	var messages []string
	for i := range findings {
		messages = append(messages, findings[i].Message)
	}
	return w.rows.add(append([]string{state.String(), at.File, at.Sheet, strconv.Itoa(row), strings.Join(messages, "\n")}, cells...))
}

// AddSkipped lists a row that is no record.
func (w *Workbook) AddSkipped(reason string, at Place, row int, cells []string) error {
	return w.skipped.add(append([]string{reason, at.File, at.Sheet, strconv.Itoa(row)}, cells...))
}

// Finish writes the questions and the first page, and the workbook to out.
func (w *Workbook) Finish(out io.Writer, lines []string, questions []*Question) error {
	defer w.file.Close()
	for i, line := range lines {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		if err := w.file.SetCellStr(pageStart, cell, line); err != nil {
			return err
		}
		if err := w.file.SetCellStyle(pageStart, cell, cell, w.wrap); err != nil {
			return err
		}
	}
	if err := w.file.SetColWidth(pageStart, "A", "A", 100); err != nil {
		return err
	}
	if err := w.questions(questions); err != nil {
		return err
	}
	for _, p := range []*page{w.rows, w.skipped} {
		if err := p.finish(); err != nil {
			return err
		}
	}
	w.file.SetActiveSheet(0)
	return book.Write(w.file, out)
}

func (w *Workbook) questions(questions []*Question) error {
	p := &page{w: w, name: pageQuestions, headings: QuestionHeadings, widths: questionWidths, made: true}
	for _, q := range questions {
		suggestion := ""
		if len(q.Candidates) > 0 {
			suggestion = q.Candidates[0]
		}
		var where []string
		for _, at := range q.Places[:min(len(q.Places), 5)] {
			where = append(where, strings.Trim(at.File+" / "+at.Sheet+" / "+at.Cell, " /"))
		}
		if n := len(q.Places) - len(where) + q.Others; n > 0 {
			where = append(where, "and "+strconv.Itoa(n)+" more")
		}
		if err := p.add([]string{q.State.String(), q.About, q.Written, q.Message, suggestion, "", "", strconv.Itoa(q.Records), strings.Join(where, "\n"), q.Code}); err != nil {
			return err
		}
	}
	return p.finish()
}

// page is a sheet written row by row; it goes on to another sheet when full.
type page struct {
	w        *Workbook
	name     string
	headings []string
	widths   []float64
	made     bool // the sheet exists already
	sheets   int
	stream   *excelize.StreamWriter
	row      int
}

func (p *page) add(cells []string) error {
	if p.stream == nil || p.row >= sheetRows {
		if err := p.open(); err != nil {
			return err
		}
	}
	p.row++
	values := make([]any, len(cells))
	for i, c := range cells {
		// A cell of type string is never a formula, whatever it begins with.
		values[i] = excelize.Cell{StyleID: p.w.wrap, Value: clip(c)}
	}
	at, err := excelize.CoordinatesToCellName(1, p.row)
	if err != nil {
		return err
	}
	return p.stream.SetRow(at, values)
}

func (p *page) open() error {
	if err := p.flush(); err != nil {
		return err
	}
	p.sheets++
	name := p.name
	if p.sheets > 1 {
		name += " " + strconv.Itoa(p.sheets)
	}
	if !p.made || p.sheets > 1 {
		if _, err := p.w.file.NewSheet(name); err != nil {
			return err
		}
	}
	stream, err := p.w.file.NewStreamWriter(name)
	if err != nil {
		return err
	}
	p.stream, p.row = stream, 1
	for i, width := range p.widths {
		if err := stream.SetColWidth(i+1, i+1, width); err != nil {
			return err
		}
	}
	if err := stream.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	values := make([]any, len(p.headings))
	for i, h := range p.headings {
		values[i] = excelize.Cell{StyleID: p.w.bold, Value: h}
	}
	return stream.SetRow("A1", values)
}

func (p *page) flush() error {
	if p.stream == nil {
		return nil
	}
	return p.stream.Flush()
}

// finish leaves a page with its headings even where nothing was added.
func (p *page) finish() error {
	if p.stream == nil {
		if err := p.open(); err != nil {
			return err
		}
	}
	return p.flush()
}

// clip keeps a text within what a cell may hold (Office Open XML: 32,767
// characters).
func clip(s string) string {
	const most = 32767
	if len(s) <= most {
		return s
	}
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return string(r[:most-1]) + "…"
}
