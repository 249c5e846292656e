package bdq

import (
	"strings"

	"fieldfare/dwc/calendar"
)

// precision is how finely a point in time is stated; finer is greater.
type precision uint8

const (
	byYear precision = iota + 1
	byMonth
	byWeek
	byDay
	byHour
	byMinute
	bySecond
)

// point is a date or a date and time as stated, in its own zone.
type point struct {
	year, month, day int // month and day are 1 where they are not stated
	precision        precision
	seconds          float64 // since midnight
	zoned            bool
	offset           int // minutes east of UTC, where zoned
}

// first and last are the first and last day that the point may mean, counted
// from 1970-01-01.
func (p point) first() int { return calendar.Number(p.year, p.month, p.day) }

func (p point) last() int {
	switch p.precision {
	case byYear:
		return calendar.Number(p.year, 12, 31)
	case byMonth:
		return calendar.Number(p.year, p.month, calendar.DaysIn(p.year, p.month))
	case byWeek:
		return p.first() + 6
	}
	return p.first()
}

func (p point) timed() bool { return p.precision >= byHour }

// span is what an ISO 8601 date states: one point, or an interval between two.
type span struct {
	from, to point
	ranged   bool
}

func (s span) first() int { return s.from.first() }
func (s span) last() int  { return s.to.last() }

// daily says whether both ends are stated to the day or finer.
func (s span) daily() bool { return s.from.precision >= byDay && s.to.precision >= byDay }

// within the same year, month or day, from the first day to the last.
func (s span) withinYear() bool { return s.from.year == s.lastDate().year }

func (s span) withinMonth() bool {
	end := s.lastDate()
	return s.from.year == end.year && s.from.month == end.month &&
		s.from.precision >= byMonth && s.to.precision >= byMonth
}

func (s span) withinDay() bool { return s.daily() && s.first() == s.last() }

func (s span) lastDate() point {
	end := s.to
	switch end.precision {
	case byYear:
		end.month, end.day = 12, 31
	case byMonth:
		end.day = calendar.DaysIn(end.year, end.month)
	case byWeek:
		end.year, end.month, end.day = calendar.Date(end.last())
	}
	return end
}

// seconds is the duration stated. A day is 86400 seconds, leap days count and
// leap seconds do not. Dates are whole days, both ends included; times of day
// are instants between which time passes, and a single one lasts as long as
// its precision.
func (s span) seconds() float64 {
	if !s.ranged && s.from.timed() {
		switch s.from.precision {
		case byHour:
			return 3600
		case byMinute:
			return 60
		}
		return 1
	}
	start := float64(s.first()) * 86400
	if s.from.timed() {
		start += s.from.seconds
	}
	end := float64(s.last()+1) * 86400
	if s.to.timed() {
		end = float64(s.last())*86400 + s.to.seconds
	}
	if s.from.timed() && s.to.timed() && s.from.zoned && s.to.zoned {
		end -= float64(s.to.offset-s.from.offset) * 60
	}
	return end - start
}

func dayOfYear(p point) int { return p.first() - calendar.Number(p.year, 1, 1) + 1 }

func leap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// parseISO reads a date, a date and time, or an interval as ISO 8601-1:2019
// writes them: calendar, ordinal and week dates in the extended or the basic
// format; years of four digits; intervals as start/end (the end may leave out
// what it shares with the start), start/duration or duration/end. Not read
// are what ISO 8601-1:2019 does not allow (24:00) or allows by agreement only
// (years of more digits, decades and centuries), and times in local use. As
// Darwin Core does, an offset without a colon is accepted beside an extended
// time ("1963-03-08T14:07-0600").
func parseISO(s string) (span, bool) {
	slash := strings.IndexByte(s, '/')
	if slash < 0 {
		p, ok := parsePoint(s)
		return span{from: p, to: p}, ok
	}
	left, right := s[:slash], s[slash+1:]
	if left == "" || right == "" {
		return span{}, false
	}
	var out span
	var ok bool
	switch {
	case left[0] == 'P':
		out.to, ok = parsePoint(right)
		if ok {
			out.from, ok = shifted(out.to, left, -1)
		}
	case right[0] == 'P':
		out.from, ok = parsePoint(left)
		if ok {
			out.to, ok = shifted(out.from, right, 1)
		}
	default:
		out.from, ok = parsePoint(left)
		if ok {
			if out.to, ok = parsePoint(right); !ok {
				out.to, ok = parsePoint(completed(left, right))
			}
		}
	}
	out.ranged = true
	return out, ok && ordered(out)
}

// ordered says whether the end is not before the start.
func ordered(s span) bool {
	if !s.from.timed() || !s.to.timed() {
		return s.first() <= s.last()
	}
	return s.seconds() >= 0
}

// completed puts before an interval's end what it leaves out because the start
// states it: "2007-11-13/15" ends on 2007-11-15.
func completed(start, end string) string {
	zone := ""
	if t := strings.IndexByte(start, 'T'); t >= 0 {
		if z := strings.IndexAny(start[t:], "Z+-"); z >= 0 {
			start, zone = start[:t+z], start[t+z:]
		}
	}
	if strings.IndexByte(end, 'T') > 0 && strings.ContainsAny(end[strings.IndexByte(end, 'T'):], "Z+-") ||
		strings.HasSuffix(end, "Z") {
		zone = ""
	}
	bare := strings.TrimSuffix(end, "Z")
	cut := len(start) - len(bare)
	if cut < 1 || !strings.ContainsRune("-T:", rune(start[cut-1])) {
		return ""
	}
	return start[:cut] + end + zone
}

func parsePoint(s string) (point, bool) {
	date, clock := s, ""
	if t := strings.IndexByte(s, 'T'); t >= 0 {
		date, clock = s[:t], s[t+1:]
		if clock == "" {
			return point{}, false
		}
	}
	p, basic, ok := parseDate(date)
	if !ok || clock == "" {
		return p, ok
	}
	if p.precision != byDay {
		return point{}, false
	}
	return p, p.parseClock(clock, basic)
}

// parseDate also says whether a full date is in the basic format.
func parseDate(s string) (p point, basic, ok bool) {
	if len(s) < 4 {
		return p, false, false
	}
	year, ok := digits(s[:4])
	if !ok {
		return p, false, false
	}
	p = point{year: year, month: 1, day: 1, precision: byYear}
	rest := s[4:]
	basic = rest != "" && rest[0] != '-'
	if rest != "" && !basic {
		rest = rest[1:]
		if rest == "" {
			return p, false, false
		}
	}
	switch {
	case rest == "":
		return p, false, true
	case rest[0] == 'W':
		return p.week(rest[1:], basic)
	case len(rest) == 2 && !basic:
		p.precision = byMonth
		p.month, ok = digits(rest)
	case len(rest) == 3:
		p.precision = byDay
		var n int
		n, ok = digits(rest)
		if ok = ok && n >= 1 && (n <= 365 || n == 366 && leap(year)); ok {
			_, p.month, p.day = calendar.Date(calendar.Number(year, 1, n))
		}
	case len(rest) == 4 && basic, len(rest) == 5 && !basic && rest[2] == '-':
		p.precision = byDay
		var okDay bool
		p.month, ok = digits(rest[:2])
		p.day, okDay = digits(rest[len(rest)-2:])
		ok = ok && okDay
	default:
		return p, basic, false
	}
	ok = ok && p.month >= 1 && p.month <= 12 && p.day >= 1 && p.day <= calendar.DaysIn(year, p.month)
	return p, basic, ok
}

// week reads what follows the W of a week date.
func (p point) week(s string, basic bool) (point, bool, bool) {
	dayAt := 2
	if !basic && len(s) == 4 && s[2] == '-' {
		dayAt = 3
	}
	if len(s) != 2 && len(s) != dayAt+1 {
		return p, basic, false
	}
	n, ok := digits(s[:2])
	weekday := 1
	p.precision = byWeek
	if len(s) > 2 {
		p.precision = byDay
		weekday = int(s[dayAt]) - '0'
	}
	// Week 1 holds 4 January; weeks begin on Monday.
	fourth := calendar.Number(p.year, 1, 4)
	start := fourth - isoWeekday(fourth) + 1 + (n-1)*7
	holdsThursday, _, _ := calendar.Date(start + 3)
	ok = ok && n >= 1 && weekday >= 1 && weekday <= 7 && holdsThursday == p.year
	p.year, p.month, p.day = calendar.Date(start + weekday - 1)
	return p, basic, ok
}

func isoWeekday(day int) int { return ((day+3)%7+7)%7 + 1 } // 1970-01-01 was a Thursday

// parseClock reads what follows the T.
func (p *point) parseClock(s string, basic bool) bool {
	if z := strings.IndexAny(s, "Z+-"); z >= 0 {
		if !p.parseZone(s[z:]) {
			return false
		}
		s = s[:z]
	}
	fraction := 0.0
	if dot := strings.IndexAny(s, ".,"); dot >= 0 {
		scale := 0.1
		if dot+1 == len(s) {
			return false
		}
		for _, c := range []byte(s[dot+1:]) {
			if c < '0' || c > '9' {
				return false
			}
			fraction += float64(c-'0') * scale
			scale /= 10
		}
		s = s[:dot]
	}
	var parts [3]int
	n := 0
	for ; s != ""; n++ {
		if n == 3 || len(s) < 2 || n > 0 && !basic && (s[0] != ':' || len(s) < 3) {
			return false
		}
		if n > 0 && !basic {
			s = s[1:]
		}
		var ok bool
		if parts[n], ok = digits(s[:2]); !ok {
			return false
		}
		s = s[2:]
	}
	if n == 0 || parts[0] > 23 || parts[1] > 59 || parts[2] > 60 ||
		parts[2] == 60 && parts[1] != 59 { // a leap second ends an hour
		return false
	}
	p.precision = byHour + precision(n-1)
	unit := [...]float64{3600, 60, 1}[n-1]
	if fraction > 0 {
		p.precision = bySecond
	}
	p.seconds = float64(parts[0]*3600+parts[1]*60+parts[2]) + fraction*unit
	return true
}

func (p *point) parseZone(s string) bool {
	p.zoned = true
	if s == "Z" {
		return true
	}
	text := s[1:]
	if len(text) == 5 && text[2] == ':' {
		text = text[:2] + text[3:]
	}
	if s[0] == 'Z' || len(text) != 2 && len(text) != 4 {
		return false
	}
	hours, ok := digits(text[:2])
	minutes := 0
	if ok && len(text) == 4 {
		minutes, ok = digits(text[2:])
	}
	p.offset = hours*60 + minutes
	if s[0] == '-' {
		p.offset = -p.offset
	}
	return ok && hours <= 23 && minutes <= 59
}

// digits reads a number written in ASCII digits only.
func digits(s string) (int, bool) {
	n := 0
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return n, s != ""
}
