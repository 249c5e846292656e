package project

import (
	"fmt"

	"fieldfare/convert/notebook"
)

// Limits bound what one notebook may ask of the machine. A setting that is
// left out, or 0, has the default that notebook.Limits states.
type Limits struct {
	CellBytes     int   `toml:"cell_bytes"`     // longest text of a cell
	RowBytes      int   `toml:"row_bytes"`      // longest record of delimited text
	Columns       int   `toml:"columns"`        // widest row
	Rows          int   `toml:"rows"`           // longest sheet of a workbook
	Sheets        int   `toml:"sheets"`         // most sheets of a workbook
	UnzippedBytes int64 `toml:"unzipped_bytes"` // most that a zipped notebook unpacks to
	Ratio         int64 `toml:"ratio"`          // times its packed size that a large part unpacks to
	StringBytes   int64 `toml:"string_bytes"`   // shared text of a workbook kept in memory
	Merges        int   `toml:"merges"`         // merged areas of a sheet
	SpreadCells   int   `toml:"spread_cells"`   // cells that merged and repeated cells spread over
	InputBytes    int64 `toml:"input_bytes"`    // most that is taken from standard input
}

// Notebook returns the limits as the readers of notebooks take them.
func (l Limits) Notebook() notebook.Limits {
	return notebook.Limits{
		CellBytes: l.CellBytes, RowBytes: l.RowBytes, Columns: l.Columns, Rows: l.Rows, Sheets: l.Sheets,
		UnzippedBytes: l.UnzippedBytes, Ratio: l.Ratio, StringBytes: l.StringBytes, Merges: l.Merges,
		SpreadCells: l.SpreadCells, InputBytes: l.InputBytes,
	}
}

// checkLimits finds a limit that is below nothing.
func (p *Project) checkLimits() error {
	l := p.Limits
	for _, limit := range []struct {
		name  string
		value int64
	}{
		{"cell_bytes", int64(l.CellBytes)}, {"row_bytes", int64(l.RowBytes)}, {"columns", int64(l.Columns)},
		{"rows", int64(l.Rows)}, {"sheets", int64(l.Sheets)}, {"unzipped_bytes", l.UnzippedBytes}, {"ratio", l.Ratio},
		{"string_bytes", l.StringBytes}, {"merges", int64(l.Merges)}, {"spread_cells", int64(l.SpreadCells)},
		{"input_bytes", l.InputBytes},
	} {
		if limit.value < 0 {
			return &Error{File: p.Path, Problem: fmt.Sprintf("limits.%s = %d: write a number above 0, or remove the line for the usual limit", limit.name, limit.value)}
		}
	}
	return nil
}
