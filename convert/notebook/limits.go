package notebook

import (
	"archive/zip"
	"compress/flate"
	"errors"
	"io"
	"strconv"
	"strings"

	kflate "github.com/klauspost/compress/flate"
)

// Limits bound what one notebook may ask of the machine. The zero value of
// each field means its default, which is far above any notebook kept by
// hand; a file over a limit is refused with a Problem, never cut off in
// silence.
type Limits struct {
	// CellBytes is the longest text of one cell, in bytes; default 1 MiB
	// (spreadsheet programs stop at 32,767 characters).
	CellBytes int
	// RowBytes is the longest record of a delimited file, in bytes; default
	// 16 MiB.
	RowBytes int
	// Columns is the widest row; default 16,384, the widest that a
	// spreadsheet program can show.
	Columns int
	// Rows is the longest sheet of a workbook; default 1,048,576, the longest
	// that a spreadsheet program can show. Delimited text has no such limit.
	Rows int
	// Sheets is the most sheets in a workbook; default 4,096.
	Sheets int
	// UnzippedBytes is the most that a zipped notebook may unpack to; default
	// 8 GiB. Parts are streamed, so this bounds time rather than memory.
	UnzippedBytes int64
	// Ratio is how many times its packed size a part over 64 MiB may unpack
	// to; default 250 (real sheets reach about 30).
	Ratio int64
	// StringBytes is how much of a workbook's shared text is kept in memory;
	// what is over goes to a temporary file. Default 64 MiB.
	StringBytes int64
	// Merges is how many merged areas a sheet may have; default 250,000.
	Merges int
	// SpreadCells is how many cells merged areas and repeated cells may
	// spread over in one sheet; default 20 million.
	SpreadCells int
	// InputBytes is the most that is taken from standard input; default
	// 16 GiB.
	InputBytes int64
}

func (l Limits) withDefaults() Limits {
	set(&l.CellBytes, 1<<20)
	set(&l.RowBytes, 16<<20)
	set(&l.Columns, 16384)
	set(&l.Rows, 1048576)
	set(&l.Sheets, 4096)
	set(&l.UnzippedBytes, 8<<30)
	set(&l.Ratio, 250)
	set(&l.StringBytes, 64<<20)
	set(&l.Merges, 250_000)
	set(&l.SpreadCells, 20_000_000)
	set(&l.InputBytes, 16<<30)
	return l
}

func set[T int | int64](v *T, def T) {
	if *v <= 0 {
		*v = def
	}
}

// part is one file inside a zipped notebook, read under the limits.
type part struct {
	io.ReadCloser
	limits  Limits
	packed  int64
	read    int64
	context func() error
}

const ratioFrom = 64 << 20

func (p *part) Read(b []byte) (int, error) {
	if err := p.context(); err != nil {
		return 0, err
	}
	n, err := p.ReadCloser.Read(b)
	p.read += int64(n)
	if p.read > p.limits.UnzippedBytes {
		return 0, bomb("it unpacks to more than "+bytesText(p.limits.UnzippedBytes), "unzipped_bytes")
	}
	if p.read > ratioFrom && p.read/p.limits.Ratio > p.packed {
		return 0, bomb("a small part of it unpacks to an enormous one", "ratio")
	}
	return n, err
}

// raise is the advice about a notebook over a limit: the name of the limit in
// the project file, and what else could be done.
func raise(limit, orElse string) string {
	return "If it is genuine, raise " + limit + " under [limits] in the project file, or " + orElse
}

func bomb(what, limit string) error {
	return &Problem{
		Found:  what + ", far more than a notebook holds, so it is damaged or was made to do harm",
		Advice: raise(limit, "split it"),
		Cause:  errTooBig,
	}
}

func bytesText(n int64) string {
	switch {
	case n >= 1<<30:
		return strconv.FormatInt(n>>30, 10) + " GB"
	case n >= 1<<20:
		return strconv.FormatInt(n>>20, 10) + " MB"
	}
	return strconv.FormatInt(n, 10) + " bytes"
}

// openPart opens a file inside a zip for streaming.
func openPart(f *zip.File, l Limits, context func() error) (*part, error) {
	rc, err := f.Open()
	if err != nil {
		return nil, err
	}
	return &part{ReadCloser: rc, limits: l, packed: int64(f.CompressedSize64), context: context}, nil
}

// readPart reads a small file inside a zip whole.
func readPart(f *zip.File, l Limits, limit int64, context func() error) ([]byte, error) {
	p, err := openPart(f, l, context)
	if err != nil {
		return nil, err
	}
	defer p.Close()
	b, err := io.ReadAll(io.LimitReader(p, limit+1))
	if err == nil && int64(len(b)) > limit {
		err = errNoLimit
	}
	return b, err
}

// fastZip makes zr unpack with the quicker of the two implementations at
// hand.
func fastZip(zr *zip.Reader) *zip.Reader {
	zr.RegisterDecompressor(zip.Deflate, func(r io.Reader) io.ReadCloser { return kflate.NewReader(r) })
	return zr
}

func isTruncated(err error) bool {
	var corrupt flate.CorruptInputError
	var kcorrupt kflate.CorruptInputError
	return errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) ||
		errors.Is(err, zip.ErrFormat) || errors.Is(err, zip.ErrChecksum) || errors.Is(err, zip.ErrAlgorithm) ||
		errors.As(err, &corrupt) || errors.As(err, &kcorrupt) || errors.Is(err, errMarkup)
}

// entries indexes a zip's files by their name in lower case with forward
// slashes. Where a name occurs twice, which no spreadsheet program writes,
// the second is reported: two readers could disagree about what the file says.
func entries(zr *zip.Reader) (map[string]*zip.File, error) {
	m := make(map[string]*zip.File, len(zr.File))
	for _, f := range zr.File {
		if strings.HasSuffix(f.Name, "/") {
			continue
		}
		name := strings.ToLower(strings.TrimPrefix(strings.ReplaceAll(f.Name, "\\", "/"), "/"))
		if m[name] != nil {
			return nil, &Problem{
				Found:  "the file holds two parts of the same name (" + strconv.Quote(f.Name) + "), so what it says is not certain",
				Advice: resave,
			}
		}
		m[name] = f
	}
	return m, nil
}
