package validate

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// seen is a sighting of which everything differs from that of another number.
func seen(n int) sighting {
	return sighting{
		content: [16]byte{byte(n), byte(n >> 8), byte(n >> 16), 15: 1}, recorder: uint64(n) << 40, initials: uint64(n) + 2, short: uint64(n) + 3,
		method: uint64(n) + 4, manner: uint64(n) + 5, remarks: uint64(n) + 6, lat: float32(n) + 0.5, lon: -float32(n), count: int32(n) - 1, quantity: uint32(n) + 9,
		sheet: int32(n) + 10, row: int32(n) + 11,
	}
}

// TestSightingsInFilesAndInMemoryAgree: a group has its sightings in their
// order, wherever they wait, and no file remains.
func TestSightingsInFilesAndInMemoryAgree(t *testing.T) {
	const groups, n = 40_000, 3 * sightingsAtHand
	for name, folder := range map[string]string{"in a file": t.TempDir(), "no file can be written": filepath.Join(t.TempDir(), "missing")} {
		t.Run(name, func(t *testing.T) {
			t.Setenv("TMPDIR", folder)
			t.Setenv("TMP", folder) // where that is the system's word for it
			s := sightings{groups: make([]group, groups)}
			defer s.close()
			want := make([][]sighting, groups)
			var before [mostInGroup]sighting
			for i := range n {
				at := i * i % groups
				got, err := s.of(at, &before)
				require.NoError(t, err)
				for k := range got {
					got[k].before = 0
				}
				if !slices.Equal(want[at], got) {
					require.Equal(t, want[at], got)
				}
				if len(got) == mostInGroup {
					continue
				}
				one := seen(i)
				want[at] = append(want[at], one)
				s.add(at, &one)
			}
			assert.Equal(t, name == "in a file", s.file != nil)
			if s.file != nil {
				assert.Less(t, len(s.recent), 2*sightingsAtHand)
			}
			s.close()
			left, _ := os.ReadDir(folder)
			assert.Empty(t, left)
		})
	}
}

func TestSightingsTellOfAFileThatIsLost(t *testing.T) {
	s := sightings{groups: make([]group, 3*sightingsAtHand)}
	defer s.close()
	for i := range s.groups {
		one := seen(i)
		s.add(i, &one)
	}
	require.NotNil(t, s.file)
	require.NoError(t, s.file.Truncate(100))
	var before [mostInGroup]sighting
	_, err := s.of(1000, &before)
	assert.ErrorContains(t, err, "a temporary file could not be read back")
}
