package convert

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"
)

// exhibit gathers what the report and the summary may tell beyond counts. A
// sheet with something private on it is told of by its number alone, and gives
// no examples.
type exhibit struct {
	private  []bool                 // by sheet
	named    func(text string) bool // whether a text names a private place
	examples map[checkKey][]exampleOf
	season   *report.Season // nil where no report is written
}

// exampleOf is an example of a check and the sheet it comes from.
type exampleOf struct {
	sheet       int
	message, at string
}

// Examples shown of a check, and kept of it: from so many sheets, since some
// may turn out to be private.
const (
	examplesShown  = 3
	examplesKept   = 40
	longestExample = 400 // bytes
)

func newExhibit(books *bookRuns, job Job, s *settings) exhibit {
	e := exhibit{named: s.namesPrivate, private: make([]bool, len(books.sheets)), examples: map[checkKey][]exampleOf{}}
	if job.writes() {
		e.season = &report.Season{}
	}
	return e
}

// record notes whether a record's sheet holds something private.
func (e *exhibit) record(s *sheetRun, r *spool.Record) {
	if r.Facts.Blur > 0 || r.Occurrence.InformationWithheld != "" {
		e.private[s.index] = true
	}
}

// untold are kinds of value that may hold what is private even where nothing
// is blurred: people, remarks, names of places.
var untold = []string{"recorder", "determiner", "verifier", "remarks", "site", "habitat", "weather", "specimen", "cell", "record id", "county", "vice-county", "latitude", "longitude"}

// example keeps a finding as an example, where it may be one.
func (e *exhibit) example(s *sheetRun, f *reading.Finding) {
	if e.season == nil || f.State == reading.Fair || slices.Contains(untold, f.About) || strings.Contains(f.Code, "contact-removed") || e.private[s.index] {
		return
	}
	key := checkKey{f.Code, f.About, f.State}
	list := e.examples[key]
	if len(list) >= examplesKept || len(f.Message) > longestExample {
		return
	}
	own := 0
	for i := range list {
		if list[i].message == f.Message {
			return
		}
		if list[i].sheet == s.index {
			own++
		}
	}
	if own < examplesShown {
		e.examples[key] = append(list, exampleOf{s.index, f.Message, strings.Join(f.Cells, ", ")})
	}
}

// label names a sheet as the summary and the report may.
type label struct{ file, sheet string }

// labels returns the names of the files and sheets. Where a notebook has
// something private, its name and its sheets' may give that away.
func (e *exhibit) labels(books *bookRuns) (files []string, sheets []label, private []bool) {
	private = make([]bool, len(books.books))
	for i, book := range books.books {
		for _, s := range book.sheets {
			private[i] = private[i] || e.private[s.index]
		}
		file := filepath.Base(book.file)
		private[i] = private[i] || e.named(file)
		for _, s := range book.sheets {
			private[i] = private[i] || e.named(s.name)
		}
		if private[i] {
			file = fmt.Sprintf("notebook %d", i+1)
		}
		files = append(files, file)
		for n, s := range book.sheets {
			l := label{file, s.name}
			if private[i] && s.name != "" {
				l.sheet = fmt.Sprintf("sheet %d", n+1)
			}
			sheets = append(sheets, l)
		}
	}
	return files, sheets, private
}

// report draws up the report page.
func (w *writer) report(result *Result) *report.Report {
	e := &w.accounts.exhibit
	_, labels, privateBooks := e.labels(w.books)
	r := &report.Report{Title: w.project.Dataset.Title, Summary: &result.Summary, Season: e.season, Questions: result.Asking}
	if r.Title == "" {
		r.Title = "Records checked and made ready"
	}
	secret := w.secretNames(privateBooks)
	for _, c := range result.Summary.Checks {
		check, _, _ := strings.Cut(c.Check, " ") // the worst of several
		fired := report.FiredCheck{CheckCount: c, Says: causeWords[check]}
		for _, x := range e.examples[w.accounts.keyOf(c)] {
			if len(fired.Examples) == examplesShown {
				break
			}
			if e.private[x.sheet] || mentions(x.message, secret) {
				continue
			}
			l := labels[x.sheet]
			fired.Examples = append(fired.Examples, report.Example{Message: x.message, Where: report.Place{File: l.file, Sheet: l.sheet, Cell: x.at}.String()})
		}
		r.Checks = append(r.Checks, fired)
	}
	for i, book := range w.books.books {
		for _, s := range book.sheets {
			l := labels[s.index]
			shown := report.SheetShown{File: l.file, Sheet: l.sheet, ReadAs: s.readAs(), Counts: w.accounts.sheets[s.index].Counts}
			if !privateBooks[i] {
				var b strings.Builder
				s.plan.Print(&b)
				if text := strings.ReplaceAll(b.String(), s.file, l.file); !mentions(text, secret) {
					shown.Text = text
				}
			}
			r.Sheets = append(r.Sheets, shown)
		}
	}
	return r
}

// secretNames are the names of notebooks with something private, and of their
// sheets.
func (w *writer) secretNames(private []bool) []string {
	var names []string
	for i, book := range w.books.books {
		if !private[i] {
			continue
		}
		base := filepath.Base(book.file)
		names = append(names, strings.TrimSuffix(base, filepath.Ext(base)))
		for _, s := range book.sheets {
			if len(s.name) > 4 { // not “2021”, which gives nothing away
				names = append(names, s.name)
			}
		}
	}
	return names
}

func mentions(text string, names []string) bool {
	for _, name := range names {
		if name != "" && strings.Contains(text, name) {
			return true
		}
	}
	return false
}

// keyOf is the key under which a check of the summary was counted.
func (a *accounts) keyOf(c report.CheckCount) checkKey {
	for _, state := range []reading.State{reading.Query, reading.Held} {
		if state.String() == c.State {
			return checkKey{c.Check, c.About, state}
		}
	}
	return checkKey{c.Check, c.About, reading.Fair}
}

// writeReport writes the report page.
func (w *writer) writeReport(result *Result, out *stage.Folder) error {
	file, err := out.Create(ReportFile)
	if err != nil {
		return err
	}
	if err := w.report(result).Write(file); err != nil {
		return err
	}
	return file.Close()
}

// show takes a record that leaves into the report; o is what it leaves as.
func (w *writer) show(r *spool.Record, o *dwc.Occurrence) {
	if w.accounts.season == nil || r.EmptyVisit || r.State() >= reading.Held {
		return
	}
	outOfSeason := false
	for i := range r.Findings {
		outOfSeason = outOfSeason || strings.Contains(r.Findings[i].Code, "out-of-season")
	}
	seen := report.SightingOf(o, r.Facts.Blur > 0, outOfSeason)
	w.accounts.season.Add(&seen)
}
