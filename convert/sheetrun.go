package convert

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
)

// sheetRun is one sheet on its way through a run.
type sheetRun struct {
	index int
	file  string
	name  string
	sheet notebook.Sheet
	plan  plan
	// others are the other sheets of the workbook.
	others []notebook.Sheet
	// stated: every column of the page is headed by a Darwin Core term.
	stated bool
	// hasDate and hasName: some column, heading or fact of the page is one.
	hasDate, hasName, hasPlace bool
	year                       int // stated once for the whole page; 0 for none
	// group is what the page is about, and taxa are those known to be on it.
	group string
	taxa  map[*taxa.Taxon]bool

	// order is how the sheet's dates are read, mixed what is to be said of
	// each date that could be read both ways where the sheet contradicts
	// itself.
	order when.Order
	mixed reading.Verdict
	// yearFirst: the sheet's dates are pairs of figures that begin with the
	// year.
	yearFirst bool

	walk int // how often the sheet was walked before

	// evidence and genera gather while the sheet is walked.
	evidence when.Evidence
	lastDate string
	genera   genera
	private  map[int]bool // rows whose texts must not be carried down
	cells    report.Cells
}

// onPage tells whether the taxon is known to stand on the page.
func (sr *sheetRun) onPage(t *taxa.Taxon) bool { return sr.taxa[t] }

// plan says how a sheet is read, and reads it.
type plan interface {
	Walk(s notebook.Sheet, fn func(*layout.Outcome) error) error
	// Says reports whether a column, a heading or a fact of the page has the
	// meaning.
	Says(layout.Meaning) bool
	Entries() []layout.Entry
	Print(w io.Writer)
}

// observe takes in what must be seen in the order of the page.
func (sr *sheetRun) observe(o *layout.Outcome) {
	sr.cells.Used += o.Used
	sr.cells.WithText += o.Used
	for reason, n := range o.Left {
		if sr.cells.Left == nil {
			sr.cells.Left = map[string]int{}
		}
		sr.cells.Left[reason] += n
		sr.cells.WithText += n
	}
	for i := range o.Drafts {
		for j := range o.Drafts[i].Values {
			v := &o.Drafts[i].Values[j]
			switch v.Meaning {
			case layout.Date, layout.EndDate:
				if v.Text != sr.lastDate && v.Kind != notebook.Date {
					sr.lastDate = v.Text
					sr.evidence.Observe(v.Text)
				}
			case layout.Taxon, layout.Scientific:
				sr.genera.observe(v.Text)
			}
		}
	}
}

// missing says that a row lacks a date or a name, and whether that is because
// no column of its page could be one.
func (sr *sheetRun) missing(m layout.Meaning) string {
	if m == layout.Date && !sr.hasDate || m == layout.Taxon && !sr.hasName {
		return fmt.Sprintf("No column of this page could be a %s. Add one, give its heading a plain word such as “%s”, or say which column it is in the project file.", m, strings.ToUpper(string(m[:1]))+string(m[1:]))
	}
	if m == layout.Date {
		return "There is no date. Give the day, the night or at least the month on which it was seen."
	}
	return "There is no name. Say what was seen, or leave the row out."
}

// pageYear is the year that the page states once for all its rows; 0 where it
// states none, or several.
func pageYear(plan plan) int {
	year := 0
	for _, e := range plan.Entries() {
		y, err := strconv.Atoi(e.Facts["year"])
		if err != nil || year != 0 && y != year {
			return 0
		}
		year = y
	}
	return year
}

// restart forgets what was gathered, for a second walk.
func (sr *sheetRun) restart() {
	sr.evidence, sr.lastDate, sr.genera, sr.cells = when.Evidence{}, "", genera{}, report.Cells{}
	sr.walk++
}

// genera remembers, for each initial letter, the last genus written out on
// the page, by which an abbreviated one ("N. comes") is read.
type genera [26]string

func (g *genera) observe(name string) {
	genus, rest, found := strings.Cut(name, " ")
	if !found || len(genus) < 3 || genus[0] < 'A' || genus[0] > 'Z' || rest == "" || rest[0] < 'a' || rest[0] > 'z' {
		return
	}
	for i := 1; i < len(genus); i++ {
		if genus[i] < 'a' || genus[i] > 'z' {
			return
		}
	}
	g[genus[0]-'A'] = genus
}

// above returns the last genus on the page with the abbreviated one's
// initial; empty where the name is not abbreviated.
func (g *genera) above(name string) string {
	if len(name) > 2 && name[0] >= 'A' && name[0] <= 'Z' && name[1] == '.' {
		return g[name[0]-'A']
	}
	return ""
}
