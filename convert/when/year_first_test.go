package when_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

func TestYearFirst(t *testing.T) {
	for _, c := range []struct {
		name  string
		dates []string
		want  bool
	}{
		{"year first", []string{"21-06-12", "21-06-12", "21-06-13", "21-06-19", "21-07-02"}, true},
		{"day first", []string{"12-06-21", "13-06-21", "19-06-21", "02-07-21"}, false},
		{"one night of the year, many years", []string{"21-06-12", "21-06-13", "22-06-14", "21-06-15"}, false},
		{"too few", []string{"21-06-12", "21-06-13"}, false},
		{"one day only", []string{"21-06-12", "21-06-12", "21-06-12"}, false},
		{"another form among them", []string{"21-06-12", "21-06-13", "14 June 2021", "21-06-19"}, false},
		{"none", nil, false},
	} {
		var e when.Evidence
		for _, d := range c.dates {
			e.Observe(d)
		}
		assert.Equal(t, c.want, e.YearFirst(), c.name)
	}
	o := when.Options{Today: when.Date{Year: 2026, Month: 1, Day: 31}}
	r := when.ReadYearFirst("21-06-12", o)
	assert.Equal(t, reading.Query, r.State)
	assert.Equal(t, "2021-06-12", r.EventDate)
	assert.Equal(t, reading.Held, when.ReadYearFirst("21-13-12", o).State)
	assert.Equal(t, when.Read("12 June 2021", o), when.ReadYearFirst("12 June 2021", o))
}
