package convert

import (
	"cmp"
	"slices"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// accounts counts every row, record, cell and check of a run.
type accounts struct {
	sheets    []sheetCounts // by index
	skips     map[string]int
	checks    map[checkKey]int
	heldBack  int
	questions *report.Questions
	// asked counts the records by the requirements of the scheme.
	requirements []validate.Requirement
	asked        askedCounts
	exhibit
}

type sheetCounts struct {
	report.Counts
	occurrences int
}

type checkKey struct {
	check, about string
	state        reading.State
}

func newAccounts(books *bookRuns, s *settings, job Job) *accounts {
	return &accounts{
		sheets: make([]sheetCounts, len(books.sheets)), skips: map[string]int{}, checks: map[checkKey]int{}, requirements: s.requirements(),
		questions: report.NewQuestions(s.temp),
		exhibit:   newExhibit(books, job, s),
	}
}

// row counts a source row by what became of it.
func (a *accounts) row(s *sheetRun, row *spool.Row, state reading.State) {
	c := &a.sheets[s.index]
	c.Read++
	switch state {
	case reading.Fair:
		c.Fair++
	case reading.Query:
		c.Query++
	case reading.Held:
		c.Held++
	default:
		c.Skipped++
		reason, _, _ := strings.Cut(row.Skip, " (") // without what is written there
		a.skips[reason]++
	}
	a.findings(s, row.Findings)
}

// plain counts rows of a sheet, and the records on them, that leave as they are.
func (a *accounts) plain(sheet, rows, records int) {
	c := &a.sheets[sheet]
	c.Read += rows
	c.Fair += rows
	c.occurrences += records
	a.asked.records += records
	a.asked.met += records
}

// record counts a record.
func (a *accounts) record(s *sheetRun, r *spool.Record, state reading.State) {
	switch {
	case state >= reading.Held:
		a.heldBack++
	case !r.EmptyVisit:
		a.sheets[s.index].occurrences++
	}
	a.exhibit.record(s, r)
	if !r.EmptyVisit {
		a.asked.record(r, a.requirements)
	}
	a.findings(s, r.Findings)
}

func (a *accounts) findings(s *sheetRun, findings []reading.Finding) {
	for i := range findings {
		f := &findings[i]
		a.checks[checkKey{f.Code, f.About, f.State}]++
		a.example(s, f)
		a.questions.Add(f, s.place(strings.Join(f.Cells, ", ")))
	}
}

// stateOf is the state of a check that fired: what is fair is advice.
func stateOf(s reading.State) string {
	if s == reading.Fair {
		return "advice"
	}
	return s.String()
}

// summary draws the accounts up.
func (a *accounts) summary(books *bookRuns, versions []report.ListVersion, metadata *dwc.Dataset) report.Summary {
	s := report.Summary{HeldBack: a.heldBack, Versions: versions, Checks: []report.CheckCount{}, Skips: a.skips, Cells: report.Cells{Left: map[string]int{}}}
	s.Dataset.Missing = metadata.Missing()
	files, labels, private := a.labels(books)
	for i, book := range books.books {
		file := report.FileSummary{File: files[i], Notes: book.notes, Sheets: []report.SheetSummary{}}
		if private[i] {
			file.Notes = nil // they may quote what stands in it
		}
		for _, sheet := range book.sheets {
			c := a.sheets[sheet.index]
			file.Sheets = append(file.Sheets, report.SheetSummary{
				Sheet: labels[sheet.index].sheet, Counts: c.Counts, Occurrences: c.occurrences, Cells: sheet.cells, ReadAs: sheet.readAs(),
			})
			file.Counts.Add(c.Counts)
			s.Occurrences += c.occurrences
			s.Cells.Add(sheet.cells)
		}
		s.Counts.Add(file.Counts)
		s.Files = append(s.Files, file)
	}
	for key, n := range a.checks {
		s.Checks = append(s.Checks, report.CheckCount{Check: key.check, About: key.about, State: stateOf(key.state), Records: n})
	}
	slices.SortFunc(s.Checks, func(x, y report.CheckCount) int {
		return cmp.Or(cmp.Compare(y.Records, x.Records), cmp.Compare(x.Check, y.Check), cmp.Compare(x.About, y.About), cmp.Compare(x.State, y.State))
	})
	return s
}
