package notebook

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"os"

	"github.com/richardlehane/mscfb"
	"golang.org/x/text/encoding"
)

// xlsBook is an open workbook in the binary format of Excel 5 to 2003 (.xls):
// a stream of records, [MS-XLS], which usually lies in a compound file,
// [MS-CFB]. The stream is copied out once, so that each sheet can be read from
// where it begins.
type xlsBook struct {
	src    *source
	limits Limits
	ctx    context.Context
	stream *xlsStream
	texts  *sharedStrings
	styles *xlsxStyles

	// wide: texts are Unicode, as from Excel 97 on. Before that they are in
	// the encoding that the workbook names.
	wide     bool
	page     encoding.Encoding
	date1904 bool
	look     xlsLook
	sheets   []xlsSheetEntry
}

// xlsSheetEntry is a line of the workbook's list of sheets.
type xlsSheetEntry struct {
	name   string
	at     int64
	hidden bool
	kind   byte // 0 for a sheet of cells
}

// openXLS opens a compound file (kindOLE), or a stream of records that stands by
// itself (kindXLS).
func openXLS(ctx context.Context, src *source, kind fileKind, o Options) (*Book, error) {
	b := &xlsBook{src: src, limits: o.Limits, ctx: ctx, page: codePage(1252)}
	body := &spool{temp: o.TempDir}
	book := &Book{closers: []func() error{body.close, b.close}}
	err := b.unpack(kind, body)
	if err == nil {
		b.stream = newXLSStream(body)
		err = b.read(book, o.TempDir)
	}
	if err != nil {
		return nil, errors.Join(err, book.Close())
	}
	return book, nil
}

func (b *xlsBook) close() error {
	return errors.Join(b.styles.close(), b.texts.close())
}

// unpack copies the workbook's stream out of the compound file. A file of
// records without one, as some programs export, is that stream itself.
func (b *xlsBook) unpack(kind fileKind, to *spool) (err error) {
	f, err := os.Open(b.src.real)
	if err != nil {
		return err
	}
	defer f.Close()
	var r io.Reader = f
	if kind == kindOLE {
		if r, err = b.workbookStream(f); err != nil {
			return err
		}
	}
	// No stream is longer than the file; a chain that runs in circles would be.
	limit := min(b.src.size, math.MaxUint32)
	n, err := copyAll(to, &contextReader{b.ctx, io.LimitReader(r, limit+1)})
	switch {
	case isContext(err):
		return err
	case err != nil || n == 0 || n > limit:
		return damagedXLS(err)
	}
	return to.flush()
}

// copyAll copies r. The library that reads compound files takes damage badly.
func copyAll(to io.Writer, r io.Reader) (n int64, err error) {
	defer func() {
		if recover() != nil {
			err = io.ErrUnexpectedEOF
		}
	}()
	return io.Copy(to, r)
}

// workbookStream finds the workbook in a compound file. Files saved for two
// generations of Excel have one for each, of which the newer says more.
func (b *xlsBook) workbookStream(f *os.File) (r io.Reader, err error) {
	defer func() {
		if recover() != nil { // see copyAll
			r, err = nil, damagedXLS(nil)
		}
	}()
	doc, err := mscfb.New(f)
	if err != nil {
		return nil, damagedXLS(err)
	}
	var older io.Reader
	for _, part := range doc.File {
		switch part.Name {
		case "Workbook":
			if len(part.Path) == 0 {
				return part, nil
			}
		case "Book":
			if len(part.Path) == 0 {
				older = part
			}
		case "EncryptedPackage":
			return nil, lockedWorkbook()
		}
	}
	if older == nil {
		return nil, b.src.refuse(kindOLE)
	}
	return older, nil
}

func damagedXLS(cause error) error {
	return &Problem{Found: "the workbook is damaged: what it should hold does not lie where it says", Advice: resave, Cause: cause}
}

// read reads the globals of the workbook and surveys its sheets.
func (b *xlsBook) read(book *Book, temp string) error {
	if err := b.globals(temp); err != nil {
		return err
	}
	var err error
	if b.styles, err = newXLSXStyles(b.look.styles(), b.date1904, temp); err != nil {
		return damagedXLS(err)
	}
	for _, s := range b.sheets {
		if s.kind != 0 {
			book.notes = append(book.notes, fmt.Sprintf("Sheet %q holds a chart or a macro and no cells; it was left out.", s.name))
			continue
		}
		sheet := &xlsSheet{book: b, name: s.name, hidden: s.hidden}
		if err := sheet.survey(s.at); err != nil {
			return trouble(b.src.path, s.name, err)
		}
		book.add(sheet, len(sheet.cells)+len(sheet.comments) > 0)
		if sheet.drawing {
			book.noteDrawing(s.name)
		}
	}
	return book.notEmpty()
}

// globals reads the records that hold for the whole workbook.
func (b *xlsBook) globals(temp string) error {
	first := true
	for at := int64(0); ; {
		if err := b.ctx.Err(); err != nil {
			return err
		}
		r, err := b.stream.record(at)
		if err != nil {
			return damagedXLS(err)
		}
		if first {
			switch {
			case r.kind&^0x0600 == 0x0009: // of Excel 2, 3 and 4
				return b.src.refuse(kindXLS)
			case r.kind != xlsBOF || len(r.data) < 4:
				return damagedXLS(nil)
			}
			switch binary.LittleEndian.Uint16(r.data) {
			case 0x0600:
				b.wide = true
			case 0x0500:
			default:
				return b.src.refuse(kindXLS)
			}
			first = false
		}
		if r.kind == xlsEOF {
			return nil
		}
		if err := b.global(r, temp); err != nil {
			return err
		}
		at = r.next
	}
}

func (b *xlsBook) global(r xlsRecord, temp string) error {
	d := fields{data: r.data}
	switch r.kind {
	case xlsFilePass:
		return lockedWorkbook()
	case xlsCodePage:
		b.page = codePage(d.uint16())
	case xlsDate1904:
		b.date1904 = d.uint16() == 1
	case xlsFont:
		d.skip(2)
		b.look.fonts = append(b.look.fonts, d.uint16()&8 != 0)
	case xlsFormat:
		id := d.uint16()
		b.look.formats = append(b.look.formats, xlsFormatCode{id, b.text(&d, b.wide)})
	case xlsXF:
		b.look.cells = append(b.look.cells, xlsCellLook{font: d.uint16(), format: d.uint16()})
	case xlsBoundSheet:
		s := xlsSheetEntry{at: int64(d.uint32())}
		s.hidden = d.uint8()&3 != 0
		s.kind = d.uint8()
		s.name = b.text(&d, false)
		b.sheets = append(b.sheets, s)
		if len(b.sheets) > b.limits.Sheets {
			return tooManySheets(b.limits)
		}
	case xlsSST:
		texts, err := b.readTexts(r, temp)
		b.texts = texts
		return err
	}
	if d.short {
		return damagedXLS(nil)
	}
	return nil
}
