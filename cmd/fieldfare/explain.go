package main

import (
	"context"
	"fmt"
	"strings"

	"fieldfare/convert/explain"
	"fieldfare/convert/lines"
	"fieldfare/convert/tally"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"

	"github.com/spf13/pflag"
)

const explainHelp = `Says how one value would be read, and why.

  fieldfare explain date  [VALUE...]
  fieldfare explain count [VALUE...]
  fieldfare explain name  [VALUE...]

Give one or more values, or none to read one a line from standard input. Each
is answered with its state (fair, query, held, or skipped for what is no
record), its reading in Darwin Core's form, and the reason where there is one.
For grid references there is "fieldfare gridref". Examples:

  fieldfare explain date "12/13.vi.98"
  fieldfare explain count "2m 1f"
  fieldfare explain name "Larg Yellow Underwing" --steps

Options:
`

func explainCommand(args []string, s streams) int {
	flags := newFlags("explain", explainHelp, s)
	format := flags.String("format", "text", "the `FORM` of the answer: text, csv or json (one object a line)")
	reading := addReading(flags)
	steps := flags.Bool("steps", false, "name: tell every step of the search")
	group := flags.String("group", "", "name: the `GROUP` that the page is about, such as moths; decides between names that several groups share")
	if status, done := parse(flags, args, s); done {
		return status
	}
	form, err := lines.ParseFormat(*format)
	if err != nil {
		return usage(s, err.Error())
	}
	if flags.NArg() == 0 {
		return usage(s, "Say what to explain: date, count or name")
	}
	var table lines.Table
	switch kind := flags.Arg(0); strings.TrimSuffix(strings.ToLower(kind), "s") {
	case "date":
		o, err := reading.dates()
		if err != nil {
			return usage(s, err.Error())
		}
		table = explain.Dates(o)
	case "count":
		table = explain.Counts(tally.Options{ZeroIsAbsence: reading.zeroIsAbsence})
	case "name":
		index, err := reading.names()
		if err != nil {
			return failed(context.Background(), s, err)
		}
		table = explain.Names(index, taxa.Context{Group: *group}, *steps)
	case "gridref", "grid", "reference", "place":
		return usage(s, fmt.Sprintf("%q cannot be explained here; for grid references there is \"fieldfare gridref\"", kind))
	default:
		return usage(s, fmt.Sprintf("%q cannot be explained; write date, count or name", kind))
	}
	if values := flags.Args()[1:]; len(values) > 0 {
		err = table.Values(values, s.out, form)
	} else {
		err = table.Stream(s.in, s.out, form)
	}
	if err != nil {
		return failed(context.Background(), s, err)
	}
	return exitDone
}

// readingFlags set how explain reads a value.
type readingFlags struct {
	taxaLists     []string
	monthFirst    bool
	evening       bool
	year          int
	today         string
	zeroIsAbsence bool
}

func addReading(flags *pflag.FlagSet) *readingFlags {
	r := &readingFlags{}
	flags.StringArrayVar(&r.taxaLists, "taxa", nil, "name: taxon list, a `FILE`; may be given several times (default: the starter list)")
	flags.BoolVar(&r.monthFirst, "month-first", false, "date: the month stands before the day")
	flags.BoolVar(&r.evening, "evenings", false, "date: a single day is the evening of a trap night")
	flags.IntVar(&r.year, "year", 0, "date: the `YEAR` stated elsewhere on the page")
	flags.StringVar(&r.today, "today", "", "date: the `DAY` after which a date lies in the future (default: today)")
	flags.BoolVar(&r.zeroIsAbsence, "zero-is-absence", false, "count: 0 or a dash means looked for and not found")
	return r
}

func (r *readingFlags) dates() (when.Options, error) {
	if r.year != 0 && (r.year < 1000 || r.year > 9999) {
		return when.Options{}, fmt.Errorf("--year %d: write the year in four figures, such as 2004", r.year)
	}
	today, err := todayFrom(r.today)
	o := when.Options{Today: today, Year: r.year, Evening: r.evening}
	if r.monthFirst {
		o.Order = when.MonthDay
	}
	return o, err
}

func (r *readingFlags) names() (*taxa.Index, error) {
	lists := []*taxa.List{}
	for _, path := range r.taxaLists {
		list, _, err := taxa.Load(path)
		if err != nil {
			return nil, err
		}
		lists = append(lists, list)
	}
	if len(lists) == 0 {
		lists = append(lists, taxa.Starter())
	}
	return taxa.NewIndex(lists...), nil
}
