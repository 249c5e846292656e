package lines

import (
	"bufio"
	"io"
	"strings"
)

// separator stands between the fields of a record.
type separator byte

// likeliest returns the separator that a heading row has most of, outside
// quotes.
func likeliest(head string) separator {
	best, most := separator(','), 0
	for _, s := range []separator{',', ';', '\t'} {
		n := 0
		for rest, more := head, true; more; n++ {
			_, rest, more = s.cutField(rest)
		}
		if n > most {
			best, most = s, n
		}
	}
	return best
}

// cutField takes the first field off a record, raw; more says that another
// follows. A quote opens a field only at its start, as spreadsheets write it.
func (s separator) cutField(record string) (raw, rest string, more bool) {
	i := 0
	if len(record) > 0 && record[0] == '"' {
		i = closing(record)
	}
	if at := strings.IndexByte(record[i:], byte(s)); at >= 0 {
		return record[:i+at], record[i+at+1:], true
	}
	return record, "", false
}

// closing returns the length of a quoted field that begins the text, with both
// quotes; all of it where the closing one is missing.
func closing[T string | []byte](text T) int {
	for i := 1; i < len(text); i++ {
		if text[i] != '"' {
			continue
		}
		if i+1 < len(text) && text[i+1] == '"' {
			i++
			continue
		}
		return i + 1
	}
	return len(text)
}

// recordEnd returns the length of the first record with its line end; ok is
// false where the text stops before that.
func recordEnd[T string | []byte](text T, comma separator) (n int, ok bool) {
	start := true
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '\n':
			return i + 1, true
		case c == '"' && start:
			i += closing(text[i:]) - 1
			start = false
		default:
			start = c == byte(comma)
		}
	}
	return len(text), false
}

// lastRecord returns the length of the block's whole records.
func (s separator) lastRecord(block []byte) (whole int) {
	for {
		n, ok := recordEnd(block[whole:], s)
		if !ok {
			return whole
		}
		whole += n
	}
}

// readRecord reads the heading row, whose separator is not known yet.
func readRecord(in *bufio.Reader) ([]byte, error) {
	var record []byte
	for {
		line, err := in.ReadSlice('\n')
		if record = append(record, line...); len(record) > LongestLine {
			return nil, &TooLong{1}
		}
		if err == bufio.ErrBufferFull {
			continue
		}
		if err == io.EOF {
			return record, nil
		}
		if err != nil {
			return nil, err
		}
		text := strings.TrimPrefix(string(record), byteOrderMark)
		if _, ok := recordEnd(text, likeliest(text)); ok {
			return record, nil
		}
	}
}

// cutEnd parts a record from its line end.
func cutEnd(record string) (text, end string) {
	text = strings.TrimSuffix(record, "\n")
	text = strings.TrimSuffix(text, "\r")
	return text, record[len(text):]
}

// unquote returns what a raw field says.
func unquote(raw string) string {
	if len(raw) == 0 || raw[0] != '"' {
		return raw
	}
	end := closing(raw)
	body := raw[1:end]
	body = strings.TrimSuffix(body, `"`)
	return strings.ReplaceAll(body, `""`, `"`) + raw[end:]
}
