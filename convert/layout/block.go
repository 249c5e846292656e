package layout

import "fieldfare/convert/notebook"

// kind is what a part of a page is.
type kind string

const (
	kindList   kind = "list"
	kindAcross kind = "nights across"
	kindDown   kind = "nights down"
	kindDiary  kind = "diary"
	kindNone   kind = "skip"
)

// block is one list or table of a page: its headings, its columns and the
// rows they hold for.
type block struct {
	kind       kind
	why        string
	headRows   []int // row numbers
	first      int   // first and last body row; last 0 is open-ended
	last       int
	lastData   int // last row that is a record for certain; 0 unknown
	from, to   int // columns, from 0; to inclusive
	cols       []column
	byCol      []int // index into cols by column, -1 for none
	terms      bool
	facts      facts
	notes      []Note
	sample     []keptRow
	heads      []*keptRow
	axis       *axis        // of a table
	across     func([]int)  // builds the axis over the columns of a table
	factRows   map[int]bool // rows of a table's body that say something of its columns
	entry      *Entry       // of the project file, that opened the block
	chosen     *Entry       // whose lines override the reading
	loneVisits map[int]bool // rows with a date and nothing else, and another date next
	shared     []int        // columns left of several lists side by side that all of them use
	dayLines   bool         // rows begin with a day that holds for the names below
	transposed bool         // a list on its side: its headings in a column
	names      int          // the column of names of a list without headings, from 1, where that is known
	cover      bool         // the figures of the table are cover in per cent
	mixed      bool         // another block stands beside it on the same rows
	carry      map[Meaning]bool
	skip       []span // rows the project file leaves out
	marks      marks
	headEnd    int             // last row compared with others, 0 where all were
	sums       map[int]sumKind // rows that name a group
	filled     map[int]float64 // by column: part of the rows with a value of their own
}

type span struct{ from, to int }

func (b *block) holds(row int) bool {
	return row >= b.first && (b.last == 0 || row <= b.last)
}

// fixedRow is a row outside the lists and tables: a title, headings, a blank.
type fixedRow struct {
	number int
	skip   string
	used   []bool  // by column
	empty  []Draft // nights headed on the row under which nothing stands
}

// mergedAcross reports whether a cell only repeats its left neighbour of one
// merged area.
func mergedAcross(cells []notebook.Cell, c int) bool {
	return c > 0 && c < len(cells) && cells[c].Spread && cells[c].Text == cells[c-1].Text && cells[c].Text != ""
}

// single returns the only column with text of a row, merged areas counted
// once; -1 where there are several or none.
func (r *keptRow) single() int {
	at := -1
	for c := range r.cells {
		if r.looks[c] == 0 || mergedAcross(r.cells, c) {
			continue
		}
		if at >= 0 {
			return -1
		}
		at = c
	}
	return at
}
