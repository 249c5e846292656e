// Package terms reads pages whose every column is headed by a Darwin Core
// term: tables of archives, and Fieldfare's own copies of a submission as
// CSV, workbook or GeoJSON. On such a page nothing has to be worked out, so a
// cell is taken for exactly what its heading says.
package terms

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// Page is a page of terms. It reads as a layout.Plan does.
type Page struct {
	file, name string
	columns    []column
	heads      int // row of the headings
	entry      layout.Entry
	archive    bool
	// leftOut is why nothing of the page is read; empty for any other.
	leftOut string
	// at is where a term stands, -1 where it does not.
	at map[string]int
}

type column struct {
	heading string
	term    string // empty where the heading is no term
	meaning layout.Meaning
	// first is the column that has the same term before it, -1 where none.
	first int
	// about is the term of a measurement that stands in the column, empty for
	// its value.
	about string
	// ignored: the project file leaves it out.
	ignored bool
}

// Options say how a page is told.
type Options struct {
	// Archive: the page is a table of an archive, so it is one of terms
	// whatever else it has.
	Archive bool
	// LeftOut is why nothing of the page is read; empty for any other.
	LeftOut string
	// Entry is the project file's word on the page: one that calls it a page of
	// terms settles that, and its columns, facts and rows to skip go before
	// the page's own.
	Entry layout.Entry
	// Words leads from a heading in words to its term; empty where it is none.
	Words func(heading string) string
}

var errEnough = errors.New("seen enough")

// Open tells whether the sheet is a page of terms, by its first row that is
// not blank. Outside an archive every heading must be one, at least two of
// them spelt as only terms are ("eventDate"), and the page must say what was
// seen.
func Open(s notebook.Sheet, o Options) (*Page, error) {
	p := &Page{file: s.File(), name: s.Name(), at: map[string]int{}, archive: o.Archive, leftOut: o.LeftOut, entry: o.Entry}
	err := s.Walk(func(r *notebook.Row) error {
		for i := range r.Cells {
			if strings.TrimSpace(r.Cells[i].Text) != "" {
				p.heads = r.Number
				p.read(r, o)
				return errEnough
			}
		}
		return nil
	})
	if err != nil && !errors.Is(err, errEnough) {
		return nil, err
	}
	if !p.isOne(o) {
		return nil, nil
	}
	return p, nil
}

func (p *Page) read(r *notebook.Row, o Options) {
	chosen := o.Entry.TermColumns()
	for i := range r.Cells {
		h := strings.TrimSpace(r.Cells[i].Text)
		c := column{heading: h, first: -1}
		name, said := chosen[notebook.ColumnName(i+1)]
		if said && name == "" {
			c.ignored = true
			p.columns = append(p.columns, c)
			continue
		}
		if !said {
			name = h
		}
		if term := termOf(name, o); term != "" {
			if first, twice := p.at[term]; twice {
				c.first = first
			} else {
				p.at[term] = i
			}
			c.term, c.meaning = term, meaningOf(term)
		} else if kind, about, event, found := notebook.ParseMeasurementHeading(h); found {
			c.heading, c.about, c.meaning = kind, about, layout.Measurement
			if event {
				c.meaning = layout.Temperature
			}
		} else if furtherTerm(h) {
			c.meaning = layout.Term
		}
		p.columns = append(p.columns, c)
	}
}

// termOf returns the term that a heading names, with or without its name
// space; empty where it names none.
func termOf(heading string, o Options) string {
	bare := heading
	if i := strings.LastIndexAny(bare, ":/#"); i >= 0 && !strings.ContainsAny(bare[i+1:], " ") {
		bare = bare[i+1:]
	}
	if _, ok := dwc.TermIndex(bare); ok {
		return bare
	}
	if o.Words != nil {
		return o.Words(heading)
	}
	return ""
}

// furtherTerm tells whether a heading is one of Darwin Core's terms that a
// record has no place for; it is kept among the dynamic properties.
func furtherTerm(heading string) bool {
	t, exact, ok := dwc.Closest(heading)
	return ok && exact && t.Known()
}

// meaningOf is the meaning by which a term is read. A time is kept as stated,
// since the date has it already, and an id of a taxon is no checklist number.
func meaningOf(term string) layout.Meaning {
	if term == "eventTime" || term == "taxonID" {
		return layout.Term
	}
	return layout.MeaningOf(term)
}

func (p *Page) isOne(o Options) bool {
	spelt, other := 0, 0
	for i := range p.columns {
		c := &p.columns[i]
		switch {
		case c.ignored:
		case c.heading != "" && c.meaning == "":
			other++
		case c.term != "" && strings.ToLower(c.term) != c.term && strings.HasSuffix(c.heading, c.term):
			spelt++
		}
	}
	if o.Entry.Page == layout.Terms {
		return len(p.at) > 0
	}
	if o.Archive {
		return spelt >= 1 || o.LeftOut != ""
	}
	_, name := p.at["scientificName"]
	_, vernacular := p.at["vernacularName"]
	_, id := p.at["occurrenceID"]
	return spelt >= 2 && other == 0 && (name || vernacular) && (id || spelt >= 3)
}

// Has tells whether the page has a term.
func (p *Page) Has(term string) bool { _, found := p.at[term]; return found }

// Print writes how the page is read.
func (p *Page) Print(w io.Writer) {
	title := filepath.Base(p.file)
	if p.name != "" {
		title += ", " + p.name
	}
	fmt.Fprintf(w, "%s: a page in Darwin Core's terms, headings in row %d\n", title, p.heads)
	if p.leftOut != "" {
		fmt.Fprintf(w, "  left out: %s\n", p.leftOut)
		return
	}
	for i := range p.columns {
		c := &p.columns[i]
		said := c.term
		switch {
		case c.heading == "":
			continue
		case c.ignored:
			said = layout.LeftOut
		case c.meaning == "":
			said = "not understood"
		case c.meaning == layout.Term && c.term == "":
			said = "dynamicProperties"
		case c.term == "":
			said = "measurement"
		}
		fmt.Fprintf(w, "  %-3s %-32s %s\n", notebook.ColumnName(i+1), c.heading, said)
	}
}

// Says reports whether a column of the page has the meaning; any column that
// names a taxon counts as a name.
func (p *Page) Says(m layout.Meaning) bool {
	for i := range p.columns {
		switch p.columns[i].meaning {
		case m:
			return true
		case layout.Scientific, layout.Vernacular, layout.TaxonNumber:
			if m == layout.Taxon {
				return true
			}
		}
	}
	return false
}

// Entries returns the reading in the form of the project file.
func (p *Page) Entries() []layout.Entry {
	if p.leftOut != "" {
		return nil
	}
	e := layout.Entry{File: filepath.Base(p.file), Sheet: p.name, Page: layout.Terms, Columns: map[string]string{}}
	for i := range p.columns {
		switch c := &p.columns[i]; {
		case c.term != "":
			e.Columns[notebook.ColumnName(i+1)] = "term " + c.term
		case c.ignored:
			e.Columns[notebook.ColumnName(i+1)] = string(layout.Ignored)
		}
	}
	return []layout.Entry{e}
}

// notUnderstood notes the columns that are left out.
func (p *Page) notUnderstood() []layout.Note {
	var notes []layout.Note
	for i := range p.columns {
		c := &p.columns[i]
		at := notebook.Ref{Col: i + 1, Row: p.heads}
		if c.first >= 0 {
			notes = append(notes, layout.Note{
				Verdict: reading.QueryOf("column-repeated", fmt.Sprintf("Column %s, headed “%s”, repeats the term of column %s: it is read in rows where the first has nothing, and left out in others.", notebook.ColumnName(at.Col), c.heading, notebook.ColumnName(c.first+1))),
				Ref:     at, Text: c.heading,
			})
		} else if c.heading != "" && c.meaning == "" && !c.ignored {
			notes = append(notes, layout.Note{
				Verdict: reading.QueryOf("column-not-understood", fmt.Sprintf("Column %s, headed “%s”, is no Darwin Core term of a record and its cells are left out. Say in the project file what it holds.", notebook.ColumnName(i+1), c.heading)),
				Ref:     at, Text: c.heading,
			})
		}
	}
	return notes
}
