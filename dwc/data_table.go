package dwc

import (
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"
)

// DataTable is one table of an open archive.
type DataTable struct {
	*tableMeta
	archive *Archive
	core    bool
	// header are the headings, where the files have header lines.
	header []string
	// want is how many values a row has, after the first of each file.
	want int
	// lookup finds columns by term name and IRI; several for a repeated term.
	lookup map[string][]int
	// fields are, by row type of a record, the place of each column in it, -1
	// where it has none.
	fields map[string][]int
}

// RowType is the IRI of what a row describes; for a class that Darwin Core has
// it is one of the Row constants.
func (t *DataTable) RowType() string { return t.rowType }

// Files are the names of the table's files in the archive.
func (t *DataTable) Files() []string { return t.files }

// IsCore tells whether the table is its archive's core.
func (t *DataTable) IsCore() bool { return t.core }

// HasIDs tells whether a column of the files holds the rows' ids.
func (t *DataTable) HasIDs() bool { return t.id >= 0 }

// Columns are the table's columns in the order of their description. The
// slice must not be changed.
func (t *DataTable) Columns() []Column { return t.columns }

// Row is one row of a table. It and its values may be kept.
type Row struct {
	// File and Line are where the row begins; lines are counted from 1.
	File string
	Line int
	// Notes say, in plain sentences, what is not as it should be in the row.
	Notes []string

	table  *DataTable
	values []string
	id     string
}

// ID returns the row's id, or for a row of an extension the id of the core
// row that it belongs to. It is empty where there is none.
func (r *Row) ID() string { return r.id }

// Value returns the value of the i-th of the table's Columns, which is the
// default where the row has none.
func (r *Row) Value(i int) string {
	c := &r.table.columns[i]
	if c.Index >= 0 && c.Index < len(r.values) && r.values[c.Index] != "" {
		return r.values[c.Index]
	}
	return c.Default
}

// Columns are the columns of the row's table, of which Value has the values.
// The slice must not be changed.
func (r *Row) Columns() []Column { return r.table.columns }

// Get returns the value of a term, by name or IRI, and "" where the table has
// no such column.
func (r *Row) Get(term string) string {
	for _, i := range r.table.lookup[term] {
		if v := r.Value(i); v != "" {
			return v
		}
	}
	return ""
}

// Fill sets the terms of a record that the row states, and leaves the others
// as they are. The row's id becomes the record's where no column holds that
// term.
func (r *Row) Fill(into Record) {
	// From the last: of a repeated term, the first value counts.
	fields := r.table.fields[into.RowType()]
	for i := len(fields) - 1; i >= 0; i-- {
		j := fields[i]
		if j < 0 {
			continue
		}
		if v := r.Value(i); v != "" {
			*into.Field(j) = v
		}
	}
	core := r.table.archive.Core
	coreID := IDTerm(core.rowType)
	if r.id == "" || core.numbered(coreID) {
		return
	}
	if j, ok := shapeFor(into.RowType()).index[coreID]; ok && len(r.table.lookup[coreID]) == 0 {
		*into.Field(j) = r.id
	}
}

// numbered says whether the ids of the table's rows are not the values of the
// term that identifies them, but numbers of their own.
func (t *DataTable) numbered(term string) bool {
	columns := t.lookup[term]
	return len(columns) > 0 && t.columns[columns[0]].Index != t.id
}

// Rows yields the table's rows, file after file, and stops after an error. It
// may be used any number of times, and always yields the same.
func (t *DataTable) Rows() iter.Seq2[*Row, error] {
	return func(yield func(*Row, error) bool) {
		for _, file := range t.files {
			if !t.fileRows(file, yield) {
				return
			}
		}
	}
}

// fileRows yields the rows of one file; it returns false to stop.
func (t *DataTable) fileRows(file string, yield func(*Row, error) bool) bool {
	f, r, _, err := t.openFile(file)
	if err != nil {
		yield(nil, err)
		return false
	}
	defer f.Close()
	if err := t.skipToHeadings(r); err != nil {
		yield(nil, err)
		return false
	}
	var values []string
	for n := 0; ; n++ {
		values, err = r.next(values[:0])
		if errors.Is(err, io.EOF) {
			return true
		}
		if err != nil {
			yield(nil, err)
			return false
		}
		if n == 0 && t.skip > 0 || r.blank(values) {
			continue
		}
		row := &Row{File: file, Line: r.line, table: t, values: slices.Clone(values)}
		if t.id >= 0 && t.id < len(values) {
			row.id = values[t.id]
		}
		row.Notes = t.raggedness(values)
		t.dates(row)
		if !yield(row, nil) {
			return false
		}
	}
}

// skipToHeadings passes over all header lines but the last, which may be free
// text and is not taken apart.
func (t *DataTable) skipToHeadings(r *delimitedReader) error {
	for range t.skip - 1 {
		if err := r.skipLine(); err != nil {
			return err
		}
	}
	return nil
}

// raggedness notes a row with too few or too many values.
func (t *DataTable) raggedness(values []string) []string {
	switch {
	case len(values) < t.want:
		return []string{fmt.Sprintf("The row has %d values where the table has %d columns; the missing ones were taken for empty.", len(values), t.want)}
	case len(values) > max(t.want, t.highest()+1):
		extra := slices.DeleteFunc(slices.Clone(values[max(t.want, t.highest()+1):]), func(v string) bool { return v == "" })
		if len(extra) > 0 {
			return []string{fmt.Sprintf("The row has %d values where the table has %d columns; left out was “%s”.", len(values), t.want, strings.Join(extra, "”, “"))}
		}
	}
	return nil
}

// openFile starts reading a file of the table.
func (t *DataTable) openFile(file string) (io.Closer, *delimitedReader, string, error) {
	f, err := t.archive.source.open(file)
	if err != nil {
		return nil, nil, "", err
	}
	enc, err := encodingFor(t.encoding)
	if err != nil {
		f.Close()
		return nil, nil, "", unreadable(file, 0, "The encoding “%s” is not known.", t.encoding)
	}
	text, isUTF8, note, err := decodedText(f, enc)
	if err != nil {
		f.Close()
		return nil, nil, "", err
	}
	return f, newDelimitedReader(text, file, t.dialect, isUTF8, t.archive.limits), note, nil
}

// inspect looks at the beginning of every file, so that what is wrong with all
// rows is found before the first is read.
func (t *DataTable) inspect() error {
	for i, file := range t.files {
		if err := t.inspectFile(file, i == 0); err != nil {
			return err
		}
	}
	t.settle()
	return nil
}

func (t *DataTable) note(file string, line int, message string, args ...any) {
	t.archive.Notes = append(t.archive.Notes, Note{File: file, Line: line, Message: fmt.Sprintf(message, args...)})
}

// inspectFile checks that the file is written as the descriptor says.
func (t *DataTable) inspectFile(file string, first bool) error {
	f, r, note, err := t.openFile(file)
	if err != nil {
		return err
	}
	defer f.Close()
	if note != "" {
		t.note(file, 0, "%s", note)
	}
	for r.end-r.start < 32<<10 {
		if err := r.fill(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return err
		}
	}
	start := string(r.buf[r.start:r.end])
	if start == "" {
		t.note(file, 0, "The file is empty.")
		return nil
	}
	if ending, ok := t.lineEnding(start); ok {
		t.note(file, 0, "Rows end with %s, not with %s as stated; they were read so.", visible(ending), visible(t.dialect.terminator))
		t.dialect.terminator, r.dialect.terminator = ending, ending
	}
	if err := t.skipToHeadings(r); err != nil {
		return err
	}
	values, err := r.next(nil)
	if errors.Is(err, io.EOF) {
		return nil // there are header lines only
	}
	if err != nil {
		return err
	}
	if most := t.highest(); len(values) == 1 && most > 0 {
		for _, other := range []string{"\t", ",", ";", "|"} {
			if strings.Count(values[0], other) >= most {
				return unreadable(file, r.line, "The values are said to have %s between them, but there are %s instead. Correct fieldsTerminatedBy in the descriptor.",
					visible(t.dialect.delimiter), visible(other))
			}
		}
	}
	if first {
		t.headings(file, values)
	}
	t.want = max(t.want, len(values))
	return nil
}

// headings takes the first record of the table for its headings where the
// descriptor says that there are any, or where it says that there are none but
// every value is the name of its column's term. Ids nearly always have a figure
// in them, and headings hardly ever.
func (t *DataTable) headings(file string, values []string) {
	own, any := 0, false
	for _, c := range t.columns {
		if c.Index < 0 || c.Index >= len(values) {
			continue
		}
		term, _, ok := Closest(values[c.Index])
		any = any || ok
		if ok && term == c.Term {
			own++
		} else {
			own -= len(t.columns)
		}
	}
	switch {
	case t.skip == 0 && own > 0:
		t.skip = 1
		t.note(file, 1, "The first line holds headings, although ignoreHeaderLines does not say so; it was not taken for a row.")
	case t.skip == 1 && !any && t.id >= 0 && t.id < len(values) && strings.ContainsAny(values[t.id], "0123456789"):
		t.note(file, 1, "The first line was left out as headings, as stated, though it looks like a row: “%s”.", strings.Join(values, "”, “"))
	}
	if t.skip > 0 {
		t.header = slices.Clone(values)
	}
}

// lineEnding returns the line ending of the text where it is not the stated
// one, which does not occur.
func (t *DataTable) lineEnding(start string) (string, bool) {
	stated := t.dialect.terminator
	if strings.Contains(start, stated) || stated != "\n" && stated != "\r" && stated != "\r\n" {
		return "", false
	}
	for _, other := range []string{"\n", "\r"} {
		if strings.Contains(start, other) {
			return other, true
		}
	}
	return "", false
}

// highest returns the highest index of a column.
func (t *DataTable) highest() int {
	most := t.id
	for _, c := range t.columns {
		most = max(most, c.Index)
	}
	return most
}

// settle compares the headings with the description, gives columns that the
// description leaves out a place, and builds the look-up.
func (t *DataTable) settle() {
	if id := IDTerm(t.rowType); t.core && t.id < 0 && id != "" {
		for _, c := range slices.Backward(t.columns) {
			if c.Term.Name == id {
				t.id = c.Index
			}
		}
	}
	described := map[int]bool{t.id: true}
	for _, c := range t.columns {
		if t.want > 0 && c.Index >= t.want {
			t.note(t.files[0], max(1, t.skip), "The descriptor says that %s is in column %d, but there are only %d columns here. Correct its index, or add the column.", c.Term.Name, c.Index+1, t.want)
		}
		described[c.Index] = true
		if c.Index < 0 || c.Index >= len(t.header) {
			continue
		}
		heading := t.header[c.Index]
		if term, _, ok := Closest(heading); ok && term != c.Term && !t.isColumn(term, c.Index) {
			t.note(t.files[0], max(1, t.skip), "The heading of column %d is “%s”, but the descriptor says %s; the descriptor was followed.", c.Index+1, heading, c.Term.Name)
		}
	}
	for i := range t.want {
		if described[i] {
			continue
		}
		heading := fmt.Sprintf("column %d", i+1)
		if i < len(t.header) && strings.TrimSpace(t.header[i]) != "" {
			heading = strings.TrimSpace(t.header[i])
		}
		t.columns = append(t.columns, Column{Term: Term{Name: heading}, Index: i})
		t.note(t.files[0], max(1, t.skip), "It is not said which term the column “%s” is; its values go by that heading.", heading)
	}
	t.index()
}

// index builds the look-ups.
func (t *DataTable) index() {
	t.lookup = map[string][]int{}
	for i, c := range t.columns {
		t.lookup[c.Term.Name] = append(t.lookup[c.Term.Name], i)
		if c.Term.IRI != "" && c.Term.IRI != c.Term.Name {
			t.lookup[c.Term.IRI] = append(t.lookup[c.Term.IRI], i)
		}
	}
	t.fields = map[string][]int{}
	for _, rowType := range []string{RowOccurrence, RowEvent, RowMeasurement, RowTaxon, RowVernacularName} {
		s := shapeFor(rowType)
		fields := make([]int, len(t.columns))
		for i, c := range t.columns {
			j, ok := s.index[c.Term.Name]
			if !ok || c.Term.IRI == "" {
				j = -1
			}
			fields[i] = j
		}
		t.fields[rowType] = fields
	}
}

// isColumn says whether a term is described for a place in the files.
func (t *DataTable) isColumn(term Term, index int) bool {
	return slices.ContainsFunc(t.columns, func(c Column) bool { return c.Term == term && c.Index == index })
}

// visible names a delimiter so that it can be seen.
func visible(s string) string {
	switch s {
	case "\t":
		return "tabs"
	case ",":
		return "commas"
	case ";":
		return "semicolons"
	case "|":
		return "bars (|)"
	case "\n":
		return "a line feed"
	case "\r":
		return "a carriage return"
	case "\r\n":
		return "a carriage return and a line feed"
	}
	return fmt.Sprintf("%q", s)
}
