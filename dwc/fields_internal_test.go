package dwc

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every byte at every place of a word is judged as it is by itself.
func TestIsPlainSeesEveryByteAtEveryPlace(t *testing.T) {
	for c := range 256 {
		want := c >= ' ' && c != '"' && c < 0x80
		for length := 1; length <= 25; length++ {
			for place := range length {
				for _, around := range []byte{' ', '!', '#', '~', 0x7f} {
					text := []byte(strings.Repeat(string(rune(around)), length))
					text[place] = byte(c)
					if isPlain(text) != want {
						assert.Equal(t, want, isPlain(text), fmt.Sprintf("%q", text))
					}
				}
			}
		}
	}
}
