package convert

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"fieldfare/convert/compare"
	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/convert/taxa"
	"fieldfare/dwc"
	"fieldfare/validate/bdq"
)

// writeAll writes the outputs and keeps the accounts, row by row.
func writeAll(ctx context.Context, job Job, s *settings, books *bookRuns, rows *spool.Spool, set *setView, out *stage.Folder) (*Result, error) {
	w := &writer{settings: s, publisher: publisher{settings: s}, squares: newSquares(), books: books, set: set, ids: newIdentities(s.project.Dataset.ID, set), accounts: newAccounts(books, s, job)}
	defer w.accounts.questions.Close()
	var err error
	if w.standard, err = newStandard(job); err != nil {
		return nil, err
	}
	if job.writes() {
		if err := w.open(job, out); err != nil {
			return nil, err
		}
		defer w.abandon()
	}
	progress := job.progress()
	progress.Stage("Writing", rows.Rows())
	err = pass(ctx, job.Workers, rows, func() func(*encodedRows, *prepared) error {
		return newPreparer(w, rows.Parts()).batch
	}, func(made *prepared) error {
		progress.Step(made.count())
		return w.settle(made)
	})
	if err = errors.Join(err, set.checks.Failed()); err != nil {
		return nil, err
	}
	return w.finish(job, out)
}

// writer is the third pass at work.
type writer struct {
	*settings
	publisher publisher // for the full copy
	squares   squares
	books     *bookRuns
	set       *setView
	ids       *identities
	accounts  *accounts
	standard  *bdq.Report // nil where it is not asked for
	records   int         // seen so far
	leaving   *leaving    // what is written of the records that leave
	exact     *archive    // the full copy; nil where none is asked for
	against   *against    // nil where everything leaves
	queries   *report.Workbook
}

func (w *writer) open(job Job, out *stage.Folder) error {
	var err error
	if w.against, err = newAgainst(job.Against, out); err != nil {
		return err
	}
	if w.against == nil {
		if w.leaving, err = newLeaving(job, w.settings, w.set, out); err != nil {
			return err
		}
	}
	if job.Exact {
		if w.exact, err = newExact(w.settings, w.set, out); err != nil {
			return err
		}
	}
	w.queries, err = report.NewWorkbook(out.Temp())
	return err
}

// abandon gives up what is unfinished; after finish it does nothing.
func (w *writer) abandon() {
	w.leaving.abandon()
	w.against.close()
	if w.exact != nil {
		w.exact.abort()
	}
}

// row settles what becomes of one source row, whose records may leave as public
// has them.
func (w *writer) row(row *spool.Row, public []dwc.Occurrence) error {
	sheet := w.books.sheets[row.Sheet]
	leftOut := 0
	for i := range row.Records {
		r := &row.Records[i]
		ordinal := w.set.checks.Ordinal(&r.Content)
		o := &public[i]
		id, repeated := w.ids.id(w.records, r, o, ordinal)
		left := w.setFindings(row, r, id, repeated)
		w.records++
		if left {
			leftOut++
			continue
		}
		if leftOut > 0 {
			row.Records[i-leftOut] = *r
			r = &row.Records[i-leftOut]
		}
		state := r.State()
		w.accounts.record(sheet, r, state)
		w.show(r, o)
		if state >= reading.Held {
			w.against.hold(id)
			continue
		}
		if w.standard != nil && !r.EmptyVisit {
			o.OccurrenceID = id
			w.standard.Observe(o)
		}
		if w.queries == nil {
			continue
		}
		if err := w.handIn(r, o, id, ordinal, sheet); err != nil {
			return err
		}
	}
	if leftOut > 0 {
		row.Records = row.Records[:len(row.Records)-leftOut]
		if len(row.Records) == 0 && len(row.Findings) == 0 {
			row.Skip = leftOutByAnswer
		}
	}
	state := row.State()
	w.accounts.row(sheet, row, state)
	if w.queries == nil {
		return nil
	}
	switch {
	case state == reading.Skipped:
		return w.queries.AddSkipped(row.Skip, sheet.place(""), row.Number, row.Cells)
	case state != reading.Fair:
		return w.queries.AddRow(state, sheet.place(""), row.Number, allFindings(row), row.Cells)
	}
	return nil
}

// setFindings adds what the checks of the whole set say of a record, and tells
// whether the recorder has answered one of them by leaving the record out.
func (w *writer) setFindings(row *spool.Row, r *spool.Record, id string, repeated bool) (leftOut bool) {
	e := entry(row, r, w.records)
	e.ID = id
	findings := w.set.checks.Findings(e, w.where)
	if f, found := w.set.slip(row.Sheet, row.Number, r); found {
		f.Written += w.books.sheets[row.Sheet].only()
		findings = append(findings, f)
	}
	if f, found := w.wander(w.set.sites, &w.squares, r); found {
		f.Written += " at " + r.Occurrence.Locality
		findings = append(findings, f)
	}
	if repeated {
		findings = append(findings, reading.Finding{
			Verdict: reading.HeldOf("record-id-repeated", "The id “"+r.Occurrence.OccurrenceID+"” stands at an earlier record too. Give each record an id of its own."),
			About:   "record id", Written: r.Occurrence.OccurrenceID,
		})
	}
	for _, f := range findings {
		if len(f.Cells) == 0 && r.Cell.Row > 0 {
			f.Cells = []string{r.Cell.String()}
		}
		if f.State == reading.Fair {
			r.Findings = append(r.Findings, f) // advice
			continue
		}
		leftOut = leftOut || w.leftOut(&f)
		r.Findings = w.raise(r.Findings, f)
	}
	return leftOut
}

// where says where another record stands.
func (w *writer) where(sheet, row int) string {
	p := w.books.sheets[sheet].place("")
	text := fmt.Sprintf("row %d of %s", row, filepath.Base(p.File))
	if p.Sheet != "" {
		text += ", " + p.Sheet
	}
	return text
}

// handIn writes a record that leaves, o being it as it may.
func (w *writer) handIn(r *spool.Record, o *dwc.Occurrence, id string, ordinal int, sheet *sheetRun) error {
	w.name(r, o, id)
	w.set.ledger.handIn(w.records-1, ordinal, r, o, sheet)
	if w.exact != nil {
		full := r.Occurrence
		w.publisher.finish(&full, r)
		w.name(r, &full, id)
		if err := w.exact.add(&full, r); err != nil {
			return err
		}
	}
	if w.against != nil {
		return w.against.keep(o, r)
	}
	return w.leaving.add(o, r)
}

// name gives a record the ids under which it is handed in.
func (w *writer) name(r *spool.Record, o *dwc.Occurrence, id string) {
	if w.set.ledger != nil {
		if key := eventKey(o); o.EventID == eventIDOf(key) {
			o.EventID = w.set.ledger.eventID(key)
		}
	}
	o.OccurrenceID = id
	if r.EmptyVisit {
		o.OccurrenceID = ""
	}
}

// allFindings are the row's own findings and those of its records.
func allFindings(row *spool.Row) []reading.Finding {
	list := row.Findings
	for i := range row.Records {
		list = append(list, row.Records[i].Findings...)
	}
	return list
}

// finish closes the outputs and draws up the result.
func (w *writer) finish(job Job, out *stage.Folder) (*Result, error) {
	metadata := w.metadata(w.set.covers(w.settings))
	result := &Result{Readings: w.books.readings()}
	inTheWay, err := result.ask(w.accounts.questions)
	if err != nil {
		return nil, err
	}
	result.Notes = slices.Concat(w.books.notes, w.problems(), w.notes, w.unusedEntries(w.books), w.unfitting(w.books))
	if w.starter && slices.ContainsFunc(result.causes, func(c cause) bool { return c.check == taxa.CodeNotListed && c.cases > 2 }) {
		result.Notes = append(result.Notes, "Names were looked up in the starter list of some 500 species, which is for trying out. Give a fuller one with --taxa FILE, or as taxa under [lists] in the project file.")
	}
	result.Cautions = w.cautions()
	result.Summary = w.accounts.summary(w.books, w.versions, metadata)
	result.Summary.Asks = w.asked(&w.accounts.asked, inTheWay)
	result.Standard = w.standard
	if !job.writes() {
		return result, nil
	}
	if w.against != nil {
		result.Against = filepath.Base(job.Against)
		if err := w.finishAgainst(job, out, result); err != nil {
			return nil, err
		}
		metadata = w.metadata(w.against.view.covers(w.settings))
		metadata.AdditionalInfo = compare.ChangesOnly
	}
	if err := w.leaving.end(); err != nil {
		return nil, err
	}
	result.Summary.Occurrences, result.Summary.Events = w.leaving.archive.occurrences, w.leaving.archive.events
	result.Summary.VisitsLeft = w.leaving.archive.visitsLeft
	result.Notes = append(result.Notes, w.leaving.archive.eventNotes()...)
	if w.exact != nil {
		result.Exact = ExactFile
	}
	// Putting a large archive together takes a while, and so do the others.
	closed := make(chan error, 1)
	go func() { closed <- w.closeArchives(metadata) }()
	err = w.writeAbout(job, out, result)
	if failed := <-closed; failed != nil {
		err = failed
	}
	if err != nil {
		return nil, err
	}
	return result, nil
}

// closeArchives ends the archives and copies of what leaves.
func (w *writer) closeArchives(metadata *dwc.Dataset) error {
	if err := w.leaving.close(metadata); err != nil || w.exact == nil {
		return err
	}
	return w.exact.close(w.metadata(w.set.exact.covers(w.settings)))
}

// writeAbout writes what is said about the records: the questions, the report
// and the summary.
func (w *writer) writeAbout(job Job, out *stage.Folder, result *Result) error {
	queries, err := out.Create(QueriesFile)
	if err != nil {
		return err
	}
	if err := w.queries.Finish(queries, job.Out, result.startPage(w.books.fileNotes()), w.accounts.questions.All()); err != nil {
		return err
	}
	if err := queries.Close(); err != nil {
		return err
	}
	if err := w.writeReport(result, out); err != nil {
		return err
	}
	summary, err := out.Create(SummaryFile)
	if err != nil {
		return err
	}
	told := result.Summary
	if slices.Contains(w.accounts.private, true) {
		told.Asks = told.Asks.WithoutWords()
	}
	if err := told.Write(summary); err != nil {
		return err
	}
	return summary.Close()
}

// finishAgainst writes what is new or changed since an earlier submission.
func (w *writer) finishAgainst(job Job, out *stage.Folder, result *Result) error {
	var err error
	if w.leaving, err = newLeaving(job, w.settings, &w.against.view, out); err != nil {
		return err
	}
	if err := w.against.each(w.leaving.add); err != nil {
		return err
	}
	unread, notebooks := w.set.ledger.unread(w.books)
	f, err := w.against.withdraw(w.settings, unread, out)
	result.Summary.Withdrawn = &f.gone
	result.Notes = append(result.Notes, f.notes(result.Against, notebooks)...)
	return err
}
