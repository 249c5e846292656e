package taxa

// List is one taxon list as loaded. It does not change afterwards.
type List struct {
	// Name is the list's name in messages and remarks: its file name, or
	// "starter list".
	Name  string
	taxa  []Taxon
	names []listName
}

// Len is the number of accepted taxa on the list.
func (l *List) Len() int { return len(l.taxa) }

// Taxon returns the accepted taxon number i, counted from 0 in the order of
// the list.
func (l *List) Taxon(i int) *Taxon { return &l.taxa[i] }

// nameKind says what a name on a list is.
type nameKind uint8

const (
	acceptedName nameKind = iota
	synonymName
	vernacularName
	brokenName // the list has it, but does not say for which taxon
	impliedName
)

// listName is one name on a list and the taxon that it stands for.
type listName struct {
	text  string
	taxon int32 // none for a broken name
	kind  nameKind
	list  uint8 // position in the order of lists
	// reason is why a broken name has no taxon, as the end of a sentence.
	reason string
}

// Problem is an error in a list: where it is and what is wrong, in words for
// the list's owner.
type Problem struct {
	Source  string // the list's name
	Sheet   string // of a workbook
	Cell    string // of a workbook, where it lies in one cell, such as "D7"
	Line    int    // from 1; the row of a workbook, or the line of a text file
	Message string
}
