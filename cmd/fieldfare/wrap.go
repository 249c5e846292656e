package main

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// A line is not wrapped to fewer characters than leastWidth, nor to more than
// mostWidth, which the eye follows with effort.
const leastWidth, mostWidth = 30, 100

// hanging is what the further lines of a wrapped line stand below: the text
// after a state and what comes before it, or else the indent.
var hanging = regexp.MustCompile(`^ +[0-9]* *(fair|query|held|skipped) +|^ *`)

// wrapped breaks lines between words so that none is wider than width; 0 is no
// width. A line to be copied, which begins with two dashes or the program's
// name, stays whole.
func wrapped(text string, width int) string {
	if width <= 0 {
		return text
	}
	width = min(max(width, leastWidth), mostWidth)
	var b strings.Builder
	for line := range strings.Lines(text) {
		line, ended := strings.CutSuffix(line, "\n")
		wrapLine(&b, line, width)
		if ended {
			b.WriteByte('\n')
		}
	}
	return b.String()
}

func wrapLine(b *strings.Builder, line string, width int) {
	words := strings.TrimLeft(line, " ")
	if utf8.RuneCountInString(line) <= width || strings.HasPrefix(words, "--") || strings.HasPrefix(words, "fieldfare ") {
		b.WriteString(line)
		return
	}
	lead := hanging.FindString(line)
	indent := strings.Repeat(" ", min(len(lead), width/2))
	b.WriteString(lead)
	at, begun := len(lead), false
	for word := range strings.SplitSeq(line[len(lead):], " ") {
		n := utf8.RuneCountInString(word)
		switch {
		case !begun:
		case at+1+n > width:
			b.WriteByte('\n')
			b.WriteString(indent)
			at = len(indent)
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at, begun = at+n, true
	}
}
