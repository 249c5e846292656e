package notebook

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// page makes a table of the kind people keep: headings, names, counts, remarks
// with delimiters, quotes and line ends in them, and cells left empty.
func somePage(r *rand.Rand) [][]string {
	words := []string{"Noctua pronuba", "Apamea monoglypha", "worn", "the \"big\" one", "a, b", "x; y", "p|q", "6\" trap", "two\nlines", "Müller", "½", "’", "3", "12.5", "1/6/2014",
		"TL453812", "\"", "''", "-", "x  y", "=1+1", "0012", "#REF!", "♂"}
	columns := 3 + r.IntN(6)
	head := make([]string, columns)
	for i := range head {
		head[i] = fmt.Sprintf("Heading %d", i+1)
	}
	rows := [][]string{head}
	for range 3 + r.IntN(30) {
		row := make([]string, columns)
		for i := range row {
			if r.IntN(4) > 0 {
				row[i] = words[r.IntN(len(words))]
			}
		}
		if row[0] == "" {
			row[0] = "first"
		}
		rows = append(rows, row)
	}
	return rows
}

func same(t *testing.T, want [][]string, got []Row, what string) {
	t.Helper()
	require.Len(t, got, len(want), what)
	for i := range want {
		for c, text := range want[i] {
			cell := Cell{}
			if c < len(got[i].Cells) {
				cell = got[i].Cells[c]
			}
			require.Equal(t, text, cell.Text, "%s %s", what, Ref{Col: c + 1, Row: i + 1})
		}
		for _, cell := range got[i].Cells[min(len(got[i].Cells), len(want[i])):] {
			require.Empty(t, cell.Text, what)
		}
	}
}

// What encoding/csv writes, with any delimiter, line end and encoding, comes
// back cell for cell without options.
func TestTextComesBack(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 1))
		page := somePage(r)
		delim := []rune{',', ';', '\t', '|'}[r.IntN(4)]
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.Comma, w.UseCRLF = delim, r.IntN(2) == 0
		require.NoError(t, w.WriteAll(page))
		content := b.String()
		encoding := r.IntN(5)
		switch encoding {
		case 1:
			content = "\ufeff" + content
		case 2, 3:
			e := unicode.UTF16([]unicode.Endianness{unicode.LittleEndian, unicode.BigEndian}[encoding-2], unicode.UseBOM)
			s, err := e.NewEncoder().String(content)
			require.NoError(t, err)
			content = s
		case 4:
			content = strings.ReplaceAll(content, "♂", "m")
			for _, row := range page {
				for i := range row {
					row[i] = strings.ReplaceAll(row[i], "♂", "m")
				}
			}
			s, err := charmap.Windows1252.NewEncoder().String(content)
			require.NoError(t, err)
			content = s
		}
		b2 := opened(t, write(t, "a.csv", content), Options{})
		same(t, page, rowsOf(t, b2.Sheets()[0]), fmt.Sprintf("seed %d, delimiter %q, encoding %d", seed, delim, encoding))
		for _, n := range b2.Notes() {
			require.NotContains(t, n, "double quote", "seed %d", seed)
		}
	}
}

func TestWorkbooksComeBack(t *testing.T) {
	for seed := range uint64(40) {
		page := somePage(rand.New(rand.NewPCG(seed, 2)))
		path := workbook(t, func(f *excelize.File) {
			for i, row := range page {
				must(f.SetSheetRow("Sheet1", Ref{Col: 1, Row: i + 1}.String(), &row))
			}
		})
		same(t, page, rowsOf(t, opened(t, path, Options{}).Sheets()[0]), fmt.Sprintf("xlsx, seed %d", seed))

		var tables strings.Builder
		for _, row := range page {
			cells := make([]string, len(row))
			for i, c := range row {
				var e bytes.Buffer
				for _, line := range strings.Split(c, "\n") {
					e.WriteString("<text:p>" + strings.NewReplacer("&", "&amp;", "<", "&lt;", "\"", "&quot;").Replace(line) + "</text:p>")
				}
				if c != "" {
					cells[i] = `<table:table-cell office:value-type="string">` + e.String() + `</table:table-cell>`
				}
			}
			tables.WriteString(odsRow("", cells...))
		}
		b := opened(t, write(t, "a.ods", ods(`<table:table table:name="x">`+tables.String()+`</table:table>`)), Options{})
		same(t, page, rowsOf(t, b.Sheets()[0]), fmt.Sprintf("ods, seed %d", seed))
	}
}

// What a person sees is what excelize makes of the same number and format.
func TestShownAsExcelizeShows(t *testing.T) {
	formats := []string{"0", "0.00", "#,##0", "0%", "0.0E+00", "000000", `0" moths"`, "dd/mm/yyyy", "d mmm yy", "dddd d mmmm yyyy", "hh:mm", "h:mm AM/PM", "dd/mm/yyyy hh:mm:ss", "[h]:mm", `"no. "0;[Red]-0`, "# ?/?"}
	r := rand.New(rand.NewPCG(3, 3))
	path := workbook(t, func(f *excelize.File) {
		for row := 1; row <= 120; row++ {
			for col, code := range formats {
				v := []float64{float64(r.IntN(60_000)), r.Float64() * 60_000, r.Float64(), -r.Float64() * 100, float64(r.IntN(20))}[r.IntN(5)]
				ref := Ref{Col: col + 1, Row: row}.String()
				must(f.SetCellValue("Sheet1", ref, v))
				must(f.SetCellStyle("Sheet1", ref, ref, style(f, custom(code))))
			}
		}
	})
	f, err := excelize.OpenFile(path, excelize.Options{ShortDatePattern: shortDate})
	require.NoError(t, err)
	defer f.Close()
	want, err := f.GetRows("Sheet1")
	require.NoError(t, err)
	for i, r := range rowsOf(t, opened(t, path, Options{}).Sheets()[0]) {
		for col, c := range r.Cells {
			assert.Equal(t, want[i][col], c.Text, "%s %s", Ref{Col: col + 1, Row: i + 1}, formats[col])
		}
	}
}

// Sheets may be walked at the same time.
func TestWalksTogether(t *testing.T) {
	path := workbook(t, func(f *excelize.File) {
		_, err := f.NewSheet("other")
		must(err)
		date := style(f, custom("dd/mm/yyyy"))
		for i := range 300 {
			for _, s := range []string{"Sheet1", "other"} {
				ref := Ref{Col: 1, Row: i + 1}.String()
				must(f.SetCellValue(s, ref, 40_000+i))
				must(f.SetCellStyle(s, ref, ref, date))
			}
		}
	})
	b := opened(t, path, Options{})
	want := texts(rowsOf(t, b.Sheets()[0]))
	var wait sync.WaitGroup
	for i := range 6 {
		wait.Go(func() {
			var rows []string
			err := b.Sheets()[i%2].Walk(func(r *Row) error {
				rows = append(rows, r.Cells[0].Text)
				return nil
			})
			assert.NoError(t, err)
			assert.Equal(t, want, rows)
		})
	}
	wait.Wait()
}
