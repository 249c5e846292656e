package notebook

import (
	"archive/zip"
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is named wrongly is read for what it is, and a note says so.
func TestRenamed(t *testing.T) {
	b := opened(t, write(t, "a.xlsx", "a,b\n1,2\n"), Options{})
	assert.Contains(t, joined(b.Notes()), "named like a workbook but holds delimited text")
	assert.Equal(t, []string{"a|b", "1|2"}, texts(rowsOf(t, b.Sheets()[0])))
	b = opened(t, write(t, "a.csv", workbookBytes(t)), Options{})
	assert.Contains(t, joined(b.Notes()), "holds a workbook")
	assert.Len(t, rowsOf(t, b.Sheets()[0]), 200)
}

func TestBundle(t *testing.T) {
	temp := t.TempDir()
	path := write(t, "all.zip", packed(
		"2014/b.csv", "a,b\n1,\"2\"x\n", "2014/a.xlsx", workbookBytes(t), "__MACOSX/2014/._b.csv", "x",
		"readme.md", "hello", "../../c.tsv", "c\td\n"))
	b := opened(t, path, Options{TempDir: temp})
	var files []string
	for _, s := range b.Sheets() {
		files = append(files, strings.TrimPrefix(s.File(), path))
		assert.NotEmpty(t, rowsOf(t, s))
	}
	assert.Equal(t, []string{"/../../c.tsv", "/2014/a.xlsx", "/2014/b.csv"}, files)
	notes := joined(b.Notes())
	assert.Contains(t, notes, "c.tsv: Values were taken as separated by tabs")
	assert.Contains(t, joined(b.LeftOut()), "readme.md")
	assert.Contains(t, notes, "b.csv: In row 2 a double quote", "a note from the walk")

	require.NoError(t, b.Close())
	left, err := os.ReadDir(temp)
	require.NoError(t, err)
	assert.Empty(t, left)
}

func TestBundleTroubles(t *testing.T) {
	inner := packed("a.zip", packed("b.csv", "a,b\n"))
	for name, c := range map[string]struct{ content, want string }{
		"zip in a zip":   {inner, "without a notebook"},
		"nothing":        {packed("a.jpg", "x"), "without a notebook"},
		"empty notebook": {packed("a.csv", ""), "/a.csv: the file is empty"},
		"named a.csv":    {packed("a.csv", packed("b.csv", "a,b\n")), "/a.csv: it is a zip archive without a notebook"},
		"link":           {linked(t), "without a notebook"},
	} {
		t.Run(name, func(t *testing.T) {
			path := write(t, "all.zip", c.content)
			b, err := Open(t.Context(), path, Options{TempDir: t.TempDir()})
			require.Nil(t, b)
			var p *Problem
			require.ErrorAs(t, err, &p)
			assert.Contains(t, p.Error(), c.want)
		})
	}
}

func linked(t *testing.T) string {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	h := &zip.FileHeader{Name: "a.csv"}
	h.SetMode(os.ModeSymlink | 0o777)
	p, err := w.CreateHeader(h)
	require.NoError(t, err)
	_, err = p.Write([]byte("/etc/hostname"))
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return b.String()
}

func TestWebPage(t *testing.T) {
	page := `<!DOCTYPE html><html><head><meta charset="windows-1252"><style>td{}</style></head><body>
<table><tr><td>layout<table>
<tr><th>Date<th>Name &amp; form<th>n</tr>
<tr><td rowspan=2>1/6/2014</td><td>Noctua
   <i>pronuba</i><br>M` + "\xfc" + `ller</td><td>3</td></tr>
<tr style="display: none"><td><s>Apamea</s></td><td><s>4</s></td></tr>
<tr><td colspan="2">both</td><td>x<script>no</script><del>y</del></td></tr>
</table></td></tr></table>
<table><tr><td>&nbsp;</td></tr></table></body></html>`
	b := opened(t, write(t, "export.xls", page), Options{})
	require.Len(t, b.Sheets(), 2)
	assert.Equal(t, []string{"layout"}, texts(rowsOf(t, b.Sheets()[0])))
	rows := rowsOf(t, b.Sheets()[1])
	assert.Equal(t, []string{"Date|Name & form|n", "1/6/2014|Noctua pronuba\nMüller|3", "1/6/2014|Apamea|4", "both|both|xy"}, texts(rows))
	assert.True(t, rows[2].Hidden)
	assert.True(t, rows[2].Struck)
	assert.True(t, rows[2].Cells[0].Spread)
	assert.True(t, rows[3].Cells[2].PartStruck)
	assert.Contains(t, joined(b.Notes()), "It is a web page")

	sentences(t, failure(t, write(t, "a.xls", "<html><p>Not found</p></html>"), Options{}))
	for _, hard := range []string{
		"<table>" + strings.Repeat("<table>", 1000),
		"<table><tr>" + strings.Repeat("<td>x", 20_000),
		"<table><tr><td colspan=2000000000>x",
		"<table>" + strings.Repeat("<tr><td rowspan=1000000 colspan=16000>x</td></tr>", 3000),
		"<table><tr><td>" + strings.Repeat("x", 3<<20),
	} {
		bounded(t, 300, func() { sentences(t, failure(t, write(t, "a.html", hard), Options{})) })
	}
}
