package notebook

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
)

// textSheet is a delimited text file.
type textSheet struct {
	src    *source
	ctx    context.Context
	limits Limits
	enc    textEncoding
	delim  byte
	skip   int // decoded bytes of a "sep=" line
	loneCR bool
	quotes bool
	// dittos and expected are those of records.
	dittos   bool
	expected int

	mu       sync.Mutex
	repaired bool
	note     func(string)
}

func (s *textSheet) File() string         { return s.src.path }
func (s *textSheet) Name() string         { return "" }
func (s *textSheet) Hidden() bool         { return false }
func (s *textSheet) HiddenColumns() []int { return nil }

func openText(ctx context.Context, src *source, head []byte, o Options) (*Book, error) {
	f, err := os.Open(src.real)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	survey, err := surveyText(f, ctx.Err)
	if err != nil {
		return nil, err
	}
	enc := guessEncoding(head, &survey)
	if o.Encoding != "" {
		if enc, err = namedEncoding(o.Encoding, head); err != nil {
			return nil, err
		}
	}
	if enc.wide == nil && survey.control > 16 && int64(survey.control) > survey.size/50 {
		return nil, &Problem{
			Found:  "it is neither a workbook nor text that can be read",
			Advice: "Open it in the program that made it and save it as .xlsx or CSV",
		}
	}
	s := &textSheet{src: src, ctx: ctx, limits: o.Limits, enc: enc, quotes: survey.quotes || enc.wide != nil,
		loneCR: enc.wide != nil || survey.crs > survey.crlf}
	book := &Book{}
	s.note = book.addNote
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return nil, err
	}
	sample, whole, err := s.sample(f)
	if err != nil {
		return nil, err
	}
	if len(bytes.TrimSpace(sample)) == 0 && whole {
		return nil, emptyFile()
	}
	if enc.note != "" {
		book.addNote(enc.note)
	}
	if err := s.chooseDelimiter(sample, o.Delimiter, book.addNote); err != nil {
		return nil, err
	}
	book.sheets = []Sheet{s}
	return book, nil
}

func emptyFile() error {
	return &Problem{Found: "the file is empty", Advice: "Check that it is the right one and that it was saved"}
}

const sampleSize = 256 << 10

// sample reads the beginning of the text, decoded far enough to be split, and
// cut at a line's end.
func (s *textSheet) sample(f *os.File) (b []byte, whole bool, err error) {
	if _, err := f.Seek(int64(s.enc.skip), io.SeekStart); err != nil {
		return nil, false, err
	}
	b, err = io.ReadAll(io.LimitReader(s.enc.reader(f), sampleSize+1))
	if err != nil {
		return nil, false, err
	}
	if len(b) <= sampleSize {
		return b, true, nil
	}
	if i := bytes.LastIndexAny(b, "\r\n"); i > 0 {
		b = b[:i]
	}
	return b, false, nil
}

// chooseDelimiter settles the delimiter: by the project file, by a "sep="
// line, or by the content.
func (s *textSheet) chooseDelimiter(sample []byte, asked string, note func(string)) (err error) {
	if d, size, ok := sepLine(sample); ok {
		s.delim, s.skip = d, size
		sample = sample[size:]
		note(fmt.Sprintf("Its first line says that values are separated by %s; the line itself is not counted as a row.", delimiterName(d)))
	}
	switch {
	case asked != "":
		if s.delim, err = delimiterOf(asked); err != nil {
			return err
		}
	case s.skip == 0:
		s.delim = guessDelimiter(sample, s.limits)
		if aligned, even := alignment(sample); s.delim == 0 && even {
			s.delim = spaces
		} else if s.delim == 0 && aligned {
			note("Its values seem to be lined up with spaces, unevenly, so each line was read as one value. Save it from a spreadsheet program, or put tabs between the values.")
		}
		note(fmt.Sprintf("Values were taken as separated by %s, and the text as %s.", delimiterName(s.delim), s.enc.name))
	}
	if s.delim == spaces {
		return nil
	}
	best := scoreDelimiter(sample, s.delim, s.limits)
	s.expected, s.dittos = best.usual, best.dittos
	if s.dittos {
		note("Double quotes that stand alone in their place were read as ditto marks.")
	}
	return nil
}

// Walk splits the file into rows.
func (s *textSheet) Walk(fn func(*Row) error) error {
	stopped, err := s.walk(fn)
	return s.src.ended("", stopped, err)
}

// walk reports as stopped an error that is fn's own.
func (s *textSheet) walk(fn func(*Row) error) (stopped, err error) {
	f, err := os.Open(s.src.real)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if _, err := f.Seek(int64(s.enc.skip), io.SeekStart); err != nil {
		return nil, err
	}
	in := s.enc.reader(f)
	if _, err := io.CopyN(io.Discard, in, int64(s.skip)); err != nil && err != io.EOF {
		return nil, err
	}
	delim := s.delim
	if delim == spaces {
		delim = 0
	}
	r := newRecords(in, delim, s.limits)
	r.loneCR, r.quotes, r.dittos, r.expected = s.loneCR, s.quotes, s.dittos, s.expected
	var row Row
	var repairs repairs
	for {
		ok, err := r.next()
		if err != nil {
			return nil, s.at(row.Number+1, err)
		}
		if !ok {
			break
		}
		row.Number++
		if row.Number%4096 == 0 {
			if err := s.ctx.Err(); err != nil {
				return nil, err
			}
		}
		if err := s.fields(r, &row); err != nil {
			return nil, err
		}
		if row.Repaired != "" {
			repairs.add(row.Number, row.Repaired)
		}
		if err := fn(&row); err != nil {
			return err, nil
		}
	}
	s.report(&repairs)
	return nil, nil
}

// at says in which row the reading stopped.
func (s *textSheet) at(row int, err error) error {
	if err == errTooBig {
		return &Problem{
			Found:  fmt.Sprintf("row %d is longer than %s, far more than a row holds", row, bytesText(int64(s.limits.RowBytes))),
			Advice: raise("row_bytes", "split it; if not, the file is damaged or is not a table"),
			Cause:  err,
		}
	}
	return err
}

// fields makes the row's cells of the current record.
func (s *textSheet) fields(r *records, row *Row) error {
	row.Cells = row.Cells[:0]
	row.Repaired = r.repaired
	if r.simple && len(r.data) == 0 {
		return nil
	}
	if s.delim == spaces {
		return s.aligned(r, row)
	}
	if r.simple && s.enc.plain(r.data) {
		return s.split(string(r.data), row)
	}
	if err := r.check(row.Number); err != nil {
		return err
	}
	if r.simple {
		for rest, more := r.data, true; more; {
			field := rest
			if i := bytes.IndexByte(rest, r.delim); i >= 0 && r.delim != 0 {
				field, rest = rest[:i], rest[i+1:]
			} else {
				more = false
			}
			row.Cells = append(row.Cells, textCell(s.enc.text(field)))
		}
		return s.cellSizes(row)
	}
	if s.enc.plain(r.data) {
		whole := string(r.data)
		for _, f := range r.fields {
			row.Cells = append(row.Cells, textCell(whole[f.from:f.to]))
		}
	} else {
		for _, f := range r.fields {
			row.Cells = append(row.Cells, textCell(s.enc.text(r.data[f.from:f.to])))
		}
	}
	return s.cellSizes(row)
}

// aligned makes the row's cells of a line whose values are lined up with
// spaces.
func (s *textSheet) aligned(r *records, row *Row) error {
	for _, f := range alignedFields(s.enc.text(r.data)) {
		row.Cells = append(row.Cells, textCell(f))
	}
	if len(row.Cells) > s.limits.Columns {
		return tooWide(row.Number, len(row.Cells), s.limits)
	}
	return s.cellSizes(row)
}

// split cuts a line that has no quotes and needs no decoding; its cells share
// the line's memory.
func (s *textSheet) split(line string, row *Row) error {
	whole := line
	if s.delim != 0 {
		for {
			i := strings.IndexByte(line, s.delim)
			if i < 0 {
				break
			}
			if len(row.Cells) >= s.limits.Columns {
				return tooWide(row.Number, strings.Count(whole, string(rune(s.delim)))+1, s.limits)
			}
			row.add(line[:i])
			line = line[i+1:]
		}
	}
	row.add(line)
	if len(whole) <= s.limits.CellBytes {
		return nil
	}
	return s.cellSizes(row)
}

func (s *textSheet) cellSizes(row *Row) error {
	for i := range row.Cells {
		if len(row.Cells[i].Text) > s.limits.CellBytes {
			return &Problem{
				Found:  fmt.Sprintf("cell %s holds more than %s of text, far more than a cell holds", Ref{Col: i + 1, Row: row.Number}, bytesText(int64(s.limits.CellBytes))),
				Advice: raise("cell_bytes", "shorten it; if not, the file is damaged"),
				Cause:  errTooBig,
			}
		}
	}
	return nil
}

// add adds a cell of delimited text.
func (r *Row) add(text string) {
	n := len(r.Cells)
	if n == cap(r.Cells) {
		r.Cells = append(r.Cells, Cell{})
	}
	r.Cells = r.Cells[:n+1]
	c := &r.Cells[n]
	*c = Cell{}
	if text != "" {
		c.Text, c.Kind = text, Text
	}
}

func textCell(s string) Cell {
	if s == "" {
		return Cell{}
	}
	return Cell{Text: s, Kind: Text}
}

// repairs collects the rows in which a quote was taken as text.
type repairs struct {
	rows  []int
	first string
	count int
}

func (r *repairs) add(row int, what string) {
	if r.count == 0 {
		r.first = what
	}
	if r.count++; len(r.rows) < 5 {
		r.rows = append(r.rows, row)
	}
}

// report notes the repairs once, however often the sheet is walked.
func (s *textSheet) report(r *repairs) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.repaired || r.count == 0 {
		return
	}
	s.repaired = true
	if r.count == 1 {
		s.note(fmt.Sprintf("In row %d %s.", r.rows[0], r.first))
		return
	}
	rows := strings.Trim(strings.Join(strings.Fields(fmt.Sprint(r.rows)), ", "), "[]")
	if r.count > len(r.rows) {
		rows += " and others"
	}
	s.note(fmt.Sprintf("In %d rows (%s) double quotes are not where they belong; in row %d %s.", r.count, rows, r.rows[0], r.first))
}
