package main

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The bar tells rows, rows a second and the time left, each line within the
// width of a usual terminal, and is gone at the end.
func TestBarOfLongWork(t *testing.T) {
	var out bytes.Buffer
	b := newProgress(screen{&out})
	require.NotNil(t, b)
	b.Stage("Reading a notebook of a very long name indeed, \x1b[31mred", 4000)
	for range 10 {
		time.Sleep(patience / 5)
		b.Step(256)
	}
	b.Stage("", 0)
	lines := strings.FieldsFunc(out.String(), func(c rune) bool { return c == '\r' })
	require.NotEmpty(t, lines)
	told := 0
	for _, line := range lines {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), usualWidth, "%q", line)
		assert.NotContains(t, line, "\x1b[31m")
		if regexp.MustCompile(`\(\d+/4000, \d+ rows/s\) \S+ left`).MatchString(line) {
			told++
		}
	}
	assert.Positive(t, told, "%q", lines)
	assert.Empty(t, strings.TrimSpace(lines[len(lines)-1]), "nothing stays behind")
}

func TestBarOfShortWork(t *testing.T) {
	var out bytes.Buffer
	b := newProgress(screen{&out})
	b.Stage("Reading walks.csv", 300)
	b.Step(256)
	b.Stage("Comparing", -1)
	b.Step(44)
	b.Stage("", 0)
	assert.Empty(t, out.String())
	assert.Nil(t, newProgress(&out), "none where there is no terminal")
}
