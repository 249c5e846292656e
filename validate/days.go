package validate

import (
	"fmt"
	"strconv"
	"strings"
)

// Days are counted from 1970-01-01 in the proleptic Gregorian calendar.

var monthNames = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// date turns a day into year, month and day of the month: the algorithm of
// Howard Hinnant, "chrono-Compatible Low-Level Date Algorithms" (public
// domain), civil_from_days; from memory.
func date(day int32) (y, m, d int) {
	z := int(day) + 719468
	era := z / 146097
	if z < 0 {
		era = (z - 146096) / 146097
	}
	doe := z - era*146097
	yoe := (doe - doe/1460 + doe/36524 - doe/146096) / 365
	doy := doe - (365*yoe + yoe/4 - yoe/100)
	mp := (5*doy + 2) / 153
	d = doy - (153*mp+2)/5 + 1
	m = mp + 3
	if m > 12 {
		m -= 12
	}
	y = yoe + era*400
	if m <= 2 {
		y++
	}
	return y, m, d
}

func monthOf(day int32) int {
	_, m, _ := date(day)
	return m
}

// nextMonth is the first day of the following month.
func nextMonth(day int32) int32 {
	_, m, d := date(day)
	next := day - int32(d) + 29
	for monthOf(next) == m {
		next++
	}
	return next
}

// iso writes a day as 2021-06-12.
func iso(day int32) string {
	y, m, d := date(day)
	return fmt.Sprintf("%04d-%02d-%02d", y, m, d)
}

// words writes a day as 12 June 2021.
func words(day int32) string {
	y, m, d := date(day)
	return fmt.Sprintf("%d %s %d", d, monthNames[m-1], y)
}

// dayNumber is the reverse of date: Hinnant's days_from_civil.
func dayNumber(y, m, d int) int32 {
	if m <= 2 {
		y--
		m += 12
	}
	era := y / 400
	if y < 0 {
		era = (y - 399) / 400
	}
	yoe := y - era*400
	doy := (153*(m-3)+2)/5 + d - 1
	return int32(era*146097 + yoe*365 + yoe/4 - yoe/100 + doy - 719468)
}

// daysOf reads an eventDate of years, months and days, or an interval of two,
// with or without times.
func daysOf(eventDate string) (first, last int32, ok bool) {
	from, to, interval := strings.Cut(eventDate, "/")
	first, last, ok = daysOfOne(from)
	if ok && interval {
		_, last, ok = daysOfOne(to)
	}
	return first, last, ok && first <= last
}

func daysOfOne(text string) (first, last int32, ok bool) {
	text, _, _ = strings.Cut(text, "T")
	var part [3]int
	n := 0
	for p := range strings.SplitSeq(text, "-") {
		v, err := strconv.Atoi(p)
		if err != nil || n == 3 || v < 1 {
			return 0, 0, false
		}
		part[n] = v
		n++
	}
	y, m, d := part[0], part[1], part[2]
	switch {
	case n == 0 || m > 12 || d > 31:
		return 0, 0, false
	case n == 1:
		return dayNumber(y, 1, 1), dayNumber(y, 12, 31), true
	case n == 2:
		return dayNumber(y, m, 1), nextMonth(dayNumber(y, m, 1)) - 1, true
	}
	return dayNumber(y, m, d), dayNumber(y, m, d), true
}
