package notebook

import (
	"archive/zip"
	"bytes"
	"errors"
	"strconv"
	"strings"
	"sync"

	"github.com/xuri/excelize/v2"
)

// xlsxStyles answers what a cell's style makes of its value. Excelize reads
// the styles and writes numbers as their format shows them; it is given a
// package that holds the workbook's styles and one empty sheet, so that
// neither its memory nor its time depends on the size of the sheets.
type xlsxStyles struct {
	mu       sync.Mutex
	f        *excelize.File
	date1904 bool
	codes    map[int]string // the workbook's own number formats
	styles   map[int]xlsxStyle
	rows     map[int]string // style -> the scratch cell that has it
}

type xlsxStyle struct {
	class   formatClass
	general bool // shown as stored
	struck  bool
}

var errFormat = errors.New("notebook: number format that cannot be used")

// British users see the system's short date for the formats that follow the
// computer's settings.
const shortDate = "dd/mm/yyyy"

func newXLSXStyles(styles []byte, date1904 bool, temp string) (*xlsxStyles, error) {
	s := &xlsxStyles{date1904: date1904, codes: map[int]string{}, styles: map[int]xlsxStyle{}, rows: map[int]string{}}
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	workbookPr := ""
	if date1904 {
		workbookPr = `<workbookPr date1904="1"/>`
	}
	const main = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
	const rel = `http://schemas.openxmlformats.org/officeDocument/2006/relationships`
	const pkg = `xmlns="http://schemas.openxmlformats.org/package/2006/relationships"`
	parts := [][2]string{
		{"[Content_Types].xml", `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`},
		{"_rels/.rels", `<Relationships ` + pkg + `><Relationship Id="rId1" Type="` + rel + `/officeDocument" Target="xl/workbook.xml"/></Relationships>`},
		{"xl/workbook.xml", `<workbook ` + main + ` xmlns:r="` + rel + `">` + workbookPr + `<sheets><sheet name="s" sheetId="1" r:id="rId1"/></sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", `<Relationships ` + pkg + `><Relationship Id="rId1" Type="` + rel + `/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`},
		{"xl/worksheets/sheet1.xml", `<worksheet ` + main + `><sheetData/></worksheet>`},
	}
	if styles != nil {
		parts = append(parts, [2]string{"xl/styles.xml", string(styles)})
	}
	for _, p := range parts {
		pw, err := w.CreateHeader(&zip.FileHeader{Name: p[0], Method: zip.Store})
		if err != nil {
			return nil, err
		}
		if _, err := pw.Write([]byte(p[1])); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	f, err := excelize.OpenReader(&b, excelize.Options{ShortDatePattern: shortDate, TmpDir: temp})
	if err != nil {
		return nil, err
	}
	s.f = f
	if f.Styles != nil && f.Styles.NumFmts != nil {
		for _, n := range f.Styles.NumFmts.NumFmt {
			if n == nil {
				continue
			}
			code := n.FormatCode
			if n.FormatCode16 != "" {
				code = n.FormatCode16
			}
			if _, ok := s.codes[n.NumFmtID]; !ok {
				s.codes[n.NumFmtID] = code
			}
		}
	}
	return s, nil
}

func (s *xlsxStyles) close() error {
	if s == nil || s.f == nil {
		return nil
	}
	return s.f.Close()
}

// get returns what style id does. An id that the workbook does not define
// shows values as stored.
func (s *xlsxStyles) get(id int) xlsxStyle {
	s.mu.Lock()
	defer s.mu.Unlock()
	if st, ok := s.styles[id]; ok {
		return st
	}
	st := s.read(id)
	s.styles[id] = st
	return st
}

// read takes a style's parts as spreadsheet programs do, whether or not it
// claims to "apply" them.
func (s *xlsxStyles) read(id int) (st xlsxStyle) {
	st.general = true
	sheet := s.f.Styles
	if sheet == nil || sheet.CellXfs == nil || id < 0 || id >= len(sheet.CellXfs.Xf) {
		return st
	}
	xf := sheet.CellXfs.Xf[id]
	if n := xf.FontID; n != nil && sheet.Fonts != nil && *n >= 0 && *n < len(sheet.Fonts.Font) {
		if font := sheet.Fonts.Font[*n]; font != nil {
			st.struck = font.Strike.Value()
		}
	}
	if xf.NumFmtID == nil {
		return st
	}
	if code, ok := s.codes[*xf.NumFmtID]; ok {
		st.class = classOf(code)
		st.general = strings.EqualFold(code, "General") || code == "@" || code == ""
		return st
	}
	st.class = builtInClass(*xf.NumFmtID)
	st.general = *xf.NumFmtID == 0 || *xf.NumFmtID == 49
	return st
}

// show writes a stored number as its format shows it. Formats come from the
// file and may be anything; one that the library cannot bear must cost no more
// than the look of the number.
func (s *xlsxStyles) show(id int, stored string) (text string, err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	defer func() {
		if recover() != nil {
			text, err = "", errFormat
		}
	}()
	cell, ok := s.rows[id]
	if !ok {
		cell = "A" + strconv.Itoa(len(s.rows)+1)
		if err := s.f.SetCellStyle("s", cell, cell, id); err != nil {
			return "", err
		}
		s.rows[id] = cell
	}
	if err := s.f.SetCellDefault("s", cell, stored); err != nil {
		return "", err
	}
	return s.f.GetCellValue("s", cell)
}

// number reads a stored number: as shown, as stored where that says more, and
// its kind.
func (s *xlsxStyles) number(id int, stored string) (c Cell) {
	v, err := strconv.ParseFloat(strings.TrimSpace(stored), 64)
	if err != nil {
		return Cell{Text: stored, Kind: Text}
	}
	st := s.get(id)
	plain := plainNumber(stored, v)
	c = Cell{Text: plain, Kind: Number}
	switch st.class {
	case dateFormat, timeFormat, elapsedFormat:
		timeOnly := st.class != dateFormat
		iso, ok := isoOfSerial(v, s.date1904, timeOnly)
		if st.class == elapsedFormat && v >= 1 {
			ok = false // 36:00 is a length of time
		}
		if ok {
			c.Kind, c.Raw = Date, iso
		}
		if text, err := s.show(id, stored); err == nil && text != "" {
			c.Text = text
		}
		if s.date1904 && v < 1 && ok && !timeOnly {
			c.Text = "01/01/1904" // excelize takes day 0 for that of 1900
		}
		if c.Kind == Number && c.Text != plain {
			c.Raw = plain
		}
		return c
	}
	if st.general {
		return c
	}
	if text, err := s.show(id, stored); err == nil && text != "" && text != plain {
		c.Text, c.Raw = text, plain
	}
	return c
}

// plainNumber writes a number as a person sees it in a wide cell without a
// format: its 15 significant digits, without the noise that binary fractions
// leave in the 16th and 17th.
func plainNumber(stored string, v float64) string {
	digits := 0
	for i := 0; i < len(stored); i++ {
		switch c := stored[i]; {
		case c >= '0' && c <= '9':
			digits++
		case c == '.' || c == '-' && i == 0:
		default:
			digits = 99
		}
	}
	zeros := strings.IndexByte(stored, '.') >= 0 && stored[len(stored)-1] == '0' // 12.0, as some programs store 12
	if digits <= 15 && !zeros && (len(stored) < 2 || stored[0] != '0' || stored[1] == '.') {
		return stored
	}
	short := strconv.FormatFloat(v, 'g', 15, 64)
	if w, err := strconv.ParseFloat(short, 64); err == nil {
		v = w
	}
	if a := v; a > 1e21 || a < -1e21 || a != 0 && a < 1e-15 && a > -1e-15 {
		return strconv.FormatFloat(v, 'G', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
