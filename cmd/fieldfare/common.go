package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"time"

	"fieldfare/convert"
	"fieldfare/convert/project"
	"fieldfare/convert/when"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/pflag"
)

// common are the flags that convert and check share.
type common struct {
	project     string
	taxa        []string
	answers     []string
	today       string
	format      string
	quiet       bool
	showReading bool
	// writeReading is the file that the reading is written to; empty for none.
	writeReading string
}

func addCommon(flags *pflag.FlagSet) *common {
	c := &common{}
	flags.StringVar(&c.project, "project", "", "project `FILE` (default: fieldfare.toml beside the first notebook)")
	flags.StringArrayVar(&c.taxa, "taxa", nil, "taxon list, a `FILE`: CSV, workbook (.xlsx, .xls, .ods) or Darwin Core checklist; may be given several times, in order of preference (default: the starter list)")
	flags.StringArrayVar(&c.answers, "answers", nil, "the `FILE` queries.xlsx with your answers filled in; may be given several times")
	flags.StringVar(&c.today, "today", "", "the `DAY` after which a date lies in the future, such as 2026-01-31 (default: today)")
	flags.BoolVarP(&c.quiet, "quiet", "q", false, "print nothing but errors")
	return c
}

// job makes the job of the flags; where it cannot, it has said why and
// returns the exit status.
func (c *common) job(files []string, s streams) (job convert.Job, status int, ok bool) {
	if len(files) == 0 {
		return job, usage(s, "Name at least one notebook: a spreadsheet, a CSV file or a folder of them"), false
	}
	if c.format != "" && c.format != "text" && c.format != "json" {
		return job, usage(s, fmt.Sprintf("--format %s: write text or json", c.format)), false
	}
	today, err := todayFrom(c.today)
	if err != nil {
		return job, usage(s, err.Error()), false
	}
	return convert.Job{
		Files:   files,
		Project: c.project,
		Taxa:    c.taxa,
		Answers: c.answers,
		Today:   today,
		Stdin:   s.in,
	}, exitDone, true
}

// todayFrom reads --today, by default the clock's day.
func todayFrom(text string) (when.Date, error) {
	day := time.Now()
	if text != "" {
		var err error
		if day, err = time.Parse(time.DateOnly, text); err != nil {
			return when.Date{}, fmt.Errorf("--today %s: write the day as year-month-day, such as 2026-01-31", text)
		}
	}
	return when.Date{Year: day.Year(), Month: int(day.Month()), Day: day.Day()}, nil
}

// parse reads the flags. Done says that the command ends here with the status.
func parse(flags *pflag.FlagSet, args []string, s streams) (status int, done bool) {
	err := flags.Parse(args)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		return exitDone, true
	case err != nil:
		return usage(s, wrongFlag(flags, err)+fmt.Sprintf(". See fieldfare %s --help", flags.Name())), true
	}
	return exitDone, false
}

// wrongFlag says what is wrong with an option as it was given.
func wrongFlag(flags *pflag.FlagSet, err error) string {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() == "":
		name := unknown.GetSpecifiedName()
		return fmt.Sprintf("There is no option --%s%s", name, likeIt(flags, name))
	case errors.As(err, &unknown):
		return fmt.Sprintf("There is no option -%s", unknown.GetSpecifiedName())
	case errors.As(err, &bare):
		value, _ := pflag.UnquoteUsage(bare.GetFlag())
		return fmt.Sprintf("Behind --%s a %s is missing", bare.GetFlag().Name, value)
	case errors.As(err, &value):
		return fmt.Sprintf("%q cannot stand behind --%s", value.GetValue(), value.GetFlag().Name)
	}
	return strings.ToUpper(err.Error()[:1]) + err.Error()[1:]
}

// likeIt names the option that a mistyped one is near to.
func likeIt(flags *pflag.FlagSet, name string) string {
	best, like := 3, ""
	flags.VisitAll(func(f *pflag.Flag) {
		if n := levenshtein.ComputeDistance(name, f.Name); n < best {
			best, like = n, "; there is --"+f.Name
		}
	})
	return like
}

func usage(s streams, problem string) int {
	fmt.Fprintln(s.err, "fieldfare:", problem+".")
	return exitUsage
}

// failed prints an error and returns the exit status that it calls for.
func failed(ctx context.Context, s streams, err error) int {
	var badProject *project.Error
	switch {
	case ctx.Err() != nil:
		fmt.Fprintln(s.err, "fieldfare: stopped. The earlier outputs are as they were.")
		return exitFailed
	case errors.As(err, &badProject):
		fmt.Fprintln(s.err, "fieldfare:", sentence(err))
		return exitUsage
	}
	fmt.Fprintln(s.err, "fieldfare:", sentence(err))
	return exitFailed
}

// sentence ends a message with a full stop.
func sentence(err error) string {
	if path, is := err.(*fs.PathError); is {
		return fmt.Sprintf("%s: it cannot be used (the system says: %v).", path.Path, path.Err)
	}
	return strings.TrimRight(err.Error(), ". \n") + "."
}
