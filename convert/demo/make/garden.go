package main

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"time"

	"github.com/xuri/excelize/v2"
)

// gardenBook is the garden's workbook: a sheet a year, one record a row, with
// a title above the headings and a blank row between nights.
func gardenBook(r *rand.Rand) error {
	f := excelize.NewFile()
	defer f.Close()
	date, err := f.NewStyle(&excelize.Style{NumFmt: 14})
	if err != nil {
		return err
	}
	for i, year := range []int{2021, 2022} {
		sheet := fmt.Sprint("Garden ", year)
		if i == 0 {
			f.SetSheetName("Sheet1", sheet)
		} else if _, err := f.NewSheet(sheet); err != nil {
			return err
		}
		f.SetCellStr(sheet, "A1", "Garden light trap at Tinker's Row")
		f.SetCellStr(sheet, "A2", "15 W actinic trap, dusk to dawn")
		heading := []string{"Date", "Species", "Count", "Site", "Map ref", "Recorder", "Comments"}
		f.SetSheetRow(sheet, "A4", &heading)
		row := 5
		for n, night := range nights(r, year, 3, 10, 10) {
			for j, c := range night.catch {
				name, remark := c.species.vernacular, ""
				var count any = c.count
				switch {
				case n == 4 && j == 0:
					count = "2m 1f"
				case n == 6 && j == 1:
					name = "Larg Yellow Underwing"
				case n == 8 && j == 2:
					count, remark = "several", "too many to count"
				case n == 9 && j == 0:
					remark = "escaped before I could be sure?"
				}
				when := night.date
				if year == 2022 && n == 2 && j == 0 {
					when = when.AddDate(-1, 0, 0) // the old year, written in habit
				}
				cell := func(col int) string { s, _ := excelize.CoordinatesToCellName(col, row); return s }
				f.SetCellValue(sheet, cell(1), when)
				f.SetCellStyle(sheet, cell(1), cell(1), date)
				f.SetCellStr(sheet, cell(2), name)
				f.SetCellValue(sheet, cell(3), count)
				f.SetCellStr(sheet, cell(4), "Tinker's Row")
				f.SetCellStr(sheet, cell(5), "TF491012")
				f.SetCellStr(sheet, cell(6), "Ines Calloway")
				if remark != "" {
					f.SetCellStr(sheet, cell(7), remark)
				}
				row++
			}
			row++
		}
	}
	return f.SaveAs(filepath.Join(folder, "Tinkers Row.xlsx"))
}

// gardenNights is the garden's page for 2019: species down the side, nights
// across the top, a total at the end.
func gardenNights(r *rand.Rand) error {
	f := excelize.NewFile()
	defer f.Close()
	const sheet = "2019"
	f.SetSheetName("Sheet1", sheet)
	f.SetCellStr(sheet, "A1", "Tinker's Row garden trap 2019")
	f.SetCellStr(sheet, "A2", "Recorder: Ines Calloway")
	f.SetCellStr(sheet, "D2", "Grid ref: TF 491 012")
	f.SetCellStr(sheet, "A4", "Species")
	date, err := f.NewStyle(&excelize.Style{NumFmt: 16})
	if err != nil {
		return err
	}
	season := nights(r, 2019, 5, 9, 12)
	for i, n := range season {
		cell, _ := excelize.CoordinatesToCellName(2+i, 4)
		f.SetCellValue(sheet, cell, time.Date(2019, n.date.Month(), n.date.Day(), 0, 0, 0, 0, time.UTC))
		f.SetCellStyle(sheet, cell, cell, date)
	}
	last := 2 + len(season)
	head, _ := excelize.CoordinatesToCellName(last, 4)
	f.SetCellStr(sheet, head, "Total")
	row := 5
	for _, s := range lightTrap {
		total := 0
		for i, n := range season {
			for _, c := range n.catch {
				if c.species == s {
					cell, _ := excelize.CoordinatesToCellName(2+i, row)
					f.SetCellValue(sheet, cell, c.count)
					total += c.count
				}
			}
		}
		if total == 0 {
			continue
		}
		first, _ := excelize.CoordinatesToCellName(1, row)
		f.SetCellStr(sheet, first, s.vernacular)
		end, _ := excelize.CoordinatesToCellName(last, row)
		f.SetCellValue(sheet, end, total)
		row++
	}
	return f.SaveAs(filepath.Join(folder, "Tinkers Row nights 2019.xlsx"))
}
