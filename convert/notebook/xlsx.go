package notebook

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
)

// xlsxBook is an open workbook. Its sheets are streamed out of the zip on
// every walk; nothing but the shared texts, the styles, the merged areas and
// the comments is kept.
type xlsxBook struct {
	src    *source
	limits Limits
	ctx    context.Context
	parts  map[string]*zip.File
	texts  *sharedStrings
	styles *xlsxStyles
}

// The parts that are read whole are small in any real workbook.
const wholePart = 16 << 20

func openXLSX(ctx context.Context, src *source, zr *zip.Reader, o Options) (*Book, error) {
	parts, err := entries(zr)
	if err != nil {
		return nil, err
	}
	b := &xlsxBook{src: src, limits: o.Limits, ctx: ctx, parts: parts}
	book := &Book{closers: []func() error{b.close}}
	if err := b.read(book, o.TempDir); err != nil {
		return nil, errors.Join(err, book.Close())
	}
	return book, nil
}

func (b *xlsxBook) close() error {
	return errors.Join(b.styles.close(), b.texts.close())
}

func (b *xlsxBook) read(book *Book, temp string) error {
	name := "xl/workbook.xml"
	rels, err := b.relations("")
	if err != nil {
		return err
	}
	for _, r := range rels {
		if r.kind == "officeDocument" {
			name = r.target
		}
	}
	sheets, date1904, err := b.workbook(name)
	if err != nil {
		return err
	}
	if rels, err = b.relations(name); err != nil {
		return err
	}
	byID := map[string]relation{}
	var styles []byte
	for _, r := range rels {
		byID[r.id] = r
		switch r.kind {
		case "sharedStrings":
			if err := b.sharedStrings(r.target, temp); err != nil {
				return err
			}
		case "styles":
			styles, err = b.whole(r.target)
		}
		if err != nil {
			return err
		}
	}
	if b.styles, err = newXLSXStyles(styles, date1904, temp); err != nil {
		return &Problem{
			Found:  "the part that says how numbers and dates are shown is damaged, so dates cannot be told from numbers",
			Advice: resave, Cause: err,
		}
	}
	for _, s := range sheets {
		r, ok := byID[s.relation]
		switch {
		case ok && (r.kind == "chartsheet" || r.kind == "dialogsheet" || r.kind == "xlMacrosheet"):
			book.notes = append(book.notes, fmt.Sprintf("Sheet %q holds a chart or a dialogue and no cells; it was left out.", s.name))
			continue
		case !ok || b.parts[strings.ToLower(r.target)] == nil:
			return &Problem{Sheet: s.name, Found: "the workbook lists the sheet, but the sheet itself is missing from the file", Advice: resave}
		}
		sheet := &xlsxSheet{book: b, name: s.name, hidden: s.hidden, file: b.parts[strings.ToLower(r.target)]}
		if err := sheet.survey(r.target); err != nil {
			return trouble(b.src.path, s.name, err)
		}
		book.add(sheet, sheet.some)
		if sheet.drawing {
			book.noteDrawing(s.name)
		}
	}
	return book.notEmpty()
}

type workbookSheet struct {
	name, relation string
	hidden         bool
}

// workbook reads the list of sheets and the date system.
func (b *xlsxBook) workbook(name string) (sheets []workbookSheet, date1904 bool, err error) {
	data, err := b.whole(name)
	if err != nil {
		return nil, false, err
	}
	if data == nil {
		return nil, false, &Problem{Found: "the file is packed like a workbook but its list of sheets is missing", Advice: resave}
	}
	err = elements(bytes.NewReader(data), b.limits.CellBytes, func(m *markup) error {
		switch string(m.name) {
		case "workbookPr":
			if v, ok := m.attr("date1904"); ok {
				date1904 = isTrue([]byte(v))
			}
		case "sheet":
			var s workbookSheet
			s.name, _ = m.attr("name")
			// The sheet has an "id" only through its relationship.
			s.relation, _ = m.attr("id")
			state, _ := m.attr("state")
			s.hidden = state == "hidden" || state == "veryHidden"
			sheets = append(sheets, s)
			if len(sheets) > b.limits.Sheets {
				return tooManySheets(b.limits)
			}
		}
		return nil
	})
	return sheets, date1904, err
}

func (b *xlsxBook) sharedStrings(name, temp string) error {
	f := b.parts[strings.ToLower(name)]
	if f == nil {
		return nil
	}
	p, err := openPart(f, b.limits, b.ctx.Err)
	if err != nil {
		return err
	}
	defer p.Close()
	b.texts, err = readSharedStrings(p, b.limits, temp)
	return err
}

// whole reads a small part; nil where there is none.
func (b *xlsxBook) whole(name string) ([]byte, error) {
	f := b.parts[strings.ToLower(name)]
	if f == nil {
		return nil, nil
	}
	return readPart(f, b.limits, wholePart, b.ctx.Err)
}

// relation is one link from a part of the package to another.
type relation struct {
	id, kind, target string
}

// relations reads the links of a part; of the package itself for "".
func (b *xlsxBook) relations(name string) ([]relation, error) {
	dir, base := path.Split(name)
	data, err := b.whole(dir + "_rels/" + base + ".rels")
	if err != nil || data == nil {
		return nil, err
	}
	var rels []relation
	err = elements(bytes.NewReader(data), b.limits.CellBytes, func(m *markup) error {
		if string(m.name) != "Relationship" {
			return nil
		}
		var r relation
		r.id, _ = m.attr("Id")
		kind, _ := m.attr("Type")
		r.kind = path.Base(kind)
		r.target, _ = m.attr("Target")
		if mode, _ := m.attr("TargetMode"); mode == "External" {
			return nil
		}
		// A link that climbs out of the package names a part that is not
		// there: parts are only ever looked up in the zip's own list.
		r.target = strings.ReplaceAll(r.target, "\\", "/")
		if !strings.HasPrefix(r.target, "/") {
			r.target = dir + r.target
		}
		r.target = strings.TrimPrefix(path.Clean("/"+r.target), "/")
		rels = append(rels, r)
		return nil
	})
	return rels, err
}

// elements calls fn for every start tag of a document.
func elements(r io.Reader, limit int, fn func(*markup) error) error {
	m, err := openMarkup(r, limit)
	if err != nil {
		return err
	}
	for {
		t, err := m.next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		if t == startTag {
			if err := fn(m); err != nil {
				return err
			}
		}
	}
}
