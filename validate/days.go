package validate

import (
	"fmt"
	"strconv"
	"strings"

	"fieldfare/dwc/calendar"
)

// Days are counted as package calendar does, from 1970-01-01.

var monthNames = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

func date(day int32) (y, m, d int) { return calendar.Date(int(day)) }

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

// dayNumber is the reverse of date.
func dayNumber(y, m, d int) int32 { return int32(calendar.Number(y, m, d)) }

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
