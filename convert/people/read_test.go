package people_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/people"
	"fieldfare/convert/reading"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func list(t testing.TB) *people.List {
	l, _ := people.NewList([]people.Person{
		{Name: "Ines Calloway", Initials: []string{"IC"}},
		{Name: "Tom Achterberg", Initials: []string{"TA", "TCA"}, Other: []string{"Thomas Achterberg", "Tom"}},
		{Name: "Mary Pell", Initials: []string{"MP"}},
		{Name: "Martin Pell", Initials: []string{"MP"}},
		{Name: "Rose Quill", Initials: []string{"RQ"}, Withhold: true},
	})
	require.NotNil(t, l)
	return l
}

// TestWrittenCells reads the labelled cells: how recorders name people, and
// whom a careful person would take them for; every one has to be read as labelled. Both tables were written before
// the code; aside.csv, a third of them, was kept aside until the first
// measurement, which gave 0 silently wrong and all 37 read; later.csv has
// what came up afterwards. Of the 77 cells that odd.csv was taken from, written
// before the code was looked at, two were silently wrong at the first run. What is expected is common practice, no source.
func TestWrittenCells(t *testing.T) {
	l := list(t)
	for _, file := range []string{"cells.csv", "aside.csv", "later.csv", "odd.csv"} {
		t.Run(file, func(t *testing.T) {
			for _, c := range table(t, file) {
				r := l.Read(c[0], people.Options{Self: "IC"})
				got := []string{people.Join(r.RecordedBy), people.Join(r.IdentifiedBy), people.Join(r.VerifiedBy)}
				same := assert.ObjectsAreEqual(c[2:5], got)
				if r.State == reading.Fair && (!same || c[1] != "fair") {
					t.Errorf("silently wrong: %q is fair %q, not %s %q", c[0], got, c[1], c[2:5])
				} else if !same || r.State.String() != c[1] {
					t.Errorf("%q: got %s %q, want %s %q (%s)", c[0], r.State, got, c[1], c[2:5], r.Message)
				}
			}
		})
	}
}

// TestScrub removes what must not go out and leaves figures that only look
// alike. The telephone numbers are those that Ofcom keeps free for drama
// (01632 960xxx, 07700 900xxx, 020 7946 0xxx; from memory), the domains those
// of RFC 2606; PE14 0ZZ is no postcode in use.
func TestScrub(t *testing.T) {
	for _, c := range table(t, "contacts.csv") {
		clean, found := people.Scrub(c[0])
		assert.Equal(t, c[1], clean, c[0])
		assert.Equal(t, c[2], strings.Join(found, ";"), c[0])
	}
}

func table(t testing.TB, file string) [][]string {
	f, err := os.Open(filepath.Join("testdata", file))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	return rows[1:]
}
