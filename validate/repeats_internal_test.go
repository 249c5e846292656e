package validate

import (
	"encoding/binary"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRepeats: marks are counted by all of their bits, also where some share
// one half or the other.
func TestRepeats(t *testing.T) {
	mark := func(a, b uint64) *[16]byte {
		var m [16]byte
		binary.BigEndian.PutUint64(m[:8], a)
		binary.BigEndian.PutUint64(m[8:], b)
		return &m
	}
	marks := []*[16]byte{mark(7, 1), mark(7, 2), mark(8, 1), mark(7, 1), mark(0, 0), mark(9, 0), mark(9, 1), mark(9, 0), mark(7, 2), mark(7, 3), mark(0, 0)}
	want := []int{1, 1, 1, 2, 1, 1, 1, 2, 2, 1, 2}
	for _, asked := range []bool{false, true} {
		var r Repeats
		for _, m := range marks {
			r.Add(m)
		}
		require.NoError(t, r.Settle(asked))
		for i, m := range marks {
			assert.Equal(t, m[7] != 8, r.Repeated(m), "%v", m)
			assert.Equal(t, want[i], r.Next(m), "%v, the %d-th", m, i)
			assert.Equal(t, asked, r.Has(m))
		}
		assert.Equal(t, !asked, r.Empty())
		assert.False(t, r.Has(mark(6, 1)))
		assert.Equal(t, 1, r.Next(mark(6, 1)))
	}
	var none Repeats
	require.NoError(t, none.Settle(true))
	assert.True(t, none.Empty())
	assert.False(t, none.Has(mark(0, 0)))
}
