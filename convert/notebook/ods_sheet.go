package notebook

import (
	"fmt"
	"io"
	"strconv"
	"strings"
)

// odsSheet is one sheet of an OpenDocument spreadsheet.
type odsSheet struct {
	book          *odsBook
	name          string
	hidden        bool
	start         int64
	hiddenColumns []int
	struckColumns []int
}

func (s *odsSheet) File() string         { return s.book.src.path }
func (s *odsSheet) Name() string         { return s.name }
func (s *odsSheet) Hidden() bool         { return s.hidden }
func (s *odsSheet) HiddenColumns() []int { return s.hiddenColumns }

// Walk streams the sheet's rows. Blank rows below the last row with text are
// left out: programs write a million of them.
func (s *odsSheet) Walk(fn func(*Row) error) error {
	w := &odsWalk{page: page{fn: fn, limits: s.book.limits}, sheet: s,
		m: newMarkup(s.book.body.from(s.start), s.book.limits.CellBytes)}
	err := w.run()
	return s.book.src.ended(s.name, w.stopped, err)
}

// odsWalk is one pass over a sheet.
type odsWalk struct {
	page
	sheet    *odsSheet
	m        *markup
	number   int // of the row being read
	repeated int // cells given out again so far
	text     odsText
}

func (w *odsWalk) run() error {
	if _, err := w.m.next(); err != nil { // the table itself
		return unexpected(err)
	}
	for w.m.depth > 0 {
		t, err := w.m.next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		if t != startTag {
			continue
		}
		switch string(w.m.name) {
		case "table-row":
			err = w.readRow()
		case "shapes", "forms":
			err = w.m.skip()
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (w *odsWalk) readRow() error {
	repeat, hidden, struck := 1, false, false
	for k, v := range attributes(w.m.attrs) {
		switch string(k) {
		case "number-rows-repeated":
			repeat = count(v)
		case "visibility":
			hidden = string(v) == "collapse" || string(v) == "filter"
		case "default-cell-style-name":
			struck = w.sheet.book.struck["table-cell/"+string(v)]
		}
	}
	w.number++
	if w.number%1024 == 0 {
		if err := w.sheet.book.ctx.Err(); err != nil {
			return err
		}
	}
	// The row is given out only if it has anything in it; page fills the gap.
	w.start(w.number, hidden)
	col := 0
	for depth := w.m.depth; w.m.depth >= depth; {
		t, err := w.m.next()
		if err != nil {
			return unexpected(err)
		}
		if t != startTag {
			continue
		}
		switch string(w.m.name) {
		case "table-cell", "covered-table-cell":
			if col, err = w.readCell(col, struck); err != nil {
				return err
			}
		default:
			if err := w.m.skip(); err != nil {
				return err
			}
		}
	}
	if len(w.cells) > 0 {
		if err := w.give(repeat); err != nil {
			return err
		}
	}
	w.number += min(repeat, 1<<30) - 1
	w.number = min(w.number, 1<<30)
	return nil
}

// give gives out the row just read, as often as it is repeated.
func (w *odsWalk) give(repeat int) error {
	if w.number > w.limits.Rows || repeat > w.limits.Rows-w.number+1 {
		return &Problem{
			Found:  fmt.Sprintf("it claims a row %d, and the most that is read is %d", w.number+min(repeat, 1<<30)-1, w.limits.Rows),
			Advice: raise("rows", "split the sheet; if not, open it in a spreadsheet program and save it afresh as .xlsx"),
		}
	}
	if w.number > w.last+1 || repeat > 1 {
		// Giving out blank rows, or the row more than once, uses its memory.
		row, cells := w.row, append([]Cell(nil), w.cells...)
		for w.last+1 < w.number {
			if err := w.blank(); err != nil {
				return err
			}
		}
		for i := range repeat {
			if i > 0 {
				if w.repeated += len(cells); w.repeated > w.limits.SpreadCells {
					return w.tooRepeated()
				}
			}
			w.page.start(row.Number+i, row.Hidden)
			w.cells = append(w.cells, cells...)
			if err := w.end(); err != nil {
				return err
			}
		}
		return nil
	}
	return w.end()
}

func (w *odsWalk) tooRepeated() error {
	return &Problem{
		Found:  fmt.Sprintf("its repeated cells come to more than %d", w.limits.SpreadCells),
		Advice: raise("spread_cells", "split the sheet; if not, it is damaged or was made to do harm"),
	}
}

// odsCell is what a cell's attributes say.
type odsCell struct {
	repeat, across, down int
	kind                 string
	value                string
	formula              string
	hasFormula, failed   bool
	struck               bool
}

// readCell reads one cell and its repetitions and returns its last column.
func (w *odsWalk) readCell(col int, rowStruck bool) (int, error) {
	a := odsCell{repeat: 1, across: 1, down: 1, struck: rowStruck || w.sheet.struckColumn(col+1)}
	for k, v := range prefixed(w.m.attrs) {
		if string(k) == "calcext:value-type" {
			a.failed = string(v) == "error"
			continue
		}
		switch string(local(k)) {
		case "number-columns-repeated":
			a.repeat = count(v)
		case "number-columns-spanned":
			a.across = count(v)
		case "number-rows-spanned":
			a.down = count(v)
		case "style-name":
			a.struck = w.sheet.book.struck["table-cell/"+string(v)]
		case "value-type":
			a.kind = string(v)
		case "value", "date-value", "time-value", "boolean-value", "string-value":
			a.value = validText(appendUnescaped(nil, v))
		case "formula":
			a.hasFormula = true
			a.formula = validText(appendUnescaped(nil, v))
		}
	}
	if err := w.text.read(w.m, w.limits.CellBytes, w.sheet.book.struck); err != nil {
		return 0, err
	}
	c := a.cell(&w.text)
	c.Comment = w.text.comment
	last := col + min(a.repeat, 1<<30)
	if c == (Cell{}) {
		return min(last, 1<<30), nil
	}
	if _, err := w.at(last); err != nil {
		return 0, err
	}
	if a.repeat > 1 {
		if w.repeated += a.repeat - 1; w.repeated > w.limits.SpreadCells {
			return 0, w.tooRepeated()
		}
	}
	for n := last; n > col; n-- {
		w.cells[n-1] = c
	}
	if a.across > 1 || a.down > 1 {
		w.merges = append(w.merges, area{left: col + 1, top: w.number,
			right: min(col+min(a.across, w.limits.Columns), w.limits.Columns), bottom: w.number + min(a.down, w.limits.Rows) - 1})
	}
	return last, nil
}

// cell makes a cell of what its attributes and its paragraphs say.
func (a *odsCell) cell(text *odsText) (c Cell) {
	c.Text = text.text
	switch a.kind {
	case "float", "percentage", "currency":
		v, err := strconv.ParseFloat(a.value, 64)
		if err != nil {
			c.Kind = Text
			break
		}
		c.Kind = Number
		plain := plainNumber(a.value, v)
		if c.Text == "" {
			c.Text = plain
		} else if c.Text != plain {
			c.Raw = plain
		}
	case "date":
		iso := isoCell(a.value)
		c.Kind, c.Raw = iso.Kind, iso.Raw
		if c.Text == "" {
			c.Text = iso.Text
		}
	case "time":
		c.Kind, c.Raw = timeOfDay(a.value)
		if c.Text == "" {
			c.Text = c.Raw
		}
	case "boolean":
		c.Kind = Bool
		if c.Text = "FALSE"; isTrue([]byte(a.value)) {
			c.Text = "TRUE"
		}
	default:
		if c.Text == "" {
			c.Text = a.value
		}
		c.Kind = Text
		if a.hasFormula && a.kind == "" && c.Text == "" {
			_, formula, _ := strings.Cut(a.formula, "=")
			c.Text, c.Kind = "="+formula, Error
		}
	}
	if a.failed || a.hasFormula && isErrorMark(c.Text) {
		c.Kind, c.Raw = Error, ""
	}
	if c.Text == "" {
		return Cell{}
	}
	c.Struck, c.PartStruck = text.struck.resolve(a.struck)
	return c
}

// isErrorMark reports whether a formula's text is the mark of a failure.
func isErrorMark(s string) bool {
	switch s {
	case "#REF!", "#N/A", "#VALUE!", "#DIV/0!", "#NUM!", "#NAME?", "#NULL!":
		return true
	}
	return strings.HasPrefix(s, "Err:")
}

// timeOfDay reads a length of time as OpenDocument stores it (PT22H45M00S):
// a time of day below 24 hours, else a number of days.
func timeOfDay(v string) (Kind, string) {
	rest, ok := strings.CutPrefix(v, "PT")
	if !ok {
		return Text, ""
	}
	seconds := 0.0
	for _, unit := range []struct {
		mark string
		each float64
	}{{"H", 3600}, {"M", 60}, {"S", 1}} {
		number, after, ok := strings.Cut(rest, unit.mark)
		if !ok {
			continue
		}
		n, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
		if err != nil {
			return Text, ""
		}
		seconds += n * unit.each
		rest = after
	}
	if rest != "" || seconds < 0 {
		return Text, ""
	}
	if seconds < 86399.5 {
		return Date, clock(int(seconds + 0.5))
	}
	return Number, strconv.FormatFloat(seconds/86400, 'f', -1, 64)
}
