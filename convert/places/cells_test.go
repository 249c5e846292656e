package places_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/gridref"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestWrittenCells reads the labelled cells: what stands in a column of places,
// and beside it, and what a careful person with the list in hand would make of
// it. The table was written before the code was tried on it; it is common
// practice, no source.
func TestWrittenCells(t *testing.T) {
	var listed []places.Place
	for _, c := range table(t, "list.csv") {
		listed = append(listed, places.Place{Name: c[0], Other: strings.Split(c[1], ";"), Reference: c[2], Private: c[3] != ""})
	}
	l, problems := places.NewList(listed)
	require.Empty(t, problems)
	for _, c := range table(t, "cells.csv") {
		site, reference, state, name, place, says := c[0], c[1], c[2], c[3], c[4], c[5]
		r := l.Find(site)
		assert.Equal(t, name, r.Name, site)
		if found := ""; assert.Equal(t, place != "", r.Place != nil, site) && r.Place != nil {
			found = r.Place.Name
			assert.Equal(t, place, found, site)
		}
		verdict := r.Verdict
		if reference != "" {
			written, err := gridref.Parse(reference)
			require.NoError(t, err, reference)
			verdict = verdict.And(places.Agree(r, written, 1000))
		}
		assert.Equal(t, state, verdict.State.String(), "%s at %s: %s", site, reference, verdict.Message)
		assert.Contains(t, verdict.Message, says, "%s at %s", site, reference)
		assert.Equal(t, state != reading.Fair.String(), verdict.Code != "", site)
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
