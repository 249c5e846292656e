package when_test

import (
	"testing"

	"fieldfare/convert/when"
)

// FuzzCells holds the readers of cells of workbooks, of figures without marks,
// of years before days and of two dates that belong together to the same as
// FuzzRead.
func FuzzCells(f *testing.F) {
	f.Add("2021-06-12", "12/06/2021", uint16(2021), false)
	f.Add("44359.5", "June", uint16(0), true)
	f.Add("120621", "13", uint16(21), false)
	f.Add("22:45:00", "", uint16(1999), true)
	f.Fuzz(func(t *testing.T, text, other string, year uint16, evening bool) {
		o := when.Options{Today: when.Date{Year: 2026, Month: 1, Day: 1}, Year: int(year), Evening: evening}
		readings := []when.Reading{
			when.ReadCell(text, o), when.ReadShown(text, other, o), when.ReadNumber(text, o), when.ReadYearFirst(text, o),
			when.Join(when.Read(text, o), when.Read(other, o), other, o),
		}
		for _, r := range readings {
			checkReading(t, text+" | "+other, r)
			r.Explain()
			r.EventTime()
		}
	})
}
