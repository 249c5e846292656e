// Package book writes workbooks so that the same content always gives the
// same bytes.
package book

import (
	"archive/zip"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Write writes a workbook to out. The library that makes workbooks writes
// their parts in no fixed order, so they are put in one here: the list of
// contents first, the others by name. It needs room for a copy in the folder
// temp; empty for the system's place for temporary files.
func Write(f *excelize.File, out io.Writer, temp string) error {
	if err := f.SetDocProps(&excelize.DocProperties{Creator: "Fieldfare", Created: "1980-01-01T00:00:00Z", Modified: "1980-01-01T00:00:00Z"}); err != nil {
		return err
	}
	file, err := os.CreateTemp(temp, "fieldfare-book-")
	if err != nil {
		return err
	}
	defer os.Remove(file.Name())
	defer file.Close()
	size, err := f.WriteTo(file)
	if err != nil {
		return err
	}
	r, err := zip.NewReader(file, size)
	if err != nil {
		return err
	}
	slices.SortFunc(r.File, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	w := zip.NewWriter(out)
	for _, part := range r.File {
		if err := w.Copy(part); err != nil {
			return err
		}
	}
	return w.Close()
}
