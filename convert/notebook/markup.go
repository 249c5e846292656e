package notebook

import (
	"bytes"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// errMarkup: the XML is not well formed.
var errMarkup = errors.New("notebook: damaged markup")

// token is what markup.next has come to.
type token uint8

const (
	startTag token = iota + 1
	endTag
	textRun
)

// markup is a streaming reader of the XML inside notebooks. Workbooks spend
// most of their reading time in XML, and encoding/xml allocates for every
// element, so this reader hands out views of its buffer instead. It reads
// well-formed documents as encoding/xml does; it does not check that the name
// of an end tag is that of its start tag, resolves no entities but the
// predefined and numeric ones, and ignores document types.
type markup struct {
	r        io.Reader
	buf      []byte
	pos, end int
	base     int64 // of buf in the document
	eof      bool
	depth    int
	maxDepth int
	maxToken int
	// name is the local name of the tag, without its prefix; attrs its
	// attributes as written; text a piece of character data, unescaped. They
	// are valid until the next call of next.
	name, attrs, text []byte
	closing           bool  // the start tag just given was an empty element
	start             int64 // where that tag begins in the document
	scratch           []byte
}

const markupDepth = 256

func newMarkup(r io.Reader, maxToken int) *markup {
	return &markup{r: r, buf: make([]byte, 64<<10), maxDepth: markupDepth, maxToken: max(maxToken, 64<<10)}
}

// openMarkup is newMarkup for a document that may be in another encoding
// than UTF-8.
func openMarkup(r io.Reader, maxToken int) (*markup, error) {
	head := make([]byte, 256)
	n, err := io.ReadFull(r, head)
	if err != nil && err != io.ErrUnexpectedEOF {
		if err == io.EOF {
			err = io.ErrUnexpectedEOF
		}
		return nil, err
	}
	head = head[:n]
	r = io.MultiReader(bytes.NewReader(head), r)
	switch {
	case bytes.HasPrefix(head, []byte("\xff\xfe")), bytes.HasPrefix(head, []byte("\xfe\xff")):
		r = transform.NewReader(r, unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder())
	case bytes.HasPrefix(head, []byte("<?xml")):
		if e, ok := attribute(head[:bytes.IndexByte(append(head, '>'), '>')], "encoding"); ok {
			if enc, err := htmlindex.Get(string(e)); err == nil && enc != unicode.UTF8 {
				r = transform.NewReader(r, enc.NewDecoder())
			}
		}
	}
	return newMarkup(r, maxToken), nil
}

// fill reads more, keeping what is unread; false at the end of the input.
func (m *markup) fill() (bool, error) {
	if m.eof {
		return false, nil
	}
	if m.pos > 0 {
		copy(m.buf, m.buf[m.pos:m.end])
		m.base += int64(m.pos)
		m.end -= m.pos
		m.pos = 0
	}
	if m.end == len(m.buf) {
		if len(m.buf) >= 2*m.maxToken {
			return false, errTooBig
		}
		m.buf = append(m.buf, make([]byte, len(m.buf))...)
	}
	n, eof, err := readSome(m.r, m.buf[m.end:])
	m.end += n
	m.eof = eof
	return n > 0 && err == nil, err
}

// next advances to the next tag or piece of text. io.EOF ends a complete
// document; io.ErrUnexpectedEOF a document that stops in the middle.
func (m *markup) next() (token, error) {
	if m.closing {
		m.closing = false
		m.depth--
		return endTag, nil
	}
	for {
		if m.pos == m.end {
			if ok, err := m.fill(); err != nil {
				return 0, err
			} else if !ok {
				if m.depth > 0 {
					return 0, io.ErrUnexpectedEOF
				}
				return 0, io.EOF
			}
		}
		if m.buf[m.pos] != '<' {
			return m.run()
		}
		n, err := m.tagEnd()
		if err != nil {
			return 0, err
		}
		tag := m.buf[m.pos+1 : m.pos+n-1]
		switch {
		case len(tag) == 0:
			return 0, errMarkup
		case tag[0] == '!' || tag[0] == '?':
			if bytes.HasPrefix(tag, []byte("![CDATA[")) {
				m.pos += n
				m.text = tag[8 : len(tag)-2]
				if len(m.text) == 0 {
					continue
				}
				return textRun, nil
			}
			m.pos += n
			continue
		case tag[0] == '/':
			m.pos += n
			m.name = local(bytes.TrimRight(tag[1:], " \t\r\n"))
			m.depth--
			if m.depth < 0 {
				return 0, errMarkup
			}
			return endTag, nil
		}
		m.start = m.base + int64(m.pos)
		m.pos += n
		if tag[len(tag)-1] == '/' {
			m.closing = true
			tag = tag[:len(tag)-1]
		}
		i := 0
		for i < len(tag) && tag[i] != ' ' && tag[i] != '\t' && tag[i] != '\n' && tag[i] != '\r' {
			i++
		}
		m.name, m.attrs = local(tag[:i]), tag[i:]
		m.depth++
		if m.depth > m.maxDepth {
			return 0, errDeep
		}
		return startTag, nil
	}
}

func local(name []byte) []byte {
	if i := bytes.IndexByte(name, ':'); i > 0 && i < len(name)-1 {
		return name[i+1:]
	}
	return name
}

// tagEnd returns the length of the markup at pos, its ">" included. A comment
// or an instruction of any length is passed over piece by piece.
func (m *markup) tagEnd() (int, error) {
	i, quote, square := 1, byte(0), 0
	var until []byte
	for {
		b, last := m.buf[m.pos:m.end], m.eof
		if i == 1 && (len(b) >= 9 || last) {
			switch {
			case bytes.HasPrefix(b, []byte("<!--")):
				until = []byte("-->")
			case bytes.HasPrefix(b, []byte("<![CDATA[")):
				until = []byte("]]>")
			case bytes.HasPrefix(b, []byte("<?")):
				until = []byte("?>")
			}
		}
		switch {
		case until != nil:
			from := max(2, i-2)
			if until[0] == '-' {
				from = max(4, i-2)
			} else if until[0] == ']' {
				from = max(9, i-2)
			}
			if from < len(b) {
				if j := bytes.Index(b[from:], until); j >= 0 {
					return from + j + len(until), nil
				}
			}
			i = len(b)
			if until[0] != ']' && i > 64<<10 {
				// Nothing of it is wanted: keep only its beginning and end.
				keep := copy(m.buf[m.pos+9:], b[len(b)-3:])
				m.base += int64(m.end - (m.pos + 9 + keep))
				m.end = m.pos + 9 + keep
				i = m.end - m.pos
			}
		case i > 1 || len(b) >= 9 || last:
			for ; i < len(b); i++ {
				c := b[i]
				switch {
				case quote != 0:
					if c == quote {
						quote = 0
					}
				case c == '"' || c == '\'':
					quote = c
				case c == '[' && b[1] == '!':
					square++
				case c == ']' && b[1] == '!':
					square--
				case c == '>' && square <= 0:
					return i + 1, nil
				case c == '<' && b[1] != '!':
					return 0, errMarkup
				}
			}
		}
		if last {
			return 0, io.ErrUnexpectedEOF
		}
		if _, err := m.fill(); err != nil {
			return 0, err
		}
	}
}

// run gives the character data up to the next tag, in pieces where it is long.
func (m *markup) run() (token, error) {
	i := bytes.IndexByte(m.buf[m.pos:m.end], '<')
	for i < 0 && m.end-m.pos < 32<<10 {
		ok, err := m.fill()
		if err != nil {
			return 0, err
		}
		if !ok {
			break
		}
		i = bytes.IndexByte(m.buf[m.pos:m.end], '<')
	}
	if i < 0 {
		i = m.end - m.pos
		if !m.eof {
			// Hold back an entity or a character that may be cut in two.
			if j := bytes.LastIndexByte(m.buf[m.pos:m.end], '&'); j > 0 && i-j < 64 {
				i = j
			}
			for k := 1; k <= 4 && k < i; k++ {
				if c := m.buf[m.pos+i-k]; utf8.RuneStart(c) {
					if !utf8.FullRune(m.buf[m.pos+i-k : m.pos+i]) {
						i -= k
					}
					break
				}
			}
			if i > 1 && m.buf[m.pos+i-1] == '\r' {
				i--
			}
		}
	}
	m.text = m.unescape(m.buf[m.pos : m.pos+i])
	m.pos += i
	return textRun, nil
}

// unescape resolves entities and line ends. It returns b itself where there
// is nothing to do.
func (m *markup) unescape(b []byte) []byte {
	if bytes.IndexByte(b, '&') < 0 && bytes.IndexByte(b, '\r') < 0 {
		return b
	}
	m.scratch = appendUnescaped(m.scratch[:0], b)
	return m.scratch
}

func appendUnescaped(dst, b []byte) []byte {
	for i := 0; i < len(b); i++ {
		switch c := b[i]; c {
		case '\r': // XML 1.0, section 2.11: a line end is one line feed
			dst = append(dst, '\n')
			if i+1 < len(b) && b[i+1] == '\n' {
				i++
			}
		case '&':
			j := bytes.IndexByte(b[i:min(len(b), i+64)], ';')
			if j < 0 {
				dst = append(dst, c)
				continue
			}
			r, ok := entity(string(b[i+1 : i+j]))
			if !ok {
				dst = append(dst, c)
				continue
			}
			dst = utf8.AppendRune(dst, r)
			i += j
		default:
			dst = append(dst, c)
		}
	}
	return dst
}

func entity(name string) (rune, bool) {
	switch name {
	case "lt":
		return '<', true
	case "gt":
		return '>', true
	case "amp":
		return '&', true
	case "quot":
		return '"', true
	case "apos":
		return '\'', true
	}
	if !strings.HasPrefix(name, "#") {
		return 0, false
	}
	base, digits := 10, name[1:]
	if strings.HasPrefix(digits, "x") {
		base, digits = 16, digits[1:]
	}
	n, err := strconv.ParseUint(digits, base, 32)
	if err != nil || n > utf8.MaxRune {
		return 0, false
	}
	return rune(n), true
}

// attr returns the value of an attribute of the current start tag by its
// local name.
func (m *markup) attr(name string) (string, bool) {
	b, ok := attribute(m.attrs, name)
	if !ok {
		return "", false
	}
	return validText(appendUnescaped(nil, b)), true
}

// attribute finds an attribute by its local name and returns its value as
// written.
func attribute(attrs []byte, name string) (value []byte, ok bool) {
	for key, value := range attributes(attrs) {
		if string(key) == name {
			return value, true
		}
	}
	return nil, false
}

// attributes iterates over local names and values as written.
func attributes(b []byte) func(yield func(key, value []byte) bool) {
	return func(yield func(key, value []byte) bool) {
		for key, value := range prefixed(b) {
			if !yield(local(key), value) {
				return
			}
		}
	}
}

// prefixed iterates over names with their prefixes and values as written.
func prefixed(b []byte) func(yield func(key, value []byte) bool) {
	return func(yield func(key, value []byte) bool) {
		for {
			eq := bytes.IndexByte(b, '=')
			if eq < 0 {
				return
			}
			key := bytes.TrimSpace(b[:eq])
			if i := bytes.LastIndexAny(key, " \t\r\n"); i >= 0 {
				key = key[i+1:]
			}
			b = bytes.TrimLeft(b[eq+1:], " \t\r\n")
			if len(b) == 0 || b[0] != '"' && b[0] != '\'' {
				return
			}
			end := bytes.IndexByte(b[1:], b[0])
			if end < 0 {
				return
			}
			if !yield(key, b[1:1+end]) {
				return
			}
			b = b[end+2:]
		}
	}
}

// skip passes over the element whose start tag was just given.
func (m *markup) skip() error {
	for depth := m.depth; m.depth >= depth; {
		if _, err := m.next(); err != nil {
			return unexpected(err)
		}
	}
	return nil
}

// inner returns all character data inside the element whose start tag was
// just given, up to limit bytes.
func (m *markup) inner(limit int) (string, error) {
	var b []byte
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return "", unexpected(err)
		}
		if t == textRun {
			b = append(b, m.text...)
			if len(b) > limit {
				return "", errTooBig
			}
		}
	}
	return validText(b), nil
}

// validText copies b to a string; bytes that are no text become U+FFFD.
func validText(b []byte) string {
	if utf8.Valid(b) {
		return string(b)
	}
	return strings.ToValidUTF8(string(b), "\uFFFD")
}

// unexpected: the end of the input inside an element is damage.
func unexpected(err error) error {
	if err == io.EOF {
		return io.ErrUnexpectedEOF
	}
	return err
}
