package notebook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const odsNS = `xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" ` +
	`xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" ` +
	`xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"`

const odsStylesXML = `<office:automatic-styles>` +
	`<style:style style:name="gone" style:family="table-cell"><style:text-properties style:text-line-through-style="solid" style:text-line-through-type="single"/></style:style>` +
	`<style:style style:name="gone2" style:family="table-cell" style:parent-style-name="gone"/>` +
	`<style:style style:name="back" style:family="table-cell" style:parent-style-name="gone"><style:text-properties style:text-line-through-style="none"/></style:style>` +
	`<style:style style:name="T1" style:family="text"><style:text-properties style:text-line-through-style="solid"/></style:style>` +
	`<style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style>` +
	`</office:automatic-styles>`

// ods packs hand-written tables.
func ods(tables string) string {
	return packed(
		"mimetype", "application/vnd.oasis.opendocument.spreadsheet",
		"content.xml", `<?xml version="1.0" encoding="UTF-8"?><office:document-content `+odsNS+`>`+odsStylesXML+
			`<office:body><office:spreadsheet>`+tables+`</office:spreadsheet></office:body></office:document-content>`)
}

func odsRows(t *testing.T, tables string) []Row {
	t.Helper()
	return rowsOf(t, opened(t, write(t, "a.ods", ods(tables)), Options{}).Sheets()[0])
}

func TestODSCells(t *testing.T) {
	for name, c := range map[string]struct {
		cell string
		want Cell
	}{
		"text":    {`<table:table-cell office:value-type="string"><text:p>Noctua pronuba</text:p></table:table-cell>`, Cell{Text: "Noctua pronuba", Kind: Text}},
		"no type": {`<table:table-cell><text:p>a</text:p></table:table-cell>`, Cell{Text: "a", Kind: Text}},
		"lines":   {`<table:table-cell office:value-type="string"><text:p>a</text:p><text:p/><text:p>b<text:line-break/>c</text:p></table:table-cell>`, Cell{Text: "a\n\nb\nc", Kind: Text}},
		"spaces": {`<table:table-cell office:value-type="string"><text:p>
   a  b <text:s text:c="2"/>c<text:s/><text:tab/>d
   e
 </text:p></table:table-cell>`, Cell{Text: "a  b   c \td e", Kind: Text}},
		"spans and links":    {`<table:table-cell office:value-type="string"><text:p>a <text:span>b</text:span> <text:a>c</text:a></text:p></table:table-cell>`, Cell{Text: "a b c", Kind: Text}},
		"string value":       {`<table:table-cell office:value-type="string" office:string-value="a &amp; b"/>`, Cell{Text: "a & b", Kind: Text}},
		"number":             {`<table:table-cell office:value-type="float" office:value="3"><text:p>3</text:p></table:table-cell>`, Cell{Text: "3", Kind: Number}},
		"number rounded":     {`<table:table-cell office:value-type="float" office:value="2.4567"><text:p>2.46</text:p></table:table-cell>`, Cell{Text: "2.46", Raw: "2.4567", Kind: Number}},
		"leading zeros":      {`<table:table-cell office:value-type="float" office:value="453"><text:p>000453</text:p></table:table-cell>`, Cell{Text: "000453", Raw: "453", Kind: Number}},
		"number not shown":   {`<table:table-cell office:value-type="float" office:value="0.1"/>`, Cell{Text: "0.1", Kind: Number}},
		"percentage":         {`<table:table-cell office:value-type="percentage" office:value="0.25"><text:p>25%</text:p></table:table-cell>`, Cell{Text: "25%", Raw: "0.25", Kind: Number}},
		"date":               {`<table:table-cell office:value-type="date" office:date-value="2021-06-12"><text:p>12 Jun 21</text:p></table:table-cell>`, Cell{Text: "12 Jun 21", Raw: "2021-06-12", Kind: Date}},
		"date and time":      {`<table:table-cell office:value-type="date" office:date-value="2021-06-12T22:45:00.000000000"><text:p>12/06/21 22:45</text:p></table:table-cell>`, Cell{Text: "12/06/21 22:45", Raw: "2021-06-12T22:45:00", Kind: Date}},
		"time":               {`<table:table-cell office:value-type="time" office:time-value="PT22H45M00S"><text:p>22:45</text:p></table:table-cell>`, Cell{Text: "22:45", Raw: "22:45:00", Kind: Date}},
		"time, split second": {`<table:table-cell office:value-type="time" office:time-value="PT22H45M00.4999S"><text:p>22:45</text:p></table:table-cell>`, Cell{Text: "22:45", Raw: "22:45:00", Kind: Date}},
		"length of time":     {`<table:table-cell office:value-type="time" office:time-value="PT36H00M00S"><text:p>36:00</text:p></table:table-cell>`, Cell{Text: "36:00", Raw: "1.5", Kind: Number}},
		"boolean":            {`<table:table-cell office:value-type="boolean" office:boolean-value="true"><text:p>WAHR</text:p></table:table-cell>`, Cell{Text: "TRUE", Kind: Bool}},
		"failed formula":     {`<table:table-cell table:formula="of:=1/0" office:value-type="string" office:string-value="" calcext:value-type="error"><text:p>#DIV/0!</text:p></table:table-cell>`, Cell{Text: "#DIV/0!", Kind: Error}},
		"failed, old":        {`<table:table-cell table:formula="of:=1/0" office:value-type="float" office:value="0"><text:p>Err:502</text:p></table:table-cell>`, Cell{Text: "Err:502", Kind: Error}},
		"formula, no value":  {`<table:table-cell table:formula="of:=SUM([.A1:.A3])"/>`, Cell{Text: "=SUM([.A1:.A3])", Kind: Error}},
		"formula, no text":   {`<table:table-cell table:formula="of:=&quot;&quot;" office:value-type="string"><text:p/></table:table-cell>`, Cell{}},
		"both types":         {`<table:table-cell calcext:value-type="float" office:value-type="float" office:value="3"><text:p>3</text:p></table:table-cell>`, Cell{Text: "3", Kind: Number}},
		"struck":             {`<table:table-cell table:style-name="gone2" office:value-type="float" office:value="3"><text:p>3</text:p></table:table-cell>`, Cell{Text: "3", Kind: Number, Struck: true}},
		"struck no more":     {`<table:table-cell table:style-name="back" office:value-type="float" office:value="3"><text:p>3</text:p></table:table-cell>`, Cell{Text: "3", Kind: Number}},
		"struck text":        {`<table:table-cell office:value-type="string"><text:p><text:span text:style-name="T1">a <text:span>b</text:span></text:span></text:p></table:table-cell>`, Cell{Text: "a b", Kind: Text, Struck: true}},
		"struck in part":     {`<table:table-cell office:value-type="string"><text:p><text:span text:style-name="T1">a</text:span>b</text:p></table:table-cell>`, Cell{Text: "ab", Kind: Text, PartStruck: true}},
		"annotation":         {`<table:table-cell office:value-type="string"><office:annotation><dc:creator>Ines</dc:creator><dc:date>2021-06-13T00:00:00</dc:date><text:p>worn</text:p><text:p>released</text:p></office:annotation><text:p>a</text:p></table:table-cell>`, Cell{Text: "a", Kind: Text, Comment: "worn\nreleased"}},
		"annotation alone":   {`<table:table-cell><office:annotation><text:p>look</text:p></office:annotation></table:table-cell>`, Cell{Comment: "look"}},
		"drawing":            {`<table:table-cell office:value-type="string"><draw:frame><draw:text-box><text:p>no</text:p></draw:text-box></draw:frame><text:p>a</text:p></table:table-cell>`, Cell{Text: "a", Kind: Text}},
	} {
		t.Run(name, func(t *testing.T) {
			got := Cell{}
			if rows := odsRows(t, `<table:table table:name="x"><table:table-row>`+c.cell+`</table:table-row></table:table>`); len(rows) > 0 {
				got = rows[0].Cells[0]
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// cells writes a row of text cells; "" is an empty one.
func odsRow(attrs string, cells ...string) string {
	var b strings.Builder
	b.WriteString(`<table:table-row ` + attrs + `>`)
	for _, c := range cells {
		switch {
		case c == "":
			b.WriteString(`<table:table-cell/>`)
		case strings.HasPrefix(c, "<"):
			b.WriteString(c)
		default:
			b.WriteString(`<table:table-cell office:value-type="string"><text:p>` + c + `</text:p></table:table-cell>`)
		}
	}
	return b.String() + `</table:table-row>`
}

func TestODSSheets(t *testing.T) {
	const trailing = `<table:table-row table:number-rows-repeated="1048000"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>`
	for name, c := range map[string]struct {
		rows string
		want []string
	}{
		"plain":             {odsRow("", "a", "b") + odsRow("", "1", "2") + trailing, []string{"a|b", "1|2"}},
		"nothing":           {trailing, nil},
		"blank between":     {odsRow("", "a") + odsRow(`table:number-rows-repeated="2"`, "") + odsRow("", "b"), []string{"a", "", "", "b"}},
		"blank above":       {odsRow(`table:number-rows-repeated="2"`, "") + odsRow("", "", "b"), []string{"", "", "|b"}},
		"repeated cells":    {odsRow("", `<table:table-cell table:number-columns-repeated="3" office:value-type="string"><text:p>x</text:p></table:table-cell>`, "y"), []string{"x|x|x|y"}},
		"repeated blanks":   {odsRow("", `<table:table-cell table:number-columns-repeated="3"/>`, "y"), []string{"|||y"}},
		"repeated rows":     {odsRow(`table:number-rows-repeated="3"`, "a") + odsRow("", "b"), []string{"a", "a", "a", "b"}},
		"merged":            {odsRow("", `<table:table-cell table:number-columns-spanned="2" table:number-rows-spanned="2" office:value-type="string"><text:p>m</text:p></table:table-cell>`, `<table:covered-table-cell/>`, "z") + odsRow("", `<table:covered-table-cell table:number-columns-repeated="2"/>`, "y") + odsRow("", "e"), []string{"m|m|z", "m|m|y", "e"}},
		"merged over a gap": {odsRow("", `<table:table-cell table:number-rows-spanned="3" office:value-type="string"><text:p>m</text:p></table:table-cell>`) + odsRow(`table:number-rows-repeated="2"`, `<table:covered-table-cell/>`) + odsRow("", "", "y"), []string{"m", "m", "m", "|y"}},
		"grouped":           {`<table:table-header-rows>` + odsRow("", "a") + `</table:table-header-rows><table:table-row-group>` + odsRow("", "b") + `</table:table-row-group>`, []string{"a", "b"}},
		"table in a cell":   {odsRow("", `<table:table-cell><table:table table:name="in"><table:table-row><table:table-cell><text:p>no</text:p></table:table-cell></table:table-row></table:table><text:p>yes</text:p></table:table-cell>`), []string{"yes"}},
	} {
		t.Run(name, func(t *testing.T) {
			tables := `<table:table table:name="x">` + c.rows + `</table:table>`
			if c.want == nil {
				p := failure(t, write(t, "a.ods", ods(tables)), Options{})
				assert.Contains(t, p.Error(), "the workbook is empty")
				return
			}
			assert.Equal(t, c.want, texts(odsRows(t, tables)))
		})
	}
}

func TestODSBook(t *testing.T) {
	tables := `<table:tracked-changes><table:table-cell><text:p>old</text:p></table:table-cell></table:tracked-changes>` +
		`<table:table table:name="2014 &amp; after"><table:table-column/><table:table-column table:number-columns-repeated="2" table:visibility="collapse"/><table:table-column table:default-cell-style-name="gone"/>` +
		odsRow(`table:visibility="filter"`, "a", "b", "c", "d") + odsRow("", "", "", "", "d2") + `</table:table>` +
		`<table:table table:name="private" table:style-name="ta2">` + odsRow("", "p") + `</table:table>`
	tables = strings.Replace(tables, "<table:table-column/>", "<table:shapes><draw:frame/></table:shapes><table:table-column/>", 1)
	b := opened(t, write(t, "a.ods", ods(tables)), Options{})
	assert.Equal(t, []string{`On sheet "2014 & after" there are pictures, charts or text boxes; what they say was not read.`}, b.Notes())
	require.Len(t, b.Sheets(), 2)
	s := b.Sheets()[0]
	assert.Equal(t, "2014 & after", s.Name())
	assert.Equal(t, []int{2, 3}, s.HiddenColumns())
	assert.False(t, s.Hidden())
	rows := rowsOf(t, s)
	assert.Equal(t, rows, rowsOf(t, s))
	assert.Equal(t, []string{"a|b|c|d", "|||d2"}, texts(rows))
	assert.True(t, rows[0].Hidden)
	assert.False(t, rows[0].Struck)
	assert.True(t, rows[0].Cells[3].Struck)
	assert.True(t, rows[1].Struck)
	assert.True(t, b.Sheets()[1].Hidden())
	assert.Equal(t, []string{"p"}, texts(rowsOf(t, b.Sheets()[1])))

	flat := `<?xml version="1.0" encoding="UTF-8"?>
<office:document ` + odsNS + ` office:mimetype="application/vnd.oasis.opendocument.spreadsheet">` + odsStylesXML + `<office:body><office:spreadsheet>` + tables + `</office:spreadsheet></office:body></office:document>`
	f := opened(t, write(t, "a.fods", flat), Options{})
	require.Len(t, f.Sheets(), 2)
	assert.Equal(t, rows, rowsOf(t, f.Sheets()[0]))
}

// A large document goes through a temporary file, which Close removes.
func TestODSLarge(t *testing.T) {
	var b strings.Builder
	for range 3 {
		b.WriteString(`<table:table table:name="x">`)
		for i := range 40_000 {
			b.WriteString(odsRow("", "Noctua pronuba", junkWord(i)))
		}
		b.WriteString(`</table:table>`)
	}
	book := opened(t, write(t, "a.ods", ods(b.String())), Options{})
	require.Len(t, book.Sheets(), 3)
	for _, s := range book.Sheets() {
		rows := rowsOf(t, s)
		require.Len(t, rows, 40_000)
		assert.Equal(t, junkWord(39_999), rows[39_999].Cells[1].Text)
	}
}
