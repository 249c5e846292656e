package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestColourIsNeverAlone(t *testing.T) {
	text := "        20  held     not handed in until you answer\n  held   9 records: the word held stays plain here\n"
	assert.Equal(t, "        20  \x1b[1;31mheld\x1b[0m     not handed in until you answer\n  \x1b[1;31mheld\x1b[0m   9 records: the word held stays plain here\n", paint(text))
	assert.Equal(t, text, coloured(&bytes.Buffer{}, text), "none where there is no terminal")
}
