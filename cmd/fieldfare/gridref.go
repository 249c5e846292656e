package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"

	"fieldfare/convert/lines"
	"fieldfare/convert/lines/gridline"
	"fieldfare/gridref"

	"github.com/spf13/pflag"
)

const gridrefHelp = `Grid references to latitude and longitude, and back.

  fieldfare gridref [VALUE...]
  fieldfare gridref --column "Grid ref" [FILE]

Give one or more values, or none to read one a line from standard input. A
value is a British, Irish or Channel Islands reference, a full easting and
northing, UTM, MGRS, or latitude and longitude, however it was written. Each
is answered with the centre of its square on WGS84 and the distance in metres
to its farthest corner. What is likely but not certain is marked as a query,
and what cannot be read is held, with the reason. A line may have up to 16 MB.

For example, to see where a moth trap stood:

  $ fieldfare gridref "TL 483 812"
  TL 483 812: TL483812 is 52.4091617, 0.1795509 within 71.9 m

`

// gridrefCommand answers values, lines or the cells of a column of a CSV file.
func gridrefCommand(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := pflag.NewFlagSet("gridref", pflag.ContinueOnError)
	flags.SetOutput(io.Discard)
	to := flags.String("to", "", "`FORM` wanted: gridref turns latitude,longitude[,uncertainty in metres] into references")
	size := flags.Int32("size", 0, "the side of the squares wanted, in `METRES`: 1, 10, 100, 1000, 2000, 5000, 10000 or 100000")
	point := flags.Bool("point", false, "a full easting and northing is a point, not the square metre around it")
	format := flags.String("format", "text", "the `FORM` of the answer: text, csv or json (one object a line)")
	column := flags.String("column", "", "read a CSV file and add the answers to the cells under this `HEADING` as new columns")

	wrong := func(message string) int {
		fmt.Fprintf(stderr, "%s.\nTry: fieldfare gridref --help\n", message)
		return exitUsage
	}
	if err := flags.Parse(args); errors.Is(err, pflag.ErrHelp) {
		fmt.Fprint(stdout, gridrefHelp+optionsOf(flags))
		return exitDone
	} else if err != nil {
		return wrong(wrongFlag(flags, err))
	}
	form, err := lines.ParseFormat(*format)
	switch {
	case err != nil:
		return wrong(err.Error())
	case *to != "" && *to != "gridref":
		return wrong("--to takes one word, gridref; “" + *to + "” is not it")
	case flags.Changed("size") && !gridref.Standard(*size):
		return wrong(fmt.Sprintf("--size %d is no square; use 1, 10, 100, 1000, 2000, 5000, 10000 or 100000", *size))
	case flags.Changed("column") && flags.Changed("format") && form != lines.CSV:
		return wrong("--column always writes CSV, so --format has no use beside it")
	case flags.Changed("column") && flags.NArg() > 1:
		return wrong("--column takes one CSV file, or none to read standard input")
	}
	table := gridline.Table(gridline.Options{ToGridref: *to == "gridref", Size: *size, Point: *point})
	out := bufio.NewWriterSize(stdout, 1<<20)
	switch {
	case flags.Changed("column"):
		err = gridrefColumn(table, *column, flags.Args(), stdin, out, stderr)
	case flags.NArg() > 0:
		err = table.Values(flags.Args(), out, form)
	default:
		err = table.Stream(stdin, stdout, form)
	}
	if err == nil {
		err = out.Flush()
	}
	if missing := (*lines.NoColumn)(nil); errors.As(err, &missing) {
		return wrong("T" + missing.Error()[1:])
	}
	if err != nil {
		fmt.Fprintln(stderr, "fieldfare:", sentence(err))
		return exitFailed
	}
	return exitDone
}

// gridrefColumn adds the answers to a CSV file.
func gridrefColumn(table lines.Table, column string, files []string, in io.Reader, out io.Writer, stderr io.Writer) error {
	if len(files) > 0 {
		f, err := os.Open(files[0])
		if err != nil {
			return fmt.Errorf("%s: the file cannot be opened. Check the name, and that you may read it", files[0])
		}
		defer f.Close()
		in = f
	}
	wide, err := table.Column(in, out, column, "gridref_")
	if wide > 0 {
		fmt.Fprintf(stderr, "Rows with more cells than the heading row: %d. Their new cells stand further right.\n", wide)
	}
	return err
}
