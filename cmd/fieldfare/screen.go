package main

import (
	"io"
	"os"

	"fieldfare/convert/report"

	"golang.org/x/term"
)

// screen is a terminal, or what may become one. Text from notebooks and names
// of files pass through it: whatever would move the cursor, change colours or
// turn the direction of writing is shown as U+FFFD instead.
type screen struct{ w io.Writer }

// screenOf guards a stream that is a terminal. Data that goes into a file or
// another program is left as it is.
func screenOf(f *os.File) io.Writer {
	if term.IsTerminal(int(f.Fd())) {
		return screen{f}
	}
	return f
}

// width is how many characters a line of the terminal holds; 0 where it does
// not say.
func (s screen) width() int {
	if f, ok := s.w.(*os.File); ok {
		if width, _, err := term.GetSize(int(f.Fd())); err == nil {
			return width
		}
	}
	return 0
}

// Write shows p. A write holds whole characters, as all of ours do.
func (s screen) Write(p []byte) (int, error) {
	if _, err := io.WriteString(s.w, report.Visible(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}
