package taxa_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The table was written by hand before the matcher was tuned against it.
func TestWrittenNames(t *testing.T) {
	f, err := os.Open("testdata/written.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	rows = rows[1:]
	require.GreaterOrEqual(t, len(rows), 450)
	m := taxa.NewIndex(taxa.Starter()).NewMatcher()
	served, applied, states := 0, 0, map[string]int{}
	for _, row := range rows {
		written, want, kind := row[0], row[1], row[2]
		r := m.Match(taxa.Written{Name: written}, taxa.Context{})
		got := "-"
		if r.Taxon != nil {
			got = r.Taxon.ScientificName
		}
		states[kind+" "+r.State.String()]++
		if r.State < reading.Held {
			assert.Equal(t, want, got, "%q (%s) was read %s: %s", written, kind, r.State, r.Message)
		}
		switch {
		case got == want:
			served++
			applied++
		case len(r.Candidates) > 0 && (r.Candidates[0] == want || strings.HasPrefix(r.Candidates[0], want+" (")):
			served++
		default:
			t.Logf("not served: %q (%s), want %s: %s %s %v", written, kind, want, r.Code, r.Message, r.Candidates)
		}
		if kind != "misspelt" && kind != "nearmiss" && got != want {
			t.Logf("not applied: %q (%s), want %s: %s %s %v", written, kind, want, r.Code, r.Message, r.Candidates)
		}
		if kind == "misspelt" && r.State == reading.Held {
			t.Logf("held: %q, want %s: %s %v", written, want, r.Code, r.Candidates)
		}
	}
	t.Logf("%d names: %d served (%.1f %%), %d applied; %v", len(rows), served, 100*float64(served)/float64(len(rows)), applied, states)
	assert.GreaterOrEqual(t, float64(served)/float64(len(rows)), 0.97, "resolved or offered first")
}
