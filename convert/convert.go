package convert

import (
	"context"
	"errors"
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"
	"fieldfare/validate/bdq"
)

// The outputs of a run, as files of the output folder.
const (
	SubmissionFile = "submission.zip"
	QueriesFile    = "queries.xlsx"
	ReportFile     = "report.html"
	SummaryFile    = "summary.json"
)

// usualOutputs are those that every run writes.
var usualOutputs = []string{SubmissionFile, QueriesFile, ReportFile, SummaryFile}

// Result is what a run found.
type Result struct {
	Summary report.Summary
	// Questions are the questions in the order of the workbook, or the first
	// of very many; Asking is how many there are.
	Questions []*report.Question
	Asking    int
	causes    []cause
	// Readings say how each sheet was read, in the order of the notebooks.
	Readings []SheetReading
	// Standard is the report of the standard's own tests; nil where the job
	// did not ask for it.
	Standard *bdq.Report
	// Notes say what became of the recorder's answers where that is not what
	// they expect, in sentences.
	Notes []string
	// Cautions say what should be looked at before the outputs are passed on.
	Cautions []string
	// Out is the output folder; empty where nothing was written.
	Out string
	// Against is the earlier submission that this one adds to, where there is
	// one.
	Against string
	// Exact is the file of the full copy; empty where none was asked for.
	Exact string
}

// Run reads the notebooks, checks every record, and writes the outputs of the
// job. With no output folder it only reads and checks. Nothing is seen in the
// output folder until all is done; on an error, or when ctx is cancelled, the
// earlier outputs are as they were.
//
// Memory does not grow with the number of rows, but for what the checks of
// the whole set remember of each record (see package validate), the records'
// ids, and one entry for each different question.
func Run(ctx context.Context, job Job) (*Result, error) {
	settings, err := job.settle(ctx)
	if err != nil {
		return nil, err
	}
	defer settings.letGo()

	if err := settings.recallSites(ctx, job.Against); err != nil {
		return nil, err
	}

	out, err := newOutput(job)
	if err != nil {
		return nil, err
	}
	defer out.Discard()
	settings.temp = out.Temp()

	remembered, err := openLedger(settings, out.Temp())
	if err != nil {
		return nil, err
	}
	defer remembered.close()

	rows, err := spool.New(out.Temp())
	if err != nil {
		return nil, explained(out, err)
	}
	defer rows.Close()

	compared, err := newComparing(ctx, settings, job, remembered)
	if err != nil {
		return nil, explained(out, err)
	}
	defer compared.close()

	// First pass: every source row is read into the records on it, which are
	// looked at as a set on the way.
	books, err := readAll(ctx, job, settings, rows, compared)
	if err != nil {
		return nil, explained(out, err)
	}

	// Second pass: the same of those that were not.
	set, err := compareAll(ctx, job, compared, books, rows)
	if err != nil {
		return nil, explained(out, err)
	}

	// Third pass: what leaves, and the accounts.
	result, err := writeAll(ctx, job, settings, books, rows, set, out)
	if err != nil {
		return nil, explained(out, err)
	}
	if !job.writes() {
		return result, nil
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	ids, err := set.ledger.prepare()
	if err != nil {
		return nil, err
	}
	notes, err := settings.remember(ctx, job)
	if err != nil {
		ids.discard()
		return nil, err
	}
	result.Notes = append(result.Notes, notes...)
	if err := out.Commit(); err != nil {
		ids.discard()
		return nil, err
	}
	if err := ids.commit(); err != nil {
		result.Notes = append(result.Notes, fmt.Sprintf("The outputs are written, but the ids of their records could not be remembered (%v). See to that and run again before you hand anything in.", err))
	}
	result.Out = job.Out
	return result, nil
}

// explained turns an error of writing into a sentence; errors that are one
// already, and an interruption, stay as they are.
func explained(out *stage.Folder, err error) error {
	var problem *notebook.Problem
	var unreadable *dwc.ReadError
	if errors.As(err, &problem) || errors.As(err, &unreadable) || errors.Is(err, context.Canceled) {
		return err
	}
	return out.WriteError(err)
}

// newOutput prepares the output folder, or a temporary one for a run that
// only checks.
func newOutput(job Job) (*stage.Folder, error) {
	if !job.writes() {
		return stage.Scratch()
	}
	out, err := stage.New(job.Out)
	if err != nil {
		return nil, err
	}
	if err := out.Free(job.outputs()...); err != nil {
		out.Discard()
		return nil, err
	}
	return out, nil
}
