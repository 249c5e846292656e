package layout

import (
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// dayBelow completes a day that stands alone below a date, later in its month:
// "11" below "4 June 1993".
func (s *listState) dayBelow(t string) (string, reading.Verdict) {
	last, ok := dayOf(&notebook.Cell{Text: s.above, Kind: notebook.Text})
	day := dayNumber(t)
	if !ok || last.Year() < 1800 || day < last.Day() || last.AddDate(0, 0, day-last.Day()).Month() != last.Month() {
		return "", reading.Verdict{}
	}
	full := fmt.Sprintf("%d %s %d", day, monthTitles[last.Month()], last.Year())
	return full, reading.QueryOf("month-from-above", "“"+t+"” has no month. "+monthTitles[last.Month()]+" "+itoa(last.Year())+" was taken from the date above it. Please check it.", full)
}
