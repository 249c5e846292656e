package calendar_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fieldfare/dwc/calendar"
)

// ISO 8601-1:2019, 4.2.1: a year is a leap year where it can be divided by
// four, centurial years only where by four hundred.
func TestDaysIn(t *testing.T) {
	for _, c := range []struct{ year, month, want int }{
		{2021, 1, 31}, {2021, 2, 28}, {2020, 2, 29}, {1900, 2, 28}, {2000, 2, 29}, {2021, 4, 30}, {2021, 12, 31},
		{2021, 0, 0}, {2021, 13, 0}, {2021, -1, 0},
	} {
		assert.Equal(t, c.want, calendar.DaysIn(c.year, c.month), "%d-%d", c.year, c.month)
	}
}

// The first and the last day that a date can have, and the days about 1970
// and about leap days, worked out by hand.
func TestNumber(t *testing.T) {
	for _, c := range []struct{ year, month, day, want int }{
		{1970, 1, 1, 0}, {1969, 12, 31, -1}, {1971, 1, 1, 365}, {1972, 3, 1, 790}, {2000, 1, 1, 10957}, {1, 1, 1, -719162},
		{9999, 12, 31, 2932896},
	} {
		assert.Equal(t, c.want, calendar.Number(c.year, c.month, c.day))
		y, m, d := calendar.Date(c.want)
		assert.Equal(t, [3]int{c.year, c.month, c.day}, [3]int{y, m, d})
	}
	assert.Equal(t, calendar.Number(2021, 5, 31), calendar.Number(2021, 6, 0))
}

func TestDateIsTheReverse(t *testing.T) {
	for n := -800000; n < 800000; n += 37 {
		assert.Equal(t, n, calendar.Number(calendar.Date(n)))
	}
}
