package when

import (
	"strconv"
	"time"
)

// Date is a day of the Gregorian calendar, without a time or a zone. The zero
// value means no date.
type Date struct{ Year, Month, Day int }

// IsZero reports whether d is no date at all.
func (d Date) IsZero() bool { return d == Date{} }

// Valid reports whether the calendar has the day. Years run from 1 to 9999.
func (d Date) Valid() bool {
	return d.Year >= 1 && d.Year <= 9999 && d.Month >= 1 && d.Month <= 12 &&
		d.Day >= 1 && d.Day <= DaysIn(d.Year, d.Month)
}

// DaysIn returns the number of days of a month, 28 to 31; 0 for a month
// outside 1 to 12.
func DaysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	case 1, 3, 5, 7, 8, 10, 12:
		return 31
	}
	return 0
}

// Days returns the number of days from 1 January 1970 to d, negative before.
//
// Source: the conversion from a proleptic Gregorian date by eras of 400 years
// (146 097 days), as in Howard Hinnant, "chrono-Compatible Low-Level Date
// Algorithms", days_from_civil.
func (d Date) Days() int {
	y, m := d.Year, d.Month
	if m <= 2 {
		y--
		m += 12
	}
	era := y / 400
	if y < 0 {
		era = (y - 399) / 400
	}
	yoe := y - era*400
	doy := (153*(m-3)+2)/5 + d.Day - 1
	return era*146097 + yoe*365 + yoe/4 - yoe/100 + doy - 719468
}

// DateOf is the inverse of Date.Days.
//
// Source: as there, civil_from_days.
func DateOf(days int) Date {
	z := days + 719468
	era := z / 146097
	if z < 0 {
		era = (z - 146096) / 146097
	}
	doe := z - era*146097
	yoe := (doe - doe/1460 + doe/36524 - doe/146096) / 365
	doy := doe - (365*yoe + yoe/4 - yoe/100)
	mp := (5*doy + 2) / 153
	m := mp + 3
	if m > 12 {
		m -= 12
	}
	y := yoe + era*400
	if m <= 2 {
		y++
	}
	return Date{y, m, doy - (153*mp+2)/5 + 1}
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
