package bdq

import (
	"strings"
	"time"
)

// shifted moves a point by an ISO 8601 duration, forward or back. The other
// end is as precise as the duration lets it be.
func shifted(p point, duration string, sign int) (point, bool) {
	var count [6]int // years, months, days, hours, minutes, seconds
	rest, ok := strings.CutPrefix(duration, "P")
	dates, clock, timed := strings.Cut(rest, "T")
	if !ok || rest == "" || timed && clock == "" {
		return point{}, false
	}
	if weeks, isWeeks := strings.CutSuffix(dates, "W"); isWeeks {
		n, ok := digits(weeks)
		if !ok || len(weeks) > 4 || timed {
			return point{}, false
		}
		count[2] = n * 7
	} else if !designated(dates, "YMD", count[:3]) || !designated(clock, "HMS", count[3:]) {
		return point{}, false
	}
	if timed && !p.timed() {
		return point{}, false
	}
	moved := time.Date(p.year+sign*count[0], time.Month(p.month+sign*count[1]), p.day+sign*count[2],
		sign*count[3], sign*count[4], int(p.seconds)+sign*count[5], 0, time.UTC)
	p.year, p.month, p.day = moved.Year(), int(moved.Month()), moved.Day()
	p.seconds = float64(moved.Hour()*3600+moved.Minute()*60+moved.Second()) + p.seconds - float64(int(p.seconds))
	return p, p.year >= 0 && p.year <= 9999
}

// designated reads numbers each followed by one of the letters, in their order.
func designated(s, letters string, into []int) bool {
	for i := range len(letters) {
		at := strings.IndexByte(s, letters[i])
		if at < 0 {
			continue
		}
		n, ok := digits(s[:at])
		if !ok || at > 6 {
			return false
		}
		into[i], s = n, s[at+1:]
	}
	return s == ""
}
