package notebook

import (
	"archive/zip"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"slices"
	"strings"
)

// openBundle opens a zip that holds notebooks: its sheets are those of every
// notebook inside, in the order of their names. The names inside are only
// shown, never used as paths; an archive within the archive is not opened.
func openBundle(ctx context.Context, src *source, zr *zip.Reader, o Options) (*Book, error) {
	var inside []*zip.File
	var left []string
	for _, f := range zr.File {
		name := strings.ReplaceAll(f.Name, "\\", "/")
		switch {
		case strings.HasSuffix(name, "/"), passedOver(path.Base(name)), strings.HasPrefix(name, "__MACOSX/"):
		case f.Mode().IsRegular() && hasSuffix(name, notebookEnds...) && !hasSuffix(name, ".zip"):
			inside = append(inside, f)
		default:
			left = append(left, name)
		}
	}
	if len(inside) == 0 || o.bundled {
		return nil, &Problem{
			Found:  "it is a zip archive without a notebook that could be read",
			Advice: "Unpack it and give the notebooks inside",
		}
	}
	if len(inside) > o.Limits.Sheets {
		return nil, &Problem{Found: fmt.Sprintf("it holds more than %d notebooks", o.Limits.Sheets), Advice: "Unpack it and give the notebooks inside"}
	}
	slices.SortStableFunc(inside, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	o.bundled = true
	b := &bundle{ctx: ctx, src: src, o: o, left: o.Limits.UnzippedBytes}
	for _, f := range inside {
		if err := b.open(f); err != nil {
			return nil, errors.Join(err, b.book.Close())
		}
	}
	if len(left) > 0 {
		b.book.left = append(b.book.left, "Left out of the zip, since they are no notebooks: "+listed(left)+". What is in a zip within it has to be unpacked.")
	}
	return &b.book, nil
}

type bundle struct {
	ctx  context.Context
	src  *source
	o    Options
	left int64 // bytes that may still be unpacked
	book Book
}

// open unpacks one notebook to a temporary file and opens it.
func (b *bundle) open(f *zip.File) error {
	shown := b.src.path + "/" + strings.ReplaceAll(f.Name, "\\", "/")
	temp, err := b.unpack(f)
	if err != nil {
		return trouble(shown, "", err)
	}
	inner, err := open(b.ctx, shown, temp, b.o)
	if err != nil {
		return errors.Join(trouble(shown, "", err), os.Remove(temp))
	}
	for _, l := range inner.left {
		b.book.left = append(b.book.left, path.Base(shown)+": "+l)
	}
	inner.tell(func(n string) { b.book.addNote(path.Base(shown) + ": " + n) })
	b.book.sheets = append(b.book.sheets, inner.sheets...)
	b.book.closers = append(b.book.closers, inner.Close, func() error { return os.Remove(temp) })
	return nil
}

func (b *bundle) unpack(f *zip.File) (name string, err error) {
	limits := b.o.Limits
	limits.UnzippedBytes = max(b.left, 1)
	p, err := openPart(f, limits, b.ctx.Err)
	if err != nil {
		return "", err
	}
	defer p.Close()
	temp, err := os.CreateTemp(b.o.TempDir, "fieldfare-*")
	if err != nil {
		return "", err
	}
	n, err := io.Copy(temp, p)
	b.left -= n
	if err = errors.Join(err, temp.Close()); err != nil {
		return "", errors.Join(err, os.Remove(temp.Name()))
	}
	return temp.Name(), nil
}
