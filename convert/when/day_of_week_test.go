package when_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

// What the weekday and the first day of its week come to; the weekdays are
// those of any calendar. That a week's date is that of its first day is common
// practice, no source, and asked about.
func TestDayOfWeek(t *testing.T) {
	for written, want := range map[string]struct {
		state reading.State
		date  string
	}{
		"Wednesday, week of 5/7/2021":  {reading.Query, "2021-07-07"},
		"Monday, week of 5/7/2021":     {reading.Query, "2021-07-05"},
		"Sunday, week of 2021-07-05":   {reading.Query, "2021-07-11"},
		"Saturday, week of 4.vii.2021": {reading.Query, "2021-07-10"}, // a week from Sunday
		"Monday, week of 28/2/2024":    {reading.Query, "2024-03-04"}, // over the end of a month
		"Tuesday, week of July 2021":   {reading.Held, ""},
		"Tuesday, week of nothing":     {reading.Held, ""},
	} {
		r := when.Read(written, when.Options{})
		assert.Equal(t, want.state, r.State, "%s: %s", written, r.Message)
		assert.Equal(t, want.date, r.EventDate, written)
	}
	night := when.Read("Friday, week of 5/7/2021", when.Options{Evening: true})
	assert.Equal(t, "2021-07-09/2021-07-10", night.EventDate)
}
