package when_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

// TestEdges: dates that are nearly something else. The months of a year after
// a stroke, and offsets of up to 14 hours, are ISO 8601-1 (5.5.2, 4.3.13; from
// memory); the rest is common practice, no source.
func TestEdges(t *testing.T) {
	for _, c := range []struct {
		written string
		state   reading.State
		want    string
		code    string
	}{
		{"first half of 2003", reading.Query, "2003-01/2003-06", "year-only"},
		{"second half of 2003", reading.Query, "2003-07/2003-12", "year-only"},
		{"early 2003", reading.Query, "2003-01/2003-04", "year-only"},
		{"mid 2003", reading.Query, "2003-05/2003-08", "year-only"},
		{"late 2003", reading.Query, "2003-09/2003-12", "year-only"},
		{"2003/04", reading.Held, "", "month-or-year"},
		{"2009/10", reading.Held, "", "month-or-year"},
		{"2003/05", reading.Query, "2003-05", "month-only"},
		{"2003-04", reading.Query, "2003-04", "month-only"},
		{"1999/00", reading.Query, "1999/2000", "year-only"},
		{"2021-06/12", reading.Held, "", "night-or-date"},
		{"2021/06-12", reading.Held, "", "night-or-date"},
		{"2021-06/15", reading.Fair, "2021-06-15", ""}, // no month is 15
		{"2021-06/05", reading.Fair, "2021-06-05", ""}, // nor do months run backwards
		{"2021-06 12", reading.Fair, "2021-06-12", ""},
		{"5-6/07", reading.Held, "", "night-or-date"},
		{"5/6-07", reading.Held, "", "night-or-date"},
		{"5-6/7/2021", reading.Fair, "2021-07-05/2021-07-06", ""},
		{"2021 12 June", reading.Fair, "2021-06-12", ""},
		{"2021 40 June", reading.Held, "", "no-such-day"},
		{"21 12 June", reading.Held, "", "date-unreadable"},
		{"12 13 June 2021", reading.Query, "2021-06-12/2021-06-13", "several-days"},
		{"1 2 June 2021", reading.Held, "", "date-unreadable"}, // two days, or the 12th
		{`"`, reading.Held, "", "date-elsewhere"},
		{`""`, reading.Held, "", "date-elsewhere"},
		{"2021-06-12T22:45+0100", reading.Fair, "2021-06-12T22:45+01:00", ""},
		{"2021-06-12T22:45+01", reading.Fair, "2021-06-12T22:45+01", ""},
		{"2021-06-12T22:45+01:000", reading.Held, "", "date-unreadable"},
		{"2021-06-12T22:45+14:00", reading.Fair, "2021-06-12T22:45+14:00", ""},
		{"2021-06-12T22:45+15:00", reading.Query, "2021-06-12", "no-such-time"},
		{"10pm 12/6/2021", reading.Fair, "2021-06-12T22:00", ""},
		{"12/6/2021 10.30pm", reading.Fair, "2021-06-12T22:30", ""},
		{"12 June 10 am", reading.Held, "", "hour-or-year"},
		{"12/6/2021 2200-2300 hrs", reading.Fair, "2021-06-12T22:00/2021-06-12T23:00", ""},
		{"12.6.21 22.45h", reading.Fair, "2021-06-12T22:45", ""},
		{"12/6/2021 2245h", reading.Fair, "2021-06-12T22:45", ""},
		{"22.45 12/6/2021", reading.Fair, "2021-06-12T22:45", ""},
		{"22.05 12/6/2021", reading.Held, "", "date-unreadable"},
	} {
		r := when.Read(c.written, when.Options{})
		assert.Equal(t, c.state, r.State, "%s: %s", c.written, r.Message)
		assert.Equal(t, c.want, r.EventDate, c.written)
		assert.Equal(t, c.code, r.Code, c.written)
	}
}

// TestOvernight: noon parts the hours that end a night from those that do not.
func TestOvernight(t *testing.T) {
	for written, overnight := range map[string]bool{
		"dusk to dawn": true, "dusk to 02:00": true, "dusk to 11:59": true, "dusk to 12:00": false, "dusk to 23:00": false,
		"22:00 to dawn": true, "12:00 to dawn": true, "11:59 to dawn": false, "22:00 to 02:00": true, "20:00 to 22:00": false,
	} {
		assert.Equal(t, overnight, when.ReadTime(written).Overnight, written)
	}
}
