package notebook

import (
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
	x.text = validText(p.text)
	switch {
	case p.any && p.all():
		x.struck = allStruck
	case p.any:
		x.struck = partStruck
	}
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
	text []byte
	some bool // a paragraph has been read
	// any: some text is struck through; plain: some is not.
	any, plain bool
}

func (p *paragraphs) all() bool { return !p.plain }

// read reads one paragraph. White space is collapsed as OpenDocument 1.3,
// part 3, section 6.1.2 says: what counts is written as elements.
func (p *paragraphs) read(m *markup, limit int, struck map[string]bool) error {
	if p.some {
		p.text = append(p.text, '\n')
	}
	p.some = true
	from := len(p.text)
	space := false     // white space is waiting to be written
	var through []bool // per open span
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return unexpected(err)
		}
		switch {
		case t == textRun:
			for _, c := range m.text {
				switch c {
				case ' ', '\t', '\n', '\r':
					space = true
					continue
				}
				if space && len(p.text) > from {
					p.text = append(p.text, ' ')
				}
				space = false
				p.text = append(p.text, c)
				if len(through) > 0 && through[len(through)-1] {
					p.any = true
				} else {
					p.plain = true
				}
			}
		case t == endTag && len(through) > 0:
			through = through[:max(0, m.depth-depth)]
		case t == startTag:
			if space && len(p.text) > from {
				p.text = append(p.text, ' ')
				space = false
			}
			before := len(through) > 0 && through[len(through)-1]
			switch string(m.name) {
			case "s":
				n := 1
				if v, ok := attribute(m.attrs, "c"); ok {
					n, _ = strconv.Atoi(string(v))
				}
				if n > limit || n < 0 {
					return errTooBig
				}
				p.text = append(p.text, strings.Repeat(" ", n)...)
			case "tab":
				p.text = append(p.text, '\t')
			case "line-break":
				p.text = append(p.text, '\n')
			case "span":
				v, ok := m.attr("style-name")
				if ok {
					before = struck["text/"+v]
				}
			case "annotation", "ruby-text", "note-citation", "bookmark", "frame":
				if err := m.skip(); err != nil {
					return err
				}
				continue
			}
			through = append(through, before)
		}
		if len(p.text) > limit {
			return errTooBig
		}
	}
	return nil
}
