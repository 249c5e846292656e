package report

import (
	_ "embed"
	"html/template"
	"io"
	"slices"
	"strings"
)

// Report is what report.html is made from. Everything in it may be passed on:
// the summary and the season are made from records as they leave, and the
// examples and readings leave out every sheet with something private.
type Report struct {
	Title   string
	Summary *Summary
	Season  *Season
	Checks  []FiredCheck
	Sheets  []SheetShown
	// Questions is how many questions are open.
	Questions int
}

// FiredCheck is a check that fired, with some examples.
type FiredCheck struct {
	CheckCount
	// Says is what the check finds, in a few words; empty for its name.
	Says     string
	Examples []Example
}

// Example is one case in which a check fired.
type Example struct{ Message, Where string }

// FileNotes tells whether anything was noticed about the files themselves.
func (r *Report) FileNotes() bool {
	return slices.ContainsFunc(r.Summary.Files, func(f FileSummary) bool { return len(f.Notes) > 0 })
}

// Plain is what the check finds, else its name in words.
func (c FiredCheck) Plain() string {
	if c.Says != "" {
		return c.Says
	}
	first, _, _ := strings.Cut(c.Check, " ")
	return strings.ReplaceAll(first, "-", " ")
}

// SheetShown says how a sheet was read.
type SheetShown struct {
	File, Sheet, ReadAs, Text string
	Counts                    Counts
}

//go:embed report.html.tmpl
var reportText string

var reportTemplate = template.Must(template.New("report").Parse(reportText))

// shown is what the template sees.
type shown struct {
	*Report
	Years    *picture
	Seasons  []*picture
	Map      *picture
	Taxa     []*taxonCount
	NewYear  int
	New      []newFind
	NewMore  int
	TaxaMore int
	Held     []FiredCheck
	HeldMore int
	First    string
	Last     string
	Records  int
	Absences int
}

// Bounds of the report's tables, so that it opens quickly whatever the size of
// the set.
const (
	mostShownFinds = 200
	mostShownTaxa  = 3000
	heldShown      = 5
)

// Write writes the report.
func (r *Report) Write(w io.Writer) error {
	s := shown{
		Report: r, Years: r.Season.yearsPicture(), Seasons: r.Season.seasonPictures(), Map: r.Season.mapPicture(),
		Taxa: r.Season.byRecords(), First: r.Season.first, Last: r.Season.last, Records: r.Season.records, Absences: r.Season.absences,
	}
	if n := len(s.Taxa) - mostShownTaxa; n > 0 {
		s.Taxa, s.TaxaMore = s.Taxa[:mostShownTaxa], n
	}
	s.NewYear, s.New = r.Season.newFinds()
	if n := len(s.New) - mostShownFinds; n > 0 {
		s.New, s.NewMore = s.New[:mostShownFinds], n
	}
	for _, c := range r.Checks {
		switch {
		case c.State != "held":
		case len(s.Held) < heldShown:
			s.Held = append(s.Held, c)
		default:
			s.HeldMore++
		}
	}
	var page strings.Builder
	if err := reportTemplate.Execute(&page, &s); err != nil {
		return err
	}
	_, err := io.WriteString(w, Visible(page.String()))
	return err
}
