package main

import (
	"io"
	"time"

	"fieldfare/convert"

	"github.com/schollz/progressbar/v3"
)

// bar shows long work on a terminal. It appears only once the work has taken
// a moment, so that short runs stay quiet.
type bar struct {
	w   io.Writer
	now *progressbar.ProgressBar
}

// newProgress returns a progress bar where w is a terminal, else nil.
func newProgress(w io.Writer) convert.Progress {
	if s, ok := w.(screen); ok {
		return &bar{w: s.w}
	}
	return nil
}

// Stage begins a new bar; an empty name only ends the old one.
func (b *bar) Stage(name string, steps int) {
	if b.now != nil {
		b.now.Finish()
		b.now = nil
	}
	if name == "" {
		return
	}
	b.now = progressbar.NewOptions(steps,
		progressbar.OptionSetWriter(b.w),
		progressbar.OptionSetDescription(shown(name)),
		progressbar.OptionShowCount(),
		progressbar.OptionShowIts(),
		progressbar.OptionSetItsString("rows"),
		progressbar.OptionSetPredictTime(true),
		progressbar.OptionThrottle(200*time.Millisecond),
		progressbar.OptionSetRenderBlankState(false),
		progressbar.OptionClearOnFinish(),
	)
}

// Step moves the bar on.
func (b *bar) Step(n int) {
	if b.now != nil {
		b.now.Add(n)
	}
}
