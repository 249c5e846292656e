package main

import (
	"fmt"
	"io"

	"fieldfare/convert/stage"
)

// output is standard output. It remembers that something could not be written,
// so that nobody takes what was cut off for the whole.
type output struct {
	w   io.Writer
	err error // in a sentence
}

// Write writes p; after an error nothing more.
func (o *output) Write(p []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.w.Write(p)
	o.err = stage.StreamError("Standard output", err)
	return n, o.err
}

// whole returns the exit status of a command with the given one: where its
// output was cut off and it has not said so, that is said.
func (o *output) whole(status int, s streams) int {
	if o.err == nil || status >= exitUsage {
		return status
	}
	fmt.Fprintln(s.err, "fieldfare:", sentence(o.err))
	return exitFailed
}
