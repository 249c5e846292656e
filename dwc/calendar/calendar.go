// Package calendar counts the days of the Gregorian calendar, which is taken
// to hold for all years as ISO 8601-1 does. It is the standard library's
// calendar without its times and zones.
package calendar

import "time"

const secondsADay = 24 * 60 * 60

// DaysIn returns the number of days of a month, 28 to 31; 0 for a month
// outside 1 to 12.
func DaysIn(year, month int) int {
	if month < 1 || month > 12 {
		return 0
	}
	return time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// Number returns the number of days from 1 January 1970 to a day, negative
// for one before. Months and days outside the calendar's count on: day 0 is
// the last of the month before.
func Number(year, month, day int) int {
	return int(time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC).Unix() / secondsADay)
}

// Date is the reverse of Number.
func Date(number int) (year, month, day int) {
	y, m, d := time.Unix(int64(number)*secondsADay, 0).UTC().Date()
	return y, int(m), d
}
