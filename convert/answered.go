package convert

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"fieldfare/convert/answers"
	"fieldfare/convert/layout"
	"fieldfare/convert/plainfile"
	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/stage"
)

// answered is what a run does with the recorder's answers besides reading by
// them: where they are remembered, and what must be told about them.
type answered struct {
	path string     // the plain file
	seen stage.Seen // how it was when it was read
	// aside: the queries workbook of the output folder holds something that
	// would be lost if it were replaced.
	aside bool
	notes []string
}

// loadAnswers loads the answers remembered beside the project file, those
// given with the job, and those filled in on the queries workbook that this
// run would replace.
func (j Job) loadAnswers(ctx context.Context, s *settings) error {
	folder := j.folder()
	if s.project.Path != "" {
		folder = filepath.Dir(s.project.Path)
	}
	a := &s.answered
	a.path = filepath.Join(folder, answers.FileName)
	a.seen = stage.See(a.path)
	if err := answers.LoadFile(a.path, s.answers.Remember); err != nil {
		return err
	}
	paths := j.Answers
	if found, ok := j.filledIn(); ok {
		given, err := report.ReadAnswers(ctx, found)
		switch {
		case err != nil:
			a.aside = true // whatever it is, it is not ours to throw away
		case given.Filled:
			a.aside = !s.take(given)
			if len(given.Answers) > 0 {
				a.notes = append(a.notes, fmt.Sprintf("The answers filled in on %s in the output folder were used.", QueriesFile))
			}
		}
	}
	for _, path := range paths {
		given, err := report.ReadAnswers(ctx, path)
		if err != nil {
			return err
		}
		whole := s.take(given)
		a.aside = a.aside || !whole && j.sameAsOutput(path)
	}
	a.notes = append(a.notes, s.answers.Problems()...)
	return nil
}

// take takes in the answers of a workbook, and tells whether all that is
// filled in on it was taken in.
func (s *settings) take(given *report.Given) bool {
	before := len(s.answers.Problems())
	for _, problem := range given.Problems {
		s.answers.Problem(problem)
	}
	for _, a := range given.Answers {
		s.answers.Give(a)
	}
	return given.Filled && len(given.Answers) > 0 && len(s.answers.Problems()) == before
}

// filledIn returns the queries workbook of an earlier run in the output
// folder, where it is not among the answers given.
func (j Job) filledIn() (string, bool) {
	if !j.writes() {
		return "", false
	}
	for _, path := range j.Answers {
		if j.sameAsOutput(path) {
			return "", false
		}
	}
	path := filepath.Join(j.Out, QueriesFile)
	_, err := os.Stat(path)
	return path, err == nil
}

// sameAsOutput tells whether a path is that of the queries workbook that the
// job will write.
func (j Job) sameAsOutput(path string) bool {
	a, errA := os.Stat(path)
	b, errB := os.Stat(filepath.Join(j.Out, QueriesFile))
	return errA == nil && errB == nil && os.SameFile(a, b)
}

// remember writes the plain file, and keeps a queries workbook aside that
// holds something nobody has taken in. It returns what must be told; an error
// is that the run was interrupted.
func (s *settings) remember(ctx context.Context, job Job) ([]string, error) {
	a := &s.answered
	var notes []string
	if s.answers.Changed() {
		err := s.rememberAnswers(ctx)
		switch {
		case err != nil && ctx.Err() != nil:
			return nil, ctx.Err()
		case err != nil:
			a.aside = true
			notes = append(notes, fmt.Sprintf("Your answers were used but could not be remembered (%v). Keep the workbook with your answers and give it again next time.", err))
		}
	}
	if a.aside {
		if kept, err := keepAside(job.Out, QueriesFile); err == nil && kept != "" {
			notes = append(notes, fmt.Sprintf("%s had something in it that could not be used; it is kept as %s.", QueriesFile, kept))
		}
	}
	return notes, nil
}

// keepAside copies a file of the folder to a name that is free.
func keepAside(folder, name string) (string, error) {
	data, err := plainfile.Read(filepath.Join(folder, name), math.MaxInt64)
	if err != nil {
		return "", err
	}
	ext := filepath.Ext(name)
	for n := 1; ; n++ {
		kept := name[:len(name)-len(ext)] + "-kept-" + strconv.Itoa(n) + ext
		switch old, err := plainfile.Read(filepath.Join(folder, kept), math.MaxInt64); {
		case err == nil && string(old) == string(data):
			return kept, nil // kept already
		case !errors.Is(err, fs.ErrNotExist):
			continue
		}
		return kept, stage.File(filepath.Join(folder, kept), func(w io.Writer) error {
			_, err := w.Write(data)
			return err
		})
	}
}

// unfittingShown is how many answers that were not needed are named.
const unfittingShown = 3

// unfitting says which answers fitted nothing in this run.
func (s *settings) unfitting(books *bookRuns) []string {
	var notes []string
	given, remembered := s.answers.Unused()
	for i, a := range given {
		if i == unfittingShown {
			notes = append(notes, fmt.Sprintf("And %s not needed.", wasWere(len(given)-i, "more answer")))
			break
		}
		notes = append(notes, fmt.Sprintf("%s: the answer to “%s” (%s) was not needed: another answer has settled it, or the notebook has changed.", a.From, a.Written, a.About))
	}
	if n := len(remembered); n > 0 {
		notes = append(notes, fmt.Sprintf("%s in %s fitted nothing in these notebooks: the first is about “%s”. They stay there in case other notebooks need them.",
			count(n, "remembered answer"), answers.FileName, remembered[0].Written))
		if name := books.missing(remembered); name != "" {
			notes = append(notes, fmt.Sprintf("Some of them are about %s, which was not read. If it has a new name, what was asked about its pages is asked again.", name))
		}
	}
	return notes
}

// missing returns the name of a notebook that an answer is about and that is
// not among those read; empty where there is none.
func (all *bookRuns) missing(list []answers.Answer) string {
	for _, a := range list {
		_, page, found := strings.Cut(strings.TrimSuffix(a.Written, ")"), " on ")
		name, _, _ := strings.Cut(page, " / ")
		if !found || filepath.Ext(name) == "" || strings.Contains(filepath.Ext(name), " ") {
			continue
		}
		if !slices.ContainsFunc(all.books, func(b *bookRun) bool { return filepath.Base(b.file) == name }) {
			return name
		}
	}
	return ""
}

func wasWere(n int, word string) string {
	if n == 1 {
		return "1 " + word + " was"
	}
	return count(n, word) + " were"
}

// settled tells whether the recorder has answered a finding, so that it is
// not asked again. A value that was given instead of what was written is only
// asked about again where it cannot be read either.
func (s *settings) settled(f *reading.Finding) bool {
	if s.answers.Len() == 0 {
		return false
	}
	if decision, found := s.answers.Decided(f.About, f.Written, f.Code); found && decision == answers.Keep {
		return true
	}
	if f.State != reading.Query {
		return false
	}
	_, found := s.answers.Replacement(f.About, f.Written)
	return found
}

// leftOut tells whether the recorder has answered a finding with leaving the
// record out.
func (s *settings) leftOut(f *reading.Finding) bool {
	decision, found := s.answers.Decided(f.About, f.Written, f.Code)
	return found && decision == answers.LeaveOut
}

// joined is several values that are read together as one: what an answer
// about them is told by.
func joined(between string, values ...*layout.Value) layout.Value {
	v := *values[0]
	for _, other := range values[1:] {
		v.Text += between + other.Text
	}
	return v
}

// label names a sheet in questions about the whole of it.
func (sr *sheetRun) label() string {
	label := filepath.Base(sr.file)
	if sr.name != "" {
		label += " / " + sr.name
	}
	return label
}

// notSaid is where a value comes from that stands for what is not there.
const notSaid layout.Origin = "not said"

// absent is the value that stands for what a row does not say, so that it can
// be asked for and answered like any other: for the row where its page has a
// place for it, else once for the whole page.
func (d *draft) absent(m layout.Meaning, onPage bool) layout.Value {
	v := layout.Value{Meaning: m, From: notSaid}
	if !onPage {
		v.Text = "(no " + string(m) + " on " + d.sheet.label() + ")"
		return v
	}
	if m == layout.Taxon && d.inTable() { // the row's counts have one name
		v.Text = fmt.Sprintf("(no %s on row %d of %s)", m, d.Row, d.sheet.label())
		return v
	}
	v.Text = "(no " + string(m) + " beside"
	between := " "
	for i := range d.Values {
		switch w := &d.Values[i]; w.Meaning {
		case layout.Date, layout.Taxon, layout.Scientific, layout.Vernacular, layout.Count, layout.Site, layout.GridRef, layout.Recorder:
			v.Text += between + w.Text
			between = ", "
		}
	}
	v.Text += ")"
	return v
}

// inTable reports whether the record is one count of several on its row.
func (d *draft) inTable() bool {
	for i := range d.Values {
		if v := &d.Values[i]; (v.Meaning == layout.Date || v.Meaning == layout.Site) && v.From == layout.FromHeading {
			return true
		}
	}
	return false
}

// instead returns what the recorder answered for a value that is not there.
func (in *interpreter) instead(v *layout.Value) (string, bool) {
	return in.answers.Replacement(string(v.Meaning), v.Text)
}

// only marks an answer that holds for one sheet alone.
func (sr *sheetRun) only() string { return " on " + sr.label() }
