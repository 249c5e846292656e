package main

import (
	"io"
	"regexp"
	"time"
	"unicode/utf8"

	"fieldfare/convert"
	"fieldfare/convert/report"

	"github.com/schollz/progressbar/v3"
)

// bar shows long work on a terminal. It appears only once the work has taken
// a moment, so that short runs stay quiet.
type bar struct {
	s   screen
	now *progressbar.ProgressBar
}

// newProgress returns a progress bar where w is a terminal, else nil.
func newProgress(w io.Writer) convert.Progress {
	if s, ok := w.(screen); ok {
		return &bar{s: s}
	}
	return nil
}

// A line of the bar holds numbers and rates of about besideBar characters; what
// is left of a terminal's width is shared by the name and the bar itself.
const (
	besideBar  = 52
	usualWidth = 80
	leastName  = 8
	mostBar    = 40
)

// Stage begins a new bar; an empty name only ends the old one.
func (b *bar) Stage(name string, steps int) {
	if b.now != nil {
		b.now.Finish()
		b.now = nil
	}
	if name == "" {
		return
	}
	width := b.s.width()
	if width <= 0 {
		width = usualWidth
	}
	name = shortName(report.Visible(name), max(width-besideBar-1, leastName))
	b.now = progressbar.NewOptions(steps,
		progressbar.OptionSetWriter(&patient{w: b.s.w, from: time.Now().Add(patience)}),
		progressbar.OptionSetDescription(name),
		progressbar.OptionSetWidth(min(max(width-besideBar-utf8.RuneCountInString(name), 1), mostBar)),
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

// shortName keeps the end of a long name, where names of files and sheets
// differ.
func shortName(name string, most int) string {
	if r := []rune(name); len(r) > most {
		return "…" + string(r[len(r)-most+1:])
	}
	return name
}

// patience is how long work must last to be worth a bar.
const patience = 700 * time.Millisecond

// patient writes nothing before a moment, so that what is done by then is not
// seen at all. It says of the times that the bar ends with which is which.
type patient struct {
	w    io.Writer
	from time.Time
}

// times are how long the work has lasted and how long it will.
var times = regexp.MustCompile(`\[[^:\[\]]*:([^:\[\]]+)\]`)

func (p *patient) Write(text []byte) (int, error) {
	if time.Now().Before(p.from) {
		return len(text), nil
	}
	if _, err := p.w.Write(times.ReplaceAll(text, []byte("$1 left"))); err != nil {
		return 0, err
	}
	return len(text), nil
}
