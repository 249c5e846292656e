package when

import "strings"

// ReadCell reads what a notebook stores for a real spreadsheet date, or any
// ISO 8601 text: "2021-06-12", "2021-06-12T22:45:00". A midnight is no time:
// spreadsheets add it to every plain day. Anything else is read as written.
func ReadCell(raw string, o Options) Reading {
	if len(raw) >= 19 && raw[10] == 'T' && raw[16:] == ":00" {
		raw = raw[:16] // seconds that a cell always has
	}
	raw = strings.TrimSuffix(raw, "T00:00")
	return Read(raw, o)
}
