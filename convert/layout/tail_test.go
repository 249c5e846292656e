package layout

import (
	"fmt"
	"testing"

	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// longPage is longer than Survey keeps: the headings come again near its end,
// and a list of another shape follows.
func longPage() *memory {
	m := &memory{file: "long.csv"}
	add := func(texts ...string) {
		r := notebook.Row{Number: len(m.rows) + 1}
		for _, t := range texts {
			r.Cells = append(r.Cells, textCell(t))
		}
		m.rows = append(m.rows, r)
	}
	add("Date", "Species", "Count", "Site")
	for range headRows + 500 {
		add("12/06/2014", "Flame", "1", "Tinker's Row")
	}
	add("Date", "Species", "Count", "Site")
	add("13/06/2014", "Drinker", "2", "Tinker's Row")
	add("", "Comma", "", "")
	add("Total", "", "9", "")
	add("")
	add("Where", "When", "What", "How many", "Who")
	add("Long Drove", "1/7/2014", "Ringlet", "5", "IC")
	return m
}

func TestLongPage(t *testing.T) {
	m := longPage()
	ds := draftsOf(t, m, Options{})
	require.Len(t, ds, headRows+500+3)
	carried := ds[len(ds)-2]
	assert.Equal(t, "Comma", valueOf(carried, Taxon))
	assert.Equal(t, "13/06/2014", valueOf(carried, Date))
	last := ds[len(ds)-1]
	assert.Equal(t, "Ringlet", valueOf(last, Taxon))
	assert.Equal(t, "Long Drove", valueOf(last, Site))
	assert.Equal(t, "5", valueOf(last, Count))
	assert.Equal(t, "IC", valueOf(last, Recorder))
}

func TestDraftsDoNotDependOnSecondWalk(t *testing.T) {
	m := longPage()
	p, err := Survey(m, Options{})
	require.NoError(t, err)
	count := func() (n int) {
		require.NoError(t, p.Walk(m, func(o *Outcome) error { n += len(o.Drafts); return nil }))
		return n
	}
	assert.Equal(t, count(), count())
}

// TestDraggedDatesFarDown: a run of dates that goes up by one is asked about
// behind the rows that Survey keeps, too.
func TestDraggedDatesFarDown(t *testing.T) {
	m := &memory{file: "long.csv"}
	add := func(texts ...string) {
		r := notebook.Row{Number: len(m.rows) + 1}
		for _, s := range texts {
			r.Cells = append(r.Cells, textCell(s))
		}
		m.rows = append(m.rows, r)
	}
	add("Date", "Species", "Count", "Site")
	for range headRows + 500 {
		add("12/06/2014", "Flame", "1", "Tinker's Row")
	}
	names := []string{"Drinker", "Ghost Moth", "Buff-tip", "Dark Arches", "Silver Y", "Uncertain"}
	for i, name := range names {
		add(fmt.Sprintf("%d/07/2014", 3+i), name, "1", "Tinker's Row")
	}
	add("", "Macros", "4506", "")
	ds := draftsOf(t, m, Options{})
	require.Len(t, ds, headRows+500+len(names), "the sum at the end is no record")
	for i := range names {
		date, ok := ds[headRows+500+i].Get(Date)
		require.True(t, ok)
		if i == 0 {
			assert.Empty(t, date.Doubt.Code)
		} else {
			assert.Equal(t, "autofill", date.Doubt.Code, "row %d", date.Ref.Row)
		}
	}
}
