package dwc

import (
	"strconv"
	"strings"
	"time"

	"fieldfare/dwc/calendar"
)

// isYearOrDate says whether s is a year or a day as EML has them: four digits,
// or year-month-day.
func isYearOrDate(s string) bool {
	s = strings.TrimSpace(s)
	if _, err := time.Parse("2006", s); err == nil && len(s) == 4 {
		return s != "0000"
	}
	_, err := time.Parse(time.DateOnly, s)
	return err == nil
}

// calendarDate returns the year or the day that a date or date-time falls on.
// A month gives its first day, or its last.
func calendarDate(s string, last bool) (string, bool) {
	s, _, _ = strings.Cut(s, "T")
	if month, err := time.Parse("2006-01", s); err == nil {
		if last {
			month = month.AddDate(0, 1, -1)
		}
		return month.Format(time.DateOnly), true
	}
	return s, isYearOrDate(s)
}

// isISODate says whether s is a date, a date-time or an interval of two of
// them after ISO 8601-1:2019 in its extended format, with year, month or day
// as its least part, or an ordinal or a week date. The end of an interval may
// leave out what it shares with the start ("2007-11-13/15").
func isISODate(s string) bool {
	start, end, interval := strings.Cut(s, "/")
	if !isISOPoint(start) {
		return false
	}
	if !interval || isISOPoint(end) {
		return !interval || !endsEarlier(start, end)
	}
	// The end is written from its highest part that differs.
	if n := len(start) - len(end); n > 0 && end != "" && isDigit(end[0]) {
		whole := start[:n] + end
		return isISOPoint(whole) && whole >= start
	}
	return false
}

// endsEarlier compares the days by the parts that both state, which is the
// order of their text; times are left alone, for they may have zones.
func endsEarlier(start, end string) bool {
	start, _, _ = strings.Cut(start, "T")
	end, _, _ = strings.Cut(end, "T")
	n := min(len(start), len(end))
	if n == len("2006-002") && len(start) != len(end) || strings.Contains(start, "W") != strings.Contains(end, "W") {
		n = len("2006") // different ways of writing a day
	}
	return start[:n] > end[:n]
}

func isISOPoint(s string) bool {
	date, clock, hasTime := strings.Cut(s, "T")
	if hasTime && !isISOTime(clock) {
		return false
	}
	return isISODay(date, hasTime)
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// number reads exactly the digits of s.
func number(s string) (n int, ok bool) {
	for i := range len(s) {
		if !isDigit(s[i]) {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return n, s != ""
}

// isISODay reads "2006", "2006-01", "2006-01-02", "2006-002", "2006-W01" and
// "2006-W01-1". With a time, it must be a day.
func isISODay(s string, whole bool) bool {
	if len(s) < 4 {
		return false
	}
	year, ok := number(s[:4])
	if !ok {
		return false
	}
	rest := s[4:]
	if strings.HasPrefix(rest, "-W") {
		return len(rest) == 4 && !whole && isWeek(rest[2:]) ||
			len(rest) == 6 && isWeek(rest[2:4]) && rest[4] == '-' && rest[5] >= '1' && rest[5] <= '7'
	}
	if rest != "" && rest[0] != '-' {
		return false
	}
	switch len(rest) {
	case 0:
		return !whole
	case 3, 6:
		month, ok := number(rest[1:3])
		if !ok || month < 1 || month > 12 {
			return false
		}
		if len(rest) == 3 {
			return !whole
		}
		day, ok := number(rest[4:])
		return ok && rest[3] == '-' && day >= 1 && day <= calendar.DaysIn(year, month)
	case 4:
		day, ok := number(rest[1:])
		return ok && day >= 1 && day <= 337+calendar.DaysIn(year, 2)
	}
	return false
}

func isWeek(s string) bool {
	week, ok := number(s)
	return ok && week >= 1 && week <= 53
}

// isISOTime reads "22", "22:45", "22:45:10" and "22:45:10.5", with or without
// a zone: "Z", "+01", "-06:00".
func isISOTime(s string) bool {
	if i := strings.IndexAny(s, "Z+-"); i >= 0 {
		zone := s[i:]
		s = s[:i]
		if zone != "Z" && !(len(zone) <= 6 && isClock(zone[1:])) {
			return false
		}
	}
	whole, fraction, hasFraction := strings.Cut(s, ".")
	if hasFraction {
		if _, ok := number(fraction); !ok {
			return false
		}
	}
	return isClock(whole)
}

func isClock(s string) bool {
	if len(s) != 2 && len(s) != 5 && len(s) != 8 {
		return false
	}
	limits := [3]int{24, 59, 60} // 24:00 ends a day, second 60 is a leap second
	var parts [3]int
	for i := 0; i < len(s); i += 3 {
		n, err := strconv.Atoi(s[i : i+2])
		if err != nil || !isDigit(s[i]) || n > limits[i/3] || i > 0 && s[i-1] != ':' {
			return false
		}
		parts[i/3] = n
	}
	return parts[0] < 24 || parts[1] == 0 && parts[2] == 0
}

// isISOTimeOrInterval reads a time of day or an interval of two.
func isISOTimeOrInterval(s string) bool {
	start, end, interval := strings.Cut(s, "/")
	return isISOTime(start) && (!interval || isISOTime(end))
}
