package people_test

import (
	"strings"
	"testing"

	"fieldfare/convert/people"

	"github.com/stretchr/testify/assert"
)

// What is just a telephone number goes, what is just none stays. Figures: those
// of E.164 and Ofcom's plan as telephone.go states them; the shortest that a
// word announces, common practice, no source.
func TestScrubAtItsLimits(t *testing.T) {
	for text, goes := range map[string]bool{
		"ring 12345": true, "ring 1234": false, "tel " + strings.Repeat("1 ", 14) + "1": true, "tel " + strings.Repeat("1 ", 15) + "1": false,
		"ph 12345": true, "graph 12345": false, "phi 12345": false,
		"0044 1632 960": true, "0044 1632 96": false, "00" + strings.Repeat("4", 16): true, "00" + strings.Repeat("4", 17): false,
		"+44 1632 960": true, "+44 1632 96": true, "+44 1632 9": false, "+" + strings.Repeat("4", 16): true, "+" + strings.Repeat("4", 17): false,
		"O 0123456789": false, "o 0123456789": true, "x 0123456789": true, "TL 0123456789": false, "to 0123456789": true, "TO 0123456789": false,
		"z01632960123": true, "z0163296012": false,
		"01632 9601 23": true, "01632 9601 234": false, "1.01632960123": false, "#01632960123": false, "01632960123:": false, "01632960123.5": false, "01632960123.": true,
	} {
		clean, found := people.Scrub("seen " + text)
		assert.Equal(t, goes, len(found) > 0, "%q became %q", text, clean)
		assert.Equal(t, goes, clean != "seen "+text, "%q became %q", text, clean)
	}
}

// An address may begin or end a text.
func TestScrubAtTheEnds(t *testing.T) {
	for text, want := range map[string]string{
		"a(at)example.org": "", "tom at example dot org": "", "a dot": "a dot", "dot": "dot", "(at": "(at",
		"M1 1AA": "", "m1 1aa": "", "M": "M", "M1": "M1", "xM1 1AA": "xM1 1AA",
	} {
		clean, _ := people.Scrub(text)
		assert.Equal(t, want, clean, text)
	}
}
