package notebook

import (
	"context"
	"errors"
	"io"
	"os"
	"slices"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/charset"
)

// Web pages are met with as "workbooks": many web sites give a page with one
// table the name .xls. Every table with text is a sheet, its cells text.

// webTable is one table of a web page.
type webTable struct {
	src    *source
	ctx    context.Context
	limits Limits
	index  int // among the page's tables
}

func (s *webTable) File() string         { return s.src.path }
func (s *webTable) Name() string         { return "" }
func (s *webTable) Hidden() bool         { return false }
func (s *webTable) HiddenColumns() []int { return nil }

var errEnough = errors.New("notebook: enough")

func openWebPage(ctx context.Context, src *source, o Options) (*Book, error) {
	book := &Book{}
	w := &webWalk{page: page{limits: o.Limits}, want: -1, some: map[int]bool{}}
	if err := w.run(ctx, src); err != nil {
		return nil, err
	}
	for i := range w.tables {
		if !w.some[i] {
			continue
		}
		if len(book.sheets) >= o.Limits.Sheets {
			return nil, tooManySheets(o.Limits)
		}
		book.sheets = append(book.sheets, &webTable{src: src, ctx: ctx, limits: o.Limits, index: i})
	}
	if len(book.sheets) == 0 {
		return nil, src.refuse(kindWebPage)
	}
	book.addNote("It is a web page, whatever its name ends in; its tables were read, and dates and numbers in them as text.")
	return book, nil
}

// Walk streams the table's rows.
func (s *webTable) Walk(fn func(*Row) error) error {
	w := &webWalk{page: page{fn: fn, limits: s.limits}, want: s.index}
	err := w.run(s.ctx, s.src)
	if errors.Is(err, errEnough) {
		err = nil
	}
	return s.src.ended("", w.stopped, err)
}

// webWalk is one pass over a table.
type webWalk struct {
	page
	want   int          // the table that is wanted, from 0; -1 for none
	tables int          // tables begun so far
	open   []int        // the tables that the place read lies in
	some   map[int]bool // tables with text, where somebody wants to know
	areas  []area       // cells of the wanted table that reach over others
	number int
	inRow  bool
	// The cell being read.
	cell                 *strings.Builder
	col, across, down    int
	struck, unseen       int // open elements that strike through, or hide
	struckText, openText bool
}

func (w *webWalk) run(ctx context.Context, src *source) error {
	f, err := os.Open(src.real)
	if err != nil {
		return err
	}
	defer f.Close()
	r, err := charset.NewReader(&contextReader{ctx, f}, "text/html")
	if err != nil {
		return err
	}
	z := html.NewTokenizer(r)
	z.SetMaxBuf(2 * w.limits.CellBytes)
	for {
		t := z.Next()
		switch t {
		case html.ErrorToken:
			if z.Err() == io.EOF {
				return w.endRow()
			}
			if z.Err() == html.ErrBufferExceeded {
				return errTooBig
			}
			return z.Err()
		case html.TextToken:
			if err := w.textOf(z.Text()); err != nil {
				return err
			}
			continue
		}
		name, more := z.TagName()
		tag := string(name)
		attrs := map[string]string{}
		for more {
			var k, v []byte
			k, v, more = z.TagAttr()
			attrs[string(k)] = string(v)
		}
		if t == html.EndTagToken {
			err = w.close(tag)
		} else {
			err = w.begin(tag, attrs, t == html.SelfClosingTagToken)
		}
		if err != nil {
			return err
		}
	}
}

// here reports whether the innermost open table is the wanted one.
func (w *webWalk) here() bool { return len(w.open) > 0 && w.open[len(w.open)-1] == w.want }

func (w *webWalk) begin(tag string, attrs map[string]string, closed bool) error {
	switch tag {
	case "table":
		if len(w.open) >= markupDepth {
			return errDeep
		}
		w.open = append(w.open, w.tables)
		w.tables++
	case "script", "style":
		if !closed {
			w.unseen++
		}
	}
	if !w.here() {
		return nil
	}
	switch tag {
	case "tr":
		if err := w.endRow(); err != nil {
			return err
		}
		w.number++
		style := strings.ReplaceAll(attrs["style"], " ", "")
		if err := w.page.begin(w.number, strings.Contains(style, "display:none")); err != nil {
			return err
		}
		w.inRow, w.col = true, 0
	case "td", "th":
		if !w.inRow {
			return w.begin("tr", nil, false)
		}
		if err := w.endCell(); err != nil {
			return err
		}
		w.cell, w.struckText, w.openText = &strings.Builder{}, false, false
		w.across, w.down = count([]byte(attrs["colspan"])), count([]byte(attrs["rowspan"]))
	case "br":
		if w.cell != nil {
			w.cell.WriteByte('\n')
		}
	case "s", "strike", "del":
		w.struck++
	}
	return nil
}

func (w *webWalk) close(tag string) error {
	switch tag {
	case "script", "style":
		w.unseen = max(0, w.unseen-1)
	case "s", "strike", "del":
		w.struck = max(0, w.struck-1)
	case "td", "th":
		if w.here() {
			return w.endCell()
		}
	case "tr":
		if w.here() {
			return w.endRow()
		}
	case "table":
		if w.here() {
			if err := w.endRow(); err != nil {
				return err
			}
			return errEnough
		}
		if len(w.open) > 0 {
			w.open = w.open[:len(w.open)-1]
		}
	}
	return nil
}

func (w *webWalk) textOf(b []byte) error {
	if w.unseen > 0 || len(w.open) == 0 {
		return nil
	}
	if w.some != nil && len(strings.TrimSpace(string(b))) > 0 {
		w.some[w.open[len(w.open)-1]] = true
	}
	if w.cell == nil || !w.here() {
		return nil
	}
	if w.cell.Len()+len(b) > w.limits.CellBytes {
		return errTooBig
	}
	text := validText(b)
	if strings.TrimSpace(text) != "" {
		w.struckText = w.struckText || w.struck > 0
		w.openText = w.openText || w.struck == 0
	}
	// White space counts as one space, however much there is.
	if text != "" && strings.TrimLeft(text, " \t\r\n") != text {
		w.cell.WriteByte(' ')
	}
	w.cell.WriteString(strings.Join(strings.FieldsFunc(text, isHTMLSpace), " "))
	if text != "" && strings.TrimRight(text, " \t\r\n") != text {
		w.cell.WriteByte(' ')
	}
	return nil
}

func isHTMLSpace(r rune) bool { return r == ' ' || r == '\t' || r == '\r' || r == '\n' }

func (w *webWalk) endCell() error {
	if w.cell == nil {
		return nil
	}
	// Cells that an area from above lies over are passed by.
	if err := w.passCovered(); err != nil {
		return err
	}
	lines := strings.Split(w.cell.String(), "\n")
	for i, l := range lines {
		lines[i] = strings.Trim(strings.Join(strings.FieldsFunc(l, isHTMLSpace), " "), " ")
	}
	c := textCell(strings.Trim(strings.Join(lines, "\n"), "\n"))
	w.cell = nil
	c.Struck, c.PartStruck = w.struckText && !w.openText, w.struckText && w.openText
	last := w.col + min(w.across, w.limits.Columns+1)
	if c.Kind != Empty || last > w.limits.Columns {
		if _, err := w.at(last); err != nil {
			return err
		}
		w.cells[w.col] = c
	}
	if w.across > 1 || w.down > 1 {
		a := area{left: w.col + 1, top: w.number, right: last, bottom: w.number + min(w.down, w.limits.Rows) - 1}
		w.areas, w.merges = append(w.areas, a), append(w.merges, a)
	}
	w.col = last
	return nil
}

func (w *webWalk) endRow() error {
	if err := w.endCell(); err != nil {
		return err
	}
	if !w.inRow {
		return nil
	}
	w.inRow = false
	return w.end()
}

// passCovered moves past the cells that an area from a row above reaches over.
func (w *webWalk) passCovered() error {
	w.areas = slices.DeleteFunc(w.areas, func(a area) bool { return a.bottom < w.number })
	for i := 0; i < len(w.areas); i++ {
		if w.spread++; w.spread > w.limits.SpreadCells {
			return tooSpread(w.limits)
		}
		if a := w.areas[i]; a.top < w.number && a.left <= w.col+1 && w.col < a.right {
			w.col = a.right
			i = -1
		}
	}
	return nil
}
