package lines

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"sync/atomic"
)

// NoColumn is the error of a CSV file without the column asked for.
type NoColumn struct {
	Name     string
	Headings []string
}

func (e *NoColumn) Error() string {
	if len(e.Headings) == 0 {
		return fmt.Sprintf("there is no column “%s”: the file is empty", e.Name)
	}
	return fmt.Sprintf("there is no column “%s”; the file has “%s”", e.Name, strings.Join(e.Headings, "”, “"))
}

// Column copies a CSV file and adds the table's columns behind its own, read
// from the cells under one heading. Everything that was there stays as it was,
// byte for byte: quotes, spaces, line ends and the byte order mark. Short rows
// are filled up so that the new cells stand under their headings; blank lines
// stay blank. wide is how many rows were longer than the heading row, whose
// new cells stand further right.
//
// The separator is the one of comma, semicolon and tab that the heading row
// has most of. A new column whose name is taken has prefix before it.
func (t Table) Column(in io.Reader, out io.Writer, name, prefix string) (wide int64, err error) {
	buffered := bufio.NewReaderSize(in, blockSize)
	head, err := readRecord(buffered)
	if err != nil {
		return 0, err
	}
	s, head, err := t.newSheet(head, name, prefix)
	if err != nil {
		return 0, err
	}
	if _, err := out.Write(head); err != nil {
		return 0, err
	}
	var counted atomic.Int64
	err = pump(buffered, out, "", s.comma.lastRecord, func(block string, dst []byte) []byte {
		var row Row
		for len(block) > 0 {
			end, _ := recordEnd(block, s.comma)
			dst = s.extend(dst, block[:end], &row, &counted)
			block = block[end:]
		}
		return dst
	})
	if long := (*TooLong)(nil); errors.As(err, &long) {
		long.Line += int64(bytes.Count(head, lineEnd))
	}
	return counted.Load(), err
}

// sheet is a CSV file whose heading row is known.
type sheet struct {
	table  Table
	comma  separator
	width  int // columns in the heading row
	column int // the one with the values
}

// newSheet reads the heading row and returns it with the new headings.
func (t Table) newSheet(head []byte, name, prefix string) (s *sheet, extended []byte, err error) {
	record, end := cutEnd(string(head))
	text := strings.TrimPrefix(record, byteOrderMark)
	s = &sheet{table: t, comma: likeliest(text), column: -1}
	var headings []string
	for rest, more := text, text != ""; more; {
		var raw string
		raw, rest, more = s.comma.cutField(rest)
		headings = append(headings, unquote(raw))
	}
	s.width = len(headings)
	s.column = find(headings, name)
	if s.column < 0 {
		return nil, nil, &NoColumn{name, headings}
	}
	extended = append(extended, record...)
	for _, h := range t.Header[1:] {
		if find(headings, h) >= 0 {
			h = prefix + h
		}
		extended = appendCSV(append(extended, byte(s.comma)), h, byte(s.comma))
	}
	if end == "" {
		end = "\n"
	}
	return s, append(extended, end...), nil
}

// find returns the place of a heading, exact before any case and spacing; -1
// where there is none.
func find(headings []string, name string) int {
	for i, h := range headings {
		if h == name {
			return i
		}
	}
	plain := func(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
	for i, h := range headings {
		if plain(h) == plain(name) {
			return i
		}
	}
	return -1
}

// extend appends one record with its new cells.
func (s *sheet) extend(dst []byte, record string, row *Row, wide *atomic.Int64) []byte {
	record, end := cutEnd(record)
	dst = append(dst, record...)
	if record == "" {
		return append(dst, end...)
	}
	fields, value := 0, ""
	for rest, more := record, true; more; fields++ {
		var raw string
		raw, rest, more = s.comma.cutField(rest)
		if fields == s.column {
			value = unquote(raw)
		}
	}
	if fields > s.width {
		wide.Add(1)
	}
	for ; fields < s.width; fields++ {
		dst = append(dst, byte(s.comma))
	}
	row.reset()
	s.table.Read(value, row)
	dst = row.appendCSV(append(dst, byte(s.comma)), byte(s.comma))
	return append(dst, end...)
}
