package ledger_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/ledger"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestBuilderWritesWhatALedgerDoes: whatever the order of the lines and however
// many, with texts that need care and lines that share their ids.
func TestBuilderWritesWhatALedgerDoes(t *testing.T) {
	for _, n := range []int{0, 1, 20, 16_384, 40_000} {
		folder := t.TempDir()
		b := ledger.NewBuilder(folder)
		whole := ledger.Ledger{}
		r := rand.New(rand.NewPCG(7, uint64(n)))
		for i := range n {
			l := line("12/6/2021", "Buff-tip", fmt.Sprint(i), "TL4588\tby the \\ gate\r\nagain", "Ines Calloway", "")
			l.OccurrenceID, l.EventID = fmt.Sprint("id ", r.IntN(n)), fmt.Sprint("e ", i%7)
			l.Visit = i%50 == 0
			if l.Visit {
				l.OccurrenceID = ""
			}
			l.Content.Ordinal, l.Content.Print[0] = i, byte(i)
			b.Add(l)
			whole.Lines = append(whole.Lines, l)
		}
		var want, got bytes.Buffer
		require.NoError(t, whole.Write(&want))
		require.NoError(t, b.Write(&got))
		assert.True(t, bytes.Equal(want.Bytes(), got.Bytes()), "%d lines", n)
		b.Close()
		left, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Empty(t, left)
	}
}

func TestBuilderTellsOfAFileThatCannotBeWritten(t *testing.T) {
	b := ledger.NewBuilder(filepath.Join(t.TempDir(), "missing"))
	defer b.Close()
	for range 20_000 {
		b.Add(line("12/6/2021", "Buff-tip", "2", "TL4588", "Ines Calloway", ""))
	}
	assert.ErrorIs(t, b.Write(&bytes.Buffer{}), os.ErrNotExist)
}
