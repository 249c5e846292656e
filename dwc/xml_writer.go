package dwc

import (
	"bytes"
	"encoding/xml"
	"strings"
)

// xmlWriter writes an XML document, two spaces a level.
type xmlWriter struct {
	b    []byte
	path []string
}

func (x *xmlWriter) declaration() {
	x.b = append(x.b, `<?xml version="1.0" encoding="UTF-8"?>`+"\n"...)
}

func (x *xmlWriter) indent() {
	x.b = append(x.b, strings.Repeat("  ", len(x.path))...)
}

func (x *xmlWriter) tag(name string, attrs []string, end string) {
	x.b = append(x.b, '<')
	x.b = append(x.b, name...)
	for i := 0; i < len(attrs); i += 2 {
		x.b = append(x.b, ' ')
		x.b = append(x.b, attrs[i]...)
		x.b = append(x.b, '=', '"')
		x.escape(attrs[i+1])
		x.b = append(x.b, '"')
	}
	x.b = append(x.b, end...)
}

// open starts an element; attrs are names and values in turn.
func (x *xmlWriter) open(name string, attrs ...string) {
	x.indent()
	x.tag(name, attrs, ">\n")
	x.path = append(x.path, name)
}

// close ends the element that was opened last.
func (x *xmlWriter) close() {
	last := len(x.path) - 1
	name := x.path[last]
	x.path = x.path[:last]
	x.indent()
	x.b = append(x.b, "</"+name+">\n"...)
}

func (x *xmlWriter) empty(name string, attrs ...string) {
	x.indent()
	x.tag(name, attrs, "/>\n")
}

// text writes an element with text in it, and nothing where there is none.
func (x *xmlWriter) text(name, value string, attrs ...string) {
	if strings.TrimSpace(value) == "" {
		return
	}
	x.indent()
	x.tag(name, attrs, ">")
	x.escape(value)
	x.b = append(x.b, "</"+name+">\n"...)
}

func (x *xmlWriter) escape(value string) {
	var out bytes.Buffer
	// A bytes.Buffer never fails to take what is written to it. Characters
	// that XML cannot hold come out as U+FFFD.
	_ = xml.EscapeText(&out, []byte(value))
	x.b = append(x.b, out.Bytes()...)
}
