package main

import (
	"io"
	"os"
	"regexp"
	"runtime"

	"fieldfare/convert/report"
)

// stateWord is a state where the closing screen names it: after its number, or
// at the beginning of a line.
var stateWord = regexp.MustCompile(`(?m)^( +[0-9]* *)(fair|query|held)( )`)

// The colours of the states, beside their words and never instead of them.
var stateColours = map[string]string{"fair": "\x1b[32m", "query": "\x1b[33m", "held": "\x1b[1;31m"}

// showClosing prints the closing screen: on a terminal wrapped between words
// to its width, and in colour where the terminal shows any and nobody has
// asked for none (no-color.org).
func showClosing(w io.Writer, text string) error {
	s, ok := w.(screen)
	if !ok {
		_, err := io.WriteString(w, text)
		return err
	}
	text = wrapped(report.Visible(text), s.width())
	if showsColour() {
		text = paint(text)
	}
	_, err := io.WriteString(s.w, text)
	return err
}

func showsColour() bool {
	if os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return false
	}
	return runtime.GOOS != "windows" || os.Getenv("WT_SESSION") != "" // an old console would print the codes
}

func paint(text string) string {
	return stateWord.ReplaceAllStringFunc(text, func(s string) string {
		m := stateWord.FindStringSubmatch(s)
		return m[1] + stateColours[m[2]] + m[2] + "\x1b[0m" + m[3]
	})
}
