package layout

import (
	"testing"

	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTidyRepairs(t *testing.T) {
	for in, want := range map[string]struct{ text, code string }{
		"Tinkerâ€™s Row":      {"Tinker's Row", "mis-decoded-text"},
		"TinkerÃ¢â‚¬â„¢s Row": {"Tinker's Row", "mis-decoded-text"},
		"2Â°C":                {"2°C", "mis-decoded-text"},
		"Ã—":                  {"×", "mis-decoded-text"},
		"Tinker’s Row":        {"Tinker's Row", "typographic-marks"},
		"Heart\u00a0and Dart": {"Heart and Dart", "typographic-marks"},
		"“small” one":         {`"small" one`, "typographic-marks"},
		"Tinker\ufffds Row":   {"Tinker\ufffds Row", "mis-decoded-text"},
		"Châtelet":            {"Châtelet", ""},
		"3♂ 1♀":               {"3♂ 1♀", ""},
		"12–14":               {"12–14", ""},
		"Âme":                 {"Âme", ""},
		"plain":               {"plain", ""},
	} {
		text, doubt := tidy(in)
		assert.Equal(t, want.text, text, in)
		assert.Equal(t, want.code, doubt.Code, in)
	}
}

// TestCountsThatBecameDates: what spreadsheet programs make of ranges typed
// into a cell, in a country that writes the day first (common practice, no
// source).
func TestCountsThatBecameDates(t *testing.T) {
	for _, c := range []struct {
		cell notebook.Cell
		want string
	}{
		{notebook.Cell{Text: "02-Apr", Raw: "2021-04-02", Kind: notebook.Date}, "2-4"},
		{notebook.Cell{Text: "10-Dec", Raw: "2021-12-10", Kind: notebook.Date}, "10-12"},
		{notebook.Cell{Text: "Feb-14", Raw: "2014-02-01", Kind: notebook.Date}, "2-14"},
		{notebook.Cell{Text: "02/04/2021", Raw: "2021-04-02", Kind: notebook.Date}, "2-4"},
		{notebook.Cell{Text: "03-May", Kind: notebook.Text}, "3-5"},
		{notebook.Cell{Text: "Jan-32", Kind: notebook.Text}, "1-32"},
		{notebook.Cell{Text: "44288", Kind: notebook.Number}, "2-4"},
	} {
		m := sheetOf("Date|Species|Count", "1/6/2021|Flame|2", "2/6/2021|Drinker|3", "3/6/2021|Comma|4", "4/6/2021|Peacock|0")
		m.rows[4].Cells[2] = c.cell
		ds := draftsOf(t, m, Options{})
		require.Len(t, ds, 4)
		v, ok := ds[3].Get(Count)
		require.True(t, ok)
		assert.Equal(t, c.want, v.Text, c.cell.Text)
		assert.Equal(t, c.cell.Text, v.Verbatim)
		assert.Equal(t, "count-became-date", v.Doubt.Code)
		assert.Contains(t, v.Doubt.Message, "C5")
		assert.Equal(t, c.want, v.Doubt.Candidates[0])
	}
}

func TestCleanPageHasNoDoubts(t *testing.T) {
	for _, d := range draftsOf(t, sheetOf(
		"Date|Site|Grid ref|Species|Count|Recorder",
		"12/06/2014|Tinker's Row|TL453812|Flame|2|IC",
		"12/06/2014|Tinker's Row|TL453812|Drinker|10|IC",
		"13/06/2014|Tinker's Row|TL453812|Flame|1|IC",
		"14/06/2014|Tinker's Row|TL453812|Flame|1|IC",
		"15/06/2014|Sallowmere Reserve|TL4581|Flame|3|IC",
		"16/06/2014|Sallowmere Reserve|TL4581|Comma|1|IC",
	), Options{}) {
		for _, v := range d.Values {
			assert.Empty(t, v.Doubt.Code, "%s = %s", v.Meaning, v.Text)
		}
	}
}
