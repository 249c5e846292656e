package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const closing = "        20  held     not handed in until you answer\n  held   9 records: the word held stays plain here (\x1b[31mred)\n"

func TestColourIsNeverAlone(t *testing.T) {
	for _, c := range []struct {
		says, noColour, term, want string
	}{
		{"on a terminal", "", "xterm", "        20  \x1b[1;31mheld\x1b[0m     not handed in until you answer\n  \x1b[1;31mheld\x1b[0m   9 records: the word held stays plain here (�[31mred)\n"},
		{"where nobody wants any", "1", "xterm", "        20  held     not handed in until you answer\n  held   9 records: the word held stays plain here (�[31mred)\n"},
		{"on a terminal without any", "", "dumb", "        20  held     not handed in until you answer\n  held   9 records: the word held stays plain here (�[31mred)\n"},
	} {
		t.Setenv("NO_COLOR", c.noColour)
		t.Setenv("TERM", c.term)
		t.Setenv("WT_SESSION", "1")
		var out bytes.Buffer
		require.NoError(t, showClosing(screen{&out}, closing))
		assert.Equal(t, c.want, out.String(), c.says)
	}
	var file bytes.Buffer
	require.NoError(t, showClosing(&file, closing))
	assert.Equal(t, closing, file.String(), "a file gets the text as it is")
}
