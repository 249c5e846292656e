package when_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

// TestReadTime: how recorders write hours is common practice, no source; the
// values are those of ISO 8601-1.
func TestReadTime(t *testing.T) {
	for _, c := range []struct {
		text, eventTime string
		state           reading.State
		overnight       bool
	}{
		{"22:45", "22:45", reading.Fair, false},
		{"22.45", "22:45", reading.Fair, false},
		{"2245", "22:45", reading.Fair, false},
		{"2245h", "22:45", reading.Fair, false},
		{"22h45", "22:45", reading.Fair, false},
		{"22:45 hrs", "22:45", reading.Fair, false},
		{"22:45:00", "22:45", reading.Fair, false},
		{"22:45 BST", "22:45", reading.Fair, false},
		{"0945", "09:45", reading.Fair, false},
		{"9:45", "09:45", reading.Fair, false},
		{"10.45pm", "22:45", reading.Fair, false},
		{"10:45 p.m.", "22:45", reading.Fair, false},
		{"10pm", "22:00", reading.Fair, false},
		{"12am", "00:00", reading.Fair, false},
		{"12.30pm", "12:30", reading.Fair, false},
		{"midnight", "00:00", reading.Fair, false},
		{"noon", "12:00", reading.Fair, false},
		{"22:45-01:30", "22:45/01:30", reading.Fair, true},
		{"2230-0130", "22:30/01:30", reading.Fair, true},
		{"22.30 – 23.45", "22:30/23:45", reading.Fair, false},
		{"22:30 to 02:15", "22:30/02:15", reading.Fair, true},
		{"10pm-1am", "22:00/01:00", reading.Fair, true},
		{"10-11pm", "22:00/23:00", reading.Fair, false},
		{"dusk", "", reading.Fair, false},
		{"dusk-01:00", "", reading.Fair, true},
		{"dusk to dawn", "", reading.Fair, true},
		{"all night", "", reading.Fair, true},
		{"22:00-dawn", "", reading.Fair, true},
		{"22", "22:00", reading.Query, false},
		{"c. 22:00", "22:00", reading.Query, false},
		{"22:00?", "22:00", reading.Query, false},
		{"0.947916666666667", "22:45", reading.Query, false},
		{"25:00", "", reading.Held, false},
		{"22:75", "", reading.Held, false},
		{"13.30am", "", reading.Held, false},
		{"22:45-", "", reading.Held, false},
		{"late", "", reading.Held, false},
		{"12/6/21", "", reading.Held, false},
		{"", "", reading.Fair, false},
	} {
		h := when.ReadTime(c.text)
		assert.Equal(t, c.state, h.State, "%q: %s", c.text, h.Message)
		assert.Equal(t, c.eventTime, h.EventTime, "%q", c.text)
		assert.Equal(t, c.overnight, h.Overnight, "%q", c.text)
	}
}

// TestAt: common practice, no source.
func TestAt(t *testing.T) {
	for _, c := range []struct {
		date, time, eventDate, eventTime string
		state                            reading.State
		night                            bool
	}{
		{"12/6/21", "22:45", "2021-06-12", "22:45", reading.Fair, false},
		{"12/6/21", "22:45-01:30", "2021-06-12/2021-06-13", "22:45/01:30", reading.Fair, true},
		{"12/6/21", "dusk to dawn", "2021-06-12/2021-06-13", "", reading.Fair, true},
		{"12/13 June 2021", "22:45-04:30", "2021-06-12/2021-06-13", "22:45/04:30", reading.Fair, true},
		{"12/6/21", "nonsense", "2021-06-12", "", reading.Query, false},
		{"12/6/21", "", "2021-06-12", "", reading.Fair, false},
		{"12/6/21 22:45", "22:45", "2021-06-12T22:45", "22:45", reading.Fair, false},
		{"12/6/21 22:45", "21:00", "2021-06-12T22:45", "22:45", reading.Query, false},
		{"June 2021", "22:45-01:30", "2021-06", "22:45/01:30", reading.Query, false},
		{"nonsense", "22:45", "", "", reading.Held, false},
	} {
		r := when.Read(c.date, when.Options{Today: lastDay}).At(when.ReadTime(c.time))
		assert.Equal(t, c.eventDate, r.EventDate, "%s, %s: %s", c.date, c.time, r.Message)
		assert.Equal(t, c.eventTime, r.EventTime(), "%s, %s", c.date, c.time)
		assert.Equal(t, c.state, r.State, "%s, %s: %s", c.date, c.time, r.Message)
		assert.Equal(t, c.night, r.Night, "%s, %s", c.date, c.time)
	}
}
