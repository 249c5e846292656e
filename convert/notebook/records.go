package notebook

import (
	"bytes"
	"fmt"
	"io"
)

// records splits delimited text into records and fields. It accepts what
// RFC 4180 describes and what people's files really hold:
//
//   - lines may end in LF, CR LF, CR or CR CR LF, mixed;
//   - a field is quoted when its first character, or its first after spaces,
//     is a double quote; inside, two double quotes stand for one, and
//     delimiters and line ends are text;
//   - a stray double quote is text: one inside an unquoted field, one that is
//     never closed, one inside a quoted field that is followed by neither a
//     delimiter nor the end of the line;
//   - records may differ in their number of fields.
//
// Where a stray quote could be read in two ways, the reading is taken that
// gives the record the number of fields that other records have, and repaired
// says so.
type records struct {
	r        io.Reader
	buf      []byte
	pos, end int
	eof      bool
	delim    byte // 0: the whole line is one field
	loneCR   bool // some lines end in CR alone
	quotes   bool // the input has double quotes at all
	dittos   bool // a field that is nothing but a double quote is a ditto mark
	expected int  // the usual number of fields; 0 if not known
	limits   Limits
	// patience is how many more bytes may be looked at in search of closing
	// quotes that do not come.
	patience int

	// The current record. data is its text, of which fields are pieces.
	// simple: data is the line as it stands, to be split at delim; fields is
	// not used.
	data     []byte
	fields   []span
	simple   bool
	own      []byte // the memory that parse fills
	repaired string
	crossed  bool // a quoted text runs over the end of a line

	// Within the input that parse was given: where the line ends that was
	// last looked at, and where the last quote in it is that could close a
	// field.
	lineEnd, lastClosing int
}

// span is a piece of a record's data.
type span struct{ from, to int }

func newRecords(r io.Reader, delim byte, l Limits) *records {
	return &records{r: r, buf: make([]byte, 256<<10), delim: delim, loneCR: true, quotes: true, limits: l, patience: 64 << 20}
}

func (r *records) fill() (bool, error) {
	if r.eof {
		return false, nil
	}
	if r.pos > 0 {
		copy(r.buf, r.buf[r.pos:r.end])
		r.end -= r.pos
		r.pos = 0
	}
	if r.end == len(r.buf) {
		if len(r.buf) >= r.limits.RowBytes+quoteWindow {
			return false, errTooBig
		}
		r.buf = append(r.buf, make([]byte, len(r.buf))...)
	}
	n, eof, err := readSome(r.r, r.buf[r.end:])
	r.end += n
	r.eof = eof
	return n > 0 && err == nil, err
}

// next moves to the next record; false at the end.
func (r *records) next() (bool, error) {
	r.repaired, r.crossed = "", false
	for {
		b := r.buf[r.pos:r.end]
		if len(b) > 3 && b[0] == 0xEF && b[1] == 0xBB && b[2] == 0xBF {
			// A byte order mark where files were joined to one.
			r.pos += 3
			continue
		}
		if len(b) == 0 && r.eof {
			return false, nil
		}
		line, size := r.line(b)
		if size < 0 {
			if len(b) > r.limits.RowBytes {
				return false, errTooBig
			}
			if _, err := r.fill(); err != nil {
				return false, err
			}
			continue
		}
		if !r.quotes || bytes.IndexByte(line, '"') < 0 {
			r.data, r.simple = line, true
			r.pos += size
			return true, nil
		}
		r.simple = false
		if r.sound(line) {
			r.data = line
			r.pos += size
			return true, nil
		}
		size, more := r.quoted(b)
		if more {
			if ok, err := r.fill(); err != nil {
				return false, err
			} else if ok || r.eof {
				continue
			}
		}
		r.pos += size
		return true, nil
	}
}

// sound splits a line whose quoted fields are plain: opened at the start of
// the field, closed at its end, without a quote between. It is what programs
// write, and needs no copying; all else is left to quoted.
func (r *records) sound(line []byte) bool {
	r.fields = r.fields[:0]
	for from := 0; ; {
		rest := line[from:]
		if len(rest) > 0 && rest[0] == '"' {
			end := bytes.IndexByte(rest[1:], '"')
			switch after := end + 2; {
			case end < 0 || r.dittos && rest[1] == r.delim:
				return false
			case after == len(rest):
				r.fields = append(r.fields, span{from + 1, from + 1 + end})
				return true
			case rest[after] != r.delim || r.delim == 0:
				return false
			default:
				r.fields = append(r.fields, span{from + 1, from + 1 + end})
				from += after + 1
			}
			continue
		}
		end := bytes.IndexByte(rest, r.delim)
		last := end < 0 || r.delim == 0
		if last {
			end = len(rest)
		}
		if bytes.IndexByte(rest[:end], '"') >= 0 {
			return false
		}
		r.fields = append(r.fields, span{from, from + end})
		if last {
			return true
		}
		from += end + 1
	}
}

// line finds the first line of b and its size with its end; -1 where more
// input is needed.
func (r *records) line(b []byte) (line []byte, size int) {
	i := bytes.IndexByte(b, '\n')
	if r.loneCR {
		span := b
		if i >= 0 {
			span = b[:i]
		}
		if j := bytes.IndexByte(span, '\r'); j >= 0 {
			return r.lineCR(b, j)
		}
	}
	switch {
	case i < 0 && !r.eof:
		return nil, -1
	case i < 0:
		return bytes.TrimSuffix(b, []byte("\r")), len(b)
	}
	line = b[:i]
	for len(line) > 0 && line[len(line)-1] == '\r' {
		line = line[:len(line)-1]
	}
	return line, i + 1
}

// lineCR ends the line at the CR at j, taking the CR and LF that follow it
// for the same end where they are.
func (r *records) lineCR(b []byte, j int) (line []byte, size int) {
	if len(b) < j+3 && !r.eof {
		return nil, -1
	}
	rest := b[j:]
	switch {
	case bytes.HasPrefix(rest, []byte("\r\r\n")):
		return b[:j], j + 3
	case bytes.HasPrefix(rest, []byte("\r\n")):
		return b[:j], j + 2
	}
	return b[:j], j + 1
}

// count returns the current record's number of fields; 0 for a blank line.
func (r *records) count() int {
	if !r.simple {
		return len(r.fields)
	}
	if len(r.data) == 0 {
		return 0
	}
	if r.delim == 0 {
		return 1
	}
	return bytes.Count(r.data, []byte{r.delim}) + 1
}

// check bounds the current record.
func (r *records) check(number int) error {
	if n := r.count(); n > r.limits.Columns {
		return tooWide(number, n, r.limits)
	}
	return nil
}

func tooWide(row, columns int, l Limits) error {
	return &Problem{
		Found:  fmt.Sprintf("row %d has %d columns, and the most that is read is %d", row, columns, l.Columns),
		Advice: raise("columns", "split the file; if not, the delimiter may have been guessed wrongly"),
	}
}
