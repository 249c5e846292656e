package taxa_test

import (
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
)

// TestLongTextIsNoName reads a megabyte as a name, which would take hours if
// each of its parts were tried.
func TestLongTextIsNoName(t *testing.T) {
	m := starter()
	for _, text := range []string{strings.Repeat("rain ", 200_000), "Buff-tip " + strings.Repeat("and again ", 100_000), strings.Repeat("(", 1<<20)} {
		r := m.Match(taxa.Written{Name: text}, taxa.Context{})
		assert.Equal(t, reading.Held, r.State)
		assert.Nil(t, r.Taxon)
	}
}
