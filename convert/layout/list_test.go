package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// drafts walks a sheet and copies its drafts.
func draftsOf(t *testing.T, s *memory, o Options) []Draft {
	t.Helper()
	p, err := Survey(s, o)
	require.NoError(t, err)
	var out []Draft
	require.NoError(t, p.Walk(s, func(o *Outcome) error {
		for _, d := range o.Drafts {
			d.Values = append([]Value(nil), d.Values...)
			out = append(out, d)
		}
		sum := o.Used
		for _, n := range o.Left {
			sum += n
		}
		text := 0
		for i := range o.Row.Cells {
			if HasText(&o.Row.Cells[i]) {
				text++
			}
		}
		assert.Equal(t, text, sum, "row %d: cells used and left", o.Row.Number)
		return nil
	}))
	return out
}

func valueOf(d Draft, m Meaning) string {
	v, ok := d.Get(m)
	if !ok {
		return ""
	}
	return v.Text
}

func TestCarryDownNeverForNamesOrCounts(t *testing.T) {
	ds := draftsOf(t, sheetOf(
		"Date|Site|Species|No.|Recorder",
		"12/06/2014|Tinker's Row|Heart and Dart|3|IC",
		`"|〃|Flame||do`,
		`|ditto|"|2|-"-`,
	), Options{})
	require.Len(t, ds, 3)
	assert.Equal(t, "12/06/2014", valueOf(ds[1], Date))
	assert.Equal(t, "Tinker's Row", valueOf(ds[1], Site))
	assert.Equal(t, "IC", valueOf(ds[1], Recorder))
	assert.Equal(t, "", valueOf(ds[1], Count))
	v, ok := ds[1].Get(Date)
	require.True(t, ok)
	assert.Equal(t, FromAbove, v.From)
	name, ok := ds[2].Get(Taxon)
	require.True(t, ok)
	assert.Equal(t, "ditto-not-read", name.Doubt.Code)
}

// TestBesideListsSideBySide: what stands to the right of the last of several
// lists, under no heading, is read with its row or told of, never dropped.
func TestBesideListsSideBySide(t *testing.T) {
	lines := []string{
		"Species|No.||Species|No.|",
		"Flame|1||Drinker|2|worn",
		"Silver Y|4||Buff-tip|1|",
		"Garden Tiger|4||Herald|1|seen by both",
		"|||||end of the garden list",
	}
	ds := draftsOf(t, sheetOf(lines...), Options{})
	require.Len(t, ds, 6)
	var beside []string
	for _, d := range ds {
		for _, v := range d.Values {
			if v.Ref.Col == 6 {
				beside = append(beside, valueOf(d, Taxon)+": "+v.Text)
			}
		}
	}
	assert.Equal(t, []string{"Drinker: worn", "Herald: seen by both"}, beside)
}
