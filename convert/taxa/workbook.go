package taxa

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"strings"

	"fieldfare/convert/notebook"
)

// isWorkbook tells a workbook by what its file begins with, whatever its name
// ends in: a zip archive (.xlsx, .ods) or a compound file (.xls).
func isWorkbook(data []byte) bool {
	return bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"))
}

// loadWorkbook reads the sheet with the longest list.
func loadWorkbook(path, name string) (*List, []Problem, error) {
	book, err := notebook.Open(context.Background(), path, notebook.Options{})
	if err != nil {
		return nil, nil, err
	}
	defer book.Close()
	var list *List
	var problems []Problem
	failed := fmt.Errorf("the taxon list %s has no names", name)
	for _, sheet := range book.Sheets() {
		l, p, err := loadSheet(sheet, name)
		var other *notebook.Problem
		switch {
		case errors.As(err, &other):
			return nil, nil, err
		case err != nil:
			failed = err
		case l.Len() > 0 && (list == nil || l.Len() > list.Len()):
			list, problems = l, p
		}
	}
	if list == nil {
		return nil, nil, failed
	}
	return list, problems, nil
}

func loadSheet(sheet notebook.Sheet, name string) (*List, []Problem, error) {
	t := tableReader{b: newBuilder(name)}
	t.b.sheet, t.b.cells = sheet.Name(), true
	var cells []string
	err := sheet.Walk(func(r *notebook.Row) error {
		cells = cells[:0]
		for i := range r.Cells {
			cells = append(cells, cellText(r.Cells, i))
		}
		t.add(r.Number, cells)
		return nil
	})
	if err != nil {
		return nil, nil, err
	}
	if err := t.finish(); err != nil {
		return nil, nil, err
	}
	l, problems := t.b.finish()
	return l, problems, nil
}

// cellText is the text of a cell: of one that is merged with cells to its left
// nothing, since they say it once for all; of one merged with cells above what
// those say, as a family's name beside its species.
func cellText(cells []notebook.Cell, i int) string {
	c := &cells[i]
	if c.Spread && i > 0 && cells[i-1].Text == c.Text {
		return ""
	}
	return c.Text
}

// Where says where in its list a problem lies: "moths.csv, line 7", or in a
// workbook "moths.ods, sheet “Moths”, cell D7" or, of a whole row, "row 7".
func (p Problem) Where() string {
	var b strings.Builder
	b.WriteString(p.Source)
	if p.Sheet != "" {
		b.WriteString(", sheet “" + p.Sheet + "”")
	}
	switch {
	case p.Cell != "":
		b.WriteString(", cell " + p.Cell)
	case p.Sheet != "":
		fmt.Fprintf(&b, ", row %d", p.Line)
	default:
		fmt.Fprintf(&b, ", line %d", p.Line)
	}
	return b.String()
}
