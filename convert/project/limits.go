package project

import "fieldfare/convert/notebook"

// Limits bound what one notebook may ask of the machine. A setting that is
// left out, or 0, has the default that notebook.Limits states.
type Limits struct {
	CellBytes     int   `toml:"cell_bytes" validate:"gte=0"`     // longest text of a cell
	RowBytes      int   `toml:"row_bytes" validate:"gte=0"`      // longest record of delimited text
	Columns       int   `toml:"columns" validate:"gte=0"`        // widest row
	Rows          int   `toml:"rows" validate:"gte=0"`           // longest sheet of a workbook
	Sheets        int   `toml:"sheets" validate:"gte=0"`         // most sheets of a workbook
	UnzippedBytes int64 `toml:"unzipped_bytes" validate:"gte=0"` // most that a zipped notebook unpacks to
	Ratio         int64 `toml:"ratio" validate:"gte=0"`          // times its packed size that a large part unpacks to
	StringBytes   int64 `toml:"string_bytes" validate:"gte=0"`   // shared text of a workbook kept in memory
	Merges        int   `toml:"merges" validate:"gte=0"`         // merged areas of a sheet
	SpreadCells   int   `toml:"spread_cells" validate:"gte=0"`   // cells that merged and repeated cells spread over
	InputBytes    int64 `toml:"input_bytes" validate:"gte=0"`    // most that is taken from standard input
}

// Notebook returns the limits as the readers of notebooks take them.
func (l Limits) Notebook() notebook.Limits {
	return notebook.Limits{
		CellBytes: l.CellBytes, RowBytes: l.RowBytes, Columns: l.Columns, Rows: l.Rows, Sheets: l.Sheets,
		UnzippedBytes: l.UnzippedBytes, Ratio: l.Ratio, StringBytes: l.StringBytes, Merges: l.Merges,
		SpreadCells: l.SpreadCells, InputBytes: l.InputBytes,
	}
}
