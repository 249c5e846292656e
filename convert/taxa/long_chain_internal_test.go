package taxa

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestOneNameOfManyTaxa: a list that gives one name to very many taxa, as one
// with "Moth" in each row does, is taken in in the time that its length asks
// for, each taxon once.
func TestOneNameOfManyTaxa(t *testing.T) {
	for _, n := range []int{3, longSteps - 1, longSteps, longSteps + 1, longSteps + 2, 50_000} {
		var b strings.Builder
		b.WriteString("scientificName,vernacularName\n")
		for i := range n {
			fmt.Fprintf(&b, "Aus %c%c%c%cus,Moth\n", 'a'+i%26, 'a'+i/26%26, 'a'+i/676%26, 'a'+i/17576%26)
		}
		l, _, err := loadText([]byte(b.String()), "list")
		require.NoError(t, err)
		ix := NewIndex(l)
		seen := map[int32]bool{}
		for at := range ix.chain("moth") {
			assert.False(t, seen[ix.names[at].taxon])
			seen[ix.names[at].taxon] = true
		}
		assert.Len(t, seen, n)
	}
}
