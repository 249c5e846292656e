package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"fieldfare/convert"

	"github.com/spf13/pflag"
)

const convertHelp = `Reads notebooks, checks every record, and writes a submission.

  fieldfare convert FILE... --out FOLDER

FILE is a spreadsheet (.xlsx, .xls, .ods), a CSV or other delimited text, a Darwin
Core Archive, or a folder with such files in it. Nothing in them is changed.
FOLDER receives

  submission.zip   the records that can be handed in, as a Darwin Core Archive
  queries.xlsx     what somebody should look at or must answer, and every row
                   that was skipped, with the reason
  report.html      the season at a glance
  summary.json     the accounts, for programs

Example:

  fieldfare convert "Tinkers Row.xlsx" walks.csv --taxa mylist.csv --out handed-in

A large set can be read in parts, by several processes or machines; the outputs
are those of one run over all notebooks, as they stand in a folder:

  fieldfare convert 1990s.csv --part 1990s.part
  fieldfare convert 2000s.csv --part 2000s.part
  fieldfare convert 1990s.part 2000s.part --out handed-in

Fill in the answers in queries.xlsx, then run the same again with

  --answers handed-in/queries.xlsx

Options:
`

func convertCommand(ctx context.Context, args []string, s streams) int {
	flags := newFlags("convert", convertHelp, s)
	common := addCommon(flags)
	out := flags.StringP("out", "o", "", "`FOLDER` for the outputs (must be given)")
	against := flags.String("against", "", "the last whole submission.zip, a `FILE`: hand in only what is new or changed since, with a list of what is withdrawn")
	formats := flags.StringSlice("format", nil, "write the records in a further `FORM` too: "+strings.Join(convert.Formats(), ", "))
	exact := flags.Bool("exact", false, "write the full copy as well, in which no place is blurred, for the one person entitled to it")
	part := flags.String("part", "", "read the notebooks row by row only, and keep the result in a new `FILE`; convert then takes such files in place of notebooks")
	strict := flags.Bool("strict", false, "exit with status 1 where anything is held")
	if status, done := parse(flags, args, s); done {
		return status
	}
	if *part != "" {
		return readPart(ctx, *part, *out, flags.Args(), common, s)
	}
	if *out == "" {
		return usage(s, "Say where the outputs should go: --out FOLDER")
	}
	job, status, ok := common.job(flags.Args(), s)
	if !ok {
		return status
	}
	job.Out, job.Against, job.Formats, job.Exact = *out, *against, *formats, *exact
	for _, format := range job.Formats {
		if !slices.Contains(convert.Formats(), format) {
			return usage(s, fmt.Sprintf("--format %s: write one of %s", format, strings.Join(convert.Formats(), ", ")))
		}
	}
	return runJob(ctx, job, common, *strict, s)
}

const checkHelp = `Reads and checks notebooks as convert does, but hands nothing in.

  fieldfare check FILE...

Example:

  fieldfare check "Tinkers Row.xlsx" --show-reading

Where the project file says in [asks] what the scheme wants, the last screen
tells whether the set meets it and what stands in the way.

The exit status is 1 where anything is held, so that a script can tell.

Options:
`

func checkCommand(ctx context.Context, args []string, s streams) int {
	flags := newFlags("check", checkHelp, s)
	common := addCommon(flags)
	flags.StringVar(&common.format, "format", "text", "the `FORM` in which the closing screen is printed: text, or json on standard output")
	against := flags.String("against", "", "an earlier submission.zip, a `FILE`: ask about what it has already, worded otherwise, and about what is new to a place")
	standard := flags.Bool("standard", false, "print the report of the Biodiversity Data Quality tests on the records as they would leave")
	show := flags.Bool("show-reading", false, "print how each sheet was read: the headings, what each column means and why")
	write := flags.String("write-reading", "", "write the same as [[notebook]] parts of a project file into a new `FILE`, to be changed where the reading is wrong")
	if status, done := parse(flags, args, s); done {
		return status
	}
	job, status, ok := common.job(flags.Args(), s)
	if !ok {
		return status
	}
	common.showReading, common.writeReading = *show, *write
	job.Standard, job.Against = *standard, *against
	return runJob(ctx, job, common, true, s)
}

// runJob does the job and reports it on the streams.
func runJob(ctx context.Context, job convert.Job, c *common, strict bool, s streams) int {
	if !c.quiet {
		job.Progress = newProgress(s.err)
	}
	result, err := convert.Run(ctx, job)
	if job.Progress != nil {
		job.Progress.Stage("", 0)
	}
	if err != nil {
		return failed(ctx, s, err)
	}
	if c.showReading {
		for _, r := range result.Readings {
			fmt.Fprintln(s.out, r.Text)
		}
	}
	if c.writeReading != "" {
		if err := writeReading(c.writeReading, result); err != nil {
			return failed(ctx, s, err)
		}
	}
	if c.format == "json" {
		if result.Standard != nil {
			result.Summary.Standard = result.Standard
		}
		if err := result.Summary.Write(s.out); err != nil {
			return failed(ctx, s, err)
		}
	} else if !c.quiet {
		if err := showClosing(s.err, result.Closing()); err != nil {
			return failed(ctx, s, err)
		}
		if err := printAnswers(result, job.Out == "", s); err != nil {
			return failed(ctx, s, err)
		}
	}
	if strict && result.Summary.Held > 0 {
		return exitHeld
	}
	return exitDone
}

// printAnswers prints what check was asked for beside the closing screen:
// whether the set meets what the scheme asks, and the standard's report.
func printAnswers(result *convert.Result, checking bool, s streams) error {
	if asked := result.Asked(); checking && asked != "" {
		fmt.Fprint(s.out, "\n", asked)
	}
	if result.Standard == nil {
		return nil
	}
	fmt.Fprintln(s.out)
	return result.Standard.WriteText(s.out)
}

// newFlags makes a command's flag set, whose help is the text and then the
// options.
func newFlags(name, help string, s streams) *pflag.FlagSet {
	flags := pflag.NewFlagSet(name, pflag.ContinueOnError)
	flags.SetOutput(s.err)
	flags.SortFlags = false
	flags.Usage = func() { fmt.Fprint(s.out, help, optionsOf(flags)) }
	return flags
}

// optionsOf lists the options; those that are said or not said take no value.
func optionsOf(flags *pflag.FlagSet) string {
	const yesNo = "[=true|false]"
	return strings.ReplaceAll(flags.FlagUsages(), yesNo, strings.Repeat(" ", len(yesNo)))
}
