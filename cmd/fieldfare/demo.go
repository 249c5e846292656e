package main

import (
	"context"
	"fmt"
	"path/filepath"

	"fieldfare/convert/demo"
)

const demoHelp = `Writes demonstration notebooks and runs the main job on them.

  fieldfare demo [FOLDER]

The notebooks are those of an invented reserve and garden, Sallowmere Reserve
and Tinker's Row, over several years and in several layouts, with the faults
that real notebooks have. They go into FOLDER (default: fieldfare-demo), the
outputs into FOLDER/handed-in. Example:

  fieldfare demo my-first-try

Options:
`

func demoCommand(ctx context.Context, args []string, s streams) int {
	flags := newFlags("demo", demoHelp, s)
	common := addCommon(flags)
	if status, done := parse(flags, args, s); done {
		return status
	}
	folder := "fieldfare-demo"
	switch flags.NArg() {
	case 0:
	case 1:
		folder = flags.Arg(0)
	default:
		return usage(s, "Give one folder for the demonstration")
	}
	notebooks, err := demo.Write(folder)
	if err != nil {
		return failed(ctx, s, err)
	}
	if !common.quiet {
		fmt.Fprintf(s.err, "The demonstration notebooks are in %s. Converting them, as with\n  fieldfare convert %s --out %s\n\n",
			folder, filepath.Join(folder, "*.*"), filepath.Join(folder, "handed-in"))
	}
	job, status, ok := common.job(notebooks, s)
	if !ok {
		return status
	}
	job.Out = filepath.Join(folder, "handed-in")
	return runJob(ctx, job, common, false, s)
}
