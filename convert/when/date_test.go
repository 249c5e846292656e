package when_test

import (
	"testing"
	"time"

	"fieldfare/convert/when"

	"github.com/stretchr/testify/require"
)

// TestDateAgainstTime compares the arithmetic with the standard library's for
// every day of seven centuries.
func TestDateAgainstTime(t *testing.T) {
	for day := time.Date(1500, 1, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2200; day = day.AddDate(0, 0, 1) {
		d := when.Date{Year: day.Year(), Month: int(day.Month()), Day: day.Day()}
		n := int(day.Unix() / 86400)
		if d.Days() != n || when.DateOf(n) != d || d.Weekday() != day.Weekday() || d.YearDay() != day.YearDay() || !d.Valid() {
			require.Fail(t, "differs", "%s: %d %v %s %d", d, d.Days(), when.DateOf(n), d.Weekday(), d.YearDay())
		}
	}
}

func TestDateValid(t *testing.T) {
	for d, want := range map[when.Date]bool{
		{2021, 6, 31}: false, {2021, 2, 29}: false, {2020, 2, 29}: true, {1900, 2, 29}: false, {2000, 2, 29}: true,
		{2021, 0, 1}: false, {2021, 13, 1}: false, {2021, 1, 0}: false, {}: false, {10000, 1, 1}: false,
	} {
		require.Equal(t, want, d.Valid(), "%v", d)
	}
}
