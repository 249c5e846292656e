// Package lines answers one line for each line it is given: values from a
// stream, read on every core and written in the order they came, as text, CSV
// or JSON lines; or the cells of one column of a CSV file, which gains columns.
package lines

import (
	"fmt"
	"io"
)

// Format is how the answers are written.
type Format string

// The formats.
const (
	Text Format = "text"
	CSV  Format = "csv"
	JSON Format = "json"
)

// ParseFormat returns the format of a name.
func ParseFormat(name string) (Format, error) {
	switch f := Format(name); f {
	case Text, CSV, JSON:
		return f, nil
	}
	return "", fmt.Errorf("“%s” is not a format; use text, csv or json", name)
}

// Table says what is answered to a value.
type Table struct {
	// Header names the columns; the first is the value's own.
	Header []string
	// Read fills the row with the columns after the first. It is called from
	// several goroutines at once.
	Read func(value string, row *Row)
	// Say appends the row as one readable line, without its end.
	Say func(dst []byte, value string, row *Row) []byte
}

const byteOrderMark = "\ufeff"

// Values answers each value of a list.
func (t Table) Values(values []string, out io.Writer, format Format) error {
	b := t.head(nil, format)
	var row Row
	for _, v := range values {
		b = t.answer(b, v, &row, format)
	}
	_, err := out.Write(b)
	return err
}

// Stream answers each line of in, blank ones too.
func (t Table) Stream(in io.Reader, out io.Writer, format Format) error {
	if head := t.head(nil, format); len(head) > 0 {
		if _, err := out.Write(head); err != nil {
			return err
		}
	}
	return pump(in, out, byteOrderMark, lastLine, func(block string, dst []byte) []byte {
		var row Row
		for len(block) > 0 {
			var line string
			line, block = cutLine(block)
			dst = t.answer(dst, line, &row, format)
		}
		return dst
	})
}

func (t Table) head(dst []byte, format Format) []byte {
	if format != CSV {
		return dst
	}
	for i, name := range t.Header {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = appendCSV(dst, name, ',')
	}
	return append(dst, '\n')
}

func (t Table) answer(dst []byte, value string, row *Row, format Format) []byte {
	row.reset()
	t.Read(value, row)
	switch format {
	case CSV:
		dst = appendCSV(dst, value, ',')
		dst = row.appendCSV(append(dst, ','), ',')
	case JSON:
		dst = append(dst, '{')
		dst = appendJSON(dst, t.Header[0])
		dst = appendJSON(append(dst, ':'), value)
		for i := range row.fields {
			dst = appendJSON(append(dst, ','), t.Header[i+1])
			dst = row.appendJSONField(append(dst, ':'), i)
		}
		dst = append(dst, '}')
	default:
		dst = t.Say(dst, value, row)
	}
	return append(dst, '\n')
}
