package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var overridePage = []string{
	"Tinker's Row 2014",
	"Date|Moth|Qty|Odd",
	"12/6|Heart and Dart|3|mild",
	"|Flame|1|",
	"13/6|Drinker|2|wet",
}

func TestOverridesLineByLine(t *testing.T) {
	entry := Entry{File: "page.csv", Columns: map[string]string{"D": "weather", "C": "count larva"},
		Facts: map[string]string{"recorder": "Ines Calloway", "year": "2013"}, CarryDown: []string{}, Skip: []string{"5"}}
	require.Empty(t, entry.Check())
	ds := draftsOf(t, sheetOf(overridePage...), Options{Overrides: []Entry{entry}})
	require.Len(t, ds, 2)
	assert.Equal(t, "mild", valueOf(ds[0], Weather))
	c, ok := ds[0].Get(Count)
	require.True(t, ok)
	assert.Equal(t, "larva", c.Stage)
	assert.Equal(t, "12/6/2013", valueOf(ds[0], Date))
	assert.Equal(t, "Ines Calloway", valueOf(ds[1], Recorder))
	who, _ := ds[1].Get(Recorder)
	assert.Equal(t, FromProject, who.From)
	assert.Equal(t, "2013", valueOf(ds[1], Date), "nothing is carried down, so the page's year is all that is known")
}

func TestOverridesOfAnotherSheetAreIgnored(t *testing.T) {
	s := sheetOf("Date|Species|No.", "12/6/2014|Flame|1")
	ds := draftsOf(t, s, Options{Overrides: []Entry{{File: "other*.csv", Page: "skip"}}})
	assert.Len(t, ds, 1)
	ds = draftsOf(t, s, Options{Overrides: []Entry{{File: "PAGE.*", Page: "skip"}}})
	assert.Empty(t, ds)
}

// TestEntriesRoundTrip: the decision written to a project file and read back
// leads to the same drafts.
func TestEntriesRoundTrip(t *testing.T) {
	pages := map[string][]string{
		"list":   {"Site: Tinker's Row  TL453812", "Date|Moth|Qty|Obs.|Odd", "12/6/14|Flame|1|IC|q", `"|Drinker|2|"|`},
		"across": {"2014", "|June|", "Species|12|13|Total", "Flame|1||1", "Drinker|2|3|5", "Total|3|3|6"},
		"down":   {"Night|Wind|Flame|Drinker", "12/6/14|SW|1|", "13/6/14|calm||2"},
		"beside": {"Species|No.||Species|No.", "Flame|1||Drinker|2", "Comma|3||Peacock|4"},
		"below":  {"Species|12/6/14|13/6/14", "Flame|1|2", "", "Species|14/6/14|15/6/14", "Drinker|3|4"},
	}
	for name, lines := range pages {
		t.Run(name, func(t *testing.T) {
			s := sheetOf(lines...)
			p, err := Survey(s, Options{})
			require.NoError(t, err)
			want, got := draftsOf(t, s, Options{}), draftsOf(t, s, Options{Overrides: throughFile(t, p.Entries())})
			require.Len(t, got, len(want))
			for i := range want {
				for _, m := range []Meaning{Date, Taxon, Count, Site, GridRef, Recorder, Weather} {
					assert.Equal(t, valueOf(want[i], m), valueOf(got[i], m), "draft %d, %s", i, m)
				}
			}
		})
	}
}

func TestCheckNamesTheFault(t *testing.T) {
	for want, e := range map[string]Entry{
		"colour":  {Columns: map[string]string{"A": "colour"}},
		"mood":    {Facts: map[string]string{"mood": "good"}},
		"count":   {CarryDown: []string{"count"}},
		"poem":    {Page: "poem"},
		"seventh": {Headings: "seventh"},
	} {
		assert.Contains(t, e.Check(), want)
	}
}
