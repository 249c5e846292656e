package notebook

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// Both pairs of benchmarks read the same file, so that their ratio is what
// this package costs over the library alone:
//
//	go test -run '^$' -bench 'Workbook|Delimited' -benchtime 3x ./convert/notebook

func benchRow(i int) []any {
	day := time.Date(2004, 5, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, i/40%6000)
	names := []string{"Noctua pronuba", "Apamea monoglypha", "Agrotis exclamationis", "Hoplodrina octogenaria", "Autographa gamma"}
	return []any{i + 1, day, names[i%5], i%17 + 1, "Sallowmere Reserve", fmt.Sprintf("TL%03d%03d", 453+i%7, 812+i%9), "Ines Calloway", "light trap", fmt.Sprintf("trap %d, night %d", i%3, i/40)}
}

func benchWorkbook(b *testing.B) string {
	path := filepath.Join(b.TempDir(), "large.xlsx")
	f := excelize.NewFile()
	date := style(f, custom("dd/mm/yyyy"))
	w, err := f.NewStreamWriter("Sheet1")
	require.NoError(b, err)
	for i := range 200_000 {
		row := benchRow(i)
		row[1] = excelize.Cell{StyleID: date, Value: row[1]}
		require.NoError(b, w.SetRow(fmt.Sprintf("A%d", i+1), row))
	}
	require.NoError(b, w.Flush())
	require.NoError(b, f.SaveAs(path))
	return path
}

func BenchmarkWorkbook(b *testing.B) {
	path := benchWorkbook(b)
	b.Run("excelize", func(b *testing.B) {
		for b.Loop() {
			f, err := excelize.OpenFile(path)
			require.NoError(b, err)
			rows, err := f.Rows("Sheet1")
			require.NoError(b, err)
			n := 0
			for rows.Next() {
				_, err := rows.Columns()
				require.NoError(b, err)
				n++
			}
			require.NoError(b, rows.Close())
			require.NoError(b, f.Close())
			require.Equal(b, 200_000, n)
		}
	})
	b.Run("notebook", func(b *testing.B) {
		for b.Loop() {
			require.Equal(b, 200_000, countRows(b, path))
		}
	})
}

func countRows(b *testing.B, path string) int {
	book := opened(b, path, Options{})
	n := 0
	for _, s := range book.Sheets() {
		require.NoError(b, s.Walk(func(*Row) error { n++; return nil }))
	}
	return n
}

func benchCSV(b *testing.B) string {
	path := filepath.Join(b.TempDir(), "large.csv")
	f, err := os.Create(path)
	require.NoError(b, err)
	w := bufio.NewWriter(f)
	for i := range 1_000_000 {
		r := benchRow(i)
		fmt.Fprintf(w, "%d,%s,%s,%d,%s,%s,%s,%s,\"%s\"\n", r[0], r[1].(time.Time).Format("02/01/2006"), r[2], r[3], r[4], r[5], r[6], r[7], r[8])
	}
	require.NoError(b, w.Flush())
	require.NoError(b, f.Close())
	return path
}

func BenchmarkDelimited(b *testing.B) {
	path := benchCSV(b)
	info, err := os.Stat(path)
	require.NoError(b, err)
	b.Run("encoding-csv", func(b *testing.B) {
		b.SetBytes(info.Size())
		for b.Loop() {
			f, err := os.Open(path)
			require.NoError(b, err)
			r := csv.NewReader(f)
			r.ReuseRecord = true
			n := 0
			for {
				if _, err := r.Read(); err == io.EOF {
					break
				} else if err != nil {
					b.Fatal(err)
				}
				n++
			}
			require.NoError(b, f.Close())
			require.Equal(b, 1_000_000, n)
		}
	})
	b.Run("notebook", func(b *testing.B) {
		b.SetBytes(info.Size())
		for b.Loop() {
			require.Equal(b, 1_000_000, countRows(b, path))
		}
	})
}
