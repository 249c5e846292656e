package notebook

import (
	"bytes"
	"strconv"
	"strings"
)

// odsText is what stands inside a cell: its paragraphs and its annotation.
type odsText struct {
	text, comment string
	struck        strike
}

// read reads the content of the cell whose start tag was just given.
func (x *odsText) read(m *markup, limit int, struck map[string]bool) error {
	*x = odsText{}
	if m.closing {
		_, err := m.next()
		return err
	}
	var p paragraphs
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return unexpected(err)
		}
		if t != startTag {
			continue
		}
		switch string(m.name) {
		case "p", "h":
			err = p.read(m, limit, struck)
		case "annotation":
			x.comment, err = annotation(m, limit)
		default: // a drawing, a table within the cell
			err = m.skip()
		}
		if err != nil {
			return err
		}
	}
	x.text, x.struck = validText(p.text), p.struck
	return nil
}

func annotation(m *markup, limit int) (string, error) {
	var p paragraphs
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return "", unexpected(err)
		}
		if t != startTag {
			continue
		}
		switch string(m.name) {
		case "p", "h":
			err = p.read(m, limit, nil)
		case "creator", "date", "date-string", "sender-initials":
			err = m.skip()
		}
		if err != nil {
			return "", err
		}
	}
	return strings.TrimSpace(validText(p.text)), nil
}

// paragraphs collects text:p elements, one a line.
type paragraphs struct {
	text   []byte
	some   bool // a paragraph has been read
	struck strike
}

// read reads one paragraph. White space with a line end or a tab in it is an
// accident of how the XML is laid out and counts as one space, none at the
// ends (OpenDocument 1.3, part 3, section 6.1.2). Plain spaces are kept, all of
// them: programs write them as they are, whatever that section says.
func (p *paragraphs) read(m *markup, limit int, struck map[string]bool) error {
	if p.some {
		p.text = append(p.text, '\n')
	}
	p.some = true
	w := words{text: p.text, from: len(p.text)}
	var through []strike // per open span
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return unexpected(err)
		}
		now := styledText
		if len(through) > 0 {
			now = through[len(through)-1]
		}
		switch {
		case t == textRun:
			if w.add(m.text) {
				p.struck |= now
			}
		case t == endTag && len(through) > 0:
			through = through[:max(0, m.depth-depth)]
		case t == startTag:
			switch string(m.name) {
			case "s":
				n := 1
				if v, ok := attribute(m.attrs, "c"); ok {
					n, _ = strconv.Atoi(string(v))
				}
				if n > limit || n < 0 {
					return errTooBig
				}
				w.keep(strings.Repeat(" ", n))
			case "tab":
				w.keep("\t")
			case "line-break":
				w.keep("\n")
			case "span":
				if v, ok := m.attr("style-name"); ok {
					if s, known := struck["text/"+v]; known && s {
						now = struckText
					} else if known {
						now = plainText
					}
				}
			case "annotation", "ruby-text", "note-citation", "bookmark", "frame":
				if err := m.skip(); err != nil {
					return err
				}
				continue
			}
			through = append(through, now)
		}
		if len(w.text)+len(w.space) > limit {
			return errTooBig
		}
	}
	p.text = w.end()
	return nil
}

// words collects the text of a paragraph.
type words struct {
	text  []byte
	from  int
	space []byte // white space that has not been written yet
}

// add appends character data and reports whether it has more than white
// space.
func (w *words) add(b []byte) bool {
	some := false
	for _, c := range b {
		switch c {
		case ' ', '\t', '\n', '\r':
			w.space = append(w.space, c)
			continue
		}
		w.flush()
		w.text = append(w.text, c)
		some = true
	}
	return some
}

// keep appends white space that is there on purpose.
func (w *words) keep(s string) {
	w.flush()
	w.text = append(w.text, s...)
}

func (w *words) flush() {
	if bytes.ContainsAny(w.space, "\t\r\n") {
		w.space = w.space[:1]
		w.space[0] = ' '
		if len(w.text) == w.from {
			w.space = w.space[:0]
		}
	}
	w.text = append(w.text, w.space...)
	w.space = w.space[:0]
}

// end writes the plain spaces that end a paragraph.
func (w *words) end() []byte {
	if !bytes.ContainsAny(w.space, "\t\r\n") {
		w.flush()
	}
	return w.text
}
