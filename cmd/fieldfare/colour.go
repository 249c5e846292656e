package main

import (
	"io"
	"os"
	"regexp"
	"runtime"

	"golang.org/x/term"
)

// stateWord is a state where the closing screen names it: after its number, or
// at the beginning of a line.
var stateWord = regexp.MustCompile(`(?m)^( +[0-9]* *)(fair|query|held)( )`)

// The colours of the states, beside their words and never instead of them.
var stateColours = map[string]string{"fair": "\x1b[32m", "query": "\x1b[33m", "held": "\x1b[1;31m"}

// coloured colours the closing screen where w is a terminal that shows colour
// and nobody has asked for none (no-color.org).
func coloured(w io.Writer, text string) string {
	file, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return text
	}
	if runtime.GOOS == "windows" && os.Getenv("WT_SESSION") == "" {
		return text // an old console would print the codes
	}
	return paint(text)
}

func paint(text string) string {
	return stateWord.ReplaceAllStringFunc(text, func(s string) string {
		m := stateWord.FindStringSubmatch(s)
		return m[1] + stateColours[m[2]] + m[2] + "\x1b[0m" + m[3]
	})
}
