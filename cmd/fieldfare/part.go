package main

import (
	"context"
	"fmt"

	"fieldfare/convert"
)

// readPart reads notebooks into a part of a set.
func readPart(ctx context.Context, path, out string, files []string, c *common, s streams) int {
	if out != "" {
		return usage(s, "Give either --part FILE, to read a part of a set, or --out FOLDER, to write the submission")
	}
	job, status, ok := c.job(files, s)
	if !ok {
		return status
	}
	if !c.quiet {
		job.Progress = newProgress(s.err)
	}
	part, err := convert.ReadPart(ctx, job, path)
	if job.Progress != nil {
		job.Progress.Stage("", 0)
	}
	if err != nil {
		return failed(ctx, s, err)
	}
	if !c.quiet {
		notebooks := "1 notebook"
		if part.Notebooks != 1 {
			notebooks = fmt.Sprintf("%d notebooks", part.Notebooks)
		}
		fmt.Fprintf(s.err, "The rows of %s (%d) are kept in %s. Give it to convert with the other parts, and the same lists and settings.\n", notebooks, part.Rows, path)
	}
	return exitDone
}
