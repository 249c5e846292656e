package notebook

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/ianaindex"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/encoding/unicode/utf32"
	"golang.org/x/text/transform"
)

// textEncoding is how the bytes of a delimited file stand for characters.
type textEncoding struct {
	name string
	skip int // bytes of a byte order mark
	// wide turns the bytes to UTF-8 before they are split (UTF-16, East Asian
	// encodings); nil where a delimiter's byte is always that delimiter.
	wide encoding.Encoding
	// table is a single-byte encoding, applied to fields after the split.
	table *charmap.Charmap
	// mixed: UTF-8, but records that are not valid are read by table.
	mixed bool
	note  string
}

// textSurvey is what one pass over a delimited file's bytes tells.
type textSurvey struct {
	nul, control   int
	size           int64
	valid, invalid int // UTF-8 sequences beyond ASCII
	high           [256]int
	crs, lfs, crlf int
	quotes         bool
}

// add counts one block; blocks are cut at any byte but the last few bytes of
// each may be given again by the caller when they cut a character in two.
func (s *textSurvey) add(b []byte, last bool) (rest []byte) {
	s.size += int64(len(b))
	s.quotes = s.quotes || bytes.IndexByte(b, '"') >= 0
	s.lfs += bytes.Count(b, []byte("\n"))
	if bytes.IndexByte(b, '\r') >= 0 {
		s.crs += bytes.Count(b, []byte("\r"))
		s.crlf += bytes.Count(b, []byte("\r\n"))
	}
	for i := 0; i < len(b); {
		for len(b)-i >= 8 && isPlain(binary.LittleEndian.Uint64(b[i:])) {
			i += 8
		}
		if i == len(b) {
			break
		}
		c := b[i]
		if c < utf8.RuneSelf {
			if c < ' ' && c != '\n' && c != '\r' && c != '\t' {
				if c == 0 {
					s.nul++
				}
				s.control++
			}
			i++
			continue
		}
		if !last && !utf8.FullRune(b[i:]) {
			s.size -= int64(len(b) - i)
			return b[i:]
		}
		r, n := utf8.DecodeRune(b[i:])
		if r == utf8.RuneError && n <= 1 {
			s.invalid++
			s.high[c]++
			n = 1
		} else {
			s.valid++
		}
		i += n
	}
	return nil
}

// isPlain reports whether all eight bytes are ASCII and none is a control
// character.
func isPlain(w uint64) bool {
	const ones = 0x0101010101010101
	return (w|(w-0x20*ones)&^w)&(0x80*ones) == 0
}

// surveyText reads all of r.
func surveyText(r io.Reader, check func() error) (s textSurvey, err error) {
	buf := make([]byte, 256<<10)
	kept := 0
	for {
		if err := check(); err != nil {
			return s, err
		}
		n, err := io.ReadFull(r, buf[kept:])
		last := err == io.EOF || err == io.ErrUnexpectedEOF
		if err != nil && !last {
			return s, err
		}
		b := buf[:kept+n]
		crAtEnd := len(b) > 0 && b[len(b)-1] == '\r' && !last
		if crAtEnd {
			b = b[:len(b)-1]
		}
		rest := s.add(b, last)
		kept = copy(buf, rest)
		if crAtEnd {
			buf[kept] = '\r'
			kept++
		}
		if last {
			return s, nil
		}
	}
}

// guessEncoding says how the file is encoded, from its first bytes and the
// survey of all of it.
func guessEncoding(head []byte, s *textSurvey) textEncoding {
	switch {
	case bytes.HasPrefix(head, []byte("\xef\xbb\xbf")):
		e := textEncoding{name: "UTF-8", skip: 3}
		if s.invalid > 0 {
			e.mixed, e.table = true, charmap.Windows1252
			e.note = mixedNote(s)
		}
		return e
	case bytes.HasPrefix(head, []byte("\xff\xfe\x00\x00")):
		return textEncoding{name: "UTF-32", skip: 4, wide: utf32.UTF32(utf32.LittleEndian, utf32.IgnoreBOM)}
	case bytes.HasPrefix(head, []byte("\xff\xfe")):
		return textEncoding{name: "UTF-16", skip: 2, wide: unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)}
	case bytes.HasPrefix(head, []byte("\xfe\xff")):
		return textEncoding{name: "UTF-16", skip: 2, wide: unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)}
	}
	if even, odd := zeros(head); even+odd > len(head)/5 {
		// Latin text in UTF-16 has a zero in every second byte.
		switch {
		case odd > 20*even:
			return textEncoding{name: "UTF-16", wide: unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM),
				note: "It has no byte order mark; it was read as UTF-16 (little-endian) by its zero bytes."}
		case even > 20*odd:
			return textEncoding{name: "UTF-16", wide: unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM),
				note: "It has no byte order mark; it was read as UTF-16 (big-endian) by its zero bytes."}
		}
	}
	switch {
	case s.invalid == 0:
		return textEncoding{name: "UTF-8"}
	case s.valid > 0 && s.valid*10 >= s.invalid:
		return textEncoding{name: "UTF-8", mixed: true, table: charmap.Windows1252, note: mixedNote(s)}
	}
	if macScore(s) > 0 {
		return textEncoding{name: "Mac Roman", table: charmap.Macintosh,
			note: "It is not UTF-8; its letters beyond plain ASCII were read as Mac Roman, the encoding of old Macintosh programs."}
	}
	return textEncoding{name: "Windows-1252", table: charmap.Windows1252,
		note: "It is not UTF-8; its letters beyond plain ASCII were read as Windows-1252."}
}

func mixedNote(s *textSurvey) string {
	return fmt.Sprintf("Most of it is UTF-8, but %d characters are not; the rows that have them were read as Windows-1252.", s.invalid)
}

func zeros(b []byte) (even, odd int) {
	for i, c := range b {
		if c == 0 {
			if i%2 == 0 {
				even++
			} else {
				odd++
			}
		}
	}
	return even, odd
}

// What recorders in Western Europe write beyond ASCII: accented small letters,
// curly quotes, dashes, degree and fraction signs, the pound. Common practice,
// no source.
const (
	likely1252 = "\xe0\xe1\xe2\xe4\xe5\xe6\xe7\xe8\xe9\xea\xeb\xec\xed\xee\xef\xf1\xf2\xf3\xf4\xf6\xf8\xf9\xfa\xfb\xfc\xdf\xc9\xd6\xdc" +
		"\x91\x92\x93\x94\x96\x97\x85\xb0\xbd\xbc\xbe\xa3\xa0\xd7\xb2\x80\xb1\xb5\xb7"
	likelyMac = "\x80\x83\x85\x86\x87\x88\x89\x8a\x8b\x8c\x8d\x8e\x8f\x90\x91\x92\x93\x94\x95\x96\x97\x98\x99\x9a\x9b\x9c\x9d\x9e\x9f" +
		"\xa1\xa3\xa7\xbe\xbf\xca\xd0\xd1\xd2\xd3\xd4\xd5\xc9\xb1\xb5"
)

// macScore is above zero where the bytes make better sense in Mac Roman.
func macScore(s *textSurvey) int {
	score := 0
	for c, n := range s.high {
		if n == 0 {
			continue
		}
		if strings.IndexByte(likely1252, byte(c)) >= 0 {
			score -= n
		}
		if strings.IndexByte(likelyMac, byte(c)) >= 0 {
			score += n
		}
	}
	if score == 0 && s.crs > s.crlf && s.lfs == s.crlf {
		return 1 // only the old Macintosh ended its lines in CR
	}
	return score
}

// namedEncoding is an encoding that the project file asks for.
func namedEncoding(name string, head []byte) (textEncoding, error) {
	e := textEncoding{name: name}
	if bytes.HasPrefix(head, []byte("\xef\xbb\xbf")) {
		e.skip = 3
	}
	clean := strings.ToLower(strings.NewReplacer(" ", "", "_", "-").Replace(name))
	switch clean {
	case "utf-8", "utf8":
		return e, nil
	case "utf-16", "utf16", "utf-16le", "utf-16be":
		order := unicode.LittleEndian
		if clean == "utf-16be" || bytes.HasPrefix(head, []byte("\xfe\xff")) {
			order = unicode.BigEndian
		}
		if bytes.HasPrefix(head, []byte("\xfe\xff")) || bytes.HasPrefix(head, []byte("\xff\xfe")) {
			e.skip = 2
		}
		e.wide = unicode.UTF16(order, unicode.IgnoreBOM)
		return e, nil
	case "macroman", "mac", "mac-roman":
		e.table = charmap.Macintosh
		return e, nil
	case "ansi", "windows", "cp1252":
		e.table = charmap.Windows1252
		return e, nil
	}
	enc, err := htmlindex.Get(clean)
	if err != nil {
		enc, err = ianaindex.IANA.Encoding(clean)
	}
	if err != nil || enc == nil {
		return e, &Problem{
			Found:  fmt.Sprintf("the project file asks for the encoding %q, which is not known", name),
			Advice: "Write utf-8, utf-16, windows-1252, iso-8859-1 or macintosh, or leave it out to have it guessed",
			Cause:  err,
		}
	}
	if table, ok := enc.(*charmap.Charmap); ok {
		e.table = table
	} else {
		e.wide = enc
	}
	return e, nil
}

// reader turns the file's bytes into what records can split.
func (e *textEncoding) reader(r io.Reader) io.Reader {
	if e.wide != nil {
		return transform.NewReader(r, e.wide.NewDecoder())
	}
	return r
}

// text decodes a field or a record that is split already.
func (e *textEncoding) text(b []byte) string {
	if e.table == nil {
		return validText(b)
	}
	if e.mixed && utf8.Valid(b) {
		return string(b)
	}
	out := make([]byte, 0, len(b)+len(b)/8)
	for _, c := range b {
		out = utf8.AppendRune(out, e.table.DecodeByte(c))
	}
	return string(out)
}

// plain reports whether b decodes to itself.
func (e *textEncoding) plain(b []byte) bool {
	if e.table == nil || e.mixed {
		return utf8.Valid(b)
	}
	for _, c := range b {
		if c >= utf8.RuneSelf {
			return false
		}
	}
	return true
}
