package notebook

import (
	"archive/zip"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// xlsxSheet is one sheet of a workbook.
type xlsxSheet struct {
	book          *xlsxBook
	name          string
	hidden        bool
	some          bool // there is something in its cells
	drawing       bool // there are pictures, charts or text boxes on it
	file          *zip.File
	hiddenColumns []int
	merges        []area // by their first row
	comments      map[Ref]string
	commentRows   []Ref // the comments' cells in order
}

func (s *xlsxSheet) File() string         { return s.book.src.path }
func (s *xlsxSheet) Name() string         { return s.name }
func (s *xlsxSheet) Hidden() bool         { return s.hidden }
func (s *xlsxSheet) HiddenColumns() []int { return s.hiddenColumns }

// Walk streams the sheet's rows out of the workbook.
func (s *xlsxSheet) Walk(fn func(*Row) error) error {
	w := &xlsxWalk{page: page{fn: fn, limits: s.book.limits, merges: s.merges, comments: s.comments, commentRefs: s.commentRows},
		sheet: s, known: map[int]map[string]Cell{}}
	err := w.run()
	return s.book.src.ended(s.name, w.stopped, err)
}

// xlsxWalk is one pass over a sheet.
type xlsxWalk struct {
	page
	sheet *xlsxSheet
	m     *markup
	value []byte
	// known are the numbers already formatted, by style: notebooks repeat
	// few dates and counts many times.
	known map[int]map[string]Cell
	count int // of known
	col   int // of the cell being read
}

const knownNumbers = 20_000

func (w *xlsxWalk) run() error {
	p, err := openPart(w.sheet.file, w.limits, w.sheet.book.ctx.Err)
	if err != nil {
		return err
	}
	defer p.Close()
	if w.m, err = openMarkup(p, w.limits.CellBytes); err != nil {
		return err
	}
	for {
		t, err := w.m.next()
		if err == io.EOF {
			return w.finish()
		}
		if err != nil {
			return err
		}
		switch {
		case t == startTag && string(w.m.name) == "row":
			err = w.readRow()
		case t == endTag && string(w.m.name) == "sheetData":
			return w.finish()
		}
		if err != nil {
			return err
		}
	}
}

func (w *xlsxWalk) readRow() error {
	number, hidden := w.last+1, false
	for key, v := range attributes(w.m.attrs) {
		switch string(key) {
		case "r":
			n, err := strconv.Atoi(string(v))
			if err != nil || n < 1 {
				return errMarkup
			}
			number = n
		case "hidden":
			hidden = hidden || isTrue(v)
		case "ht":
			h, err := strconv.ParseFloat(string(v), 64)
			hidden = hidden || err == nil && h == 0
		}
	}
	if err := w.begin(number, hidden); err != nil {
		return err
	}
	col := 0
	for depth := w.m.depth; ; {
		t, err := w.m.next()
		if err != nil {
			return unexpected(err)
		}
		if t == endTag && w.m.depth < depth {
			return w.end()
		}
		if t == startTag && string(w.m.name) == "c" {
			if col, err = w.readCell(col); err != nil {
				return err
			}
		}
	}
}

// readCell reads one cell and returns its column.
func (w *xlsxWalk) readCell(col int) (int, error) {
	col++
	style, kind := 0, byte('n')
	for key, v := range attributes(w.m.attrs) {
		switch string(key) {
		case "r":
			c, r := parseRef(v)
			if c == 0 || r == 0 {
				return 0, errMarkup
			}
			col = c
		case "s":
			style, _ = strconv.Atoi(string(v))
		case "t":
			kind = cellType(v)
		}
	}
	w.col = col
	cell, err := w.at(col)
	if err != nil {
		return 0, err
	}
	if w.m.closing {
		_, err := w.m.next()
		return col, err
	}
	w.value = w.value[:0]
	var formula string
	hasFormula, struck := false, strike(0)
	for depth := w.m.depth; w.m.depth >= depth; {
		t, err := w.m.next()
		if err != nil {
			return 0, unexpected(err)
		}
		if t != startTag {
			continue
		}
		switch string(w.m.name) {
		case "v":
			w.value, err = w.m.appendText(w.value, w.limits.CellBytes)
		case "f":
			hasFormula = true
			formula, err = w.m.inner(w.limits.CellBytes)
		case "is":
			w.value, err = appendRichText(w.value[:0], w.m, w.limits.CellBytes, func(k strike) { struck = k })
		default:
			err = w.m.skip()
		}
		if err != nil {
			return 0, err
		}
	}
	c := Cell{}
	switch {
	case len(w.value) > 0:
		c, err = w.read(kind, style, struck)
		if err != nil {
			return 0, err
		}
	case hasFormula && kind == 'n':
		// Written by a program that does not work formulas out: there is no
		// value to read, and that must not look like an empty cell.
		c = Cell{Text: "=" + formula, Kind: Error}
	}
	if c.Kind != Empty {
		*cell = c
	}
	return col, nil
}

// cellType shortens the type of a cell to one letter: number, shared text,
// text of a formula, inline text, boolean, error, date.
func cellType(v []byte) byte {
	switch string(v) {
	case "s":
		return 's'
	case "str":
		return 't'
	case "inlineStr":
		return 'i'
	case "b":
		return 'b'
	case "e":
		return 'e'
	case "d":
		return 'd'
	}
	return 'n'
}

// read makes a cell of the stored value.
func (w *xlsxWalk) read(kind byte, style int, struck strike) (c Cell, err error) {
	switch kind {
	case 's':
		c.Kind = Text
		if c.Text, struck, err = w.sheet.book.texts.get(sharedIndex(w.value)); err != nil {
			if err == errNoSuchString {
				err = &Problem{
					Found:  fmt.Sprintf("cell %s points to a text that is missing from the file", Ref{Col: w.col, Row: w.row.Number}),
					Advice: resave, Cause: err,
				}
			}
			return c, err
		}
	case 't', 'i':
		if kind == 't' && strings.Contains(string(w.value), "_x") {
			w.value = appendControl(w.value[:0], w.value)
		}
		c = Cell{Kind: Text, Text: validText(w.value)}
	case 'b':
		c = Cell{Kind: Bool, Text: "FALSE"}
		if isTrue(w.value) {
			c.Text = "TRUE"
		}
	case 'e':
		c = Cell{Kind: Error, Text: validText(w.value)}
	case 'd':
		c = isoCell(validText(w.value))
	default:
		c = w.number(style)
	}
	if c.Text == "" {
		return Cell{}, nil
	}
	if struck != 0 || style > 0 {
		c.Struck, c.PartStruck = struck.resolve(w.sheet.book.styles.get(style).struck)
	}
	return c, nil
}

func (w *xlsxWalk) number(style int) Cell {
	if c, ok := w.known[style][string(w.value)]; ok {
		return c
	}
	if w.count++; w.count > knownNumbers {
		clear(w.known)
		w.count = 1
	}
	if w.known[style] == nil {
		w.known[style] = map[string]Cell{}
	}
	stored := validText(w.value)
	c := w.sheet.book.styles.number(style, stored)
	w.known[style][stored] = c
	return c
}

// isoCell makes a cell of a date that is stored as ISO 8601.
func isoCell(v string) Cell {
	v = strings.TrimSuffix(strings.TrimSpace(v), "Z")
	if whole, fraction, ok := strings.Cut(v, "."); ok && strings.Trim(fraction, "0123456789") == "" {
		v = whole
	}
	v = strings.TrimSuffix(v, "T00:00:00")
	if !isISO(v) {
		return Cell{Kind: Text, Text: v}
	}
	return Cell{Kind: Date, Text: v, Raw: v}
}

// isISO reports whether v has the shape of a date, a time or both.
func isISO(v string) bool {
	shape := strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return '9'
		}
		return r
	}, v)
	switch shape {
	case "9999-99-99", "9999-99-99T99:99:99", "99:99:99":
		return true
	}
	return false
}

// appendText appends the character data of the element whose start tag was
// just given.
func (m *markup) appendText(dst []byte, limit int) ([]byte, error) {
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return dst, unexpected(err)
		}
		if t == textRun {
			dst = append(dst, m.text...)
			if len(dst) > limit {
				return dst, errTooBig
			}
		}
	}
	return dst, nil
}
