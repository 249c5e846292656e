package dwc

import (
	"encoding/binary"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// tableWriter writes the rows of one table as delimited text.
type tableWriter struct {
	file    string
	rowType string
	terms   []Term
	// fields are the places of the columns in a Record of the row type, -1
	// where it has no such term.
	fields []int
	// id is the column that identifies the core record.
	id    int
	out   io.Writer
	spool *spool
	buf   []byte
	start int // of the row being written, in buf
}

// flushAt is how much text is gathered before it is handed on.
const flushAt = 128 << 10

func newTableWriter(t Table, coreID string) (*tableWriter, error) {
	if t.RowType == "" {
		return nil, fmt.Errorf("dwc: a table has no row type")
	}
	w := &tableWriter{file: t.File, rowType: t.RowType, id: -1}
	if w.file == "" {
		w.file = strings.ToLower(t.RowType[strings.LastIndexAny(t.RowType, "/#")+1:]) + ".txt"
	}
	if strings.ContainsAny(w.file, `/\`) || strings.HasPrefix(w.file, ".") {
		return nil, fmt.Errorf("dwc: %q cannot be the name of a table's file", w.file)
	}
	s := shapeFor(t.RowType)
	for i, column := range t.Columns {
		term, ok := Lookup(column)
		if !ok && isIRI(column) {
			term, ok = Term{Name: column, IRI: column}, true
		}
		if !ok {
			return nil, fmt.Errorf("dwc: %q, a column of %s, is no known term", column, w.file)
		}
		if slices.Contains(w.terms, term) {
			return nil, fmt.Errorf("dwc: %s has the column %s twice", w.file, term.Name)
		}
		field := -1
		if s != nil {
			if j, ok := s.index[term.Name]; ok {
				field = j
			}
		}
		if term.Name == coreID {
			w.id = i
		}
		w.terms = append(w.terms, term)
		w.fields = append(w.fields, field)
	}
	if w.id < 0 {
		return nil, fmt.Errorf("dwc: %s has no column %s, which identifies the core record", w.file, coreID)
	}
	return w, nil
}

func isIRI(s string) bool {
	return (strings.HasPrefix(s, "http://") || strings.HasPrefix(s, "https://") || strings.HasPrefix(s, "urn:")) &&
		!strings.ContainsAny(s, " \t\r\n\"<>")
}

func (t *tableWriter) writeHeader() {
	for i, term := range t.terms {
		if i > 0 {
			t.buf = append(t.buf, '\t')
		}
		t.buf = appendField(t.buf, term.Name)
	}
	t.buf = append(t.buf, '\n')
	t.start = len(t.buf)
}

func (t *tableWriter) row(values []string) error {
	for i, v := range values {
		if i > 0 {
			t.buf = append(t.buf, '\t')
		}
		t.buf = appendField(t.buf, v)
	}
	return t.endRow()
}

func (t *tableWriter) endRow() error {
	if len(t.buf) == t.start {
		// A row of nothing would be a blank line, which readers skip.
		t.buf = append(t.buf, `""`...)
	}
	t.buf = append(t.buf, '\n')
	if len(t.buf) >= flushAt {
		return t.flush()
	}
	t.start = len(t.buf)
	return nil
}

// flush hands on the rows so far.
func (t *tableWriter) flush() error {
	_, err := t.out.Write(t.buf)
	t.buf, t.start = t.buf[:0], 0
	return err
}

// AppendField appends a value as the tables of an archive have it: enclosed
// where it has to be, see Writer.
func AppendField(b []byte, v string) []byte { return appendField(b, v) }

func appendField(b []byte, v string) []byte {
	if v == "" {
		return b
	}
	start := len(b)
	b = append(b, v...)
	if v[0] != ' ' && v[len(v)-1] != ' ' && isPlain(b[start:]) {
		return b
	}
	return appendAwkward(b[:start], strings.ToValidUTF8(v, "\uFFFD"))
}

// isPlain says whether a text has no control characters, no double quotes and
// nothing but ASCII. It looks at eight bytes at a time, each of them a lane of
// a word, because a million rows hold close to a thousand million bytes.
func isPlain(text []byte) bool {
	const ones, tops = 0x0101010101010101, 0x8080808080808080
	for len(text) >= 8 {
		w := binary.LittleEndian.Uint64(text)
		quotes := w ^ '"'*ones
		// The top bit of a lane is set by a byte that is not ASCII, by
		// borrowing from a byte below the space, or from a zero.
		if (w|(w-' '*ones)&^w|(quotes-ones)&^quotes)&tops != 0 {
			return false
		}
		text = text[8:]
	}
	for _, c := range text {
		if c < ' ' || c == '"' || c >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// appendAwkward appends a value that may have to be enclosed.
func appendAwkward(b []byte, v string) []byte {
	trimmed := strings.TrimFunc(v, func(c rune) bool { return unicode.IsSpace(c) || unicode.IsControl(c) })
	if !strings.ContainsAny(v, "\t\n\r\"") && v == trimmed {
		return append(b, v...)
	}
	b = append(b, '"')
	for {
		i := strings.IndexByte(v, '"')
		if i < 0 {
			break
		}
		b = append(b, v[:i+1]...)
		b = append(b, '"')
		v = v[i+1:]
	}
	b = append(b, v...)
	return append(b, '"')
}
