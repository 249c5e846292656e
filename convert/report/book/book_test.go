package book_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"os"
	"testing"

	"fieldfare/convert/report/book"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

func made(t *testing.T) *excelize.File {
	f := excelize.NewFile()
	for _, sheet := range []string{"one", "two", "three"} {
		_, err := f.NewSheet(sheet)
		require.NoError(t, err)
		require.NoError(t, f.SetCellStr(sheet, "A1", "=1+1"))
	}
	return f
}

func TestSameContentSameBytes(t *testing.T) {
	var first []byte
	for range 10 {
		f, temp := made(t), t.TempDir()
		var out bytes.Buffer
		require.NoError(t, book.Write(f, &out, temp))
		require.NoError(t, f.Close())
		left, err := os.ReadDir(temp)
		require.NoError(t, err)
		assert.Empty(t, left, "nothing is left in the folder for work files")
		if first == nil {
			first = out.Bytes()
		}
		require.Equal(t, first, out.Bytes())
	}
	archive, err := zip.NewReader(bytes.NewReader(first), int64(len(first)))
	require.NoError(t, err)
	// Open Packaging Conventions (ECMA-376, part 2) want the list of contents;
	// readers that stream want it first.
	assert.Equal(t, "[Content_Types].xml", archive.File[0].Name)
	again, err := excelize.OpenReader(bytes.NewReader(first))
	require.NoError(t, err)
	defer again.Close()
	text, err := again.GetCellValue("three", "A1")
	require.NoError(t, err)
	assert.Equal(t, "=1+1", text)
}

type full struct{}

var errFull = errors.New("full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestFullDisk(t *testing.T) {
	f := made(t)
	defer f.Close()
	assert.ErrorIs(t, book.Write(f, full{}, t.TempDir()), errFull)
}
