package layout

import (
	"fmt"
	"strings"
	"time"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// damageKind says which spreadsheet damage to look for in a column's cells.
type damageKind uint8

const (
	damageNone damageKind = iota
	damageCount
	damageGrid
	damageDate
	damageNumber
	damageTime
	damageScale
)

func damageOf(c *column) damageKind {
	switch {
	case !c.used():
		return damageNone
	case c.meaning == Count && scales[normHeading(c.heading)]:
		return damageScale
	case c.meaning == Count:
		return damageCount
	case c.meaning == GridRef && c.part == whole:
		return damageGrid
	case c.meaning == Date && c.part == whole:
		return damageDate
	case c.meaning == TaxonNumber:
		return damageNumber
	case (c.meaning == Time || c.meaning == EndTime) && c.stats.fractions() > 0:
		return damageTime
	}
	return damageNone
}

// damage looks for what a spreadsheet program does to what was typed. The
// value gets a doubt that names the likely original, and its text is the
// original where there is only one.
func (w *walker) damage(pl *cellPlan, v *Value, cell *notebook.Cell) {
	if cell.Kind == notebook.Error || strings.HasPrefix(v.Text, "#") && isErrorMark(v.Text) {
		v.Doubt = v.Doubt.And(errorDoubt(v))
		return
	}
	switch pl.damage {
	case damageCount:
		if !plainCount(v.Text) {
			countDamage(v, cell)
		} else if len(v.Text) == 5 {
			serialCount(v, pl.column)
		}
	case damageGrid:
		gridDamage(v, cell, pl)
	case damageDate:
		if pl.sixFigures {
			sixFigureDamage(v, pl.column)
		}
		dateDamage(v, cell, pl)
	case damageNumber:
		numberDamage(v, pl.column)
	case damageTime:
		timeOfFraction(v, pl.column)
	case damageScale:
		ofScale(v)
	}
}

// plainCount: one to five digits, nothing to mend.
func plainCount(t string) bool {
	for i := 0; i < len(t); i++ {
		if !isDigit(t[i]) {
			return false
		}
	}
	return len(t) <= 5
}

func isErrorMark(t string) bool {
	switch strings.TrimRight(t, "!?") {
	case "#REF", "#N/A", "#NAME", "#VALUE", "#DIV/0", "#NUM", "#NULL", "#SPILL", "#GETTING_DATA", "#CALC":
		return true
	}
	return strings.Trim(t, "#") == "" && len(t) > 2 // a column too narrow when saved
}

func errorDoubt(v *Value) reading.Verdict {
	msg := fmt.Sprintf("Cell %s says “%s”: a formula there has lost what it pointed to, and the %s with it. Please write it again.", v.Ref, v.Text, v.Meaning)
	if strings.Trim(v.Text, "#") == "" {
		msg = fmt.Sprintf("Cell %s says “%s”: its column was too narrow when the file was saved, and the %s is lost. Please write it again.", v.Ref, v.Text, v.Meaning)
	}
	switch v.Meaning {
	case Date, Taxon, Scientific, Vernacular, Count, Site, GridRef, TaxonNumber:
		return reading.HeldOf("formula-error", msg)
	}
	return reading.QueryOf("formula-error", msg)
}

// countDamage: a range of counts that the spreadsheet took for a date.
func countDamage(v *Value, cell *notebook.Cell) {
	original, other := "", ""
	switch {
	case cell.Kind == notebook.Date && !isClock(cell.Raw) && len(cell.Raw) >= 10:
		t, err := time.Parse("2006-01-02", cell.Raw[:10])
		if err != nil {
			return
		}
		if t.Year() == 1900 { // a small number in a cell set to show dates
			smallCount(v, t)
			return
		}
		original, other = originalCount(t, v.Text)
	case cell.Kind == notebook.Date:
		return
	default:
		t, ok := monthDay(v.Text)
		if !ok {
			return
		}
		original, other = originalCount(t, v.Text)
	}
	said := v.Text
	if v.Verbatim == "" {
		v.Verbatim = said
	}
	v.Text = original
	v.Kind, v.Raw = notebook.Text, cell.Raw
	v.Doubt = v.Doubt.And(reading.QueryOf("count-became-date", fmt.Sprintf(
		"Cell %s says “%s” where a count is expected. The spreadsheet has probably turned “%s” into a date; it is read as %s.", v.Ref, said, original, original), present([]string{original, other})...))
}

// smallCount gives a number back that the spreadsheet shows as a date, as its
// cell is set to: 12 as 12 January 1900.
func smallCount(v *Value, t time.Time) {
	n := t.YearDay()
	if t.Month() > time.February {
		n++ // the system counts a 29 February 1900
	}
	if v.Verbatim == "" {
		v.Verbatim = v.Text
	}
	v.Text, v.Kind, v.Raw = itoa(n), notebook.Number, ""
	v.Doubt = v.Doubt.And(reading.QueryOf("count-shown-as-date", fmt.Sprintf(
		"Cell %s shows “%s” where a count is expected. The spreadsheet stores the number %d there and is set to show it as a date; it is read as %d.", v.Ref, v.Verbatim, n, n), itoa(n)))
}

// originalCount is the range that became the date: 2-4 became 2 April, and
// 2-14, which is no day, February 2014.
func originalCount(t time.Time, shown string) (likely, other string) {
	if t.Day() == 1 && len(shown) == 6 && shown[3] == '-' && isLetter(shown[0]) {
		return fmt.Sprintf("%d-%02d", t.Month(), t.Year()%100), ""
	}
	likely = fmt.Sprintf("%d-%d", t.Day(), t.Month())
	if t.Day() > int(t.Month()) {
		return fmt.Sprintf("%d-%d", t.Month(), t.Day()), likely
	}
	return likely, ""
}

// monthDay reads a date as spreadsheets write it into text: 02-Apr, Apr-02,
// 02/04/2021.
func monthDay(t string) (time.Time, bool) {
	for _, form := range [...]string{"02-Jan", "2-Jan", "02-Jan-06", "2-Jan-06", "02-Jan-2006", "02 Jan", "2 Jan", "2 January", "02/01/2006", "2/1/2006", "2006-01-02", "2006-01-02 15:04:05"} {
		if d, err := time.Parse(form, t); err == nil {
			return d, true
		}
	}
	if m, y, ok := strings.Cut(t, "-"); ok && len(m) == 3 && len(y) == 2 {
		if d, err := time.Parse("Jan-06", t); err == nil {
			return d, true
		}
	}
	return time.Time{}, false
}

// excelEpoch is day 0 of the 1900 date system, its false leap day counted.
var excelEpoch = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)

// serialCount: a date shown as its serial number among small counts.
func serialCount(v *Value, c *column) {
	n, ok := isInt(v.Text)
	if !ok || n < 36526 || n > 55000 || c == nil || c.stats.n < 3 || c.stats.big*4 > c.stats.n {
		return
	}
	t := excelEpoch.AddDate(0, 0, n)
	original, other := originalCount(t, "")
	said := v.Text
	v.Verbatim, v.Text = said, original
	v.Doubt = v.Doubt.And(reading.QueryOf("count-became-date", fmt.Sprintf(
		"Cell %s says “%s” among small counts. That is how a spreadsheet stores %s: it has probably turned “%s” into a date. It is read as %s.", v.Ref, said, t.Format("2 January 2006"), original, original),
		present([]string{original, other, said})...))
}

// gridDamage: a reference that became a number, or lost its letters or its
// leading zero.
func gridDamage(v *Value, cell *notebook.Cell, pl *cellPlan) {
	t := v.Text
	if strings.ContainsAny(t, "Ee") && isScientificNumber(t) {
		digits := cell.Raw
		if !allDigits(digits) {
			digits = expand(t)
		}
		v.Doubt = v.Doubt.And(reading.QueryOf("grid-reference-became-number", fmt.Sprintf(
			"Cell %s says “%s”: the spreadsheet has turned the grid reference into a number. It was probably %s; figures may be lost.", v.Ref, t, digits), present([]string{digits})...))
		return
	}
	letters := pl.letters
	if letters == "" || !allDigits(t) {
		return
	}
	figures, why := t, "the letters of the square are missing"
	code := "grid-letters-missing"
	if len(t)%2 == 1 {
		figures, code = "0"+t, "leading-zero-lost"
		why = "the letters of the square are missing, and a leading zero has been lost with them"
	}
	original := letters + figures
	v.Verbatim, v.Text = t, original
	v.Doubt = v.Doubt.And(reading.QueryOf(code, fmt.Sprintf(
		"Cell %s says “%s”: %s. The others in the column are in %s, so it is read as %s.", v.Ref, t, why, letters, original), original))
}

func allDigits(s string) bool {
	for i := 0; i < len(s); i++ {
		if !isDigit(s[i]) {
			return false
		}
	}
	return s != ""
}

func isScientificNumber(t string) bool {
	m, e, ok := strings.Cut(strings.ToUpper(t), "E")
	e = strings.TrimPrefix(e, "+")
	return ok && isDecimal(m) && allDigits(e) && len(e) <= 2 && (strings.Contains(t, "+") || strings.Contains(m, "."))
}

// expand writes 5.453E+05 as 545300.
func expand(t string) string {
	m, e, _ := strings.Cut(strings.ToUpper(t), "E")
	n, _ := isInt(strings.TrimPrefix(e, "+"))
	whole, frac, _ := strings.Cut(m, ".")
	if n < len(frac) || n > 15 {
		return ""
	}
	return whole + frac + strings.Repeat("0", n-len(frac))
}

// dateDamage: text among real dates, and the swap of day and month that goes
// with it.
func dateDamage(v *Value, cell *notebook.Cell, pl *cellPlan) {
	switch {
	case pl.column == nil || !pl.mixedDates:
	case cell.Kind == notebook.Text && pl.swapped:
		v.Doubt = v.Doubt.And(reading.QueryOf("text-date-among-dates", fmt.Sprintf(
			"“%s” is text, while other cells of the column are real dates, all of the 1st to the 12th. The file was probably opened with the month before the day: this one could not be, and the others may have day and month exchanged.", v.Text)))
	case cell.Kind == notebook.Text && scanDate(v.Text) >= pairOnly:
		v.Doubt = v.Doubt.And(reading.QueryOf("text-date-among-dates", fmt.Sprintf(
			"“%s” is text, while the other cells of the column are real dates. Please check that it says what was meant.", v.Text), v.Text))
	case cell.Kind == notebook.Date && pl.swapped && len(cell.Raw) >= 10:
		t, err := time.Parse("2006-01-02", cell.Raw[:10])
		if err != nil || t.Day() == int(t.Month()) {
			return
		}
		other := time.Date(t.Year(), time.Month(t.Day()), int(t.Month()), 0, 0, 0, 0, time.UTC).Format("2006-01-02")
		v.Doubt = v.Doubt.And(reading.QueryOf("day-and-month-exchanged", fmt.Sprintf(
			"“%s” may have day and month exchanged: all real dates of the column fall on the 1st to the 12th, and later days stand there as text. It may have been %s.", v.Text, other), cell.Raw[:10], other))
	}
}

// numberDamage: a checklist number that lost its last zero.
func numberDamage(v *Value, c *column) {
	i := strings.IndexByte(v.Text, '.')
	if i < 0 || c.stats.dotted3*2 <= c.stats.n || len(v.Text)-i-1 >= 3 || !isDecimal(v.Text) {
		return
	}
	original := v.Text + strings.Repeat("0", 3-(len(v.Text)-i-1))
	v.Verbatim, v.Text = v.Text, original
	v.Doubt = v.Doubt.And(reading.QueryOf("trailing-zero-lost", fmt.Sprintf(
		"Cell %s says “%s”, while the other numbers have three figures behind the point: the spreadsheet has dropped a zero. It is read as %s.", v.Ref, v.Verbatim, original), original))
}
