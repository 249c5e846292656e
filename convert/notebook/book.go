package notebook

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
)

// Options say how a notebook is to be read where its content should not
// decide.
type Options struct {
	// Encoding and Delimiter override what would be guessed for delimited
	// text. Encoding is a name such as "utf-8", "windows-1252" or
	// "macintosh"; Delimiter a character or "tab", "comma", "semicolon",
	// "bar", "spaces" or "none".
	Encoding, Delimiter string
	// Limits bound what the notebook may ask of the machine.
	Limits Limits
	// TempDir is where large pieces are unpacked; the system's where empty.
	TempDir string

	bundled bool // the notebook lies in a zip of notebooks
}

// Book is an open notebook.
type Book struct {
	sheets  []Sheet
	some    bool // some sheet of a workbook has something in it
	closers []func() error

	mu    sync.Mutex
	notes []string
	told  func(string) // is given notes that are added later
	left  []string
}

// Sheets returns the pages in the order of the file. Sheets that hold only a
// chart are left out, with a note.
func (b *Book) Sheets() []Sheet { return b.sheets }

// Notes returns what was guessed or left out, each a plain sentence. What
// only shows as the rows are read is there once they have been.
func (b *Book) Notes() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.notes)
}

// LeftOut returns what of the notebook is not read at all although somebody
// may look for it, each a plain sentence.
func (b *Book) LeftOut() []string { return b.left }

func (b *Book) addNote(s string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if slices.Contains(b.notes, s) {
		return
	}
	b.notes = append(b.notes, s)
	if b.told != nil {
		b.told(s)
	}
}

// add adds a sheet of a workbook, and notes where there is nothing in it.
func (b *Book) add(s Sheet, some bool) {
	b.sheets = append(b.sheets, s)
	b.some = b.some || some
	if !some {
		b.addNote(fmt.Sprintf("Sheet %q is empty.", s.Name()))
	}
}

func (b *Book) noteDrawing(sheet string) {
	b.addNote(fmt.Sprintf("On sheet %q there are pictures, charts or text boxes; what they say was not read.", sheet))
}

// notEmpty fails for a workbook with nothing in any of its sheets.
func (b *Book) notEmpty() error {
	if b.some {
		return nil
	}
	return &Problem{Found: "the workbook is empty: there is nothing in any of its sheets", Advice: "Check that it is the right one and that it was saved"}
}

// tell passes the notes on, those so far and those to come.
func (b *Book) tell(f func(string)) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.told = f
	for _, n := range b.notes {
		f(n)
	}
}

// Close frees the notebook's temporary files. Sheets cannot be walked after.
func (b *Book) Close() error {
	var errs []error
	for _, c := range b.closers {
		errs = append(errs, c())
	}
	b.closers = nil
	return errors.Join(errs...)
}

// Open opens the notebook at path, whatever its name ends in: the kind is
// told by the content. Every sheet's structure is checked; its rows are read
// when it is walked. The context ends walks as well.
func Open(ctx context.Context, path string, o Options) (*Book, error) {
	b, err := open(ctx, path, path, o)
	return b, trouble(path, "", err)
}

// ReadStdin opens a notebook that comes through r, by way of a temporary file
// that Close removes.
func ReadStdin(ctx context.Context, r io.Reader, o Options) (*Book, error) {
	b, err := readStdin(ctx, r, o)
	return b, trouble(Stdin, "", err)
}

func readStdin(ctx context.Context, r io.Reader, o Options) (*Book, error) {
	o.Limits = o.Limits.withDefaults()
	f, err := os.CreateTemp(o.TempDir, "fieldfare-*")
	if err != nil {
		return nil, err
	}
	remove := func() error { return os.Remove(f.Name()) }
	n, err := io.Copy(f, &contextReader{ctx, io.LimitReader(r, o.Limits.InputBytes+1)})
	err = errors.Join(err, f.Close())
	if err == nil && n > o.Limits.InputBytes {
		err = &Problem{Found: "more than " + bytesText(o.Limits.InputBytes) + " came in", Advice: raise("input_bytes", "split it"), Cause: errTooBig}
	}
	if err != nil {
		return nil, errors.Join(err, remove())
	}
	b, err := open(ctx, Stdin, f.Name(), o)
	if err != nil {
		return nil, errors.Join(err, remove())
	}
	b.closers = append(b.closers, remove)
	return b, nil
}

type contextReader struct {
	ctx context.Context
	r   io.Reader
}

func (c *contextReader) Read(b []byte) (int, error) {
	if err := c.ctx.Err(); err != nil {
		return 0, err
	}
	return c.r.Read(b)
}

// open opens the file at real, which is called path in everything said.
func open(ctx context.Context, path, real string, o Options) (*Book, error) {
	o.Limits = o.Limits.withDefaults()
	src, head, err := newSource(path, real)
	if err != nil {
		return nil, err
	}
	if head == nil {
		return openArchive(ctx, src, o)
	}
	switch kind := recognise(head); kind {
	case kindZip:
		return openZip(ctx, src, o)
	case kindText:
		b, err := openText(ctx, src, head, o)
		if err == nil && hasSuffix(path, ".xlsx", ".xls", ".xlsm", ".ods") {
			b.addNote("It is named like a workbook but holds delimited text, and was read as that.")
		}
		return b, err
	case kindFODS:
		return openFODS(ctx, src, o)
	case kindOLE, kindXLS:
		return openXLS(ctx, src, kind, o)
	case kindWebPage:
		return openWebPage(ctx, src, o)
	case kindJSON:
		return openGeoJSON(ctx, src, o)
	default:
		return nil, src.refuse(kind)
	}
}

func openZip(ctx context.Context, src *source, o Options) (*Book, error) {
	f, err := os.Open(src.real)
	if err != nil {
		return nil, err
	}
	zr, err := zip.NewReader(f, src.size)
	if err != nil {
		return nil, errors.Join(err, f.Close())
	}
	b, err := openZipped(ctx, src, fastZip(zr), o)
	if err != nil {
		return nil, errors.Join(err, f.Close())
	}
	b.closers = append(b.closers, f.Close)
	return b, nil
}

// openZipped tells the kinds of zipped notebook apart by their parts.
func openZipped(ctx context.Context, src *source, zr *zip.Reader, o Options) (*Book, error) {
	has := func(name string) bool {
		return slices.ContainsFunc(zr.File, func(f *zip.File) bool {
			return strings.EqualFold(strings.ReplaceAll(f.Name, "\\", "/"), name)
		})
	}
	switch mime := mimetype(zr, o.Limits, ctx.Err); {
	case strings.HasPrefix(mime, "application/vnd.oasis.opendocument.spreadsheet"), mime == "" && has("content.xml"):
		return openODS(ctx, src, zr, o)
	case strings.HasPrefix(mime, "application/vnd.oasis.opendocument.text"):
		return nil, src.refuse(kindRichText)
	case has("word/document.xml"):
		return nil, src.refuse(kindRichText)
	case has("xl/workbook.bin"):
		return nil, src.refuse(kindXLSB)
	case has("xl/workbook.xml") || has("[Content_Types].xml"):
		b, err := openXLSX(ctx, src, zr, o)
		if err == nil && hasSuffix(src.path, ".csv", ".txt", ".tsv", ".xls") {
			b.addNote("It is named like another kind of file but holds a workbook, and was read as that.")
		}
		return b, err
	case has("Index/Document.iwa") || has("Index.zip"):
		return nil, src.refuse(kindNumbers)
	case hasDescriptor(zr):
		return openArchive(ctx, src, o)
	}
	return openBundle(ctx, src, zr, o)
}

// hasDescriptor reports whether the zip is a Darwin Core Archive, with its
// descriptor at the top or in one folder.
func hasDescriptor(zr *zip.Reader) bool {
	return slices.ContainsFunc(zr.File, func(f *zip.File) bool {
		name := strings.ReplaceAll(f.Name, "\\", "/")
		return strings.EqualFold(path.Base(name), "meta.xml") && strings.Count(name, "/") <= 1
	})
}

// mimetype reads the part by which OpenDocument packages say what they are.
func mimetype(zr *zip.Reader, l Limits, context func() error) string {
	for _, f := range zr.File {
		if f.Name == "mimetype" {
			b, err := readPart(f, l, 256, context)
			if err != nil {
				return ""
			}
			return string(bytes.TrimSpace(b))
		}
	}
	return ""
}

func hasSuffix(path string, ends ...string) bool {
	path = strings.ToLower(path)
	return slices.ContainsFunc(ends, func(e string) bool { return strings.HasSuffix(path, e) })
}

// source is the file behind a notebook.
type source struct {
	path, real string
	size       int64
	modified   int64
}

// newSource looks at the file and returns its first bytes; nil for a folder
// that is a Darwin Core Archive.
func newSource(path, real string) (*source, []byte, error) {
	info, err := os.Stat(real)
	if err != nil {
		return nil, nil, err
	}
	switch {
	case info.IsDir():
		if _, err := os.Stat(filepath.Join(real, "meta.xml")); err == nil {
			return &source{path: path, real: real, size: info.Size(), modified: info.ModTime().UnixNano()}, nil, nil
		}
		return nil, nil, &Problem{Found: "it is a folder, not a notebook", Advice: "Give the notebooks inside it"}
	case !info.Mode().IsRegular():
		return nil, nil, &Problem{Found: "it is not an ordinary file", Advice: "Save the notebook to a file first, or give it on standard input with -"}
	case info.Size() == 0:
		return nil, nil, emptyFile()
	}
	f, err := os.Open(real)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	head := make([]byte, 4096)
	n, err := io.ReadFull(f, head)
	if err != nil && err != io.ErrUnexpectedEOF {
		return nil, nil, err
	}
	return &source{path: path, real: real, size: info.Size(), modified: info.ModTime().UnixNano()}, head[:n], nil
}

// ended settles how a walk ended: stopped is the error of the walk's own
// function, which is given back as it is.
func (s *source) ended(sheet string, stopped, err error) error {
	if stopped != nil {
		return stopped
	}
	if changed := s.unchanged(); changed != nil && !isContext(err) {
		err = changed // which explains whatever else went wrong
	}
	return trouble(s.path, sheet, err)
}

// unchanged fails where the file is no longer the one that was opened.
func (s *source) unchanged() error {
	info, err := os.Stat(s.real)
	if err != nil || info.Size() != s.size || info.ModTime().UnixNano() != s.modified {
		return errChanged
	}
	return nil
}
