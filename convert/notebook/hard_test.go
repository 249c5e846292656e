package notebook

import (
	"archive/zip"
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bounded runs f, which must not allocate more than the megabytes in all, nor
// take more than a minute (it takes seconds; the bound is for a slow machine).
func bounded(t *testing.T, megabytes uint64, f func()) {
	t.Helper()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	began := time.Now()
	f()
	runtime.ReadMemStats(&after)
	assert.LessOrEqual(t, (after.TotalAlloc-before.TotalAlloc)>>20, megabytes, "megabytes allocated")
	assert.Less(t, time.Since(began), time.Minute)
}

// hugeFile writes a zip whose last part is head, then piece over and over,
// then tail.
func hugeFile(t *testing.T, name string, parts []string, head, piece string, times int, tail string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	f, err := os.Create(path)
	require.NoError(t, err)
	w := zip.NewWriter(f)
	for i := 0; i+1 < len(parts); i += 2 {
		p, err := w.Create(parts[i])
		require.NoError(t, err)
		_, err = io.WriteString(p, parts[i+1])
		require.NoError(t, err)
	}
	p, err := w.Create(parts[len(parts)-1])
	require.NoError(t, err)
	_, err = io.WriteString(p, head)
	require.NoError(t, err)
	block := strings.Repeat(piece, max(1, 1<<16/len(piece)))
	for done := 0; done < times; {
		b := block
		if left := (times - done) * len(piece); left < len(b) {
			b = b[:left]
		}
		_, err = io.WriteString(p, b)
		require.NoError(t, err)
		done += len(b) / len(piece)
	}
	_, err = io.WriteString(p, tail)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	require.NoError(t, f.Close())
	return path
}

// hugeSheet is hugeFile for the sheet of a workbook.
func hugeSheet(t *testing.T, head, piece string, times int, tail string) string {
	parts := oddBookParts()
	return hugeFile(t, "huge.xlsx", parts[:len(parts)-1], `<worksheet>`+head, piece, times, tail+`</worksheet>`)
}

func hugeODS(t *testing.T, head, piece string, times int, tail string) string {
	return hugeFile(t, "huge.ods", []string{"mimetype", "application/vnd.oasis.opendocument.spreadsheet", "content.xml"}, head, piece, times, tail)
}

func TestHard(t *testing.T) {
	row := func(cells string) string { return `<table:table-row>` + cells + `</table:table-row>` }
	table := func(rows string) string {
		return ods(`<table:table table:name="x">` + rows + `</table:table>`)
	}
	for name, c := range map[string]struct {
		path string
		o    Options
		want string
	}{
		"zip bomb":                  {hugeSheet(t, "", strings.Repeat(" ", 1000), 150_000, ""), Options{}, "a small part of it unpacks to an enormous one"},
		"zip bomb by the limit":     {hugeSheet(t, "", "moth ", 1_000_000, ""), Options{Limits: Limits{UnzippedBytes: 1 << 20}}, "unpacks to more than 1 MB"},
		"zip bomb, OpenDocument":    {hugeODS(t, "<a>", strings.Repeat(" ", 1000), 150_000, ""), Options{}, "unpacks to an enormous one"},
		"zip bomb, list of sheets":  {hugeFile(t, "a.xlsx", []string{"[Content_Types].xml", "<Types/>", "xl/workbook.xml"}, "<workbook>", strings.Repeat(" ", 1000), 60_000, ""), Options{}, "far larger than a notebook can be"},
		"deep":                      {hugeSheet(t, "", "<a>", 1_000_000, ""), Options{}, "nested far deeper"},
		"deep, in a row":            {hugeSheet(t, "<sheetData><row>", "<c>", 1_000_000, ""), Options{}, "cut short or damaged"},
		"deep, closed":              {hugeSheet(t, "<sheetData><row>", "<c>", 1_000_000, "<v/></row></sheetData>"), Options{}, "nested far deeper"},
		"deep, OpenDocument":        {hugeODS(t, "", "<table:table>", 1_000_000, ""), Options{}, "nested far deeper"},
		"deep, flat":                {write(t, "a.fods", `<?xml version="1.0"?><x xmlns="urn:oasis:names:tc:opendocument">`+strings.Repeat("<a>", 100_000)), Options{}, "nested far deeper"},
		"a million columns":         {hugeSheet(t, "<sheetData><row>", "<c><v>1</v></c>", 1_000_000, "</row></sheetData>"), Options{}, "a cell in column 16385"},
		"a million columns, text":   {write(t, "a.csv", strings.Repeat("1,", 1_000_000)), Options{}, "row 1 has 1000001 columns, and the most that is read is 16384"},
		"a million columns, quoted": {write(t, "a.csv", `"1",`+strings.Repeat(`"1",`, 1_000_000)), Options{}, "row 1 has 1000002 columns"},
		"columns repeated":          {write(t, "a.ods", table(row(`<table:table-cell table:number-columns-repeated="2000000000" office:value-type="float" office:value="1"/>`))), Options{}, "a cell in column"},
		"rows repeated":             {write(t, "a.ods", table(`<table:table-row table:number-rows-repeated="2000000000"><table:table-cell office:value-type="float" office:value="1"/></table:table-row>`)), Options{}, "claims a row 1073741824"},
		"cells repeated":            {write(t, "a.ods", table(`<table:table-row table:number-rows-repeated="1000000"><table:table-cell table:number-columns-repeated="16000" office:value-type="float" office:value="1"/></table:table-row>`)), Options{}, "repeated cells come to more than 20000000"},
		"spaces repeated":           {write(t, "a.ods", table(row(`<table:table-cell office:value-type="string"><text:p><text:s text:c="2000000000"/></text:p></table:table-cell>`))), Options{}, "far larger than a notebook can be"},
		"huge cell":                 {hugeSheet(t, `<sheetData><row><c t="str"><v>`, junkWord(1), 1_000_000, "</v></c></row></sheetData>"), Options{Limits: Limits{Ratio: 5000}}, "far larger than a notebook can be"},
		"huge cell, OpenDocument":   {hugeODS(t, `<table:table><table:table-row><table:table-cell><text:p>`, junkWord(1), 1_000_000, ""), Options{Limits: Limits{Ratio: 5000}}, "cut short or damaged"},
		"huge cell, text":           {write(t, "a.csv", "a,b\n"+strings.Repeat("x", 2<<20)+",1\n"), Options{}, "cell A2 holds more than 1 MB of text"},
		"huge cell, quoted":         {write(t, "a.csv", "a,b\n\""+strings.Repeat("x", 1<<20+1000)+"\",1\n"), Options{Limits: Limits{CellBytes: 1 << 19}}, "cell A2 holds more than 524288 bytes"},
		"huge line":                 {write(t, "a.csv", "a,b\n"+strings.Repeat("1", 20<<20)), Options{}, "row 2 is longer than 16 MB"},
		"huge tag":                  {hugeSheet(t, `<sheetData x="`, junkWord(1), 1_000_000, ""), Options{Limits: Limits{Ratio: 5000}}, "far larger than a notebook can be"},
		"whole sheet merged":        {hugeSheet(t, `<sheetData>`, `<row><c><v>1</v></c></row>`, 100_000, `</sheetData><mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>`), Options{}, "merged areas cover more than 20000000 cells"},
		"a million merges":          {hugeSheet(t, `<sheetData><row><c><v>1</v></c></row>`+strings.Repeat("<row/>", 1000)+`</sheetData><mergeCells>`, `<mergeCell ref="A1:A1048576"/>`, 1_000_000, `</mergeCells>`), Options{}, "merged areas"},
		"too many sheets":           {write(t, "a.ods", ods(strings.Repeat(`<table:table/>`, 5000))), Options{}, "more than 4096 sheets"},
	} {
		t.Run(name, func(t *testing.T) {
			bounded(t, 400, func() {
				p := failure(t, c.path, c.o)
				assert.Contains(t, p.Error(), c.want)
				sentences(t, p)
			})
		})
	}
}

// What is merely large or odd is read, within bounds.
func TestHardButReadable(t *testing.T) {
	for name, c := range map[string]struct {
		path string
		rows int
	}{
		"a sheet of errors":      {hugeSheet(t, `<sheetData>`, `<row><c t="e"><v>#REF!</v></c><c t="e"><v>#N/A</v></c></row>`, 50_000, `</sheetData>`), 50_000},
		"a cell in the last row": {write(t, "a.xlsx", oddBook(`<sheetData><row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>`, "")), 1048576},
		"blank rows, a million":  {hugeSheet(t, `<sheetData>`, `<row/>`, 1_000_000, `<row><c><v>1</v></c></row></sheetData>`), 1_000_001},
		"a long comment":         {hugeSheet(t, `<!--`, junkWord(3), 100_000, `--><sheetData><row><c><v>1</v></c></row></sheetData>`), 1},
		"a title merged across":  {write(t, "a.xlsx", oddBook(`<sheetData><row><c><v>1</v></c></row></sheetData><mergeCells><mergeCell ref="A1:XFD1"/></mergeCells>`, "")), 1},
		"unclosed quotes":        {write(t, "a.csv", strings.Repeat("a,\"b,c\n", 100_000)), 100_000},
		"an unclosed quote, far": {write(t, "a.csv", "a,\"b,c\n"+strings.Repeat("a,b,c\n", 500_000)), 500_001},
		"lone quotes":            {write(t, "a.csv", strings.Repeat("a,\",c\n", 100_000)), 100_000},
		"blank repeated rows":    {write(t, "a.ods", ods(`<table:table><table:table-row table:number-rows-repeated="2000000000"><table:table-cell table:number-columns-repeated="2000000000"/></table:table-row></table:table><table:table>`+odsRow("", "a")+`</table:table>`)), 0},
	} {
		t.Run(name, func(t *testing.T) {
			bounded(t, 300, func() {
				b := opened(t, c.path, Options{})
				n := 0
				require.NoError(t, b.Sheets()[0].Walk(func(*Row) error { n++; return nil }))
				assert.Equal(t, c.rows, n)
			})
		})
	}
}

// Many shared texts go to a temporary file, and come back the same.
func TestSharedTextsSpill(t *testing.T) {
	var rows, shared strings.Builder
	for i := range 3000 {
		fmt.Fprintf(&rows, `<row><c t="s"><v>%d</v></c></row>`, 2999-i)
		fmt.Fprintf(&shared, `<si><t>Noctua pronuba é %d</t></si>`, i)
	}
	temp := t.TempDir()
	b := opened(t, write(t, "a.xlsx", oddBook(`<sheetData>`+rows.String()+`</sheetData>`, shared.String())),
		Options{TempDir: temp, Limits: Limits{StringBytes: 20_000}})
	files, err := os.ReadDir(temp)
	require.NoError(t, err)
	assert.Len(t, files, 1)
	got := rowsOf(t, b.Sheets()[0])
	require.Len(t, got, 3000)
	for i, r := range got {
		require.Equal(t, fmt.Sprintf("Noctua pronuba é %d", 2999-i), r.Cells[0].Text)
	}
}

// A path that climbs out of the archive, an absolute path or a link in it
// never leads to a file of the machine.
func TestPathTricks(t *testing.T) {
	secret := write(t, "secret.xml", `<worksheet><sheetData><row><c><v>42</v></c></row></sheetData></worksheet>`)
	for _, target := range []string{"../../../../../../../.." + filepath.ToSlash(secret), filepath.ToSlash(secret), "file://" + filepath.ToSlash(secret)} {
		parts := oddBookParts()
		parts[7] = rels("worksheet", target)
		p := failure(t, write(t, "a.xlsx", packed(parts...)), Options{})
		assert.Contains(t, p.Error(), "the sheet itself is missing from the file")
	}
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	parts := oddBookParts()
	for i := 0; i < len(parts); i += 2 {
		h := &zip.FileHeader{Name: parts[i]}
		content := parts[i+1]
		if strings.HasSuffix(parts[i], "sheet1.xml") {
			h.SetMode(os.ModeSymlink | 0o777)
			content = secret
		}
		pw, err := w.CreateHeader(h)
		require.NoError(t, err)
		_, err = io.WriteString(pw, content)
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	book, err := Open(context.Background(), write(t, "a.xlsx", b.String()), Options{})
	if err == nil {
		assert.Empty(t, rowsOf(t, book.Sheets()[0]), "a link's text is no sheet")
		require.NoError(t, book.Close())
	}
}

// A file cut off anywhere gives a sentence, or the rows that a whole file
// would give; never a panic or half a table in silence.
func TestTruncated(t *testing.T) {
	for name, whole := range map[string]string{
		"a.xlsx": workbookBytes(t),
		"a.ods":  ods(`<table:table table:name="x">` + strings.Repeat(odsRow("", "a", "b"), 50) + `</table:table>`),
	} {
		for n := 4; n < len(whole); n += 1 + len(whole)/150 {
			p := failure(t, write(t, name, whole[:n]), Options{})
			sentences(t, p)
		}
	}
	flat := `<?xml version="1.0" encoding="UTF-8"?><office:document ` + odsNS + `><office:body><office:spreadsheet><table:table table:name="x">` +
		strings.Repeat(odsRow("", "a", "b"), 5) + `</table:table></office:spreadsheet></office:body></office:document>`
	for n := len(flat) - 300; n < len(flat); n++ {
		sentences(t, failure(t, write(t, "a.fods", flat[:n]), Options{}))
	}
}
