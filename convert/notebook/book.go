package notebook

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
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
	closers []func() error

	mu    sync.Mutex
	notes []string
	told  func(string) // is given notes that are added later
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
		err = &Problem{Found: "more than " + bytesText(o.Limits.InputBytes) + " came in", Advice: "If it is genuine, raise the reading limits or split it", Cause: errTooBig}
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
	case kindWebPage:
		return openWebPage(ctx, src, o)
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
	case strings.HasPrefix(mime, "application/vnd.oasis.opendocument.spreadsheet"):
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

// unchanged fails where the file is no longer the one that was opened.
func (s *source) unchanged() error {
	info, err := os.Stat(s.real)
	if err != nil || info.Size() != s.size || info.ModTime().UnixNano() != s.modified {
		return errChanged
	}
	return nil
}

// fileKind is what a file's first bytes show it to be.
type fileKind uint8

const (
	kindText fileKind = iota
	kindZip
	kindOLE
	kindXLS
	kindXLSB
	kindNumbers
	kindPDF
	kindPicture
	kindArchive
	kindRichText
	kindWebPage
	kindOldXML
	kindFODS
)

func recognise(head []byte) fileKind {
	for _, m := range [...]struct {
		mark string
		kind fileKind
	}{
		{"PK\x03\x04", kindZip}, {"PK\x05\x06", kindZip},
		{"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", kindOLE},
		{"\x09\x00\x04\x00", kindXLS}, {"\x09\x02\x06\x00", kindXLS}, {"\x09\x04\x06\x00", kindXLS}, {"\x09\x08\x10\x00", kindXLS},
		{"%PDF-", kindPDF}, {`{\rtf`, kindRichText},
		{"\x89PNG", kindPicture}, {"\xff\xd8\xff", kindPicture}, {"GIF8", kindPicture}, {"II*\x00", kindPicture}, {"MM\x00*", kindPicture},
		{"\x1f\x8b", kindArchive}, {"7z\xbc\xaf\x27\x1c", kindArchive}, {"Rar!", kindArchive}, {"BZh", kindArchive}, {"\xfd7zXZ", kindArchive},
	} {
		if bytes.HasPrefix(head, []byte(m.mark)) {
			return m.kind
		}
	}
	start := bytes.ToLower(bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf")), " \t\r\n"))
	switch {
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("urn:schemas-microsoft-com:office:spreadsheet")):
		return kindOldXML
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("urn:oasis:names:tc:opendocument")):
		return kindFODS
	case bytes.HasPrefix(start, []byte("<!doctype html")), bytes.HasPrefix(start, []byte("<html")), bytes.HasPrefix(start, []byte("<table")):
		return kindWebPage
	}
	return kindText
}

// refuse says why a file of the kind is not read and how to save it so that
// it can be.
func (s *source) refuse(kind fileKind) error {
	const saveAs = "Open it in a spreadsheet program and save it as .xlsx"
	p := &Problem{Advice: saveAs}
	switch kind {
	case kindOLE:
		if s.contains(utf16LE("EncryptedPackage")) {
			return lockedWorkbook()
		}
		p.Found = "it is a workbook in the old .xls format (or another old office document), which is not read"
	case kindXLS:
		p.Found = "it is a workbook in a very old .xls format, which is not read"
	case kindXLSB:
		p.Found = "it is a binary workbook (.xlsb), which is not read"
	case kindNumbers:
		p.Found = "it is a Numbers document, which is not read"
		p.Advice = "Open it in Numbers and choose File, Export To, Excel, which makes an .xlsx"
	case kindPDF:
		p.Found = "it is a PDF page, not a notebook"
		p.Advice = "Ask for the spreadsheet that the PDF was made from"
	case kindPicture:
		p.Found = "it is a picture, not a notebook"
		p.Advice = "Type the records into a spreadsheet"
	case kindArchive:
		p.Found = "it is a compressed archive"
		p.Advice = "Unpack it and give the notebooks inside"
	case kindRichText:
		p.Found = "it is a word-processor document, not a notebook"
		p.Advice = "Copy its table into a spreadsheet and save that as .xlsx"
	case kindWebPage:
		p.Found = "it is a web page without a table, whatever its name ends in"
	case kindOldXML:
		p.Found = "it is a workbook in the XML format of 2003, which is not read"
	}
	return p
}

func utf16LE(s string) []byte {
	b := make([]byte, 0, 2*len(s))
	for i := range len(s) {
		b = append(b, s[i], 0)
	}
	return b
}

// contains reports whether the mark stands anywhere in the file.
func (s *source) contains(mark []byte) bool {
	f, err := os.Open(s.real)
	if err != nil {
		return false
	}
	defer f.Close()
	buf := make([]byte, 1<<20)
	kept := 0
	for {
		n, err := f.Read(buf[kept:])
		b := buf[:kept+n]
		if bytes.Contains(b, mark) {
			return true
		}
		if err != nil {
			return false
		}
		kept = copy(buf, b[max(0, len(b)-len(mark)):])
	}
}
