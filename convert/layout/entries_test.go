package layout

import (
	"context"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/notebook"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEntriesOfEveryNotebook writes the reading of each notebook as parts of a
// project file and reads it back: the records are the same.
func TestEntriesOfEveryNotebook(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(notebooks, "*.*"))
	require.NoError(t, err)
	for _, file := range files {
		if strings.HasSuffix(file, ".expected.csv") || strings.HasSuffix(file, ".md") {
			continue
		}
		t.Run(filepath.Base(file), func(t *testing.T) {
			book, err := notebook.Open(context.Background(), file, notebook.Options{})
			require.NoError(t, err)
			defer func() { assert.NoError(t, book.Close()) }()
			for _, s := range book.Sheets() {
				p, err := Survey(s, Options{})
				require.NoError(t, err)
				var want []string
				require.NoError(t, p.Walk(s, func(o *Outcome) error { want = append(want, recordsOf(o)...); return nil }))
				entries := throughFile(t, p.Entries())
				q, err := Survey(s, Options{Overrides: entries})
				require.NoError(t, err)
				var got []string
				require.NoError(t, q.Walk(s, func(o *Outcome) error {
					assertCellsAddUp(t, o)
					got = append(got, recordsOf(o)...)
					return nil
				}))
				assert.Equal(t, want, got)
			}
		})
	}
}

// recordsOf are the records of a row without what is asked about them, which a
// reading that the project file repeats may settle: “the site was taken from
// the title”.
func recordsOf(o *Outcome) []string {
	var records account
	for _, m := range accountOf("", o) {
		if delete(m, "doubts"); m["note"] == "" && m["skip"] == "" {
			records = append(records, m)
		}
	}
	return records.lines()
}

// throughFile writes entries as a project file has them and reads them again.
func throughFile(t *testing.T, entries []Entry) []Entry {
	data, err := toml.Marshal(map[string]any{"notebook": entries})
	require.NoError(t, err)
	var back struct {
		Notebook []Entry `toml:"notebook"`
	}
	require.NoError(t, toml.Unmarshal(data, &back))
	for _, e := range back.Notebook {
		require.Empty(t, e.Check())
	}
	return back.Notebook
}

// A season that is summed up stays a question when its reading is written to
// the project file and read back, and is settled by saying what the columns
// are.
func TestEntriesKeepQuestions(t *testing.T) {
	s := sheetOf("Species|First date|Total", "Flame|3/6/2014|7", "Drinker|9/7/2014|12")
	p, err := Survey(s, Options{})
	require.NoError(t, err)
	ds := draftsOf(t, s, Options{Overrides: throughFile(t, p.Entries())})
	require.Len(t, ds, 2)
	v, ok := ds[0].Get(Date)
	require.True(t, ok)
	assert.Equal(t, "season-summed-up", v.Doubt.Code)
	ds = draftsOf(t, s, Options{Overrides: []Entry{{Columns: map[string]string{"B": "date"}}}})
	v, ok = ds[0].Get(Date)
	require.True(t, ok)
	assert.Empty(t, v.Doubt.Code)
}

func TestColumnsOfATableCanBeChosen(t *testing.T) {
	s := sheetOf("Species|12 June|13 June|14 June", "Flame|1|2|3", "Drinker|2|4|6")
	ds := draftsOf(t, s, Options{Overrides: []Entry{{Columns: map[string]string{"C": "ignored", "D": "count larva"}, Facts: map[string]string{"year": "2013"}}}})
	require.Len(t, ds, 4)
	for i, want := range []string{"12 June 2013", "14 June 2013", "12 June 2013", "14 June 2013"} {
		assert.Equal(t, want, valueOf(ds[i], Date))
	}
	c, _ := ds[1].Get(Count)
	assert.Equal(t, "larva", c.Stage)
	c, _ = ds[0].Get(Count)
	assert.Empty(t, c.Stage)
}
