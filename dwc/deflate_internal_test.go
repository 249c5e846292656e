package dwc

import (
	"bytes"
	"compress/flate"
	"fmt"
	"io"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tableText is text as the tables of an archive have it.
func tableText(size int) []byte {
	b := make([]byte, 0, size+100)
	for i := 0; len(b) < size; i++ {
		b = fmt.Appendf(b, "urn:uuid:%016x\tNoctua pronuba\tCarr Edge\t%d\n", uint64(i)*0x9e3779b97f4a7c15, i%7)
	}
	return b[:size]
}

func deflated(t *testing.T, text []byte, piece int) []byte {
	var out bytes.Buffer
	d := newDeflater(&out)
	for rest := text; len(rest) > 0; {
		n, err := d.Write(rest[:min(piece, len(rest))])
		require.NoError(t, err)
		rest = rest[n:]
	}
	require.NoError(t, d.Close())
	require.NoError(t, d.Close(), "a second time does nothing")
	return out.Bytes()
}

// TestBlocksAreReadBack holds the blocks against the standard library's reader.
func TestBlocksAreReadBack(t *testing.T) {
	for _, size := range []int{0, 1, deflateBlock - 1, deflateBlock, deflateBlock + 1, 2 * deflateBlock, 5*deflateBlock + 777} {
		text := tableText(size)
		packed := deflated(t, text, 100_000)
		got, err := io.ReadAll(flate.NewReader(bytes.NewReader(packed)))
		require.NoError(t, err, size)
		assert.True(t, bytes.Equal(text, got), size)
	}
}

// TestBytesDoNotDependOnHowTheyAreMade: neither on the number of processors
// nor on the pieces in which the text arrives.
func TestBytesDoNotDependOnHowTheyAreMade(t *testing.T) {
	text := tableText(9*deflateBlock + 5)
	want := deflated(t, text, len(text))
	assert.True(t, bytes.Equal(want, deflated(t, text, 333)), "in pieces")
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, n := range []int{1, 2, 5} {
		runtime.GOMAXPROCS(n)
		assert.True(t, bytes.Equal(want, deflated(t, text, 70_000)), n)
	}
}
