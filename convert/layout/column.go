package layout

import "fieldfare/convert/reading"

// column is one column of a list, or one of the label columns of a table.
type column struct {
	col     int    // from 0
	heading string // as written, two rows joined by a space
	sense
	why    string // how the meaning was found
	weight int
	fixed  bool   // said by the project file
	left   string // why its cells are left out, where they are
	stats  stats
	// joined are the columns whose text is put into this one's value, in the
	// order of reading; this column is among them.
	joined []int
	master int // the column it is joined to, itself where it is none
	carry  bool
	trap   bool // counts of the trap, or of the weekday, that the heading names
	// weekday is the day of the week of the counts, where the row's date is
	// that of the week.
	weekday string
	doubt   reading.Verdict // about every cell of it
	// split is how a joined cell is taken apart.
	split splitKind
	marks []sense // the sexes and stages of splitMarks, in order
}

// splitKind says that a column's cells hold two things.
type splitKind uint8

const (
	splitNone      splitKind = iota
	splitNameCount           // Heart and Dart 3m 1f
	splitItems               // 3 Heart and Dart, 2 Flame
	splitSiteGrid            // Tinker's Row TL 453 812
	splitMarks               // 3/1/0 under M/F/Imm
)

// used reports whether the column's values reach a draft.
func (c *column) used() bool { return c.left == "" }
