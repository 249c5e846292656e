package layout

import (
	"testing"

	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A row that names a group is left out only where nothing speaks for a
// record: one figure may agree with the rows above by chance.
func TestGroupsAmongSpecies(t *testing.T) {
	for _, c := range []struct {
		name string
		row  []string
		want string
	}{
		{"a word for all that was counted", []string{"", "Macros", "27", ""}, "total"},
		{"a family", []string{"", "Geometridae", "27", ""}, "group-or-sum"},
		{"a family with a date", []string{"3/8/2019", "Geometridae", "27", ""}, "group-or-sum"},
		{"a family with a date and a place", []string{"3/8/2019", "Geometridae", "27", "Long Drove"}, "record"},
		{"a word for all, with a date and a place", []string{"3/8/2019", "Macros", "27", "Long Drove"}, "group-or-sum"},
		{"a family whose figure is another", []string{"3/8/2019", "Geometridae", "5", "Long Drove"}, "record"},
	} {
		m := &memory{file: "sums.csv"}
		for i, texts := range [][]string{
			{"Date", "Species", "Count", "Site"},
			{"3/8/2019", "Large Yellow Underwing", "23", "Long Drove"},
			{"", "Common Footman", "4", ""},
			c.row,
			{"10/8/2019", "Silver Y", "2", "Long Drove"},
		} {
			r := notebook.Row{Number: i + 1}
			for _, text := range texts {
				r.Cells = append(r.Cells, textCell(text))
			}
			m.rows = append(m.rows, r)
		}
		p, err := Survey(m, Options{})
		require.NoError(t, err)
		got := ""
		require.NoError(t, p.Walk(m, func(o *Outcome) error {
			if o.Row.Number != 4 {
				return nil
			}
			got = string(o.Skip)
			for i := range o.Drafts {
				got = "record"
				for _, v := range o.Drafts[i].Values {
					if v.Doubt.Code == "group-or-sum" {
						got = v.Doubt.Code
					}
				}
			}
			return nil
		}))
		assert.Equal(t, c.want, got, c.name)
	}
}
