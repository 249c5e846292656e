// Command make writes the workbooks under testdata/notebooks: what cannot be
// shown in delimited text, such as merged and hidden cells, real dates,
// comments and struck-through rows. Each function makes one workbook and says
// what it is there to show. Run it with go generate ./testdata/make.
package main

//go:generate go run .

import (
	"fmt"
	"log"
	"os"
	"path/filepath"
	"time"

	"github.com/xuri/excelize/v2"
)

var workbooks = []struct {
	name string
	make func(*book)
}{
	{"60-merged-and-commented", mergedAndCommented},
	{"61-hidden-and-struck", hiddenAndStruck},
	{"62-sheet-a-month", sheetAMonth},
	{"63-sheet-a-site", sheetASite},
	{"64-text-among-real-dates", textAmongRealDates},
	{"65-counts-became-dates", countsBecameDates},
	{"66-references-became-numbers", referencesBecameNumbers},
	{"67-nights-across-merged-months", nightsAcrossMergedMonths},
	{"68-formula-errors", formulaErrors},
	{"69-year-in-sheet-name", yearInSheetName},
	{"70-list-and-key", listAndKey},
	{"71-nights-down-real-dates", nightsDownRealDates},
}

func main() {
	dir := filepath.Join("..", "notebooks")
	if len(os.Args) > 1 {
		dir = os.Args[1]
	}
	for _, w := range workbooks {
		b := &book{File: excelize.NewFile(), sheet: "Sheet1"}
		w.make(b)
		b.check(b.SetDocProps(&excelize.DocProperties{Created: "2020-01-01T00:00:00Z", Modified: "2020-01-01T00:00:00Z", Creator: "Ines Calloway"}))
		b.check(b.SaveAs(filepath.Join(dir, w.name+".xlsx")))
	}
}

// book is a workbook being made; its methods write to the sheet at hand.
type book struct {
	*excelize.File
	sheet string
}

func (b *book) check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}

// named gives the first sheet its name.
func (b *book) named(name string) {
	b.check(b.SetSheetName(b.sheet, name))
	b.sheet = name
}

// add starts another sheet.
func (b *book) add(name string) {
	_, err := b.NewSheet(name)
	b.check(err)
	b.sheet = name
}

// rows writes rows from A and the given row number on; nil leaves a cell
// empty.
func (b *book) rows(from int, rows ...[]any) {
	for i, r := range rows {
		for c, v := range r {
			if v == nil {
				continue
			}
			cell, err := excelize.CoordinatesToCellName(c+1, from+i)
			b.check(err)
			b.check(b.SetCellValue(b.sheet, cell, v))
		}
	}
}

// format gives cells a number format.
func (b *book) format(from, to, format string) {
	style, err := b.NewStyle(&excelize.Style{CustomNumFmt: &format})
	b.check(err)
	b.check(b.SetCellStyle(b.sheet, from, to, style))
}

func (b *book) strike(from, to string) {
	style, err := b.NewStyle(&excelize.Style{Font: &excelize.Font{Strike: true}})
	b.check(err)
	b.check(b.SetCellStyle(b.sheet, from, to, style))
}

func day(y, m, d int) time.Time {
	return time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC)
}

type row = []any

// Dates and sites in merged cells down the page, a merged title, a comment.
func mergedAndCommented(b *book) {
	b.rows(1, row{"Trap records of Ines Calloway at Sallowmere Reserve"},
		row{"Date", "Site", "Species", "No."},
		row{"12/06/2014", "Long Drove", "Heart and Dart", 3},
		row{nil, nil, "Flame", 1},
		row{nil, nil, "Drinker", 2},
		row{"13/06/2014", "Pumping Station", "Ghost Moth", 1},
		row{nil, nil, "Common Swift", 4})
	b.check(b.MergeCell(b.sheet, "A1", "D1"))
	for _, m := range [][2]string{{"A3", "A5"}, {"B3", "B5"}, {"A6", "A7"}, {"B6", "B7"}} {
		b.check(b.MergeCell(b.sheet, m[0], m[1]))
	}
	b.check(b.AddComment(b.sheet, excelize.Comment{Cell: "C5", Author: "Ines", Paragraph: []excelize.RichTextRun{{Text: "male, very pale"}}}))
}

// A hidden row and a hidden column are read and asked about; a struck-through
// row is no record, a struck-through cell no value.
func hiddenAndStruck(b *book) {
	b.named("Records")
	b.rows(1, row{"Date", "Species", "Count", "Recorder", "Notes"},
		row{"12/06/2014", "Heart and Dart", 3, "Ines Calloway", "fresh"},
		row{"12/06/2014", "Flame", 1, "Ines Calloway", nil},
		row{"13/06/2014", "Drinker", 2, "Tom Achterberg", nil},
		row{"13/06/2014", "Ghost Moth", 1, "Tom Achterberg", "worn"})
	b.check(b.SetRowVisible(b.sheet, 3, false))
	b.check(b.SetColVisible(b.sheet, "D", false))
	b.strike("A4", "E4")
	b.strike("E5", "E5")
}

// One sheet a month, named for it, with the day alone in the date column.
func sheetAMonth(b *book) {
	b.named("June 2014")
	b.rows(1, row{"Day", "Species", "No."}, row{12, "Heart and Dart", 3}, row{12, "Flame", 1}, row{30, "Drinker", 2})
	b.add("July 2014")
	b.rows(1, row{"Day", "Species", "No."}, row{2, "Buff Arches", 1}, row{3, "Drinker", 4})
}

// One sheet a site, named for it; the year stands in a title.
func sheetASite(b *book) {
	b.named("Tinker's Row")
	b.rows(1, row{"Butterflies 2015"}, row{"Date", "Species", "No."}, row{"12/5", "Orange Tip", 3}, row{"1 June", "Holly Blue", 1})
	b.add("Sallowmere Reserve")
	b.rows(1, row{"Butterflies 2015"}, row{"Date", "Species", "No."}, row{"14/5", "Brimstone", 2})
}

// Days to the 12th are real dates, later ones text: the sign of a file opened
// with the month before the day.
func textAmongRealDates(b *book) {
	b.rows(1, row{"Date", "Species", "Count"},
		row{day(2014, 6, 5), "Heart and Dart", 3},
		row{day(2014, 7, 6), "Flame", 1},
		row{"14/06/2014", "Drinker", 2},
		row{day(2014, 9, 8), "Setaceous Hebrew Character", 4},
		row{"23/06/2014", "Ghost Moth", 1})
	for _, c := range []string{"A2", "A3", "A5"} {
		b.format(c, c, "dd/mm/yyyy")
	}
}

// Ranges of counts that the spreadsheet turned into dates, and one into a
// date's serial number.
func countsBecameDates(b *book) {
	b.rows(1, row{"Date", "Species", "Count"},
		row{day(2014, 6, 12), "Heart and Dart", day(2014, 4, 2)},
		row{day(2014, 6, 12), "Flame", 3},
		row{day(2014, 6, 13), "Drinker", day(2014, 5, 3)},
		row{day(2014, 6, 20), "Ghost Moth", 41732},
		row{day(2014, 6, 25), "Common Swift", 12})
	b.format("A2", "A6", "dd/mm/yyyy")
	for _, c := range []string{"C2", "C4"} {
		b.format(c, c, "d-mmm")
	}
}

// References without letters that became numbers: one shown in scientific
// notation, one that lost its leading zero.
func referencesBecameNumbers(b *book) {
	b.rows(1, row{"Date", "Species", "Count", "Grid reference"},
		row{"12/06/2014", "Heart and Dart", 3, "TL453812"},
		row{"12/06/2014", "Flame", 1, 453812},
		row{"13/06/2014", "Drinker", 2, "TL458120"},
		row{"20/06/2014", "Ghost Moth", 1, 53812},
		row{"25/06/2014", "Common Swift", 12, "TL453812"})
}

// A table with months merged over the days, and totals by formula.
func nightsAcrossMergedMonths(b *book) {
	b.named("2016")
	b.rows(1, row{"Sallowmere Reserve light trap"},
		row{nil, nil, "June", nil, nil, "July", nil, nil},
		row{"Code", "Species", 12, 19, 26, 3, 10, "Total"},
		row{"73.317", "Heart and Dart", 3, 10, 4, nil, nil},
		row{"66.007", "Drinker", nil, nil, 1, 6, 2},
		row{"3.005", "Ghost Moth", 1, nil, nil, nil, nil},
		row{nil, "Total"})
	b.check(b.MergeCell(b.sheet, "C2", "E2"))
	b.check(b.MergeCell(b.sheet, "F2", "G2"))
	for r, sum := range map[int]int{4: 17, 5: 9, 6: 1} {
		b.formula(fmt.Sprintf("H%d", r), fmt.Sprintf("SUM(C%d:G%d)", r, r), sum)
	}
	for i, sum := range []int{4, 10, 5, 6, 2, 27} {
		col := string(rune('C' + i))
		b.formula(col+"7", fmt.Sprintf("SUM(%s4:%s6)", col, col), sum)
	}
}

// formula writes a formula with the value that a spreadsheet would store.
func (b *book) formula(cell, formula string, value any) {
	b.check(b.SetCellValue(b.sheet, cell, value))
	b.check(b.SetCellFormula(b.sheet, cell, formula))
}

// Cells that a lost formula left as errors.
func formulaErrors(b *book) {
	b.rows(1, row{"Date", "Species", "Count", "Site", "Remarks"},
		row{"12/06/2014", "Heart and Dart", 3, "#REF!", nil},
		row{"12/06/2014", "#N/A", 1, "Tinker's Row", nil},
		row{"13/06/2014", "Drinker", 2, "Tinker's Row", "#VALUE!"})
}

// The sheet's name says the year, and cells that show a day and a month store
// the year in which they were typed.
func yearInSheetName(b *book) {
	b.named("2014")
	b.rows(1, row{"Site: Tinker's Row", nil, nil}, row{"Date", "Species", "No."},
		row{"12/6", "Heart and Dart", 3},
		row{"13.vi", "Flame", 1},
		row{day(2021, 7, 3), "Drinker", 2},
		row{day(2014, 7, 4), "Buff Arches", 2})
	b.format("A5", "A5", "d-mmm")
	b.format("A6", "A6", "d-mmm")
}

// A sheet of records, a sheet with a key that holds none.
func listAndKey(b *book) {
	b.named("Records")
	b.rows(1, row{"Date", "Place", "Species", "No.", "Method"},
		row{"12/06/2014", "TR", "Heart and Dart", 3, "L"},
		row{"12/06/2014", "SR", "Drinker", 1, "L"})
	b.add("Key")
	b.rows(1, row{"TR", "Tinker's Row"}, row{"SR", "Sallowmere Reserve"}, row{"L", "light trap"})
}

// Nights down the side as real dates, species across with their Latin names
// below, weather beside.
func nightsDownRealDates(b *book) {
	b.named("Trap 2017")
	b.rows(1, row{"Trap at Tinker's Row, run by Ines Calloway"},
		row{"Night", "Wind", "Heart and Dart", "Drinker", "Garden Tiger", "Remarks"},
		row{nil, nil, "Agrotis exclamationis", "Euthrix potatoria", "Arctia caja", nil},
		row{day(2017, 6, 12), "SW 2", 3, nil, nil, nil},
		row{day(2017, 6, 14), "calm", 12, 1, nil, "lamp failed at 2 am"},
		row{day(2017, 6, 18), "N 4", nil, nil, nil, nil},
		row{day(2017, 7, 1), "calm", 1, 4, 1, nil})
	b.format("A4", "A7", "dd mmm yyyy")
}
