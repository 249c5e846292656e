package notebook

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
)

// xlsSheet is one sheet of a workbook in the binary format.
type xlsSheet struct {
	book          *xlsBook
	name          string
	hidden        bool
	drawing       bool // there are pictures, charts or text boxes on it
	hiddenColumns []int
	hiddenRows    map[int]bool
	merges        []area
	comments      map[Ref]string
	commentRefs   []Ref
	cells         []xlsCellAt // in the order of the rows
	// formulas counts the sheet's formulas, blank those that stand for an
	// empty text.
	formulas, blank int
}

// xlsCellAt is a record with a row's cells, and where it begins.
type xlsCellAt struct{ row, at uint32 }

func (s *xlsSheet) File() string         { return s.book.src.path }
func (s *xlsSheet) Name() string         { return s.name }
func (s *xlsSheet) Hidden() bool         { return s.hidden }
func (s *xlsSheet) HiddenColumns() []int { return s.hiddenColumns }

// Walk reads the sheet's rows out of the workbook.
func (s *xlsSheet) Walk(fn func(*Row) error) error {
	w := &xlsWalk{page: page{fn: fn, limits: s.book.limits, merges: s.merges, comments: s.comments, commentRefs: s.commentRefs},
		sheet: s, stream: s.book.stream.reader(), known: map[xlsNumberKey]Cell{}}
	err := w.run()
	return s.book.src.ended(s.name, w.stopped, err)
}

// xlsWalk is one pass over a sheet.
type xlsWalk struct {
	page
	sheet  *xlsSheet
	stream *xlsStream
	known  map[xlsNumberKey]Cell // numbers already formatted
}

// xlsNumberKey is a number in a look.
type xlsNumberKey struct {
	bits uint64
	look int
}

func (w *xlsWalk) run() error {
	cells := w.sheet.cells
	for i := 0; i < len(cells); {
		if err := w.sheet.book.ctx.Err(); err != nil {
			return err
		}
		row := cells[i].row
		if err := w.begin(int(row), w.sheet.hiddenRows[int(row)]); err != nil {
			return err
		}
		for ; i < len(cells) && cells[i].row == row; i++ {
			if err := w.read(int64(cells[i].at)); err != nil {
				return err
			}
		}
		if err := w.end(); err != nil {
			return err
		}
	}
	return w.finish()
}

// read reads the cells of one record.
func (w *xlsWalk) read(at int64) error {
	r, err := w.stream.record(at)
	if err != nil {
		return damagedXLS(err)
	}
	d := fields{data: r.data}
	d.skip(2)
	col := d.uint16() + 1
	if r.kind == xlsMulRk {
		for ; len(d.data) >= 6; col++ { // the last field, of two bytes, is the last column
			look := d.uint16()
			if err := w.put(col, w.number(look, d.packed())); err != nil {
				return err
			}
		}
		return nil
	}
	look := d.uint16()
	c, err := w.cell(r, &d, look)
	switch {
	case err != nil:
		return err
	case d.short:
		return damagedXLS(nil)
	}
	return w.put(col, c)
}

func (w *xlsWalk) put(col int, c Cell) error {
	cell, err := w.at(col)
	if err == nil && c.Text != "" {
		*cell = c
	}
	return err
}

// cell reads the rest of a record that is one cell.
func (w *xlsWalk) cell(r xlsRecord, d *fields, look int) (Cell, error) {
	switch r.kind {
	case xlsRK:
		return w.number(look, d.packed()), nil
	case xlsNumber:
		return w.number(look, d.float()), nil
	case xlsBoolErr:
		v, isError := d.uint8(), d.uint8() != 0
		return w.styled(truth(v, isError), look, 0), nil
	case xlsLabelSST:
		text, k, err := w.sheet.book.texts.get(int(d.uint32()))
		if err != nil {
			return Cell{}, damagedXLS(err)
		}
		return w.styled(Cell{Kind: Text, Text: text}, look, k), nil
	case xlsLabel, xlsRString:
		text, k := w.sheet.book.text(d, true), strike(0)
		if r.kind == xlsRString && !w.sheet.book.wide {
			k = w.sheet.book.look.narrowStrikes(text, d.take(min(2*int(d.uint8()), len(d.data))))
		}
		return w.styled(Cell{Kind: Text, Text: text}, look, k), nil
	}
	return w.formula(r, d, look)
}

// formula reads the stored value of a formula; a text follows in a record of
// its own. Source: [MS-XLS] section 2.5.133 (FormulaValue).
func (w *xlsWalk) formula(r xlsRecord, d *fields, look int) (Cell, error) {
	value := fields{data: d.take(8)}
	if value.data[6] != 0xff || value.data[7] != 0xff {
		return w.number(look, value.float()), nil
	}
	kind, v := value.data[0], value.data[2]
	switch kind {
	case 0:
		text, err := w.formulaText(r.next)
		return w.styled(Cell{Kind: Text, Text: text}, look, 0), err
	case 1, 2:
		return w.styled(truth(v, kind == 2), look, 0), nil
	}
	if s := w.sheet; s.blank == s.formulas {
		// Written by a program that does not work formulas out and says so of
		// each like this: that must not look like an empty cell.
		return w.styled(Cell{Kind: Error, Text: "=…"}, look, 0), nil
	}
	return Cell{}, nil
}

// formulaText reads the text that a formula came to. Between the two there may
// be a formula that several cells share.
func (w *xlsWalk) formulaText(at int64) (string, error) {
	for range 8 {
		r, err := w.stream.record(at)
		if err != nil {
			return "", damagedXLS(err)
		}
		if r.kind != xlsString {
			at = r.next
			continue
		}
		d := fields{data: r.data}
		if !w.sheet.book.wide {
			return w.sheet.book.text(&d, true), nil
		}
		j := &xlsJoined{fields: d, stream: w.stream, next: r.next}
		n := j.number(2)
		text := validText(appendUTF16(nil, j.characters(n, j.uint8()&1 != 0)))
		if j.ended || j.short {
			return "", damagedXLS(nil)
		}
		return text, nil
	}
	return "", damagedXLS(nil)
}

// truth makes a cell of a truth value or an error. Source: [MS-XLS] section
// 2.5.10 (BErr).
func truth(v byte, isError bool) Cell {
	switch {
	case isError:
		text, ok := map[byte]string{0: "#NULL!", 7: "#DIV/0!", 0x0f: "#VALUE!", 0x17: "#REF!", 0x1d: "#NAME?", 0x24: "#NUM!", 0x2a: "#N/A"}[v]
		if !ok {
			text = fmt.Sprintf("#ERROR %d!", v)
		}
		return Cell{Kind: Error, Text: text}
	case v == 0:
		return Cell{Kind: Bool, Text: "FALSE"}
	}
	return Cell{Kind: Bool, Text: "TRUE"}
}

func (w *xlsWalk) styled(c Cell, look int, k strike) Cell {
	c.Struck, c.PartStruck = k.resolve(w.sheet.book.styles.get(look).struck)
	return c
}

func (w *xlsWalk) number(look int, v float64) Cell {
	key := xlsNumberKey{math.Float64bits(v), look}
	if c, ok := w.known[key]; ok {
		return c
	}
	if len(w.known) >= knownNumbers {
		clear(w.known)
	}
	format := byte('f')
	if a := math.Abs(v); a != 0 && (a < 1e-9 || a >= 1e21) {
		format = 'E'
	}
	stored := strconv.FormatFloat(v, format, -1, 64)
	c := w.styled(w.sheet.book.styles.number(look, stored), look, 0)
	w.known[key] = c
	return c
}

// survey finds where the sheet's cells lie, and reads what must be known
// before the first row is given out.
func (s *xlsSheet) survey(at int64) error {
	s.hiddenRows, s.comments = map[int]bool{}, map[Ref]string{}
	c := xlsComments{sheet: s, texts: map[int]string{}, waiting: map[Ref]int{}}
	for depth := 0; ; {
		if err := s.book.ctx.Err(); err != nil {
			return err
		}
		r, err := s.book.stream.record(at)
		switch {
		case err != nil:
			return damagedXLS(err)
		case r.kind == xlsBOF:
			depth++ // of the sheet, or of a chart on it
		case depth == 0:
			return damagedXLS(nil)
		case r.kind == xlsEOF:
			depth--
		case depth == 1:
			if err := s.note(&c, r, at); err != nil {
				return err
			}
		}
		if depth == 0 {
			break
		}
		at = r.next
	}
	c.settle()
	byRow := func(a, b xlsCellAt) int { return cmp.Compare(a.row, b.row) }
	if !slices.IsSortedFunc(s.cells, byRow) {
		slices.SortStableFunc(s.cells, byRow)
	}
	slices.SortStableFunc(s.merges, func(a, b area) int { return a.top - b.top })
	return nil
}

// note takes in one record of the sheet.
func (s *xlsSheet) note(c *xlsComments, r xlsRecord, at int64) error {
	d := fields{data: r.data}
	switch r.kind {
	case xlsLabelSST, xlsLabel, xlsRString, xlsNumber, xlsRK, xlsMulRk, xlsBoolErr, xlsFormula:
		s.cells = append(s.cells, xlsCellAt{row: uint32(d.uint16()) + 1, at: uint32(at)})
		if r.kind == xlsFormula {
			d.skip(4)
			s.formulas++
			if v := d.take(8); v[6] == 0xff && v[7] == 0xff && v[0] == 3 {
				s.blank++
			}
		}
	case xlsRow:
		row := d.uint16() + 1
		d.skip(10)
		if d.uint16()&0x20 != 0 {
			s.hiddenRows[row] = true
		}
	case xlsColInfo:
		first, last, width := d.uint16()+1, d.uint16()+1, d.uint16()
		d.skip(2)
		if d.uint16()&1 != 0 || width == 0 {
			for col := first; col <= min(last, 256); col++ {
				s.hiddenColumns = append(s.hiddenColumns, col)
			}
		}
	case xlsMergeCells:
		for range d.uint16() {
			a := area{top: d.uint16() + 1, bottom: d.uint16() + 1, left: d.uint16() + 1, right: d.uint16() + 1}
			a.right, a.bottom = min(a.right, s.book.limits.Columns), min(a.bottom, s.book.limits.Rows)
			if !d.short && a.left <= a.right && a.top <= a.bottom {
				s.merges = append(s.merges, a)
			}
			if len(s.merges) > s.book.limits.Merges {
				return tooMerged(s.book.limits)
			}
		}
	case xlsObj, xlsTxO, xlsNote:
		if err := c.take(r); err != nil {
			return err
		}
	}
	if d.short {
		return damagedXLS(nil)
	}
	return nil
}
