package when_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

// TestReadShown: what a cell shows of the date that it stores. Common practice,
// no source.
func TestReadShown(t *testing.T) {
	for _, c := range []struct {
		raw, shown string
		year       int
		want       string
		state      reading.State
	}{
		{"2021-06-12", "12/06/2021", 0, "2021-06-12", reading.Fair},
		{"2021-06-12", "2021-06-12", 0, "2021-06-12", reading.Fair},
		{"2021-06-12", "6/12/2021", 0, "2021-06-12", reading.Fair}, // a format of another country
		{"2021-06-12", "12-Jun-21", 0, "2021-06-12", reading.Fair},
		{"2021-06-12", "Saturday, 12 June 2021", 0, "2021-06-12", reading.Fair},
		{"2021-06-12", "########", 0, "2021-06-12", reading.Fair},
		{"2021-06-12", "", 0, "2021-06-12", reading.Fair},
		{"2021-06-12T22:45:00", "12/06/2021 22:45", 0, "2021-06-12T22:45", reading.Fair},
		{"1998-06-01", "Jun-98", 0, "1998-06", reading.Query},
		{"1998-06-01", "June 1998", 0, "1998-06", reading.Query},
		{"2012-06-01", "Jun-12", 0, "2012-06", reading.Query},
		{"1998-06-12", "Jun-98", 0, "1998-06-12", reading.Fair}, // the day was typed
		{"1998-06-01", "01/06/1998", 0, "1998-06-01", reading.Fair},
		{"1998-01-01", "1998", 0, "1998", reading.Query},
		{"1998-05-01", "1998", 0, "1998-05-01", reading.Fair},
		{"2025-06-12", "12-Jun", 0, "2025-06-12", reading.Query},
		{"2025-06-12", "12-Jun", 2025, "2025-06-12", reading.Fair},
		{"2025-06-12", "12-Jun", 2021, "2025-06-12", reading.Query},
		{"2031-06-12", "12-Jun", 0, "", reading.Held},
	} {
		r := when.ReadShown(c.raw, c.shown, when.Options{Today: lastDay, Year: c.year})
		assert.Equal(t, c.want, r.EventDate, "%s %q: %s", c.raw, c.shown, r.Message)
		assert.Equal(t, c.state, r.State, "%s %q: %s", c.raw, c.shown, r.Message)
	}
}

// TestReadNumber: what a number may have been before a spreadsheet took it.
// Common practice, no source.
func TestReadNumber(t *testing.T) {
	o := when.Options{Today: lastDay, Year: 2021}
	r := when.ReadNumber("12.1", o)
	assert.Equal(t, reading.Query, r.State)
	assert.Equal(t, "2021-01-12", r.EventDate)
	assert.Equal(t, []string{"2021-01-12", "2021-10-12"}, r.Candidates)
	assert.Equal(t, reading.Fair, when.ReadNumber("12.6", o).State)
	assert.Equal(t, reading.Fair, when.ReadNumber("12.11", o).State)
	assert.Equal(t, reading.Fair, when.ReadNumber("20210612", o).State)
	assert.Equal(t, "2021-06-12", when.ReadNumber("44359", o).EventDate)
	assert.Equal(t, reading.Held, when.ReadNumber("12.1", when.Options{}).State, "no year")
}
