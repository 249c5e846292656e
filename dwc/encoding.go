package dwc

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"strings"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/ianaindex"
	"golang.org/x/text/encoding/unicode"
)

// encodingFor finds a character encoding by any of its usual names. As the
// web's encoding standard (https://encoding.spec.whatwg.org/) has it,
// "ISO-8859-1" and "ASCII" mean Windows-1252, of which they are parts.
func encodingFor(name string) (encoding.Encoding, error) {
	name = strings.TrimSpace(name)
	if name == "" {
		return unicode.UTF8, nil
	}
	if e, err := htmlindex.Get(name); err == nil {
		return e, nil
	}
	if e, err := ianaindex.IANA.Encoding(name); err == nil && e != nil {
		return e, nil
	}
	return nil, fmt.Errorf("unknown character encoding %q", name)
}

// decodedText returns a file's text as UTF-8. Where the file starts with a
// byte order mark, the mark decides and not the stated encoding; note then
// says so. Text that is UTF-8 already is handed on unchecked.
func decodedText(r io.Reader, enc encoding.Encoding) (text io.Reader, isUTF8 bool, note string, err error) {
	b := bufio.NewReaderSize(r, 64<<10)
	start, err := b.Peek(3)
	if err != nil && err != io.EOF {
		return nil, false, "", err
	}
	stated := enc == unicode.UTF8
	switch {
	case bytes.HasPrefix(start, []byte("\xef\xbb\xbf")):
		_, _ = b.Discard(3) // just peeked at
		if !stated {
			note = "The file is UTF-8 by its first bytes, and was read so, although another encoding is stated."
		}
		return b, true, note, nil
	case bytes.HasPrefix(start, []byte("\xff\xfe")), bytes.HasPrefix(start, []byte("\xfe\xff")):
		if stated {
			note = "The file is UTF-16 by its first bytes, and was read so, although UTF-8 is stated."
		}
		return unicode.UTF16(unicode.BigEndian, unicode.ExpectBOM).NewDecoder().Reader(b), false, note, nil
	case stated:
		return b, true, "", nil
	}
	return enc.NewDecoder().Reader(b), false, "", nil
}
