package notebook

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// workbook makes a workbook with excelize and returns its path.
func workbook(t testing.TB, fill func(f *excelize.File)) string {
	t.Helper()
	f := excelize.NewFile()
	fill(f)
	path := filepath.Join(t.TempDir(), "book.xlsx")
	require.NoError(t, f.SaveAs(path))
	require.NoError(t, f.Close())
	return path
}

// must panics, since the workbooks are made outside the code under test.
func must(err error) {
	if err != nil {
		panic(err)
	}
}

func style(f *excelize.File, s *excelize.Style) int {
	id, err := f.NewStyle(s)
	must(err)
	return id
}

func custom(code string) *excelize.Style { return &excelize.Style{CustomNumFmt: &code} }

func TestXLSXValues(t *testing.T) {
	type want struct {
		text, raw string
		kind      Kind
	}
	night := time.Date(2021, 6, 12, 22, 45, 0, 0, time.UTC)
	for name, c := range map[string]struct {
		value any
		style *excelize.Style
		want  want
	}{
		"text":                  {"Noctua pronuba", nil, want{"Noctua pronuba", "", Text}},
		"text kept":             {"  two  spaces \n and a line", nil, want{"  two  spaces \n and a line", "", Text}},
		"number stored as text": {"0012", nil, want{"0012", "", Text}},
		"whole number":          {3, nil, want{"3", "", Number}},
		"fraction":              {0.1, nil, want{"0.1", "", Number}},
		"long fraction":         {52.1234567890123, nil, want{"52.1234567890123", "", Number}},
		"big":                   {123456789012, nil, want{"123456789012", "", Number}},
		"negative":              {-2.5, nil, want{"-2.5", "", Number}},
		"rounded":               {2.4567, &excelize.Style{NumFmt: 2}, want{"2.46", "2.4567", Number}},
		"leading zeros":         {453, custom("000000"), want{"000453", "453", Number}},
		"percent":               {0.25, &excelize.Style{NumFmt: 9}, want{"25%", "0.25", Number}},
		"thousands":             {12345, &excelize.Style{NumFmt: 3}, want{"12,345", "12345", Number}},
		"text format":           {12, &excelize.Style{NumFmt: 49}, want{"12", "", Number}},
		"with a unit":           {3, custom(`0" moths"`), want{"3 moths", "3", Number}},
		"date":                  {44359, &excelize.Style{NumFmt: 14}, want{"12/06/2021", "2021-06-12", Date}},
		"date, UK":              {44359, custom("dd/mm/yyyy"), want{"12/06/2021", "2021-06-12", Date}},
		"date, locale":          {44359, custom("[$-809]d mmmm yyyy;@"), want{"12 June 2021", "2021-06-12", Date}},
		"day and month":         {44359, &excelize.Style{NumFmt: 16}, want{"12-Jun", "2021-06-12", Date}},
		"month and year":        {44348, &excelize.Style{NumFmt: 17}, want{"Jun-21", "2021-06-01", Date}},
		"date and time":         {night, custom("dd/mm/yyyy hh:mm"), want{"12/06/2021 22:45", "2021-06-12T22:45:00", Date}},
		"time":                  {0.947916666666667, &excelize.Style{NumFmt: 20}, want{"22:45", "22:45:00", Date}},
		"time, 12 hours":        {0.947916666666667, custom("h:mm AM/PM"), want{"10:45 PM", "22:45:00", Date}},
		"midnight":              {0, &excelize.Style{NumFmt: 20}, want{"00:00", "00:00:00", Date}},
		"time shown of a day":   {44359.25, &excelize.Style{NumFmt: 20}, want{"06:00", "2021-06-12T06:00:00", Date}},
		"hours and minutes":     {1.5, custom("[h]:mm"), want{"36:00", "1.5", Number}},
		"no day":                {0, &excelize.Style{NumFmt: 14}, want{"", "0", Number}},
		"first day":             {1, custom("dd/mm/yyyy"), want{"01/01/1900", "1900-01-01", Date}},
		"28 February 1900":      {59, custom("dd/mm/yyyy"), want{"28/02/1900", "1900-02-28", Date}},
		"29 February 1900":      {60, custom("dd/mm/yyyy"), want{"29/02/1900", "60", Number}},
		"1 March 1900":          {61, custom("dd/mm/yyyy"), want{"01/03/1900", "1900-03-01", Date}},
		"last day":              {2958465, custom("dd/mm/yyyy"), want{"31/12/9999", "9999-12-31", Date}},
		"beyond the last":       {2958466, custom("dd/mm/yyyy"), want{"", "2958466", Number}},
		"yes":                   {true, nil, want{"TRUE", "", Bool}},
		"no":                    {false, nil, want{"FALSE", "", Bool}},
		"odd characters":        {"a & b <c> \"d\" 'e' é 〃", nil, want{"a & b <c> \"d\" 'e' é 〃", "", Text}},
	} {
		t.Run(name, func(t *testing.T) {
			path := workbook(t, func(f *excelize.File) {
				must(f.SetCellValue("Sheet1", "B2", c.value))
				if c.style != nil {
					must(f.SetCellStyle("Sheet1", "B2", "B2", style(f, c.style)))
				}
			})
			rows := rowsOf(t, opened(t, path, Options{}).Sheets()[0])
			require.Len(t, rows, 2)
			assert.Empty(t, rows[0].Cells)
			require.Len(t, rows[1].Cells, 2)
			got := rows[1].Cells[1]
			if c.want.text == "" {
				got.Text = ""
			}
			assert.Equal(t, Cell{Text: c.want.text, Raw: c.want.raw, Kind: c.want.kind}, got)
		})
	}
}

func TestXLSX1904(t *testing.T) {
	path := workbook(t, func(f *excelize.File) {
		yes := true
		must(f.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &yes}))
		must(f.SetCellValue("Sheet1", "A1", 42897))
		must(f.SetCellValue("Sheet1", "A2", 0))
		must(f.SetCellValue("Sheet1", "A3", 0.5))
		must(f.SetCellStyle("Sheet1", "A1", "A2", style(f, custom("dd/mm/yyyy"))))
		must(f.SetCellStyle("Sheet1", "A3", "A3", style(f, custom("hh:mm"))))
	})
	rows := rowsOf(t, opened(t, path, Options{}).Sheets()[0])
	assert.Equal(t, Cell{Text: "12/06/2021", Raw: "2021-06-12", Kind: Date}, rows[0].Cells[0])
	assert.Equal(t, Cell{Text: "01/01/1904", Raw: "1904-01-01", Kind: Date}, rows[1].Cells[0])
	assert.Equal(t, Cell{Text: "12:00", Raw: "12:00:00", Kind: Date}, rows[2].Cells[0])
}

func TestXLSXPage(t *testing.T) {
	path := workbook(t, func(f *excelize.File) {
		must(f.SetSheetName("Sheet1", "2014"))
		struck := style(f, &excelize.Style{Font: &excelize.Font{Strike: true}})
		must(f.SetSheetRow("2014", "A1", &[]any{"Moths at Sallowmere"}))
		must(f.MergeCell("2014", "A1", "C1"))
		must(f.SetSheetRow("2014", "A3", &[]any{"Site", "Name", "Count"}))
		must(f.SetSheetRow("2014", "A4", &[]any{"The Hide", "Apamea monoglypha", 3}))
		must(f.SetSheetRow("2014", "B5", &[]any{"Noctua pronuba", 4}))
		must(f.MergeCell("2014", "A4", "A6"))
		must(f.SetSheetRow("2014", "B6", &[]any{"Deilephila elpenor", 1}))
		must(f.SetCellStyle("2014", "B6", "C6", struck))
		must(f.SetSheetRow("2014", "A7", &[]any{"Garden", "Laothoe populi", 2}))
		must(f.SetCellStyle("2014", "C7", "C7", struck))
		must(f.SetRowVisible("2014", 7, false))
		must(f.SetColVisible("2014", "C:D", false))
		must(f.AddComment("2014", excelize.Comment{Cell: "B4", Author: "Ines Calloway", Text: "worn"}))
		must(f.AddComment("2014", excelize.Comment{Cell: "E9", Author: "Ines Calloway", Paragraph: []excelize.RichTextRun{{Text: "check ", Font: &excelize.Font{Bold: true}}, {Text: "with Tom"}}}))
		must(f.SetCellRichText("2014", "A8", []excelize.RichTextRun{{Text: "Autographa "}, {Text: "jota", Font: &excelize.Font{Strike: true}}, {Text: "gamma"}}))
		must(f.SetCellRichText("2014", "B8", []excelize.RichTextRun{{Text: "gone", Font: &excelize.Font{Strike: true}}}))
		_, err := f.NewSheet("private")
		must(err)
		must(f.SetSheetVisible("private", false))
		_, err = f.NewSheet("blank")
		must(err)
	})
	b := opened(t, path, Options{})
	require.Len(t, b.Sheets(), 3)
	page := b.Sheets()[0]
	assert.Equal(t, "2014", page.Name())
	assert.Equal(t, path, page.File())
	assert.False(t, page.Hidden())
	assert.Equal(t, []int{3, 4}, page.HiddenColumns())
	assert.True(t, b.Sheets()[1].Hidden())
	assert.Empty(t, rowsOf(t, b.Sheets()[2]))
	assert.Equal(t, []string{`Sheet "private" is empty.`, `Sheet "blank" is empty.`}, b.Notes())

	rows := rowsOf(t, page)
	assert.Equal(t, []string{
		"Moths at Sallowmere|Moths at Sallowmere|Moths at Sallowmere", "",
		"Site|Name|Count",
		"The Hide|Apamea monoglypha|3", "The Hide|Noctua pronuba|4", "The Hide|Deilephila elpenor|1",
		"Garden|Laothoe populi|2",
		"Autographa jotagamma|gone", "",
	}, texts(rows))
	assert.Equal(t, rows, rowsOf(t, page), "a second walk")
	for i, r := range rows {
		assert.Equal(t, i+1, r.Number)
		assert.Equal(t, i+1 == 7, r.Hidden)
		assert.Equal(t, i+1 == 6, r.Struck, "row %d", i+1)
	}
	assert.False(t, rows[3].Cells[0].Spread)
	assert.True(t, rows[4].Cells[0].Spread)
	assert.True(t, rows[0].Cells[2].Spread)
	assert.True(t, rows[6].Cells[2].Struck)
	assert.True(t, rows[7].Cells[0].PartStruck)
	assert.True(t, rows[7].Cells[1].Struck)
	assert.Equal(t, "worn", rows[3].Cells[1].Comment)
	assert.Equal(t, "check with Tom", rows[8].Cells[4].Comment)
}
