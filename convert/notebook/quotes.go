package notebook

import (
	"bytes"
	"slices"
)

// A quoted text that has not come to its end after so many bytes, or has run
// over a line and into so many stray quotes, was never closed.
const (
	quoteWindow = 1 << 20
	mostStrays  = 16
)

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
		alone, doubtful := r.single(b, a, single, len(fields))
		if alone {
			r.repaired = "a double quote is opened and not closed on its line; it was read as part of the text"
			return single.size, false
		}
		r.data, r.fields = whole, fields
		r.crossed = true
		if doubtful {
			r.repaired = "a quoted text runs over several lines, each of which could be a row of its own"
		}
	}
	if a.stray {
		r.repaired = "a double quote stands inside a quoted text; it was read as part of the text"
	}
	return a.size, false
}

// single decides whether a record whose quoted text runs over the end of the
// line is better read as ending with its line (alone), and whether the other
// reading is in doubt.
func (r *records) single(b []byte, multi, single parsed, multiFields int) (alone, doubtful bool) {
	singleFields := len(r.fields)
	switch {
	case multi.unclosed:
		return true, false
	case multi.stray:
		return multiFields != r.expected || singleFields == r.expected, false
	case r.expected == 0 || singleFields != r.expected:
		return false, false
	case multiFields != r.expected:
		return true, false
	}
	// Both fit. Text of several lines that each happen to have as many
	// delimiters as a whole record is not likely.
	data, fields := r.data, r.fields
	defer func() { r.data, r.fields = data, fields }()
	r.own, r.fields = nil, nil
	lines := 0
	for at := single.size; at < multi.size; lines++ {
		p := r.parse(b[at:], false)
		if p.more || len(r.fields) != r.expected {
			return false, false
		}
		at += p.size
	}
	return r.expected > 3 || r.expected == 3 && lines > 1 || lines > 3, true
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
