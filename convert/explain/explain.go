// Package explain answers how one value would be read, and why: the readers
// of dates, counts and names with nothing around them.
package explain

import (
	"fmt"
	"strings"
	"sync"

	"fieldfare/convert/lines"
	"fieldfare/convert/reading"
	"fieldfare/convert/tally"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
)

// The columns after the value's own.
const (
	colState = iota
	colReading
	colMessage
)

// Table returns the answers of a reader: the state, the reading in its
// Darwin Core form, and what there is to say.
func Table(read func(value string) (read string, verdict reading.Verdict)) lines.Table {
	return lines.Table{
		Header: []string{"value", "state", "reading", "message"},
		Read: func(value string, row *lines.Row) {
			r, v := read(value)
			row.Text(v.State.String())
			row.Text(r)
			row.Text(v.Message)
		},
		Say: func(dst []byte, value string, row *lines.Row) []byte {
			if strings.TrimSpace(value) == "" {
				return dst
			}
			dst = fmt.Appendf(dst, "%s: %s", value, row.Field(colState))
			if r := row.Field(colReading); len(r) > 0 {
				dst = fmt.Appendf(dst, ", %s", r)
			}
			if m := row.Field(colMessage); len(m) > 0 {
				dst = fmt.Appendf(dst, " (%s)", m)
			}
			return dst
		},
	}
}

// Dates answers with the eventDate.
func Dates(o when.Options) lines.Table {
	return Table(func(value string) (string, reading.Verdict) {
		r := when.Read(value, o)
		r.Message = r.Explain()
		return r.EventDate, r.Verdict
	})
}

// Counts answers with the Darwin Core terms that the count would fill, as
// JSON.
func Counts(o tally.Options) lines.Table {
	return Table(func(value string) (string, reading.Verdict) {
		r := tally.Read(value, o)
		return r.JSON(), r.Verdict
	})
}

// Names answers with the accepted scientificName. With steps, the message
// tells every step that led to it.
func Names(index *taxa.Index, c taxa.Context, steps bool) lines.Table {
	matchers := sync.Pool{New: func() any { return index.NewMatcher() }}
	return Table(func(value string) (string, reading.Verdict) {
		m := matchers.Get().(*taxa.Matcher)
		defer matchers.Put(m)
		w := taxa.Written{Name: value}
		r := m.Match(w, c)
		if steps {
			_, said := m.Explain(w, c)
			r.Message = strings.Join(said, " ")
		} else if r.Message == "" {
			r.Message = r.Remarks
		}
		if r.State == reading.Held || r.Taxon == nil {
			return "", r.Verdict
		}
		return r.Taxon.ScientificName, r.Verdict
	})
}
