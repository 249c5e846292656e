package layout

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// Entries returns the decision as [[notebook]] entries for the project file,
// one for each list or table. Given back in Options.Overrides they lead to the
// same reading.
func (p *Plan) Entries() []Entry {
	var out []Entry
	for _, b := range p.blocks {
		e := Entry{File: filepath.Base(p.page.file), Sheet: p.page.sheet, Page: string(b.kind)}
		if b.kind == kindNone {
			out = append(out, e)
			continue
		}
		e.Headings = "none"
		if n := len(b.headRows); n == 1 {
			e.Headings = itoa(b.headRows[0])
		} else if n > 1 {
			e.Headings = fmt.Sprintf("%d-%d", b.headRows[0], b.headRows[n-1])
		}
		e.Rows = itoa(b.first) + "-"
		if b.last > 0 {
			e.Rows += itoa(b.last)
		}
		e.Columns = map[string]string{}
		blanks := false
		held := slices.ContainsFunc(b.cols, func(c column) bool { return c.doubt.State >= reading.Held })
		for i := range b.cols {
			c := &b.cols[i]
			if c.left == leaveEmpty {
				continue
			}
			if c.doubt.State >= reading.Held || held && (c.left == leaveSecond || c.left == leaveNotUnderstood) {
				continue // left to be judged again, or the question would go with it
			}
			e.Columns[notebook.ColumnName(c.col+1)] = b.role(i)
			if c.carry && c.used() && !isName(c.meaning) && !slices.Contains(e.CarryDown, string(c.meaning)) {
				e.CarryDown = append(e.CarryDown, string(c.meaning))
				blanks = blanks || c.stats.blank > 0 || c.stats.ditto > 0
			}
		}
		if !blanks {
			e.CarryDown = nil // nothing to carry
		}
		for i := range b.facts.values {
			v := &b.facts.values[i]
			if e.Facts == nil {
				e.Facts = map[string]string{}
			}
			if _, ok := e.Facts[string(v.Meaning)]; !ok {
				e.Facts[string(v.Meaning)] = v.Text
			}
		}
		if b.facts.year > 0 || b.facts.month > 0 {
			if e.Facts == nil {
				e.Facts = map[string]string{}
			}
			if b.facts.year > 0 {
				e.Facts["year"] = itoa(b.facts.year)
			}
			if b.facts.month > 0 {
				e.Facts["month"] = monthTitles[b.facts.month]
			}
		}
		out = append(out, e)
	}
	return out
}

// role is what a column holds; of a reference put together, which part.
func (b *block) role(i int) string {
	c := &b.cols[i]
	if c.left == "" && c.meaning == GridRef && c.part == whole && len(b.cols[c.master].joined) == 2 {
		if c.master == i {
			return partNames[partLetters]
		}
		return partNames[partFigures]
	}
	return c.role()
}

// role is what the column holds, in the words of Entry.Columns.
func (c *column) role() string {
	switch {
	case c.left != "":
		return string(Ignored)
	case c.part != whole && c.part != partWeekday:
		return partNames[c.part]
	case c.meaning == Term:
		return "term " + c.term
	case c.trap:
		return roleTrap
	case c.meaning == Count:
		return strings.TrimSpace("count " + strings.TrimSpace(c.sex+" "+c.stage))
	}
	return string(c.meaning)
}
