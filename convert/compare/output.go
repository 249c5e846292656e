package compare

import (
	"encoding/json"
	"fmt"
	"io"

	"fieldfare/convert/report/book"

	"github.com/xuri/excelize/v2"
)

// WriteText writes the result for reading on a screen.
func (r *Result) WriteText(w io.Writer) error {
	var err error
	say := func(format string, args ...any) {
		if err == nil {
			_, err = fmt.Fprintf(w, format, args...)
		}
	}
	say("%d new, %d changed, %d withdrawn, %d unchanged\n", len(r.New), len(r.Changed), len(r.Withdrawn), r.Same)
	if r.ChangesOnly {
		say("The new submission holds only what is new or changed since an earlier one; what is withdrawn stands in the list beside it.\n")
	}
	for _, part := range r.parts() {
		for _, record := range part.records {
			say("%s: %s\n", part.name, record.line())
			for _, c := range record.Changes {
				say("    %s: %q -> %q\n", c.Term, c.Old, c.New)
			}
		}
	}
	for _, id := range r.Repeated {
		say("Take care: the id %s stands more than once in a submission; only the first of its records was compared.\n", id)
	}
	return err
}

func (r Record) line() string {
	return fmt.Sprintf("%s, %s, %s (%s)", orNone(r.What), orNone(r.When), orNone(r.Where), r.ID+r.EventID)
}

func orNone(s string) string {
	if s == "" {
		return "not stated"
	}
	return s
}

type part struct {
	name    string
	records []Record
}

func (r *Result) parts() []part {
	return []part{{"new", r.New}, {"changed", r.Changed}, {"withdrawn", r.Withdrawn}}
}

// WriteJSON writes the result as indented JSON.
func (r *Result) WriteJSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(r)
}

// WriteWorkbook writes the result as a workbook with a page for each of new,
// changed and withdrawn, one row a record or, where changed, a term.
func (r *Result) WriteWorkbook(w io.Writer) error {
	f := excelize.NewFile()
	defer f.Close()
	for i, part := range r.parts() {
		if i == 0 {
			if err := f.SetSheetName("Sheet1", part.name); err != nil {
				return err
			}
		} else if _, err := f.NewSheet(part.name); err != nil {
			return err
		}
		s, err := f.NewStreamWriter(part.name)
		if err != nil {
			return err
		}
		for col, width := range []float64{44, 32, 24, 32, 28, 32, 32} {
			if err := s.SetColWidth(col+1, col+1, width); err != nil {
				return err
			}
		}
		heading := []any{"occurrenceID", "scientificName", "eventDate", "locality"}
		if part.name == "changed" {
			heading = append(heading, "term", "old", "new")
		}
		heading = append(heading, "eventID")
		row := 1
		add := func(values []any) error {
			cell, err := excelize.CoordinatesToCellName(1, row)
			if err != nil {
				return err
			}
			row++
			return s.SetRow(cell, values)
		}
		if err := add(heading); err != nil {
			return err
		}
		for _, record := range part.records {
			values := []any{record.ID, record.What, record.When, record.Where}
			if part.name != "changed" {
				if err := add(append(values, record.EventID)); err != nil {
					return err
				}
			}
			for _, c := range record.Changes {
				if err := add(append(values[:4:4], c.Term, c.Old, c.New, record.EventID)); err != nil {
					return err
				}
			}
		}
		if err := s.Flush(); err != nil {
			return err
		}
	}
	return book.Write(f, w, "")
}
