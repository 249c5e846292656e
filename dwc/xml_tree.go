package dwc

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"

	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// element is one element of a small XML document, or a stretch of text in
// one, which has no name.
type element struct {
	name     string // without namespace
	space    string
	attrs    []xml.Attr
	children []*element
	text     string
	line     int
}

// attr returns an attribute's value, whatever the letter case of its name.
func (e *element) attr(name string) (string, bool) {
	for _, a := range e.attrs {
		if strings.EqualFold(a.Name.Local, name) {
			return a.Value, true
		}
	}
	return "", false
}

// child returns the first child of a name, or nil.
func (e *element) child(name string) *element {
	if e != nil {
		for _, c := range e.children {
			if c.name == name {
				return c
			}
		}
	}
	return nil
}

// all returns the children of a name.
func (e *element) all(name string) []*element {
	var found []*element
	if e != nil {
		for _, c := range e.children {
			if c.name == name {
				found = append(found, c)
			}
		}
	}
	return found
}

// content returns the trimmed text of the element and everything in it.
func (e *element) content() string {
	if e == nil {
		return ""
	}
	var b strings.Builder
	e.gather(&b)
	return strings.TrimSpace(b.String())
}

func (e *element) gather(b *strings.Builder) {
	b.WriteString(e.text)
	for _, c := range e.children {
		c.gather(b)
	}
}

// readXML reads a document whole, within the limits. External entities and
// document type definitions are never followed.
func readXML(s source, name string, limits Limits) (*element, error) {
	f, err := s.open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, int64(limits.XMLBytes)+1))
	if err != nil {
		return nil, err
	}
	if len(data) > limits.XMLBytes {
		return nil, unreadable(name, 0, "The document is larger than %s, which no such document needs.", size(int64(limits.XMLBytes)))
	}
	return parseXML(name, data, limits)
}

func parseXML(name string, data []byte, limits Limits) (*element, error) {
	data, utf16, err := withoutMark(data)
	if err != nil {
		return nil, &ReadError{File: name, Message: "The document's characters cannot be read. Ask for a sound copy.", Cause: err}
	}
	d := xml.NewDecoder(bytes.NewReader(data))
	d.CharsetReader = func(charset string, in io.Reader) (io.Reader, error) {
		if utf16 {
			return in, nil // it has been turned into UTF-8
		}
		enc, err := encodingFor(charset)
		if err != nil {
			return nil, err
		}
		return enc.NewDecoder().Reader(in), nil
	}
	broken := func(err error) error {
		line, _ := d.InputPos()
		return &ReadError{File: name, Line: line, Cause: err,
			Message: "The document is not well-formed XML from here on: perhaps an element is not ended, or “&” is written for “&amp;”. Ask for a sound copy, or correct it in a text editor."}
	}
	var root *element
	var open []*element
	pieces := 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) && root != nil && len(open) == 0 {
			return root, nil
		}
		if err != nil {
			return nil, broken(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			line, _ := d.InputPos()
			if pieces += 1 + len(token.Attr); pieces > limits.XMLBytes/32 {
				return nil, unreadable(name, line, "The document has more elements than any such document needs.")
			}
			e := &element{name: token.Name.Local, space: token.Name.Space, attrs: token.Copy().Attr, line: line}
			switch {
			case len(open) >= limits.XMLDepth:
				return nil, unreadable(name, line, "More than %d elements are within each other here, which no such document needs.", limits.XMLDepth)
			case len(open) > 0:
				parent := open[len(open)-1]
				parent.children = append(parent.children, e)
			case root == nil:
				root = e
			default:
				return nil, broken(nil)
			}
			open = append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				parent := open[len(open)-1]
				parent.children = append(parent.children, &element{text: string(token)})
			}
		}
	}
}

// withoutMark removes a byte order mark, and turns UTF-16, which is known by
// it, into UTF-8.
func withoutMark(data []byte) (text []byte, wasUTF16 bool, err error) {
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		return data[3:], false, nil
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		text, _, err = transform.Bytes(unicode.UTF16(unicode.BigEndian, unicode.ExpectBOM).NewDecoder(), data)
		return text, true, err
	}
	return data, false, nil
}
