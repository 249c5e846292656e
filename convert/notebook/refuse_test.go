package notebook

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// failure opens and walks a notebook and returns the error that must come.
func failure(t *testing.T, path string, o Options) *Problem {
	t.Helper()
	o.TempDir = t.TempDir()
	b, err := Open(context.Background(), path, o)
	if err == nil {
		for _, s := range b.Sheets() {
			if err = s.Walk(func(*Row) error { return nil }); err != nil {
				break
			}
		}
		require.NoError(t, b.Close())
	}
	var p *Problem
	require.ErrorAs(t, err, &p)
	assert.Equal(t, path, p.File)
	left, err := os.ReadDir(o.TempDir)
	require.NoError(t, err)
	assert.Empty(t, left, "temporary files left behind")
	return p
}

func TestRefused(t *testing.T) {
	locked := workbookBytes(t, excelize.Options{Password: "moth"})
	plain := workbookBytes(t)
	for name, c := range map[string]struct{ name, content, want string }{
		"empty":                  {"a.csv", "", "the file is empty. Check"},
		"empty workbook":         {"a.xlsx", "", "the file is empty"},
		"only a mark":            {"a.csv", "\xef\xbb\xbf", "the file is empty"},
		"only blanks":            {"a.csv", " \n\n\t\n", "the file is empty"},
		"password":               {"a.xlsx", locked, "locked with a password. Open it with the password"},
		"old workbook":           {"a.xls", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + strings.Repeat("\x00", 600), "the workbook is damaged"},
		"old named new":          {"a.xlsx", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + strings.Repeat("\x00", 600), "save it afresh as .xlsx"},
		"very old workbook":      {"a.xls", "\x09\x04\x06\x00\x00\x00\x10\x00\x00\x00", "Excel 4 or before"},
		"Numbers":                {"a.numbers", packed("Index/Document.iwa", "x"), "Export To, Excel"},
		"binary workbook":        {"a.xlsb", packed("[Content_Types].xml", "<Types/>", "xl/workbook.bin", "x"), ".xlsb"},
		"letter":                 {"a.docx", packed("[Content_Types].xml", "<Types/>", "word/document.xml", "<x/>"), "word-processor document"},
		"zip of nothing":         {"a.zip", packed(), "zip archive"},
		"PDF":                    {"a.pdf", "%PDF-1.4\n", "PDF page"},
		"picture":                {"a.csv", "\x89PNG\r\n\x1a\n", "a picture"},
		"compressed":             {"a.csv.gz", "\x1f\x8b\x08\x00", "compressed"},
		"junk":                   {"a.csv", junk(5000), "neither a workbook nor text"},
		"cut short":              {"a.xlsx", plain[:len(plain)*2/3], "cut short or damaged"},
		"cut at the start":       {"a.xlsx", plain[:40], "cut short or damaged"},
		"no sheet":               {"a.xlsx", oddBookWithout("xl/worksheets/sheet1.xml"), `sheet "Moths": the workbook lists the sheet, but`},
		"no list of sheets":      {"a.xlsx", oddBookWithout("xl/workbook.xml"), "list of sheets is missing"},
		"text missing":           {"a.xlsx", oddBook(`<sheetData><row r="1"><c r="B1" t="s"><v>5</v></c></row></sheetData>`, ""), "cell B1 points to a text that is missing"},
		"sheet cut short":        {"a.xlsx", oddBookCut(), "cut short or damaged"},
		"not well formed":        {"a.xlsx", oddBook(`<sheetData><row r="1"><c r="B1"><v>5</v></c></row`, ""), "damaged"},
		"same part twice":        {"a.xlsx", oddBook(`<sheetData/>`, "", "XL/Worksheets/sheet1.xml", "<worksheet/>"), "two parts of the same name"},
		"old XML":                {"a.xls", `<?xml version="1.0"?><?mso-application progid="Excel.Sheet"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet">`, "2003"},
		"a track":                {"a.csv", `<?xml version="1.0"?><gpx/>`, "XML or JSON"},
		"a web service":          {"a.txt", `[{"name":"Noctua pronuba"}]`, "XML or JSON"},
		"OpenDocument, password": {"a.ods", packed("mimetype", "application/vnd.oasis.opendocument.spreadsheet", "content.xml", "x", "META-INF/manifest.xml", "<manifest:encryption-data/>"), "locked with a password"},
		"OpenDocument letter":    {"a.odt", packed("mimetype", "application/vnd.oasis.opendocument.text", "content.xml", "x"), "word-processor"},
		"OpenDocument, nothing":  {"a.ods", packed("mimetype", "application/vnd.oasis.opendocument.spreadsheet"), "content is missing"},
		"letter as RTF":          {"a.csv", `{\rtf1\ansi`, "word-processor"},
		"column too far":         {"a.xlsx", oddBook(`<sheetData><row r="1"><c r="XFE1"><v>5</v></c></row></sheetData>`, ""), "column 16385"},
		"row too far":            {"a.xlsx", oddBook(`<sheetData><row r="1048577"><c><v>5</v></c></row></sheetData>`, ""), "a row 1048577"},
		"address overflows":      {"a.xlsx", oddBook(`<sheetData><row r="1"><c r="ZZZZZZZZZZZZZ1"><v>5</v></c></row></sheetData>`, ""), "damaged"},
		"row below zero":         {"a.xlsx", oddBook(`<sheetData><row r="-5"><c><v>1</v></c></row></sheetData>`, ""), "damaged"},
	} {
		t.Run(name, func(t *testing.T) {
			p := failure(t, write(t, c.name, c.content), Options{})
			assert.Contains(t, p.Error(), c.want)
			sentences(t, p)
		})
	}
}

// sentences checks that an error reads as one or two plain sentences.
func sentences(t *testing.T, p *Problem) {
	t.Helper()
	said := strings.TrimPrefix(p.Error(), p.File)
	assert.True(t, strings.HasSuffix(said, "."), said)
	assert.NotContains(t, said, "..")
	for _, jargon := range []string{"EOF", "zip: ", "xml:", "XML syntax", "invalid", "nil", "errno", "unexpected", "strconv", "open /"} {
		assert.NotContains(t, said, jargon)
	}
}

func junk(n int) string {
	b := make([]byte, n)
	x := uint32(1)
	for i := range b {
		x = x*1664525 + 1013904223
		b[i] = byte(x >> 24)
	}
	return string(b)
}

func workbookBytes(t *testing.T, o ...excelize.Options) string {
	t.Helper()
	f := excelize.NewFile()
	for i := range 200 {
		require.NoError(t, f.SetSheetRow("Sheet1", Ref{Col: 1, Row: i + 1}.String(), &[]any{i * 7919, junkWord(i)}))
	}
	var b bytes.Buffer
	require.NoError(t, f.Write(&b, o...))
	return b.String()
}

func junkWord(i int) string { return strings.Map(func(r rune) rune { return 'a' + r%26 }, junk(8+i%5)) }

// oddBookWithout is a small workbook with a part left out.
func oddBookWithout(part string) string {
	parts := oddBookParts()
	for i := 0; i < len(parts); i += 2 {
		if parts[i] == part {
			return packed(append(parts[:i:i], parts[i+2:]...)...)
		}
	}
	panic(part)
}

func oddBookCut() string {
	parts := oddBookParts()
	parts[len(parts)-1] = `<worksheet ` + mainNS + `><sheetData><row r="1"><c r="A1"><v>4`
	return packed(parts...)
}

func oddBookParts() []string {
	return []string{
		"[Content_Types].xml", `<Types/>`,
		"_rels/.rels", rels("officeDocument", "xl/workbook.xml"),
		"xl/workbook.xml", `<workbook ` + mainNS + ` xmlns:r="` + relNS + `"><sheets><sheet name="Moths" sheetId="7" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels", rels("worksheet", "worksheets/sheet1.xml"),
		"xl/worksheets/sheet1.xml", `<worksheet/>`,
	}
}

func TestRefusedFolder(t *testing.T) {
	assert.Contains(t, failure(t, t.TempDir(), Options{}).Error(), "it is a folder")
}

func TestRefusedMissing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "nothing.xlsx")
	p := failure(t, path, Options{})
	assert.Equal(t, path+": there is no such file. Check the spelling and the folder.", p.Error())
	assert.ErrorIs(t, p, os.ErrNotExist)
}

func TestRefusedPermission(t *testing.T) {
	if os.Geteuid() == 0 {
		// The superuser may read anything; the sentence is what matters.
		assert.Contains(t, trouble("a.csv", "", os.ErrPermission).Error(), "may not be read")
		return
	}
	path := write(t, "a.csv", "a,b\n")
	require.NoError(t, os.Chmod(path, 0))
	assert.Contains(t, failure(t, path, Options{}).Error(), "may not be read")
}

func TestChangedWhileRead(t *testing.T) {
	for _, name := range []string{"a.csv", "a.xlsx"} {
		content := "a,b\n1,2\n"
		if name == "a.xlsx" {
			content = workbookBytes(t)
		}
		path := write(t, name, content)
		s := opened(t, path, Options{}).Sheets()[0]
		require.NoError(t, s.Walk(func(*Row) error { return nil }))
		require.NoError(t, os.Chtimes(path, time.Unix(1, 0), time.Unix(1, 0)))
		err := s.Walk(func(*Row) error { return nil })
		require.Error(t, err)
		assert.Contains(t, err.Error(), "changed while it was being read. Save and close it")
	}
}

// A workbook that is cut off while it is read has changed first of all.
func TestCutWhileRead(t *testing.T) {
	path := write(t, "a.xlsx", workbookBytes(t))
	s := opened(t, path, Options{}).Sheets()[0]
	require.NoError(t, os.Truncate(path, 200))
	err := s.Walk(func(*Row) error { return nil })
	require.Error(t, err)
	assert.Contains(t, err.Error(), "changed while it was being read")
}

func TestWalkStops(t *testing.T) {
	for _, name := range []string{"a.csv", "a.xlsx"} {
		content := "a,b\n1,2\n3,4\n"
		if name == "a.xlsx" {
			content = workbookBytes(t)
		}
		s := opened(t, write(t, name, content), Options{}).Sheets()[0]
		n := 0
		assert.Equal(t, os.ErrClosed, s.Walk(func(*Row) error {
			if n++; n == 2 {
				return os.ErrClosed
			}
			return nil
		}), "the caller's own error comes back as it is")
		assert.Equal(t, 2, n)
	}
}

func TestContextEnds(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	b, err := Open(ctx, write(t, "a.csv", strings.Repeat("a,b\n", 10_000)), Options{})
	require.NoError(t, err)
	cancel()
	assert.ErrorIs(t, b.Sheets()[0].Walk(func(*Row) error { return nil }), context.Canceled)
	_, err = Open(ctx, write(t, "a.xlsx", workbookBytes(t)), Options{})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestReadStdin(t *testing.T) {
	temp := t.TempDir()
	for name, content := range map[string]string{"text": "a;b\n1;2\n", "workbook": workbookBytes(t)} {
		b, err := ReadStdin(context.Background(), strings.NewReader(content), Options{TempDir: temp})
		require.NoError(t, err, name)
		assert.Equal(t, Stdin, b.Sheets()[0].File())
		assert.NotEmpty(t, rowsOf(t, b.Sheets()[0]))
		require.NoError(t, b.Close())
	}
	_, err := ReadStdin(context.Background(), strings.NewReader(""), Options{TempDir: temp})
	assert.EqualError(t, err, "Standard input: the file is empty. Check that it is the right one and that it was saved.")
	_, err = ReadStdin(context.Background(), strings.NewReader("a,b\n"), Options{TempDir: temp, Limits: Limits{InputBytes: 2}})
	assert.ErrorContains(t, err, "came in")
	left, err := os.ReadDir(temp)
	require.NoError(t, err)
	assert.Empty(t, left)
}
