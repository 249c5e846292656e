package validate

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestHashesInFilesAndInMemoryAgree: what is repeated is found wherever the
// values wait, and no file remains.
func TestHashesInFilesAndInMemoryAgree(t *testing.T) {
	const n = inMemory + inMemory/2
	for name, folder := range map[string]string{"in a file": t.TempDir(), "no file can be written": filepath.Join(t.TempDir(), "missing")} {
		t.Run(name, func(t *testing.T) {
			t.Setenv("TMPDIR", folder)
			t.Setenv("TMP", folder) // where that is the system's word for it
			r := rand.New(rand.NewPCG(1, 2))
			var repeated, distinct hashes
			times := map[uint64]int{}
			for range n {
				v := r.Uint64N(n/2) * 0x9e3779b97f4a7c15 // each half a time again
				times[v]++
				repeated.add(v)
				distinct.add(v)
			}
			assert.Equal(t, name == "in a file", repeated.file != nil)
			var want, all []uint64
			for v, n := range times {
				all = append(all, v)
				if n > 1 {
					want = append(want, v)
				}
			}
			slices.Sort(want)
			slices.Sort(all)
			got, err := repeated.repeated()
			require.NoError(t, err)
			assert.True(t, slices.Equal(want, got))
			got, err = distinct.distinct()
			require.NoError(t, err)
			assert.True(t, slices.Equal(all, got))
			left, _ := os.ReadDir(folder)
			assert.Empty(t, left)
		})
	}
}

func TestHashesTellOfAFileThatIsLost(t *testing.T) {
	var h hashes
	for i := range uint64(2 * inMemory) {
		h.add(i * 0x9e3779b97f4a7c15)
	}
	require.NotNil(t, h.file)
	require.NoError(t, h.file.Truncate(100))
	_, err := h.repeated()
	assert.ErrorContains(t, err, "a temporary file could not be read back")
}
