package when

import (
	"strconv"
	"time"

	"fieldfare/dwc/calendar"
)

// Date is a day of the Gregorian calendar, without a time or a zone. The zero
// value means no date.
type Date struct{ Year, Month, Day int }

// IsZero reports whether d is no date at all.
func (d Date) IsZero() bool { return d == Date{} }

// Valid reports whether the calendar has the day. Years run from 1 to 9999.
func (d Date) Valid() bool {
	return d.Year >= 1 && d.Year <= 9999 && d.Month >= 1 && d.Month <= 12 &&
		d.Day >= 1 && d.Day <= calendar.DaysIn(d.Year, d.Month)
}

// Days returns the number of days from 1 January 1970 to d, negative before.
func (d Date) Days() int { return calendar.Number(d.Year, d.Month, d.Day) }

// DateOf is the inverse of Date.Days.
func DateOf(days int) Date {
	y, m, d := calendar.Date(days)
	return Date{y, m, d}
}

// Add returns the day n days later.
func (d Date) Add(n int) Date { return DateOf(d.Days() + n) }

// Before reports whether d is earlier than e.
func (d Date) Before(e Date) bool {
	switch {
	case d.Year != e.Year:
		return d.Year < e.Year
	case d.Month != e.Month:
		return d.Month < e.Month
	}
	return d.Day < e.Day
}

// Weekday returns the day of the week.
func (d Date) Weekday() time.Weekday {
	return time.Weekday(((d.Days()+4)%7 + 7) % 7) // 1 January 1970 was a Thursday
}

// YearDay returns the day of the year, 1 to 366.
func (d Date) YearDay() int { return d.Days() - Date{d.Year, 1, 1}.Days() + 1 }

// String writes the day as ISO 8601-1 does: 2021-06-12.
func (d Date) String() string {
	var b [10]byte
	return string(d.appendTo(b[:0]))
}

func (d Date) appendTo(b []byte) []byte {
	b = appendYear(b, d.Year)
	b = append(b, '-', byte('0'+d.Month/10%10), byte('0'+d.Month%10))
	return append(b, '-', byte('0'+d.Day/10%10), byte('0'+d.Day%10))
}

func appendYear(b []byte, y int) []byte {
	return append(b, byte('0'+y/1000%10), byte('0'+y/100%10), byte('0'+y/10%10), byte('0'+y%10))
}

// monthNames are the English names, from January.
var monthNames = [...]string{"January", "February", "March", "April", "May", "June", "July",
	"August", "September", "October", "November", "December"}

// Words writes the day for a reader: 12 June 2021.
func (d Date) Words() string {
	if d.Month < 1 || d.Month > 12 {
		return d.String()
	}
	return strconv.Itoa(d.Day) + " " + monthNames[d.Month-1] + " " + strconv.Itoa(d.Year)
}
