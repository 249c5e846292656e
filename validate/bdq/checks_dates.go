package bdq

import (
	"strconv"
	"strings"

	"fieldfare/dwc/calendar"
)

func eventDateStandard() check {
	return orEmpty("dwc:eventDate", func(r *record, _ *parameters, _ string) Response {
		_, ok := r.eventDate()
		return verdict(ok, "is an ISO 8601 date", "is not an ISO 8601 date")
	})
}

func dateIdentifiedStandard() check {
	return orEmpty("dwc:dateIdentified", func(r *record, _ *parameters, _ string) Response {
		_, ok := r.dateIdentified()
		return verdict(ok, "is an ISO 8601 date", "is not an ISO 8601 date")
	})
}

// dateToStandard proposes the ISO 8601 date that the term's value can only be.
func dateToStandard(term string, read func(*record) (span, bool)) check {
	return orEmpty(term, func(r *record, _ *parameters, value string) Response {
		if _, ok := read(r); ok {
			return notAmended("is an ISO 8601 date")
		}
		if iso, ok, _ := interpretDate(value); ok {
			return amended("can be read as one date", Change{term, iso})
		}
		return notAmended("cannot be read as one date")
	})
}

func eventDateInRange() check {
	return orEmpty("dwc:eventDate", func(r *record, p *parameters, _ string) Response {
		d, ok := r.eventDate()
		if !ok {
			return unmet("is not an ISO 8601 date")
		}
		return verdict(d.first() >= p.eventFrom && d.last() <= p.eventTo, "is in range", "is not wholly in range")
	})
}

// dateIdentifiedInRange asks that the determination begin within the range and
// not end before the event begins.
func dateIdentifiedInRange() check {
	return orEmpty("dwc:dateIdentified", func(r *record, p *parameters, _ string) Response {
		d, ok := r.dateIdentified()
		if !ok {
			return unmet("is not an ISO 8601 date")
		}
		if compare := p.includeEventDate && !r.empty("dwc:eventDate"); compare {
			event, ok := r.eventDate()
			if !ok {
				return unmet("cannot be compared, as dwc:eventDate is not an ISO 8601 date")
			}
			if before(d, event) {
				return notCompliant("is before dwc:eventDate")
			}
		}
		return verdict(d.first() >= p.identFrom && d.first() <= p.identTo, "is in range", "is out of range")
	})
}

// before says whether all of d is before all of e; times of day count where
// both have them in known zones, or both in none.
func before(d, e span) bool {
	if d.to.timed() && e.from.timed() && d.to.zoned == e.from.zoned {
		return instant(d.to)+step(d.to) <= instant(e.from) && instant(d.to) != instant(e.from)
	}
	return d.last() < e.first()
}

func instant(p point) float64 {
	return float64(p.first())*86400 + p.seconds - float64(p.offset)*60
}

// step is how long a time of day lasts in its precision, in seconds.
func step(p point) float64 {
	switch p.precision {
	case byHour:
		return 3600
	case byMinute:
		return 60
	}
	return 1
}

func eventDateDuration() check {
	return orEmpty("dwc:eventDate", func(r *record, _ *parameters, _ string) Response {
		d, ok := r.eventDate()
		if !ok {
			return unmet("is not an ISO 8601 date")
		}
		return Response{Status: HasResult, Result: strconv.FormatFloat(d.seconds(), 'f', -1, 64), reason: "has this duration in seconds"}
	})
}

func yearInRange() check {
	return orEmpty("dwc:year", func(_ *record, p *parameters, value string) Response {
		n, ok := integer(value)
		if !ok {
			return unmet("is not a whole number")
		}
		return verdict(n >= p.yearFrom && n <= p.yearTo, "is in range", "is out of range")
	})
}

func wholeNumber(term string, low, high int) check {
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		n, ok := integer(value)
		return verdict(ok && n >= low && n <= high, "is in range", "is not a whole number in range")
	})
}

func dayInRange() check {
	return orEmpty("dwc:day", func(r *record, _ *parameters, value string) Response {
		day, ok := integer(value)
		if !ok {
			return unmet("is not a whole number")
		}
		if day < 29 || day > 31 {
			return verdict(day >= 1 && day <= 28, "is a day of every month", "is a day of no month")
		}
		month, ok := integer(r.get("dwc:month"))
		if !ok || month < 1 || month > 12 {
			return unmet("is a day of some months only, and dwc:month is none")
		}
		if month != 2 || day > 29 {
			return verdict(day <= calendar.DaysIn(4, month), "is a day of the month", "is not a day of the month")
		}
		year, ok := isoYear(r.get("dwc:year"))
		if !ok {
			return unmet("is a day of February in leap years only, and dwc:year is none")
		}
		return verdict(leap(year), "is a day of the month in a leap year", "is not a day of the month in this year")
	})
}

// isoYear reads a year of four digits.
func isoYear(s string) (int, bool) {
	s = trim(s)
	n, ok := digits(s)
	return n, ok && len(s) == 4
}

// dayOfYearInRange takes the year from one end of dwc:eventDate.
func dayOfYearInRange(term string, year func(span) int) check {
	return orEmpty(term, func(r *record, _ *parameters, value string) Response {
		n, ok := integer(value)
		if !ok || n != 366 {
			return verdict(ok && n >= 1 && n <= 365, "is a day of every year", "is not a day of a year")
		}
		d, ok := r.eventDate()
		if !ok {
			return unmet("is a day of leap years only, and dwc:eventDate does not say the year")
		}
		return verdict(leap(year(d)), "is a day of the leap year", "is not a day of this year")
	})
}

func startYear(d span) int { return d.from.year }
func endYear(d span) int   { return d.lastDate().year }

func dayToStandard() check {
	const term = "dwc:day"
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		text := strings.ToLower(trim(value))
		if n, ok := integer(value); ok {
			if plain := isDigits(value) || n < 1 || n > 31; plain {
				return notAmended("is a whole number")
			}
			return amended("is a whole number with something beside it", Change{term, strconv.Itoa(n)})
		}
		n, ok := ordinal(text)
		if f, isNumber := number(text); isNumber && f == float64(int(f)) {
			n, ok = int(f), true
		}
		if ok && n >= 1 && n <= 31 {
			return amended("is a day of the month", Change{term, strconv.Itoa(n)})
		}
		return notAmended("does not mean one day of the month")
	})
}

func monthToStandard() check {
	const term = "dwc:month"
	return orEmpty(term, func(_ *record, _ *parameters, value string) Response {
		text := trim(value)
		n, ok := integer(value)
		if ok && (isDigits(value) || n < 1 || n > 12) {
			return notAmended("is a whole number")
		}
		if !ok {
			if f, isNumber := number(text); isNumber && f == float64(int(f)) {
				n, ok = int(f), true
			}
		}
		if !ok {
			n, ok = namedMonth(text)
		}
		if !ok {
			n, ok = romanMonth(text)
		}
		if !ok {
			n, ok = digits(strings.TrimSuffix(text, "月"))
		}
		if ok && n >= 1 && n <= 12 {
			return amended("is a month", Change{term, strconv.Itoa(n)})
		}
		return notAmended("does not mean one month")
	})
}
