package notebook

import (
	"bytes"
	"fmt"
	"io"
	"slices"
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

	// Within the input that parse was given: where the line ends that was
	// last looked at, and where the last quote in it is that could close a
	// field.
	lineEnd, lastClosing int
}

// span is a piece of a record's data.
type span struct{ from, to int }

// A quoted text that has not come to its end after so many bytes, or has run
// over a line and into so many stray quotes, was never closed.
const (
	quoteWindow = 1 << 20
	mostStrays  = 16
)

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
	for range 100 {
		n, err := r.r.Read(r.buf[r.end:])
		r.end += n
		if err == io.EOF {
			r.eof = true
			return n > 0, nil
		}
		if err != nil {
			return false, err
		}
		if n > 0 {
			return true, nil
		}
	}
	return false, io.ErrNoProgress
}

// next moves to the next record; false at the end.
func (r *records) next() (bool, error) {
	r.repaired = ""
	for {
		b := r.buf[r.pos:r.end]
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

// quoted reads a record that has double quotes and returns its size; more
// asks for more input.
func (r *records) quoted(b []byte) (size int, more bool) {
	a := r.parse(b, true)
	if a.more {
		return 0, true
	}
	if a.crossed || a.unclosed {
		whole, fields := bytes.Clone(r.data), slices.Clone(r.fields)
		single := r.parse(b, false)
		if single.more {
			return 0, true
		}
		if r.single(b, a, single, len(fields)) {
			r.repaired = "a double quote is opened and not closed on its line; it was read as part of the text"
			return single.size, false
		}
		r.data, r.fields = whole, fields
	}
	if a.stray {
		r.repaired = "a double quote stands inside a quoted text; it was read as part of the text"
	}
	return a.size, false
}

// single decides whether a record whose quoted text runs over the end of the
// line is better read as ending with its line.
func (r *records) single(b []byte, multi, single parsed, multiFields int) bool {
	singleFields := len(r.fields)
	switch {
	case multi.unclosed:
		return true
	case multi.stray:
		return multiFields != r.expected || singleFields == r.expected
	case r.expected == 0 || singleFields != r.expected:
		return false
	case multiFields != r.expected:
		return true
	}
	// Both fit. Text of several lines that each happen to have as many
	// delimiters as a whole record is not likely.
	if r.expected < 4 {
		return false
	}
	data, fields := r.data, r.fields
	defer func() { r.data, r.fields = data, fields }()
	r.own, r.fields = nil, nil
	for at := single.size; at < multi.size; {
		p := r.parse(b[at:], false)
		if p.more || len(r.fields) != r.expected {
			return false
		}
		at += p.size
	}
	return true
}

// parsed says how a record was read.
type parsed struct {
	size     int
	more     bool // needs more input
	crossed  bool // a quoted text runs over the end of the line
	stray    bool // a quote that is neither opening, closing nor doubled
	unclosed bool
}

// parse reads one record from b into data and fields. With crossing, quoted
// text may run over line ends.
func (r *records) parse(b []byte, crossing bool) (p parsed) {
	r.data, r.fields = r.own[:0], r.fields[:0]
	defer func() { r.own = r.data }()
	r.lineEnd = -1
	i := 0
	for {
		from := len(r.data)
		j := i
		for j < len(b) && b[j] == ' ' {
			j++
		}
		if j == len(b) && !r.eof {
			return parsed{more: true}
		}
		if j < len(b) && b[j] == '"' && r.dittos {
			alone, more := r.alone(b, j)
			if more {
				return parsed{more: true}
			}
			if alone {
				r.data = append(r.data, b[i:j+1]...)
				i, j = j+1, len(b)
			}
		}
		if j < len(b) && b[j] == '"' {
			mark := len(r.data)
			q := r.quotedField(b, j, crossing && r.patience > 0)
			if q.more {
				return parsed{more: true}
			}
			if q.unclosed || j > i && (q.stray || q.crossed) || r.delim == 0 && q.stray {
				r.data = r.data[:mark]
				p.unclosed = p.unclosed || q.unclosed
			} else {
				p.crossed, p.stray = p.crossed || q.crossed, p.stray || q.stray
				i = q.size
			}
		}
		// What is left up to the delimiter or the end of the line is text.
		for {
			if i == len(b) {
				if !r.eof {
					return parsed{more: true}
				}
				break
			}
			c := b[i]
			if c == r.delim && c != 0 || c == '\n' || c == '\r' && r.isLineEnd(b[i:]) {
				break
			}
			if c == '\r' && len(b)-i < 3 && !r.eof {
				return parsed{more: true}
			}
			r.data = append(r.data, c)
			i++
		}
		r.fields = append(r.fields, span{from, len(r.data)})
		if i == len(b) {
			p.size = i
			return p
		}
		if b[i] == r.delim && r.delim != 0 {
			i++
			continue
		}
		_, size := r.line(b[i:])
		if size < 0 {
			return parsed{more: true}
		}
		p.size = i + size
		return p
	}
}

// isLineEnd reports whether the CR at the start of b ends the line.
func (r *records) isLineEnd(b []byte) bool {
	return r.loneCR || bytes.HasPrefix(b, []byte("\r\n")) || bytes.HasPrefix(b, []byte("\r\r\n")) || len(b) == 1 && r.eof
}

// quotedField reads the quoted field whose opening quote is at b[i]. size is
// where the text after its closing quote begins.
func (r *records) quotedField(b []byte, i int, crossing bool) (p parsed) {
	start, strays := i, 0
	i++
	if !crossing {
		// Nothing beyond the line is looked at.
		r.lookAlong(b, i)
		b = b[:min(len(b), r.lineEnd+1)]
	}
	for {
		k := bytes.IndexByte(b[i:], '"')
		span := b[i:]
		if k >= 0 {
			span = b[i : i+k]
		}
		if !p.crossed && bytes.ContainsAny(span, "\r\n") {
			if !crossing {
				return parsed{unclosed: true}
			}
			p.crossed = true
		}
		if k < 0 {
			if r.eof || !crossing && isEnd(b[len(b)-1]) || len(b)-start > quoteWindow {
				r.patience -= len(b) - start
				return parsed{unclosed: true}
			}
			return parsed{more: true}
		}
		r.data = appendLines(r.data, span)
		i += k + 1
		if len(b)-i < 4 && !r.eof {
			return parsed{more: true}
		}
		if i < len(b) && b[i] == '"' {
			r.data = append(r.data, '"')
			i++
			continue
		}
		after, closes, more := r.closes(b, i)
		switch {
		case more:
			return parsed{more: true}
		case closes:
			p.size = after
			return p
		}
		p.stray = true
		if strays++; p.crossed && strays > mostStrays {
			return parsed{unclosed: true}
		}
		if r.lookAlong(b, i); !p.crossed && r.lastClosing < i {
			// The text goes on after the quotes: "6" trap.
			p.size = i
			return p
		}
		r.data = append(r.data, '"')
	}
}

// closes reports whether the quote before b[i] closes its field: only spaces
// may stand between it and the delimiter or the end of the line.
func (r *records) closes(b []byte, i int) (after int, closes, more bool) {
	for i < len(b) && b[i] == ' ' {
		i++
	}
	if i == len(b) {
		return i, r.eof, !r.eof
	}
	return i, b[i] == r.delim && r.delim != 0 || b[i] == '\n' || b[i] == '\r', false
}

func isEnd(c byte) bool { return c == '\n' || c == '\r' }

// alone reports whether the quote at b[i] is all that its field has.
func (r *records) alone(b []byte, i int) (alone, more bool) {
	if i+1 < len(b) && b[i+1] == '"' {
		return false, false
	}
	_, alone, more = r.closes(b, i+1)
	return alone, more
}

// lookAlong finds the end of the line that b[i] is in and the last quote in
// it that could close a field, unless that is known. It is called for every
// odd quote, so it must not look at the same line over and over.
func (r *records) lookAlong(b []byte, i int) {
	if i <= r.lineEnd {
		return
	}
	r.lineEnd, r.lastClosing = len(b), -1
	for n, c := range b[i:] {
		if isEnd(c) {
			r.lineEnd = i + n
			break
		}
	}
	closing := true // what follows would let a quote close its field
	for j := r.lineEnd - 1; j >= i; j-- {
		switch c := b[j]; {
		case c == '"' && closing:
			r.lastClosing = j
			return
		case c == r.delim:
			closing = true
		case c != ' ':
			closing = false
		}
	}
}

// appendLines appends text with its line ends made one line feed each.
func appendLines(dst, b []byte) []byte {
	for {
		i := bytes.IndexByte(b, '\r')
		if i < 0 {
			return append(dst, b...)
		}
		dst = append(dst, b[:i]...)
		dst = append(dst, '\n')
		b = b[i+1:]
		if len(b) > 0 && b[0] == '\n' {
			b = b[1:]
		}
	}
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
		Advice: "If it is genuine, raise the reading limits or split the file; if not, the delimiter may have been guessed wrongly",
	}
}
