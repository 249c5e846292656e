package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"

	"fieldfare/convert/compare"
	"fieldfare/convert/stage"
)

const compareHelp = `Says what is new, changed and withdrawn between two submissions.

  fieldfare compare OLD NEW

OLD and NEW are submissions (submission.zip) or other Darwin Core Archives.
Records are told by their ids, and visits on which nothing was found by their
eventIDs; of what changed, every changed term and measurement is listed, old
and new. Example:

  fieldfare compare handed-in-2024/submission.zip handed-in/submission.zip

Options:
`

func compareCommand(args []string, s streams) int {
	flags := newFlags("compare", compareHelp, s)
	format := flags.String("format", "text", "the `FORM` of the answer: text, json, or xlsx (with --out)")
	out := flags.StringP("out", "o", "", "`FILE` to write instead of the screen")
	if status, done := parse(flags, args, s); done {
		return status
	}
	if flags.NArg() != 2 {
		return usage(s, "Name two submissions, the old one first")
	}
	if *format == "text" && filepath.Ext(*out) == ".xlsx" {
		*format = "xlsx"
	}
	if *format == "xlsx" && *out == "" {
		return usage(s, "A workbook needs a file: --out changes.xlsx")
	}
	writers := map[string]func(*compare.Result, io.Writer) error{
		"text": (*compare.Result).WriteText, "json": (*compare.Result).WriteJSON, "xlsx": (*compare.Result).WriteWorkbook,
	}
	write := writers[*format]
	if write == nil {
		return usage(s, fmt.Sprintf("--format %s: write text, json or xlsx", *format))
	}
	for _, submission := range flags.Args() {
		if *out != "" && sameFile(submission, *out) {
			return usage(s, fmt.Sprintf("--out %s: this is one of the submissions, and the answer would be written over it", *out))
		}
	}
	result, err := compare.Submissions(flags.Arg(0), flags.Arg(1))
	if err != nil {
		return failed(context.Background(), s, err)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := emit(ctx, *out, s.out, func(w io.Writer) error { return write(result, w) }); err != nil {
		return failed(ctx, s, err)
	}
	return exitDone
}

// sameFile tells whether two paths lead to one file.
func sameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}

// emit writes to the file, whole or not at all, or to the screen where no
// file is named.
func emit(ctx context.Context, path string, screen io.Writer, write func(io.Writer) error) error {
	if path == "" {
		return write(stage.Until(ctx, screen))
	}
	return stage.File(path, func(w io.Writer) error { return write(stage.Until(ctx, w)) })
}
