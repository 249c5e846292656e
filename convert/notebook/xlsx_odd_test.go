package notebook

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// packed makes a zip of names and contents, in their order.
func packed(parts ...string) string {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for i := 0; i < len(parts); i += 2 {
		p, err := w.Create(parts[i])
		must(err)
		_, err = p.Write([]byte(parts[i+1]))
		must(err)
	}
	must(w.Close())
	return b.String()
}

const (
	mainNS = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
	relNS  = `http://schemas.openxmlformats.org/officeDocument/2006/relationships`
)

func rels(links ...string) string {
	var b strings.Builder
	b.WriteString(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">`)
	for i := 0; i < len(links); i += 2 {
		fmt.Fprintf(&b, `<Relationship Id="rId%d" Type="%s/%s" Target="%s"/>`, i/2+1, relNS, links[i], links[i+1])
	}
	b.WriteString(`</Relationships>`)
	return b.String()
}

const oddStyles = `<styleSheet ` + mainNS + `><numFmts count="1"><numFmt numFmtId="164" formatCode="dd/mm/yyyy"/></numFmts>` +
	`<fonts count="2"><font><sz val="11"/></font><font><strike/><sz val="11"/></font></fonts>` +
	`<fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1"><border/></borders>` +
	`<cellStyleXfs count="1"><xf/></cellStyleXfs>` +
	`<cellXfs count="3"><xf numFmtId="0" fontId="0"/><xf numFmtId="164" fontId="0" applyNumberFormat="1"/><xf numFmtId="0" fontId="1" applyFont="1"/></cellXfs></styleSheet>`

// oddBook is a workbook of one hand-written sheet ("sheetData" and what
// follows) and shared strings.
func oddBook(sheet, shared string, more ...string) string {
	parts := []string{
		"[Content_Types].xml", `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
		"_rels/.rels", rels("officeDocument", "xl/workbook.xml"),
		"xl/workbook.xml", `<workbook ` + mainNS + ` xmlns:r="` + relNS + `"><sheets><sheet name="Moths" sheetId="7" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels", rels("worksheet", "worksheets/sheet1.xml", "sharedStrings", "sharedStrings.xml", "styles", "/xl/styles.xml"),
		"xl/styles.xml", oddStyles,
		"xl/worksheets/sheet1.xml", `<?xml version="1.0"?><worksheet ` + mainNS + `>` + sheet + `</worksheet>`,
		"xl/sharedStrings.xml", `<sst ` + mainNS + `>` + shared + `</sst>`,
	}
	return packed(append(parts, more...)...)
}

func oddRows(t *testing.T, content string) []Row {
	t.Helper()
	b := opened(t, write(t, "odd.xlsx", content), Options{})
	require.NotEmpty(t, b.Sheets())
	return rowsOf(t, b.Sheets()[0])
}

func TestXLSXOddCells(t *testing.T) {
	for name, c := range map[string]struct {
		cell, shared string
		want         Cell
	}{
		"formula, number":       {`<c r="A1"><f>B1+1</f><v>4</v></c>`, "", Cell{Text: "4", Kind: Number}},
		"formula, text":         {`<c r="A1" t="str"><f>B1&amp;"x"</f><v> x &lt;</v></c>`, "", Cell{Text: " x <", Kind: Text}},
		"formula, empty text":   {`<c r="A1" t="str"><f>""</f><v></v></c>`, "", Cell{}},
		"formula, date":         {`<c r="A1" s="1"><f>TODAY()</f><v>44359</v></c>`, "", Cell{Text: "12/06/2021", Raw: "2021-06-12", Kind: Date}},
		"formula, no value":     {`<c r="A1"><f>SUM(B1:B9)</f></c>`, "", Cell{Text: "=SUM(B1:B9)", Kind: Error}},
		"formula, blank value":  {`<c r="A1"><f>SUM(B1:B9)</f><v/></c>`, "", Cell{Text: "=SUM(B1:B9)", Kind: Error}},
		"error":                 {`<c r="A1" t="e"><f>B1/0</f><v>#DIV/0!</v></c>`, "", Cell{Text: "#DIV/0!", Kind: Error}},
		"lost reference":        {`<c r="A1" t="e"><v>#REF!</v></c>`, "", Cell{Text: "#REF!", Kind: Error}},
		"inline":                {`<c r="A1" t="inlineStr"><is><t xml:space="preserve"> a </t></is></c>`, "", Cell{Text: " a ", Kind: Text}},
		"inline, runs":          {`<c r="A1" t="inlineStr"><is><r><t>a</t></r><r><rPr><strike/></rPr><t>b</t></r></is></c>`, "", Cell{Text: "ab", Kind: Text, PartStruck: true}},
		"reading aid":           {`<c r="A1" t="s"><v>0</v></c>`, `<si><t>蛾</t><rPh sb="0" eb="1"><t>ガ</t></rPh></si>`, Cell{Text: "蛾", Kind: Text}},
		"escaped character":     {`<c r="A1" t="s"><v>0</v></c>`, `<si><t>a_x000A_b_x005F_x000A_</t></si>`, Cell{Text: "a\nb_x000A_", Kind: Text}},
		"character data":        {`<c r="A1" t="s"><v>0</v></c>`, `<si><t><![CDATA[a <b> & c]]></t></si>`, Cell{Text: "a <b> & c", Kind: Text}},
		"comment in the middle": {`<c r="A1" t="s"><!-- > --><v>0<?x > ?></v></c>`, `<si><t>a<!-- </t> -->b</t></si>`, Cell{Text: "ab", Kind: Text}},
		"numeric entities":      {`<c r="A1" t="s"><v>0</v></c>`, `<si><t>&#233;&#xE9;&apos;&#x301D;</t></si>`, Cell{Text: "éé'〝", Kind: Text}},
		"struck":                {`<c r="A1" s="2"><v>4</v></c>`, "", Cell{Text: "4", Kind: Number, Struck: true}},
		"not struck":            {`<c r="A1" t="s"><v>0</v></c>`, `<si><r><rPr><strike val="0"/></rPr><t>a</t></r></si>`, Cell{Text: "a", Kind: Text}},
		"exponent":              {`<c r="A1"><v>1.2E3</v></c>`, "", Cell{Text: "1200", Kind: Number}},
		"binary noise":          {`<c r="A1"><v>0.10000000000000001</v></c>`, "", Cell{Text: "0.1", Kind: Number}},
		"noise below":           {`<c r="A1"><v>52.369999999999997</v></c>`, "", Cell{Text: "52.37", Kind: Number}},
		"tiny":                  {`<c r="A1"><v>1E-20</v></c>`, "", Cell{Text: "1E-20", Kind: Number}},
		"ISO date":              {`<c r="A1" t="d"><v>2021-06-12T00:00:00.000</v></c>`, "", Cell{Text: "2021-06-12", Raw: "2021-06-12", Kind: Date}},
		"ISO date and time":     {`<c r="A1" t="d"><v>2021-06-12T22:45:00Z</v></c>`, "", Cell{Text: "2021-06-12T22:45:00", Raw: "2021-06-12T22:45:00", Kind: Date}},
		"unknown style":         {`<c r="A1" s="999"><v>4</v></c>`, "", Cell{Text: "4", Kind: Number}},
		"boolean":               {`<c r="A1" t="b"><v>0</v></c>`, "", Cell{Text: "FALSE", Kind: Bool}},
		"single quotes":         {`<c r='A1' t='s' ><v >0</v ></c >`, `<si><t>a</t></si>`, Cell{Text: "a", Kind: Text}},
		"empty shared text":     {`<c r="A1" t="s"><v>0</v></c>`, `<si/>`, Cell{}},
		"second shared text":    {`<c r="A1" t="s"><v>1</v></c>`, `<si><t/></si><si><t>b</t></si>`, Cell{Text: "b", Kind: Text}},
	} {
		t.Run(name, func(t *testing.T) {
			rows := oddRows(t, oddBook(`<sheetData><row r="1">`+c.cell+`</row></sheetData>`, c.shared))
			require.Len(t, rows, 1)
			got := Cell{}
			if len(rows[0].Cells) > 0 {
				got = rows[0].Cells[0]
			}
			assert.Equal(t, c.want, got)
		})
	}
}

func TestXLSXOddSheets(t *testing.T) {
	n := func(ref, v string) string { return `<c r="` + ref + `"><v>` + v + `</v></c>` }
	for name, c := range map[string]struct {
		sheet string
		want  []string
	}{
		"no addresses":         {`<sheetData><row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row></sheetData>`, []string{"1|2", "3"}},
		"rows left out":        {`<sheetData><row r="2">` + n("B2", "1") + `</row><row r="4">` + n("A4", "2") + `</row></sheetData>`, []string{"", "|1", "", "2"}},
		"cells out of order":   {`<sheetData><row r="1">` + n("C1", "3") + n("A1", "1") + `</row></sheetData>`, []string{"1||3"}},
		"no rows":              {`<sheetData/>`, nil},
		"no rows, long":        {`<sheetData></sheetData>`, nil},
		"no sheet data":        {``, nil},
		"empty rows":           {`<sheetData><row r="1"/><row r="2"></row><row r="3"><c r="A3" s="1"/></row></sheetData>`, []string{"", "", ""}},
		"merge below its text": {`<sheetData><row r="1">` + n("A1", "1") + `</row><row r="2">` + n("A2", "9") + `</row><row r="3"><c r="A3"/></row></sheetData><mergeCells><mergeCell ref="A1:A3"/></mergeCells>`, []string{"1", "9", "1"}},
		"merge over a gap":     {`<sheetData><row r="1">` + n("A1", "1") + `</row><row r="3">` + n("B3", "2") + `</row></sheetData><mergeCells><mergeCell ref="$A$1:A3"/></mergeCells>`, []string{"1", "1", "1|2"}},
		"merge both ways":      {`<sheetData><row r="1">` + n("A1", "1") + `</row><row r="2">` + n("C2", "2") + `</row></sheetData><mergeCells><mergeCell ref="B2:A1"/></mergeCells>`, []string{"1|1", "1|1|2"}},
		"merges that overlap":  {`<sheetData><row r="1">` + n("A1", "1") + n("C1", "3") + `</row><row r="2">` + n("D2", "2") + `</row></sheetData><mergeCells><mergeCell ref="A1:B2"/><mergeCell ref="B1:C2"/><mergeCell ref="A1:B2"/></mergeCells>`, []string{"1|1|3", "1|1||2"}},
		"merge of nothing":     {`<sheetData><row r="1">` + n("B1", "1") + `</row></sheetData><mergeCells><mergeCell ref="A2:A1048576"/><mergeCell ref="nonsense"/><mergeCell/></mergeCells>`, []string{"|1"}},
		"small letters":        {`<sheetData><row r="1">` + n("b1", "1") + `</row></sheetData>`, []string{"|1"}},
	} {
		t.Run(name, func(t *testing.T) {
			if strings.Join(c.want, "") == "" {
				p := failure(t, write(t, "odd.xlsx", oddBook(c.sheet, "")), Options{})
				assert.Contains(t, p.Error(), "the workbook is empty")
				return
			}
			assert.Equal(t, c.want, texts(oddRows(t, oddBook(c.sheet, ""))))
		})
	}
}

// Prefixes, strict namespaces, another place for the workbook, back slashes
// and other encodings are all allowed or met with.
func TestXLSXOddPackages(t *testing.T) {
	const strictRel = `http://purl.oclc.org/ooxml/officeDocument/relationships`
	strict := packed(
		`[Content_Types].xml`, `<Types/>`,
		`_rels/.rels`, `<Relationships><Relationship Id="a" Type="`+strictRel+`/officeDocument" Target="/Book/Main.xml"/></Relationships>`,
		`book\main.xml`, `<x:workbook xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main" xmlns:q="`+strictRel+`"><x:workbookPr date1904="true"/><x:sheets><x:sheet name="A &amp; B" sheetId="1" state="veryHidden" q:id="b"/><x:sheet name="Chart" sheetId="2" q:id="c"/></x:sheets></x:workbook>`,
		`Book/_rels/Main.xml.rels`, `<Relationships><Relationship Id="b" Type="`+strictRel+`/worksheet" Target="../sheets/./one.xml"/><Relationship Id="c" Type="`+strictRel+`/chartsheet" Target="chart.xml"/><Relationship Id="d" Type="`+strictRel+`/sharedStrings" TargetMode="External" Target="http://example.org/strings.xml"/></Relationships>`,
		`sheets/one.xml`, "\xff\xfe"+utf16Text(`<x:worksheet xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main"><x:cols><x:col min="2" max="2" width="0"/></x:cols><x:sheetData><x:row r="1" hidden="true"><x:c t="inlineStr"><x:is><x:t>é</x:t></x:is></x:c></x:row></x:sheetData><x:mergeCells><x:mergeCell ref="A1:B1"/></x:mergeCells></x:worksheet>`),
	)
	b := opened(t, write(t, "strict.xlsx", strict), Options{})
	require.Len(t, b.Sheets(), 1)
	s := b.Sheets()[0]
	assert.Equal(t, "A & B", s.Name())
	assert.True(t, s.Hidden())
	assert.Equal(t, []int{2}, s.HiddenColumns())
	rows := rowsOf(t, s)
	assert.Equal(t, []string{"é|é"}, texts(rows))
	assert.True(t, rows[0].Hidden)
	assert.Equal(t, []string{`Sheet "Chart" holds a chart or a dialogue and no cells; it was left out.`}, b.Notes())
}

func utf16Text(s string) string {
	var b []byte
	for _, r := range s {
		b = append(b, byte(r), byte(r>>8))
	}
	return string(b)
}

// A thread of comments comes with a note for older programs, which repeats it
// after an explanation.
func TestXLSXThreads(t *testing.T) {
	book := oddBook(`<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>`, "",
		"xl/worksheets/_rels/sheet1.xml.rels", `<Relationships><Relationship Id="rId1" Type="`+relNS+`/comments" Target="../comments1.xml"/><Relationship Id="rId2" Type="http://schemas.microsoft.com/office/2017/10/relationships/threadedComment" Target="../threadedComments/threadedComment1.xml"/><Relationship Id="rId3" Type="`+relNS+`/drawing" Target="../drawings/drawing1.xml"/></Relationships>`,
		"xl/comments1.xml", `<comments `+mainNS+`><authors><author>tc</author></authors><commentList>`+
			`<comment ref="A1" authorId="0"><text><t>[Threaded comment] Your version of the program allows you to read this. Comment:
    Was it worn?
Reply:
    Very.</t></text></comment>`+
			`<comment ref="B1" authorId="0"><text><r><rPr><b/></rPr><t>Ines:</t></r><r><t xml:space="preserve">
released</t></r></text></comment></commentList></comments>`,
		"xl/threadedComments/threadedComment1.xml", `<ThreadedComments><threadedComment ref="A1" dT="2021-06-13T10:00:00" personId="{1}" id="{2}"><text>Was it worn?</text></threadedComment><threadedComment ref="A1" personId="{1}" id="{3}" parentId="{2}"><text>Very.</text></threadedComment></ThreadedComments>`,
	)
	b := opened(t, write(t, "odd.xlsx", book), Options{})
	assert.Contains(t, joined(b.Notes()), `On sheet "Moths" there are pictures`)
	rows := rowsOf(t, b.Sheets()[0])
	assert.Equal(t, "Was it worn?\nVery.", rows[0].Cells[0].Comment)
	assert.Equal(t, "Ines:\nreleased", rows[0].Cells[1].Comment)
	assert.Equal(t, Empty, rows[0].Cells[1].Kind)
}
