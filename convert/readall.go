package convert

import (
	"context"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/convert/terms"
)

// SheetReading says how one sheet was read.
type SheetReading struct {
	File, Sheet string
	// Text is the reading printed for people.
	Text string
	// Entries are the same as parts of the project file.
	Entries []layout.Entry
}

// bookRun is one notebook of a run, after it has been read.
type bookRun struct {
	file    string
	notes   []string
	leftOut []string // tables of it that are not read
	sheets  []*sheetRun
	at      int64 // where its rows begin in the spool, and how many there are
	rows    int
}

// bookRuns are all notebooks of a run.
type bookRuns struct {
	books  []*bookRun
	sheets []*sheetRun // by index
	notes  []string
	found  []string // those of them that are about what was given to be read
}

func (all *bookRuns) sheet(index int) *sheetRun { return all.sheets[index] }

// readAll reads every notebook, one after the other, and spools what its rows
// say. The set takes the records in on the way, unless it is nil.
func readAll(ctx context.Context, job Job, s *settings, rows *spool.Spool, set *comparing) (*bookRuns, error) {
	paths, notes, err := notebook.Find(job.Files)
	if err != nil {
		return nil, err
	}
	if slices.ContainsFunc(paths, isPart) {
		if err := job.spare(s, paths); err != nil {
			return nil, err
		}
		if i := slices.IndexFunc(paths, func(path string) bool { return !isPart(path) }); i >= 0 {
			return nil, &notebook.Problem{File: paths[i], Found: "it is a notebook, and others given are parts of a set that have been read", Advice: "Read it into a part as well, with --part"}
		}
		all, err := joinParts(ctx, job, s, paths, rows)
		if err != nil {
			return nil, err
		}
		all.notes = append(notes, all.notes...)
		return all, all.something(job, rows)
	}
	crew := newCrew(s, job.Workers, rows, set)
	defer crew.close()
	paths, passed := job.notNotebooks(s, paths)
	if err := job.spare(s, paths); err != nil {
		return nil, err
	}
	all := &bookRuns{found: append(notes, passed...)}
	all.notes = slices.Clone(all.found)
	for _, path := range paths {
		if err := all.read(ctx, job, s, crew, path); err != nil {
			return nil, err
		}
	}
	return all, all.something(job, rows)
}

// something tells of a run that has no rows at all.
func (all *bookRuns) something(job Job, rows *spool.Spool) error {
	if rows.Rows() == 0 {
		return &notebook.Problem{File: job.Files[0], Found: "There are no rows in it", Advice: "Check that this is the right file, and that it was saved after the last change"}
	}
	return nil
}

func (all *bookRuns) read(ctx context.Context, job Job, s *settings, crew *crew, path string) error {
	entry := s.entryFor(path)
	book, err := openBook(ctx, job, path, notebook.Options{Encoding: entry.Encoding, Delimiter: entry.Delimiter, Limits: s.project.Limits.Notebook(), TempDir: s.temp})
	if err != nil {
		return err
	}
	defer book.Close()
	start, before := crew.rows.Mark().At()
	run := &bookRun{file: path, at: start}
	all.books = append(all.books, run)
	sheets := book.Sheets()
	for i, sheet := range sheets {
		sr := &sheetRun{index: len(all.sheets), file: path, name: sheet.Name(), sheet: sheet, others: slices.Concat(sheets[:i], sheets[i+1:])}
		all.sheets = append(all.sheets, sr)
		run.sheets = append(run.sheets, sr)
		if err := sr.read(ctx, job, s, crew); err != nil {
			return err
		}
	}
	for _, l := range book.LeftOut() {
		run.leftOut = append(run.leftOut, filepath.Base(path)+": "+l)
	}
	all.notes = append(all.notes, run.leftOut...)
	_, after := crew.rows.Mark().At()
	run.rows = after - before
	run.notes = book.Notes() // now with what only showed as the rows were read
	return nil
}

func openBook(ctx context.Context, job Job, path string, o notebook.Options) (*notebook.Book, error) {
	if path == notebook.Stdin {
		return notebook.ReadStdin(ctx, job.Stdin, o)
	}
	return notebook.Open(ctx, path, o)
}

// read surveys the sheet, then reads it; a second time where its own dates
// show that they are written the other way round.
func (sr *sheetRun) read(ctx context.Context, job Job, s *settings, crew *crew) error {
	p := newProbe(s)
	progress, lines := job.progress(), linesOf(sr.file)
	name := strings.TrimSpace(filepath.Base(sr.file) + " " + sr.name)
	progress.Stage("Looking through "+name, lines)
	seen := &watched{Sheet: sr.sheet, step: progress.Step}
	plan, err := sr.survey(s, p, seen)
	if err != nil {
		return err
	}
	if seen.rows > 0 {
		lines = seen.rows
	}
	sr.plan = plan
	sr.year = pageYear(plan)
	sr.group, sr.taxa = p.group(), p.taxa
	sr.hasDate, sr.hasName = plan.Says(layout.Date), plan.Says(layout.Taxon)
	sr.hasPlace = plan.Says(layout.Site) || plan.Says(layout.GridRef) || plan.Says(layout.Latitude)
	sr.order = s.dateOptions.Order
	progress.Stage("Reading "+name, lines)
	mark := crew.rows.Mark()
	if err := crew.read(ctx, sr, progress.Step); err != nil {
		return err
	}
	order, mixed := sr.evidence.Order(sr.order)
	yearFirst := sr.evidence.YearFirst()
	if order == sr.order && mixed.State == reading.Fair && !yearFirst {
		return nil
	}
	if err := crew.rewind(mark); err != nil {
		return err
	}
	sr.restart()
	sr.order, sr.mixed, sr.yearFirst = order, mixed, yearFirst
	progress.Stage("Reading "+name+" again", lines)
	return crew.read(ctx, sr, progress.Step)
}

// survey decides how the sheet is read: as a page of terms where it is one and
// the project file does not say otherwise. Any other is walked once, as seen.
func (sr *sheetRun) survey(s *settings, p *probe, seen *watched) (plan, error) {
	entry := s.entryForSheet(sr.file, sr.name)
	if notebook.LeftOut(sr.sheet) != "" || entry.Page == layout.Terms || len(entry.Columns) == 0 && entry.Page == "" && entry.Headings == "" {
		page, err := terms.Open(sr.sheet, terms.Options{Archive: notebook.OfArchive(sr.sheet), LeftOut: notebook.LeftOut(sr.sheet), Words: report.TermOf, Entry: entry})
		if err != nil {
			return nil, err
		}
		if page != nil {
			sr.stated = true
			return page, nil
		}
	}
	o := s.layoutOptions(p)
	if !notebook.OfArchive(sr.sheet) {
		o.Others = sr.others
	}
	return layout.Survey(seen, o)
}

// readAs says what the sheet was taken for: "list", "nights across".
func (sr *sheetRun) readAs() string {
	var kinds []string
	for _, e := range sr.plan.Entries() {
		if e.Page != "" && !slices.Contains(kinds, e.Page) {
			kinds = append(kinds, e.Page)
		}
	}
	return strings.Join(kinds, ", ")
}

// readings says how each sheet was read.
func (all *bookRuns) readings() []SheetReading {
	var list []SheetReading
	for _, sr := range all.sheets {
		var b strings.Builder
		sr.plan.Print(&b)
		list = append(list, SheetReading{File: sr.file, Sheet: sr.name, Text: b.String(), Entries: sr.plan.Entries()})
	}
	return list
}

// fileNotes are what was noticed about each notebook as a file.
func (all *bookRuns) fileNotes() []string {
	var list []string
	for _, book := range all.books {
		if len(book.notes) > 0 {
			list = append(list, filepath.Base(book.file)+": "+strings.Join(book.notes, " "))
		}
	}
	return list
}

// place returns where a row of the sheet stands.
func (sr *sheetRun) place(cell string) report.Place {
	return report.Place{File: sr.file, Sheet: sr.name, Cell: cell}
}
