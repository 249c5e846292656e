package when_test

import (
	"testing"

	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

func TestPage(t *testing.T) {
	for _, c := range []struct {
		name  string
		dates []string
		want  [][3]int // first row, last row, years to add
	}{
		{"in order", []string{"2020-11-02", "2020-12-05", "2020-12-28", "2021-01-03", "2021-02-01"}, nil},
		{"the old year written on", []string{"2020-11-02", "2020-12-05", "2020-12-20", "2020-12-28", "2020-01-03", "2020-01-09", "2021-02-01", "2021-02-20"}, [][3]int{{5, 6, 1}}},
		{"written on to the end", []string{"2020-10-02", "2020-11-02", "2020-12-05", "2020-12-28", "2020-01-03", "2020-01-09"}, [][3]int{{5, 6, 1}}},
		{"one row", []string{"2020-11-02", "2020-12-05", "2020-12-20", "2020-12-28", "2020-01-03", "2021-01-09", "2021-02-01"}, [][3]int{{5, 5, 1}}},
		{"same date on many rows", []string{"2020-11-02", "2020-11-02", "2020-12-05", "2020-12-20", "2020-12-28", "2020-01-03", "2020-01-03", "2020-01-03", "2021-02-01"}, [][3]int{{6, 8, 1}}},
		{"new to old", []string{"2021-02-20", "2021-02-01", "2020-01-09", "2020-01-03", "2020-12-28", "2020-12-05", "2020-11-02", "2020-10-02"}, [][3]int{{3, 4, 1}}},
		{"a year too early in the middle", []string{"2021-05-01", "2021-05-08", "2021-05-15", "2020-05-22", "2021-05-29", "2021-06-05"}, [][3]int{{4, 4, 1}}},
		{"a year too late in the middle", []string{"2021-05-01", "2021-05-08", "2021-05-15", "2022-05-22", "2021-05-29", "2021-06-05"}, [][3]int{{4, 4, -1}}},
		{"not in order at all", []string{"2021-05-01", "2019-03-08", "2021-08-15", "2020-05-22", "2018-05-29", "2021-06-05"}, nil},
		{"by species, not by date", []string{"2021-05-01", "2021-06-08", "2021-05-01", "2021-06-08", "2021-07-01", "2021-05-01", "2021-08-01"}, nil},
		{"a break of months only", []string{"2021-05-01", "2021-06-08", "2021-07-01", "2021-08-01", "2021-06-20", "2021-08-08"}, nil},
		{"a winter without visits", []string{"2019-04-01", "2019-05-01", "2019-06-01", "2021-05-01", "2021-06-01", "2021-07-01"}, nil},
		{"two sheets one after the other", []string{"2020-05-01", "2020-06-01", "2020-07-01", "2020-08-01", "2019-05-01", "2019-06-01", "2019-07-01", "2019-08-01"}, nil},
		{"too short", []string{"2020-12-28", "2020-01-03"}, nil},
		{"empty", nil, nil},
	} {
		var p when.Page
		for i, d := range c.dates {
			p.Observe(i+1, when.Read(d, when.Options{}).Start)
		}
		var got [][3]int
		for _, s := range p.Slips() {
			got = append(got, [3]int{s.FirstRow, s.LastRow, s.Years})
		}
		assert.Equal(t, c.want, got, c.name)
	}
}
