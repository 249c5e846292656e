package notebook

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
)

// odsBook is an open OpenDocument spreadsheet (OASIS OpenDocument 1.3, part
// 3). All its sheets stand in one XML document, which is unpacked once, so
// that each can be read from where it begins.
type odsBook struct {
	src    *source
	limits Limits
	ctx    context.Context
	struck map[string]bool // styles, by family and name, with text struck through
	hidden map[string]bool // styles of sheets that are not shown
	body   *spool
}

// Parts of an OpenDocument package.
const (
	odsContent  = "content.xml"
	odsStyles   = "styles.xml"
	odsManifest = "meta-inf/manifest.xml"
)

func openODS(ctx context.Context, src *source, zr *zip.Reader, o Options) (*Book, error) {
	parts, err := entries(zr)
	if err != nil {
		return nil, err
	}
	if f := parts[odsManifest]; f != nil {
		manifest, err := readPart(f, o.Limits, wholePart, ctx.Err)
		if err != nil {
			return nil, err
		}
		if bytes.Contains(manifest, []byte("encryption-data")) {
			return nil, lockedWorkbook()
		}
	}
	b := newODS(ctx, src, o)
	if f := parts[odsStyles]; f != nil {
		if err := b.stylesPart(f); err != nil {
			return nil, err
		}
	}
	f := parts[odsContent]
	if f == nil {
		return nil, &Problem{Found: "the file is packed like a spreadsheet but its content is missing", Advice: resave}
	}
	p, err := openPart(f, o.Limits, ctx.Err)
	if err != nil {
		return nil, err
	}
	defer p.Close()
	return b.open(p, o)
}

// openFODS opens a spreadsheet kept as one XML file.
func openFODS(ctx context.Context, src *source, o Options) (*Book, error) {
	f, err := os.Open(src.real)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return newODS(ctx, src, o).open(&contextReader{ctx, f}, o)
}

func newODS(ctx context.Context, src *source, o Options) *odsBook {
	return &odsBook{src: src, limits: o.Limits, ctx: ctx, struck: map[string]bool{}, hidden: map[string]bool{}}
}

func (b *odsBook) stylesPart(f *zip.File) error {
	p, err := openPart(f, b.limits, b.ctx.Err)
	if err != nil {
		return err
	}
	defer p.Close()
	return elements(p, b.limits.CellBytes, func(m *markup) error {
		if string(m.name) == "style" {
			return b.readStyle(m)
		}
		return nil
	})
}

// open surveys the document.
func (b *odsBook) open(r io.Reader, o Options) (*Book, error) {
	b.body = &spool{temp: o.TempDir}
	book := &Book{closers: []func() error{b.body.close}}
	if err := b.survey(r, book); err != nil {
		return nil, errors.Join(err, book.Close())
	}
	return book, nil
}

func (b *odsBook) survey(r io.Reader, book *Book) error {
	m, err := openMarkup(r, b.limits.CellBytes)
	if err != nil {
		return err
	}
	// What is kept is what the markup reader sees, so that its offsets hold.
	m.r = io.TeeReader(m.r, b.body)
	for {
		t, err := m.next()
		if err == io.EOF {
			if err := b.body.flush(); err != nil {
				return err
			}
			return book.notEmpty()
		}
		if err != nil {
			return err
		}
		if t != startTag {
			continue
		}
		switch string(m.name) {
		case "style":
			err = b.readStyle(m)
		case "table":
			err = b.surveySheet(m, book)
		case "tracked-changes", "dde-links", "content-validations", "scripts", "forms":
			err = m.skip()
		}
		if err != nil {
			return err
		}
	}
}

// readStyle notes what a style says about text struck through and about
// sheets that are not shown. A style also does what its parent does.
func (b *odsBook) readStyle(m *markup) error {
	family, _ := m.attr("family")
	name, _ := m.attr("name")
	parent, _ := m.attr("parent-style-name")
	key := family + "/" + name
	if b.struck[family+"/"+parent] {
		b.struck[key] = true
	}
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return unexpected(err)
		}
		if t != startTag {
			continue
		}
		switch string(m.name) {
		case "text-properties":
			for k, v := range attributes(m.attrs) {
				switch string(k) {
				case "text-line-through-style", "text-line-through-type":
					b.struck[key] = string(v) != "none"
				}
			}
		case "table-properties":
			if v, ok := attribute(m.attrs, "display"); ok {
				b.hidden[key] = string(v) == "false"
			}
		}
	}
	return nil
}

// surveySheet reads a sheet's name and columns and passes over its rows.
func (b *odsBook) surveySheet(m *markup, book *Book) error {
	s := &odsSheet{book: b, start: m.start}
	s.name, _ = m.attr("name")
	style, _ := m.attr("style-name")
	s.hidden = b.hidden["table/"+style]
	if len(book.sheets) >= b.limits.Sheets {
		return tooManySheets(b.limits)
	}
	col, some, drawing := 0, false, false
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return trouble(b.src.path, s.name, unexpected(err))
		}
		if t != startTag {
			continue
		}
		switch string(m.name) {
		case "table-column":
			s.column(m, &col)
		case "table-cell":
			_, value := attribute(m.attrs, "value-type")
			_, formula := attribute(m.attrs, "formula")
			some = some || value || formula || !m.closing
		case "shapes", "frame", "custom-shape":
			drawing = true
			if err := m.skip(); err != nil {
				return trouble(b.src.path, s.name, err)
			}
		case "forms":
			if err := m.skip(); err != nil {
				return trouble(b.src.path, s.name, err)
			}
		}
	}
	book.add(s, some)
	if drawing {
		book.noteDrawing(s.name)
	}
	return nil
}

func (s *odsSheet) column(m *markup, col *int) {
	repeat, hidden, struck := 1, false, false
	for k, v := range attributes(m.attrs) {
		switch string(k) {
		case "number-columns-repeated":
			repeat = count(v)
		case "visibility":
			hidden = string(v) == "collapse" || string(v) == "filter"
		case "default-cell-style-name":
			struck = s.book.struck["table-cell/"+string(v)]
		}
	}
	last := min(*col+min(repeat, s.book.limits.Columns), s.book.limits.Columns)
	for c := *col + 1; c <= last; c++ {
		if hidden {
			s.hiddenColumns = append(s.hiddenColumns, c)
		}
		if struck {
			s.struckColumns = append(s.struckColumns, c)
		}
	}
	*col = last
}

// struckColumn reports whether cells of the column without a style of their
// own are struck through.
func (s *odsSheet) struckColumn(col int) bool {
	_, ok := slices.BinarySearch(s.struckColumns, col)
	return ok
}

// count reads a number of repetitions; 1 where it is none.
func count(v []byte) int {
	n, err := strconv.Atoi(strings.TrimSpace(string(v)))
	if err != nil || n < 1 {
		return 1
	}
	return n
}

func lockedWorkbook() error {
	return &Problem{
		Found:  "the workbook is locked with a password",
		Advice: "Open it with the password, save it without one, and start again",
	}
}
