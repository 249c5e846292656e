package dwc

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"unicode/utf8"
)

// dialect is how delimited text is written.
type dialect struct {
	delimiter  string // between fields
	quote      string // around fields; "" where none
	terminator string // after each record
}

// delimitedReader reads records of delimited text, after the Darwin Core text
// guide and, for what that leaves open, RFC 4180: an enclosed field may hold
// delimiters and line breaks, and a quote in it is doubled. A field is
// enclosed only where quotes are its first and last characters; any other
// quote is text. With the terminator "\n", "\r\n" ends a record too.
type delimitedReader struct {
	in      io.Reader
	file    string
	dialect dialect
	limits  Limits
	utf8    bool // the text has to be checked for being UTF-8

	buf        []byte
	start, end int // of the unread text in buf
	atEOF      bool

	line     int // where the record that was read last begins
	nextLine int
	record   []field
}

// field is one field of a record, as text[from:to] of the record.
type field struct {
	from, to int
	doubled  bool // quotes in it are doubled
}

func newDelimitedReader(in io.Reader, file string, d dialect, isUTF8 bool, limits Limits) *delimitedReader {
	return &delimitedReader{in: in, file: file, dialect: d, limits: limits, utf8: isUTF8, nextLine: 1, buf: make([]byte, 64<<10)}
}

// fill reads more text. It returns io.EOF where there is none.
func (r *delimitedReader) fill() error {
	if r.atEOF {
		return io.EOF
	}
	if r.start > 0 && r.start > len(r.buf)/2 {
		copy(r.buf, r.buf[r.start:r.end])
		r.start, r.end = 0, r.end-r.start
	}
	if r.end == len(r.buf) {
		if r.end-r.start > r.limits.RecordBytes {
			return r.tooLong()
		}
		bigger := make([]byte, 2*len(r.buf))
		r.end = copy(bigger, r.buf[r.start:r.end])
		r.start, r.buf = 0, bigger
	}
	for range 100 {
		n, err := r.in.Read(r.buf[r.end:])
		r.end += n
		if errors.Is(err, io.EOF) {
			r.atEOF = true
			if n > 0 {
				return nil
			}
			return io.EOF
		}
		if err != nil {
			var known *ReadError
			if errors.As(err, &known) {
				return err
			}
			return &ReadError{File: r.file, Line: r.nextLine, Message: "The file is damaged or not complete. Fetch or make it again.", Cause: err}
		}
		if n > 0 {
			return nil
		}
	}
	return &ReadError{File: r.file, Message: "The file could not be read to its end.", Cause: io.ErrNoProgress}
}

func (r *delimitedReader) tooLong() error {
	message := "A row that begins here is longer than %s, which no row of records needs."
	if r.dialect.quote != "" {
		message += " Perhaps a quotation mark that opens a value is never closed."
	}
	return over("RecordBytes", r.file, r.nextLine, message, size(int64(r.limits.RecordBytes)))
}

// indexFrom finds text at or after position at of the unread text, reading on
// as needed. It returns -1 where the text ends first.
func (r *delimitedReader) indexFrom(at int, text string) (int, error) {
	for {
		if i := bytes.Index(r.buf[r.start+min(at, r.end-r.start):r.end], []byte(text)); i >= 0 {
			return at + i, nil
		}
		// The text may lie across the end of what has been read.
		at = max(at, r.end-r.start-len(text)+1)
		if r.end-r.start > r.limits.RecordBytes {
			return 0, r.tooLong()
		}
		if err := r.fill(); err == io.EOF {
			return -1, nil
		} else if err != nil {
			return 0, err
		}
	}
}

// has says whether text stands at a position of the unread text.
func (r *delimitedReader) has(at int, text string) (bool, error) {
	for r.end-r.start < at+len(text) {
		if err := r.fill(); err == io.EOF {
			return false, nil
		} else if err != nil {
			return false, err
		}
	}
	return string(r.buf[r.start+at:r.start+at+len(text)]) == text, nil
}

// next reads a record: its fields' text, in values, which is reused. It
// returns io.EOF after the last. A blank line is a record of one empty field.
func (r *delimitedReader) next(values []string) ([]string, error) {
	if r.start == r.end {
		if err := r.fill(); err != nil {
			return nil, err
		}
	}
	r.line = r.nextLine
	r.record = r.record[:0]
	length, whole, err := r.scan()
	if err != nil {
		return nil, err
	}
	raw := r.buf[r.start : r.start+length]
	if r.utf8 && !utf8.Valid(raw) {
		line := r.line + r.lines(raw[:validPrefix(raw)])
		return nil, unreadable(r.file, line, "There are characters here that are not UTF-8, the encoding the file is said to have. "+
			"Save the file as UTF-8, or state its true encoding.")
	}
	text := string(raw)
	for _, f := range r.record {
		if f.to-f.from > r.limits.FieldBytes {
			return nil, over("FieldBytes", r.file, r.line, "A value in the row that begins here is longer than %s, which no value needs.", size(int64(r.limits.FieldBytes)))
		}
		v := text[f.from:f.to]
		if f.doubled {
			v = strings.ReplaceAll(v, r.dialect.quote+r.dialect.quote, r.dialect.quote)
		}
		values = append(values, v)
	}
	r.nextLine += r.lines(r.buf[r.start : r.start+whole])
	r.start += whole
	return values, nil
}

// skipLine passes over one line, whatever is in it.
func (r *delimitedReader) skipLine() error {
	end, err := r.indexFrom(0, r.dialect.terminator)
	if err != nil {
		return err
	}
	whole := end + len(r.dialect.terminator)
	if end < 0 {
		whole = r.end - r.start
	}
	r.nextLine += r.lines(r.buf[r.start : r.start+whole])
	r.start += whole
	return nil
}

// blank says whether the record that was read last is a blank line: one field
// of white space, not enclosed.
func (r *delimitedReader) blank(values []string) bool {
	return len(values) == 1 && r.record[0].from == 0 && strings.TrimSpace(values[0]) == ""
}

// lines counts the line breaks in text.
func (r *delimitedReader) lines(text []byte) int {
	if r.dialect.terminator == "\r" {
		return bytes.Count(text, []byte("\r"))
	}
	n := bytes.Count(text, []byte("\n"))
	if n == 0 && !strings.Contains(r.dialect.terminator, "\n") {
		n = bytes.Count(text, []byte(r.dialect.terminator))
	}
	return n
}

func validPrefix(b []byte) int {
	n := 0
	for n < len(b) {
		c, width := utf8.DecodeRune(b[n:])
		if c == utf8.RuneError && width == 1 {
			break
		}
		n += width
	}
	return n
}

// scan finds the fields of the record at the start of the unread text: its
// length, and that with its terminator.
func (r *delimitedReader) scan() (length, whole int, err error) {
	at, end, quoteAt := 0, -1, -1
	for {
		if len(r.record) >= r.limits.Columns {
			return 0, 0, over("Columns", r.file, r.line, "The row that begins here has more than %d values, which no table of records has.", r.limits.Columns)
		}
		if r.dialect.quote != "" {
			opens, err := r.has(at, r.dialect.quote)
			if err != nil {
				return 0, 0, err
			}
			if opens {
				next, last, ok, err := r.enclosed(at)
				if err != nil {
					return 0, 0, err
				}
				if ok && last {
					return r.record[len(r.record)-1].to + len(r.dialect.quote), next, nil
				}
				if ok {
					at = next
					continue
				}
			}
		}
		// Where the record ends, if no more of it is enclosed.
		if end < at {
			if end, err = r.indexFrom(at, r.dialect.terminator); err != nil {
				return 0, 0, err
			}
			whole = end + len(r.dialect.terminator)
			if end < 0 {
				end = r.end - r.start
				whole = end
			}
		}
		var more bool
		if at, more = r.split(at, end, &quoteAt); more {
			continue
		}
		if r.dialect.terminator == "\n" && end > at && r.buf[r.start+end-1] == '\r' {
			end--
		}
		r.record = append(r.record, field{from: at, to: end})
		return end, whole, nil
	}
}

// split appends the fields from at to the next one that may be enclosed, and
// returns where that begins. Where there is none before end, more is false,
// and all but the last field have been appended. quoteAt is where the next
// quote was last seen.
func (r *delimitedReader) split(at, end int, quoteAt *int) (next int, more bool) {
	text := r.buf[r.start : r.start+end]
	for len(r.record) < r.limits.Columns {
		i := indexShort(text[at:], r.dialect.delimiter)
		if i < 0 {
			return at, false
		}
		r.record = append(r.record, field{from: at, to: at + i})
		at += i + len(r.dialect.delimiter)
		if r.dialect.quote == "" {
			continue
		}
		if *quoteAt < at {
			if *quoteAt = indexShort(text[at:], r.dialect.quote) + at; *quoteAt < at {
				*quoteAt = end
			}
		}
		if *quoteAt == at && at < end {
			return at, true
		}
	}
	return at, true
}

// indexShort is strings.Index for a text that mostly is one byte long.
func indexShort(text []byte, short string) int {
	if len(short) == 1 {
		return bytes.IndexByte(text, short[0])
	}
	return bytes.Index(text, []byte(short))
}

// enclosed reads the enclosed field whose opening quote is at at. It returns
// where the next field, or where last is set the next record, begins. Where
// the text after the closing quote shows that the field is not enclosed, ok
// is false.
func (r *delimitedReader) enclosed(at int) (next int, last, ok bool, err error) {
	quote := r.dialect.quote
	f := field{from: at + len(quote)}
	for i := f.from; ; {
		i, err = r.indexFrom(i, quote)
		if err != nil {
			return 0, false, false, err
		}
		if i < 0 {
			return 0, false, false, unreadable(r.file, r.line+r.lines(r.buf[r.start:r.start+at]),
				"A value opens with %s here that is never closed. Close it, or state that values are not enclosed.", quote)
		}
		f.to = i
		i += len(quote)
		if doubled, err := r.has(i, quote); err != nil {
			return 0, false, false, err
		} else if doubled {
			f.doubled = true
			i += len(quote)
			continue
		}
		ends, err := r.has(i, r.dialect.delimiter)
		if err != nil {
			return 0, false, false, err
		}
		if ends {
			r.record = append(r.record, f)
			return i + len(r.dialect.delimiter), false, true, nil
		}
		over, err := r.terminated(i)
		if err != nil {
			return 0, false, false, err
		}
		if over > 0 {
			r.record = append(r.record, f)
			return i + over, true, true, nil
		}
		if r.atEOF && i == r.end-r.start {
			r.record = append(r.record, f)
			return i, true, true, nil
		}
		return 0, false, false, nil
	}
}

// terminated returns the length of the terminator at a position, 0 where
// there is none.
func (r *delimitedReader) terminated(at int) (int, error) {
	ends, err := r.has(at, r.dialect.terminator)
	if ends || err != nil {
		return len(r.dialect.terminator), err
	}
	if r.dialect.terminator == "\n" {
		if ends, err = r.has(at, "\r\n"); ends {
			return len("\r\n"), err
		}
	}
	return 0, err
}
