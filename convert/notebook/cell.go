package notebook

import (
	"cmp"
	"strconv"
)

// Kind is what the file itself says a cell holds.
type Kind uint8

const (
	Empty Kind = iota
	Text
	Number
	Date // a real spreadsheet date or time; Cell.Raw has it as ISO 8601
	Bool
	Error // #REF!, #N/A and their kin; Cell.Text has the mark
)

// Cell is one cell as the notebook holds it.
type Cell struct {
	// Text is what a person sees, untrimmed and unchanged.
	Text string
	// Raw is what is stored, where that says more than Text: "2021-06-12",
	// "2021-06-12T22:45:00" or "22:45:00" for a Date, the full digits for a
	// Number shown rounded or as a date-like format. Empty where it would
	// repeat Text.
	Raw string
	// Comment is a cell comment or note.
	Comment string
	Kind    Kind
	// Spread: the cell lies in a merged area and repeats its first cell.
	Spread bool
	// Struck: the whole text is struck through. PartStruck: only some of it
	// is (a correction within the cell); Text has all of it.
	Struck, PartStruck bool
}

// Ref is a cell's place in its sheet: column and row, both from 1.
type Ref struct{ Col, Row int }

// String returns the address as spreadsheets write it: "B7".
func (r Ref) String() string {
	return ColumnName(r.Col) + strconv.Itoa(r.Row)
}

// compare orders cells as a page is read: by row, then by column.
func (r Ref) compare(other Ref) int {
	return cmp.Or(r.Row-other.Row, r.Col-other.Col)
}

// ColumnName returns the letters of a column counted from 1: 1 is "A",
// 27 "AA". It returns "" for a column below 1.
func ColumnName(col int) string {
	var b [8]byte
	i := len(b)
	for col > 0 && i > 0 {
		col--
		i--
		b[i] = byte('A' + col%26)
		col /= 26
	}
	return string(b[i:])
}

// Row is one row of a sheet, or one record of a delimited file.
type Row struct {
	// Number is the row's number from 1, as a spreadsheet program shows it;
	// for delimited text, the record's number, which is the same when the
	// file is opened in a spreadsheet.
	Number int
	// Cells are the row's cells from column A; trailing empty cells may be
	// missing.
	Cells []Cell
	// Hidden: the row is hidden in the workbook.
	Hidden bool
	// Struck: every cell with text is struck through (a deleted record).
	Struck bool
	// Repaired says, in a part of a sentence, what had to be repaired or is in
	// doubt about how a row of delimited text or of an archive was split (a
	// quote that is never closed); empty for a sound row.
	Repaired string
}

// Sheet is one page of a notebook. Walk may be called any number of times
// and always yields the same rows.
type Sheet interface {
	// File is the notebook's path as given; Name the sheet's name, empty for
	// delimited text.
	File() string
	Name() string
	// Hidden: the sheet, or (HiddenColumns, from 1) some columns, are hidden.
	Hidden() bool
	HiddenColumns() []int
	// Walk yields every row in order, blank rows included. The row and its
	// Cells slice are valid only during the call; the strings stay valid.
	// An error from fn ends the walk and is returned.
	Walk(fn func(*Row) error) error
}
