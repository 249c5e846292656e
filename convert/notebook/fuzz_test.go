package notebook

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// small limits keep a fuzzing step quick.
var small = Limits{CellBytes: 4096, RowBytes: 1 << 16, Columns: 300, Rows: 3000, Sheets: 5, UnzippedBytes: 1 << 20,
	StringBytes: 2048, Merges: 100, SpreadCells: 20_000}

// readAll opens and walks everything; what comes back is either rows or a
// Problem.
func readAll(t *testing.T, name string, content []byte) (rows [][]Row) {
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, content, 0o600))
	temp := t.TempDir()
	b, err := Open(context.Background(), path, Options{TempDir: temp, Limits: small})
	var p *Problem
	if err != nil {
		require.ErrorAs(t, err, &p)
		require.Nil(t, b)
	} else {
		for _, s := range b.Sheets() {
			var sheet []Row
			err := s.Walk(func(r *Row) error {
				for _, c := range r.Cells {
					require.True(t, utf8.ValidString(c.Text) && utf8.ValidString(c.Raw) && utf8.ValidString(c.Comment))
					require.Equal(t, c.Kind == Empty, c.Text == "")
				}
				sheet = append(sheet, *r)
				sheet[len(sheet)-1].Cells = append([]Cell(nil), r.Cells...)
				return nil
			})
			if err != nil {
				require.ErrorAs(t, err, &p)
			}
			rows = append(rows, sheet)
		}
		require.NoError(t, b.Close())
	}
	left, err := os.ReadDir(temp)
	require.NoError(t, err)
	require.Empty(t, left)
	return rows
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"a,b\n1,2\n", "a;b\r\n\"1;2\";3", "sep=|\na|b", "\xff\xfea\x00,\x00", "a\t\"b\nc\t\"\n", "a,\"b\"c,\"d\ne\",\"\n", "\xef\xbb\xbfM\xfcller;\xc3\xbc\r\r\n1;2\r"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, content []byte) { readAll(t, "a.csv", content) })
}

// Sound CSV is read as encoding/csv reads it.
func FuzzAgainstCSV(f *testing.F) {
	f.Add([]byte("a,b\n1,2\n"))
	f.Add([]byte("\"a\n,\"\"b\",c\r\n,,\n"))
	f.Fuzz(func(t *testing.T, content []byte) {
		if bytes.IndexByte(content, '\r') >= 0 || !utf8.Valid(content) || bytes.Contains(content, []byte("\ufeff")) {
			return // bare carriage returns, other encodings and marks are this package's own
		}
		want := csv.NewReader(bytes.NewReader(content))
		want.FieldsPerRecord = -1
		expected, err := want.ReadAll()
		if err != nil {
			return
		}
		r := newRecords(bytes.NewReader(content), ',', small.withDefaults())
		var got [][]string
		for {
			ok, err := r.next()
			require.NoError(t, err)
			if !ok {
				break
			}
			if r.repaired != "" || leadingSpaceQuote(content) {
				return
			}
			if r.count() == 0 {
				continue // encoding/csv passes over blank lines
			}
			var fields []string
			if r.simple {
				fields = strings.Split(string(r.data), ",")
			} else {
				for _, s := range r.fields {
					fields = append(fields, string(r.data[s.from:s.to]))
				}
			}
			got = append(got, fields)
		}
		assert.Equal(t, expected, got)
	})
}

// encoding/csv takes a space before a quote for text.
func leadingSpaceQuote(b []byte) bool { return bytes.Contains(b, []byte(` "`)) }

// What encoding/xml accepts, the markup reader reads as the same tags and text.
func FuzzMarkup(f *testing.F) {
	for _, s := range []string{`<a b="c>d" e='"'>x &amp; y<b:c/><![CDATA[<z>]]></a>`, `<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b "c">]><a><!-- <b> --></a>`, "<a>\r\n&#13;&#x20AC;\r</a>"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, content []byte) {
		declarations := bytes.Count(content, []byte("<!"))
		for _, known := range []string{"<!--", "<![CDATA[", "<!DOCTYPE a>"} {
			declarations -= bytes.Count(content, []byte(known))
		}
		if declarations > 0 {
			return // what else a document type may hold is passed over, not read
		}
		got, gotErr := ourTokens(content)
		want, wantErr := theirTokens(content)
		if wantErr == nil {
			require.NoError(t, gotErr)
			assert.Equal(t, want, got)
		}
	})
}

// ourTokens renders a document as "<name k=v>text</>".
func ourTokens(content []byte) (string, error) {
	var b strings.Builder
	m := newMarkup(&slowReader{content}, 1<<20)
	for {
		t, err := m.next()
		if err == io.EOF {
			return b.String(), nil
		}
		if err != nil {
			return b.String(), err
		}
		switch t {
		case startTag:
			b.WriteString("<" + string(m.name))
			for k, v := range attributes(m.attrs) {
				b.WriteString(" " + string(k) + "=" + string(appendUnescaped(nil, v)))
			}
			b.WriteString(">")
		case endTag:
			b.WriteString("</>")
		case textRun:
			b.Write(m.text)
		}
	}
}

// slowReader gives one byte, then two, then three and so on.
type slowReader struct{ b []byte }

func (r *slowReader) Read(b []byte) (int, error) {
	if len(r.b) == 0 {
		return 0, io.EOF
	}
	n := copy(b, r.b[:min(len(r.b), 1+len(r.b)%7)])
	r.b = r.b[n:]
	return n, nil
}

var errOdd = errors.New("not compared")

func theirTokens(content []byte) (string, error) {
	var b strings.Builder
	d := xml.NewDecoder(bytes.NewReader(content))
	d.CharsetReader = func(string, io.Reader) (io.Reader, error) { return nil, errOdd }
	depth := 0
	for {
		t, err := d.RawToken()
		if err == io.EOF {
			if depth != 0 {
				return "", errOdd
			}
			return b.String(), nil
		}
		if err != nil {
			return "", err
		}
		switch t := t.(type) {
		case xml.StartElement:
			if depth++; depth > markupDepth {
				return "", errOdd
			}
			b.WriteString("<" + t.Name.Local)
			for _, a := range t.Attr {
				b.WriteString(" " + a.Name.Local + "=" + a.Value)
			}
			b.WriteString(">")
		case xml.EndElement:
			if depth--; depth < 0 {
				return "", errOdd
			}
			b.WriteString("</>")
		case xml.CharData:
			b.Write(t)
		}
	}
}

func FuzzSheetXML(f *testing.F) {
	f.Add([]byte(`<cols><col min="1" max="3" hidden="1"/></cols><sheetData><row r="2" hidden="1"><c r="B2" s="1" t="s"><f>A1</f><v>0</v></c><c><v>3</v></c></row></sheetData><mergeCells><mergeCell ref="A1:C3"/></mergeCells>`), []byte(`<si><t>a</t></si><si><r><rPr><strike/></rPr><t>b</t></r></si>`))
	f.Fuzz(func(t *testing.T, sheet, shared []byte) {
		readAll(t, "a.xlsx", []byte(oddBook(string(sheet), string(shared))))
	})
}

func FuzzStylesXML(f *testing.F) {
	f.Add([]byte(oddStyles), "44359.5")
	f.Fuzz(func(t *testing.T, styles []byte, value string) {
		s, err := newXLSXStyles(styles, false, t.TempDir())
		if err != nil {
			return
		}
		for id := range 4 {
			c := s.number(id, value)
			assert.Equal(t, value == "", c.Text == "")
			if c.Kind == Date {
				assert.True(t, isISO(c.Raw), c.Raw)
			}
		}
		require.NoError(t, s.close())
	})
}

func FuzzODS(f *testing.F) {
	f.Add([]byte(odsRow("", "a", "b") + `<table:table-row table:number-rows-repeated="3"><table:table-cell table:number-columns-repeated="2" office:value-type="float" office:value="2"><office:annotation><text:p>n</text:p></office:annotation><text:p>2<text:s text:c="3"/></text:p></table:table-cell></table:table-row>`))
	f.Fuzz(func(t *testing.T, rows []byte) {
		readAll(t, "a.ods", []byte(ods(`<table:table table:name="x">`+string(rows)+`</table:table>`)))
	})
}

// Any bytes at all, whatever they begin with.
func FuzzOpen(f *testing.F) {
	f.Add([]byte(packed("[Content_Types].xml", "<Types/>")))
	f.Add([]byte(ods(odsRow("", "a"))))
	f.Add([]byte("PK\x03\x04"))
	f.Add([]byte(`<?xml version="1.0"?><a xmlns="urn:oasis:names:tc:opendocument"><table name="x"><table-row><table-cell><p>a</p></table-cell></table-row></table></a>`))
	f.Fuzz(func(t *testing.T, content []byte) { readAll(t, "a.xlsx", content) })
}

func FuzzWebPage(f *testing.F) {
	f.Add([]byte(`<tr><td rowspan=2>a<td colspan=3>b<br>c<tr><td><s>d</s><table><tr><td>e</table>`))
	f.Fuzz(func(t *testing.T, rows []byte) { readAll(t, "a.xls", append([]byte("<table>"), rows...)) })
}
