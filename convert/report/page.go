package report

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// sheetRows is the most rows that a worksheet holds (Office Open XML).
const sheetRows = 1 << 20

// page is a sheet written row by row; it goes on to another sheet when full.
type page struct {
	w        *Workbook
	name     string
	headings []string
	widths   []float64
	least    int  // columns that the filter covers at least
	made     bool // the sheet exists already
	answers  bool // it has cells to fill in
	numbers  int  // column that holds numbers, counted from 1; 0 for none
	// printed is how many columns go on paper, all on the width of a sheet; 0
	// for all, on as many sheets side by side as they need, each with the first
	// repeated columns at its left.
	printed, repeated int
	sheets            int
	sheet             string // being written
	stream            *excelize.StreamWriter
	row               int
}

func (p *page) add(cells []string) error {
	if p.stream == nil || p.row >= sheetRows {
		if err := p.open(); err != nil {
			return err
		}
	}
	p.row++
	cells = within(cells)
	values := make([]any, len(cells))
	for i, c := range cells {
		style := p.w.styles.plain
		if p.answers && (i+1 == answerColumn || i+1 == noteColumn) {
			style = p.w.styles.fillIn
		} else if p.answers && i+1 == linkColumn {
			style = p.w.styles.link
		}
		// A cell of type string is never a formula, whatever it begins with.
		values[i] = excelize.Cell{StyleID: style, Value: clip(c)}
		if n, err := strconv.Atoi(c); err == nil && i+1 == p.numbers {
			values[i] = excelize.Cell{StyleID: p.w.styles.number, Value: n}
		}
	}
	at, err := excelize.CoordinatesToCellName(1, p.row)
	if err != nil {
		return err
	}
	return p.stream.SetRow(at, values, excelize.RowOpts{Height: p.height(cells)})
}

// within keeps a row within the columns of a worksheet: what goes beyond stands
// together in the last one.
func within(cells []string) []string {
	if len(cells) <= excelize.MaxColumns {
		return cells
	}
	const last = excelize.MaxColumns - 1
	rest := slices.DeleteFunc(slices.Clone(cells[last:]), func(text string) bool { return text == "" })
	return append(slices.Clone(cells[:last]), strings.Join(rest, " | "))
}

// lineHeight is the height of a line of text, tallest that of a row (Office
// Open XML: 409), in points.
const lineHeight, tallest = 14.5, 409

// height is how tall a row must be for its wrapped texts. Not every
// spreadsheet program works that out when it opens a workbook.
func (p *page) height(cells []string) float64 {
	most := 1
	for i, c := range cells {
		width := 9.0
		if len(p.widths) > 0 {
			width = p.widths[min(i, len(p.widths)-1)]
		}
		if len(c) <= int(width)-1 {
			continue
		}
		lines := 0
		for line := range strings.SplitSeq(c, "\n") {
			lines += 1 + int(float64(utf8.RuneCountInString(line))*1.15/width)
		}
		most = max(most, lines)
	}
	return min(float64(most)*lineHeight+1, tallest)
}

func (p *page) open() error {
	if err := p.flush(); err != nil {
		return err
	}
	p.sheets++
	p.sheet = p.name
	if p.sheets > 1 {
		p.sheet += " " + strconv.Itoa(p.sheets)
	}
	if !p.made || p.sheets > 1 {
		if _, err := p.w.file.NewSheet(p.sheet); err != nil {
			return err
		}
	}
	// Before the stream begins: it writes what is known of the sheet at once.
	if err := p.printSetup(); err != nil {
		return err
	}
	stream, err := p.w.file.NewStreamWriter(p.sheet)
	if err != nil {
		return err
	}
	p.stream, p.row = stream, 1
	for i, width := range p.widths {
		if err := stream.SetColWidth(i+1, i+1, width); err != nil {
			return err
		}
	}
	if n := len(p.widths); p.least > n {
		if err := stream.SetColWidth(n+1, p.least, p.widths[n-1]); err != nil {
			return err
		}
	}
	if err := stream.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	values := make([]any, len(p.headings))
	for i, h := range p.headings {
		values[i] = excelize.Cell{StyleID: p.w.styles.bold, Value: h}
	}
	return stream.SetRow("A1", values, excelize.RowOpts{Height: p.height(p.headings)})
}

// flush ends the sheet being written, with its filter and what is printed.
func (p *page) flush() error {
	if p.stream == nil {
		return nil
	}
	last, _ := excelize.ColumnNumberToName(max(len(p.headings), p.least))
	if p.row > 1 {
		if err := p.w.file.AutoFilter(p.sheet, "A1:"+last+strconv.Itoa(p.row), nil); err != nil {
			return err
		}
	}
	if p.printed > 0 {
		last, _ := excelize.ColumnNumberToName(p.printed)
		area := "'" + p.sheet + "'!$A$1:$" + last + "$" + strconv.Itoa(p.row)
		if err := p.w.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: area, Scope: p.sheet}); err != nil {
			return err
		}
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

// printSetup makes the page come out on A4, with its headings on every sheet of
// paper.
func (p *page) printSetup() error {
	const scale = 65 // percent
	lay := excelize.PageLayoutOptions{}
	if p.printed == 0 {
		percent, order := uint(scale), "overThenDown"
		lay.AdjustTo, lay.PageOrder = &percent, &order
	}
	if err := p.w.printSetup(p.sheet, "landscape", p.printed > 0, lay); err != nil {
		return err
	}
	titles := "'" + p.sheet + "'!$1:$1"
	if p.repeated > 0 {
		last, _ := excelize.ColumnNumberToName(p.repeated)
		titles = "'" + p.sheet + "'!$A:$" + last + "," + titles
	}
	return p.w.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: titles, Scope: p.sheet})
}

// printSetup makes a sheet come out on A4, where it is to fit as wide as the
// paper.
func (w *Workbook) printSetup(sheet, orientation string, fit bool, lay excelize.PageLayoutOptions) error {
	const a4 = 9
	paper, one, any := a4, 1, 0
	margin, edge := 0.4, 0.25 // inches
	if err := w.file.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	lay.Size, lay.Orientation = &paper, &orientation
	if fit {
		lay.FitToWidth, lay.FitToHeight = &one, &any
	}
	if err := w.file.SetPageLayout(sheet, &lay); err != nil {
		return err
	}
	if err := w.file.SetPageMargins(sheet, &excelize.PageLayoutMarginsOptions{Left: &margin, Right: &margin, Top: &margin, Bottom: &margin, Header: &edge, Footer: &edge}); err != nil {
		return err
	}
	return w.file.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{OddFooter: "&L&A&RPage &P of &N"})
}

// styles are the looks of cells. All but number hold text, so that what is
// typed into them stays as it was typed.
type styles struct{ title, start, bold, plain, fillIn, link, number int }

// newBook makes a workbook with one sheet and the styles that pages use.
func newBook(sheet, temp string) (*Workbook, error) {
	w := &Workbook{file: excelize.NewFile(excelize.Options{TmpDir: temp}), temp: temp}
	if err := w.file.SetSheetName("Sheet1", sheet); err != nil {
		return nil, err
	}
	const family = "Calibri" // that of cells without a font of their own
	const text = 49          // the number format “@” (Office Open XML)
	top := &excelize.Alignment{WrapText: true, Vertical: "top"}
	line := []excelize.Border{{Type: "bottom", Color: "B8B2A4", Style: 1}}
	box := []excelize.Border{{Type: "left", Color: "8A7F66", Style: 1}, {Type: "right", Color: "8A7F66", Style: 1}, {Type: "top", Color: "8A7F66", Style: 1}, {Type: "bottom", Color: "8A7F66", Style: 1}}
	for _, s := range []struct {
		id    *int
		style excelize.Style
	}{
		{&w.styles.start, excelize.Style{Alignment: top, NumFmt: text}},
		{&w.styles.title, excelize.Style{Font: &excelize.Font{Bold: true, Size: 16, Family: family}, Alignment: top, NumFmt: text}},
		{&w.styles.bold, excelize.Style{Font: &excelize.Font{Bold: true, Size: 11, Family: family}, Alignment: top, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E8E2D2"}}, Border: line}},
		{&w.styles.plain, excelize.Style{Alignment: top, NumFmt: text, Border: line}},
		{&w.styles.fillIn, excelize.Style{Alignment: top, NumFmt: text, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FFF8DC"}}, Border: box}},
		{&w.styles.number, excelize.Style{Alignment: &excelize.Alignment{Horizontal: "left", Vertical: "top"}, Border: line}},
		{&w.styles.link, excelize.Style{Alignment: top, NumFmt: text, Border: line, Font: &excelize.Font{Color: "1F4E79", Underline: "single", Size: 11, Family: family}}},
	} {
		var err error
		if *s.id, err = w.file.NewStyle(&s.style); err != nil {
			return nil, err
		}
	}
	return w, nil
}

// clipped stands at the end of a text that is longer than a cell may be.
const clipped = "… [cut off here: a cell holds no more]"

// clip keeps a text within what a cell may hold (Office Open XML: 32,767
// characters, of which a sign beyond the first plane of Unicode is two), and
// says where it does not.
func clip(s string) string {
	const most = 32767
	if len(s) <= most || len(utf16.Encode([]rune(s))) <= most {
		return s
	}
	units := utf16.Encode([]rune(s))
	kept := utf16.Decode(units[:most-utf8.RuneCountInString(clipped)])
	if kept[len(kept)-1] == utf8.RuneError { // half a pair
		kept = kept[:len(kept)-1]
	}
	return string(kept) + clipped
}
