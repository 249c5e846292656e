package explain_test

import (
	"strings"
	"testing"

	"fieldfare/convert/explain"
	"fieldfare/convert/lines"
	"fieldfare/convert/tally"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func said(t *testing.T, table lines.Table, format lines.Format, values ...string) string {
	t.Helper()
	var out strings.Builder
	require.NoError(t, table.Stream(strings.NewReader(strings.Join(values, "\n")+"\n"), &out, format))
	return out.String()
}

var today = when.Date{Year: 2026, Month: 1, Day: 31}

func TestAnswers(t *testing.T) {
	index := taxa.NewIndex(taxa.Starter())
	for _, c := range []struct {
		table       lines.Table
		value, says string
	}{
		{explain.Dates(when.Options{Today: today}), "12/13.vi.98", "fair, 1998-06-12/1998-06-13"},
		{explain.Dates(when.Options{Today: today}), "31 June 2021", "held (The calendar has no 31 June."},
		{explain.Dates(when.Options{Today: today, Order: when.MonthDay}), "6/12/2021", "fair, 2021-06-12"},
		{explain.Counts(tally.Options{}), "2m 1f", `"sex":"male"`},
		{explain.Names(index, taxa.Context{}, false), "Heart and Dart", "fair, Agrotis exclamationis"},
		{explain.Names(index, taxa.Context{}, false), "Larg Yellow Underwing", "query, Noctua pronuba (“Larg Yellow Underwing” was read as"},
		{explain.Names(index, taxa.Context{}, false), "Nothing of the kind", "held ("},
	} {
		got := said(t, c.table, lines.Text, c.value)
		assert.True(t, strings.HasPrefix(got, c.value+": "), got)
		assert.Contains(t, got, c.says)
	}
	plain, steps := said(t, explain.Names(index, taxa.Context{}, false), lines.Text, "Heart and Dart"), said(t, explain.Names(index, taxa.Context{}, true), lines.Text, "Heart and Dart")
	assert.Greater(t, len(steps), len(plain), "with steps more is told")
}

// One line out for each in, blank ones too, in their order.
func TestOneLineALine(t *testing.T) {
	values := []string{"12/6/2021", "", "x", "  ", "2021"}
	for _, format := range []lines.Format{lines.CSV, lines.JSON, lines.Text} {
		got := strings.Split(strings.TrimSuffix(said(t, explain.Dates(when.Options{Today: today}), format, values...), "\n"), "\n")
		if format == lines.CSV {
			assert.Equal(t, "value,state,reading,message", got[0])
			got = got[1:]
		}
		require.Len(t, got, len(values), format)
		assert.Contains(t, got[0], "2021-06-12", format)
		assert.Contains(t, got[4], "2021", format)
	}
}
