package notebook

import (
	"encoding/binary"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The same page as other programs save it in the binary formats: garden.xls
// LibreOffice Calc 7.4, garden-97.xls and garden-95.xls Gnumeric 1.12, in those
// of Excel 97 and of Excel 95. What they say otherwise than the .xlsx is what
// those programs, or the older format, make of it.
func TestOldWorkbooksAsSaved(t *testing.T) {
	want := opened(t, "testdata/garden.xlsx", Options{})
	for name, others := range map[string]map[Ref]Cell{
		"garden.xls": {
			{Col: 6, Row: 6}: {Text: "0", Kind: Number}, // a formula's text is not saved
		},
		"garden-97.xls": {
			{Col: 4, Row: 8}: {Text: "jotagamma", Kind: Text, Struck: true},
		},
		"garden-95.xls": {
			{Col: 4, Row: 8}: {Text: "jotagamma", Kind: Text, Struck: true},
			{Col: 5, Row: 8}: {Text: "two\nlines  and é ?", Kind: Text}, // there is no ♂ in Windows-1252
		},
	} {
		t.Run(name, func(t *testing.T) {
			got := opened(t, "testdata/"+name, Options{})
			require.Len(t, got.Sheets(), len(want.Sheets()))
			for i, sheet := range got.Sheets() {
				like := want.Sheets()[i]
				assert.Equal(t, like.Name(), sheet.Name())
				assert.Equal(t, like.Hidden(), sheet.Hidden())
				assert.Equal(t, like.HiddenColumns(), sheet.HiddenColumns())
				rows := rowsOf(t, sheet)
				for j, row := range rowsOf(t, like) {
					if len(row.Cells) == 0 && j >= len(rows) {
						continue
					}
					assert.Equal(t, row.Hidden, rows[j].Hidden)
					for k, c := range row.Cells {
						ref := Ref{Col: k + 1, Row: row.Number}
						if other, ok := others[ref]; ok && i == 0 {
							c = other
						}
						read := Cell{}
						if k < len(rows[j].Cells) {
							read = rows[j].Cells[k]
						}
						assert.Equal(t, c, read, "%s %s", like.Name(), ref)
					}
				}
			}
		})
	}
}

// written.xls is from the Python library xlwt 1.3, which writes what the
// spreadsheet programs do not.
func TestOldWorkbookAsWritten(t *testing.T) {
	b := opened(t, "testdata/written.xls", Options{})
	require.Len(t, b.Sheets(), 3)
	page := b.Sheets()[0]
	assert.Equal(t, []int{4}, page.HiddenColumns())
	assert.True(t, b.Sheets()[1].Hidden())
	assert.Equal(t, []string{"IC"}, texts(rowsOf(t, b.Sheets()[1])))
	assert.Contains(t, joined(b.Notes()), `Sheet "blank" is empty`)

	rows := rowsOf(t, page)
	require.Len(t, rows, 9)
	assert.Equal(t, []Cell{
		{Text: "12/06/2007", Raw: "2007-06-12", Kind: Date}, {Text: "Saturnia pavonia", Kind: Text}, {Text: "2", Kind: Number},
		{Text: "TL455884", Kind: Text}, {Text: "at “light” – ♀ 🦋", Kind: Text},
	}, rows[1].Cells)
	assert.True(t, rows[2].Hidden)
	assert.Equal(t, []Cell{{Text: "1000000", Kind: Number}, {Text: "TRUE", Kind: Bool}, {Text: "0.3", Kind: Number}}, rows[2].Cells[2:])
	assert.True(t, rows[3].Struck)
	assert.Equal(t, Cell{Text: "5 6", Kind: Text, PartStruck: true}, rows[4].Cells[2])
	assert.Equal(t, Cell{Text: "no trap set", Kind: Text, Spread: true}, rows[6].Cells[1])
	assert.Equal(t, strings.Repeat("é€", 6000), rows[7].Cells[4].Text, "a text over several records")
	assert.Equal(t, Cell{Text: "=…", Kind: Error}, rows[8].Cells[2], "a formula that was never worked out")
}

// record writes one record of a workbook.
func record(kind int, fields ...any) string {
	var b []byte
	for _, f := range fields {
		switch v := f.(type) {
		case int:
			b = binary.LittleEndian.AppendUint16(b, uint16(v))
		case byte:
			b = append(b, v)
		case uint32:
			b = binary.LittleEndian.AppendUint32(b, v)
		case float64:
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
		case string:
			b = append(b, v...)
		}
	}
	head := binary.LittleEndian.AppendUint16(nil, uint16(kind))
	return string(binary.LittleEndian.AppendUint16(head, uint16(len(b)))) + string(b)
}

// oldBook puts a workbook of one sheet together as bare records, without the
// compound file around them, after the layouts of [MS-XLS] section 2.4.
func oldBook(version int, globals, sheet string) string {
	start := record(xlsBOF, version, 5, uint32(0), uint32(0), uint32(0))
	if version == 0x0500 {
		start = record(xlsBOF, version, 5, uint32(0))
	}
	name := "\x05\x00Moths"
	if version == 0x0500 {
		name = "\x05Moths"
	}
	at := len(start) + len(globals) + len(record(xlsBoundSheet, uint32(0), 0, name)) + len(record(xlsEOF))
	return start + globals + record(xlsBoundSheet, uint32(at), 0, name) + record(xlsEOF) +
		record(xlsBOF, version, 0x10) + sheet + record(xlsEOF)
}

// narrowText is a text of Excel 97 whose characters have one byte each.
func narrowText(s string) string {
	return string(binary.LittleEndian.AppendUint16(nil, uint16(len(s)))) + "\x00" + s
}

func TestOldWorkbookRecords(t *testing.T) {
	texts2 := record(xlsSST, uint32(3), uint32(2), narrowText("Noctua"), 4, byte(0), "Lao") + record(xlsContinue, byte(1), "t\x00") // cut between two letters
	for name, c := range map[string]struct {
		version        int
		globals, sheet string
		want           []string
	}{
		"numbers packed in every way": {0x0600, "", record(xlsMulRk, 0, 0,
			0, uint32(7<<2|2), 0, uint32(0xffffffde), 0, uint32(1234<<2|3), 0, uint32(math.Float64bits(1.5)>>32), 0, uint32(math.Float64bits(25)>>32|1), 4),
			[]string{"7|-9|12.34|1.5|0.25"}},
		"cells in any order":                        {0x0600, "", record(xlsNumber, 2, 0, 0, 3.0) + record(xlsNumber, 0, 1, 0, 1.0) + record(xlsRK, 0, 0, 0, uint32(2<<2|2)), []string{"2|1", "", "3"}},
		"a text that changes width where it is cut": {0x0600, texts2, record(xlsLabelSST, 0, 0, 0, uint32(1)) + record(xlsLabelSST, 0, 1, 0, uint32(0)), []string{"Laot|Noctua"}},
		"errors and truth": {0x0600, "", record(xlsBoolErr, 0, 0, 0, byte(1), byte(0)) + record(xlsBoolErr, 0, 1, 0, byte(0x17), byte(1)) + record(xlsBoolErr, 0, 2, 0, byte(99), byte(1)),
			[]string{"TRUE|#REF!|#ERROR 99!"}},
		"formulas": {0x0600, "", record(xlsFormula, 0, 0, 0, 2.5, 0, uint32(0), 0) +
			record(xlsFormula, 0, 1, 0, "\x00\x00\x00\x00\x00\x00\xff\xff", 0, uint32(0), 0) + record(0x04BC, 0, 0, 0) + record(xlsString, narrowText("Herald")) +
			record(xlsFormula, 0, 2, 0, "\x03\x00\x00\x00\x00\x00\xff\xff", 0, uint32(0), 0) +
			record(xlsFormula, 0, 3, 0, "\x01\x00\x01\x00\x00\x00\xff\xff", 0, uint32(0), 0) +
			record(xlsFormula, 0, 4, 0, "\x02\x00\x2a\x00\x00\x00\xff\xff", 0, uint32(0), 0), []string{"2.5|Herald||TRUE|#N/A"}},
		"a chart among the cells": {0x0600, "", record(xlsNumber, 0, 0, 0, 1.0) + record(xlsBOF, 0x0600, 0x20) + record(xlsNumber, 0, 0, 0, 9.0) + record(xlsEOF) + record(xlsNumber, 1, 0, 0, 2.0),
			[]string{"1", "2"}},
		"merged beyond the sheet": {0x0600, "", record(xlsNumber, 0, 0, 0, 1.0) + record(xlsNumber, 1, 1, 0, 2.0) + record(xlsMergeCells, 1, 0, 1, 0, 1), []string{"1|1", "1|2"}},
		"before Unicode": {0x0500, record(xlsCodePage, 1250), record(xlsLabel, 0, 0, 0, 3, "\xa9\xb9x") + record(xlsRString, 0, 1, 0, 2, "ab", byte(1), byte(0), byte(0)),
			[]string{"©ąx|ab"}},
		"from a Macintosh": {0x0500, record(xlsCodePage, 10000), record(xlsLabel, 0, 0, 0, 1, "\x8e"), []string{"é"}},
	} {
		t.Run(name, func(t *testing.T) {
			b := opened(t, write(t, "a.xls", oldBook(c.version, c.globals, c.sheet)), Options{})
			require.Len(t, b.Sheets(), 1)
			assert.Equal(t, "Moths", b.Sheets()[0].Name())
			assert.Equal(t, c.want, texts(rowsOf(t, b.Sheets()[0])))
		})
	}
	t.Run("comments", func(t *testing.T) {
		newer := record(xlsNumber, 0, 0, 0, 1.0) + record(xlsObj, 0x15, 0x12, 0x19, 7) + record(xlsTxO, 0, 0, uint32(0), 0, 4, 0, uint32(0)) +
			record(xlsContinue, byte(0), "wo") + record(xlsContinue, byte(1), "r\x00n\x00") + record(xlsNote, 0, 0, 0, 7, "\x00\x00\x00")
		older := record(xlsNumber, 0, 0, 0, 1.0) + record(xlsNote, 0, 0, 4, "wo") + record(xlsNote, 0xffff, 0, 2, "rn")
		for version, sheet := range map[int]string{0x0600: newer, 0x0500: older} {
			b := opened(t, write(t, "a.xls", oldBook(version, "", sheet)), Options{})
			rows := rowsOf(t, b.Sheets()[0])
			require.Len(t, rows, 1)
			assert.Equal(t, "worn", rows[0].Cells[0].Comment)
			assert.NotContains(t, joined(b.Notes()), "pictures")
		}
		b := opened(t, write(t, "a.xls", oldBook(0x0600, "", record(xlsNumber, 0, 0, 0, 1.0)+record(xlsObj, 0x15, 0x12, 8, 1))), Options{})
		assert.Contains(t, joined(b.Notes()), "pictures")
	})
	t.Run("a part struck through, before Unicode", func(t *testing.T) {
		fonts := record(xlsFont, 200, 0) + record(xlsFont, 200, 8)
		b := opened(t, write(t, "a.xls", oldBook(0x0500, fonts, record(xlsRString, 0, 0, 0, 3, "5 6", byte(2), byte(0), byte(1), byte(1), byte(0)))), Options{})
		assert.Equal(t, Cell{Text: "5 6", Kind: Text, PartStruck: true}, rowsOf(t, b.Sheets()[0])[0].Cells[0])
	})
	t.Run("dates from 1904", func(t *testing.T) {
		xf := record(xlsXF, 0, 14, "\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00")
		b := opened(t, write(t, "a.xls", oldBook(0x0600, record(xlsDate1904, 1)+xf, record(xlsNumber, 0, 0, 0, 37782.0))), Options{})
		assert.Equal(t, "2007-06-11", rowsOf(t, b.Sheets()[0])[0].Cells[0].Raw)
	})
	t.Run("a chart as a sheet", func(t *testing.T) {
		chart := record(xlsBoundSheet, uint32(9), byte(0), byte(2), "\x04\x00Plot")
		b := opened(t, write(t, "a.xls", oldBook(0x0600, chart, record(xlsNumber, 0, 0, 0, 1.0))), Options{})
		require.Len(t, b.Sheets(), 1)
		assert.Contains(t, joined(b.Notes()), `Sheet "Plot" holds a chart or a macro and no cells`)
	})
}

func TestOldWorkbooksRefused(t *testing.T) {
	garden, err := os.ReadFile("testdata/garden.xls")
	require.NoError(t, err)
	// Every sector leads back to the first: the chain never ends.
	circle := append([]byte(nil), garden...)
	fat := 512 * (1 + int(binary.LittleEndian.Uint32(circle[76:])))
	for i := range 16 {
		binary.LittleEndian.PutUint32(circle[fat+4*i:], 0)
	}
	one := record(xlsNumber, 0, 0, 0, 1.0)
	whole := oldBook(0x0600, "", one)
	for name, c := range map[string]struct{ content, want string }{
		"password":              {oldBook(0x0600, record(xlsFilePass, 1), one), "locked with a password"},
		"cut short":             {whole[:len(whole)-6], "damaged"},
		"cut in the file":       {string(garden[:len(garden)/2]), "damaged"},
		"runs in circles":       {string(circle), "damaged"},
		"texts that are not":    {oldBook(0x0600, record(xlsSST, uint32(1), uint32(0xffffffff), narrowText("a")), one), "damaged"},
		"a text of another":     {oldBook(0x0600, "", record(xlsLabelSST, 0, 0, 0, uint32(5))), "damaged"},
		"a record too short":    {oldBook(0x0600, "", record(xlsNumber, 0, 0, 0)), "damaged"},
		"nothing in it":         {oldBook(0x0600, "", ""), "the workbook is empty"},
		"a sheet somewhere":     {record(xlsBOF, 0x0600, 5, uint32(0), uint32(0), uint32(0)) + record(xlsBoundSheet, uint32(1<<31), 0, "\x01\x00x") + record(xlsEOF), `sheet "x": the workbook is damaged`},
		"no workbook but other": {strings.ReplaceAll(string(garden), "W\x00o\x00r\x00k\x00b\x00", "C\x00o\x00r\x00k\x00b\x00"), "an old office document, but no workbook"},
	} {
		t.Run(name, func(t *testing.T) {
			p := failure(t, write(t, "a.xls", c.content), Options{})
			sentences(t, p)
			assert.Contains(t, p.Error(), c.want)
		})
	}
	many := record(xlsMergeCells, 3, 0, 1, 0, 1, 2, 3, 0, 1, 4, 5, 0, 1)
	p := failure(t, write(t, "a.xls", oldBook(0x0600, "", one+many)), Options{Limits: Limits{Merges: 2}})
	assert.Contains(t, p.Error(), "more than 2 merged areas")
}

// FuzzOldWorkbook changes the records of a workbook.
func FuzzOldWorkbook(f *testing.F) {
	f.Add(true, []byte(record(xlsSST, uint32(1), uint32(1), narrowText("a"))), []byte(record(xlsLabelSST, 0, 0, 0, uint32(0))+record(xlsMergeCells, 1, 0, 1, 0, 1)))
	f.Add(false, []byte(record(xlsCodePage, 1252)), []byte(record(xlsLabel, 0, 0, 0, 1, "a")+record(xlsNote, 0, 0, 1, "b")))
	f.Add(true, []byte(record(xlsFormat, 200, narrowText("dd/mm/yyyy"))+record(xlsFont, 0, 8)), []byte(record(xlsFormula, 0, 0, 0, "\x00\x00\x00\x00\x00\x00\xff\xff", 0)+record(xlsString, narrowText("x"))))
	f.Fuzz(func(t *testing.T, wide bool, globals, sheet []byte) {
		version := 0x0500
		if wide {
			version = 0x0600
		}
		readAll(t, "a.xls", []byte(oldBook(version, string(globals), string(sheet))))
	})
}

// FuzzOldFile changes a compound file as a spreadsheet program saved it.
func FuzzOldFile(f *testing.F) {
	whole, err := os.ReadFile("testdata/garden.xls")
	require.NoError(f, err)
	f.Add(uint16(0), []byte{})
	f.Add(uint16(76), []byte{9, 0, 0, 0})
	f.Fuzz(func(t *testing.T, at uint16, put []byte) {
		readAll(t, "a.xls", []byte(with(string(whole), at, uint16(min(len(put), 1<<15)), put)))
	})
}
