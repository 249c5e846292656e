package tally_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/tally"

	"github.com/stretchr/testify/assert"
)

// TestEdges: counts at the edge of what is read otherwise. Common practice, no
// source, but for the days that a spreadsheet stores as 30000 to 60000
// (ECMA-376, part 1, 18.17.4.1): 18 February 1982 to 7 April 2064.
func TestEdges(t *testing.T) {
	for _, c := range []struct {
		written string
		state   reading.State
		code    string
		want    string
	}{
		{"29999", reading.Query, "many-individuals", `{"individualCount":"29999","occurrenceStatus":"present"}`},
		{"30000", reading.Held, "date-as-count", ""},
		{"60000", reading.Held, "date-as-count", ""},
		{"60001", reading.Query, "many-individuals", `{"individualCount":"60001","occurrenceStatus":"present"}`},
		{"+/-20", reading.Fair, "", `{"organismQuantity":"+/-20","organismQuantityType":"individuals","occurrenceStatus":"present"}`},
		{"+-5m", reading.Fair, "", `{"organismQuantity":"+-5","organismQuantityType":"individuals","sex":"male","occurrenceStatus":"present"}`},
		{"male 2f", reading.Held, "count-not-understood", ""},
		{"2m (f)", reading.Held, "count-not-understood", ""},
		{"2 larvae (adult)", reading.Held, "count-not-understood", ""},
		{"3m, no f", reading.Fair, "", `{"individualCount":"3","sex":"male","occurrenceStatus":"present"}`},
		{"3m none f", reading.Fair, "", `{"individualCount":"3","sex":"male","occurrenceStatus":"present"}`},
		{"no f, 3m", reading.Fair, "", `{"individualCount":"3","sex":"male","occurrenceStatus":"present"}`},
		{"10+2 (worn)", reading.Fair, "", `[{"individualCount":"10","occurrenceStatus":"present"},{"individualCount":"2","occurrenceStatus":"present","occurrenceRemarks":"worn"}]`},
	} {
		r := tally.Read(c.written, tally.Options{})
		assert.Equal(t, c.state, r.State, "%q: %s", c.written, r.Message)
		assert.Equal(t, c.code, r.Code, c.written)
		assert.Equal(t, c.want, r.JSON(), c.written)
	}
}

// TestJoinNothingSeen: that nothing was seen says more than a blank, whichever
// stands first.
func TestJoinNothingSeen(t *testing.T) {
	for _, columns := range [][]tally.Column{
		{{"-", "m", ""}, {"", "f", ""}},
		{{"", "m", ""}, {"-", "f", ""}},
		{{"", "m", ""}, {"not seen", "f", ""}, {"", "", "larvae"}},
	} {
		r := tally.Join(columns, tally.Options{})
		assert.Equal(t, reading.Skipped, r.State)
		assert.Equal(t, "not-seen", r.Code, "%v", columns)
		absent := tally.Join(columns, tally.Options{ZeroIsAbsence: true})
		if assert.Len(t, absent.Parts, 1, "%v", columns) {
			assert.True(t, absent.Parts[0].Absent, "%v", columns)
			assert.Empty(t, absent.Parts[0].Sex, "it is neither sex")
		}
	}
}
