package bdq

import (
	"fmt"
	"strconv"

	"fieldfare/dwc/calendar"
)

const (
	eventDate  = "dwc:eventDate"
	yearTerm   = "dwc:year"
	monthTerm  = "dwc:month"
	dayTerm    = "dwc:day"
	startOfDay = "dwc:startDayOfYear"
	endOfDay   = "dwc:endDayOfYear"
)

// atom is one of the terms that repeat a part of dwc:eventDate.
type atom struct {
	term string
	// from gives the part; ok is false where the date is too coarse or too
	// long to have one.
	from func(span) (int, bool)
}

// Each by its Darwin Core definition: a day only where the date is within one
// day, days of the year only where both ends are stated to the day.
var atoms = [...]atom{
	{yearTerm, func(d span) (int, bool) { return d.from.year, d.withinYear() }},
	{monthTerm, func(d span) (int, bool) { return d.from.month, d.withinMonth() }},
	{dayTerm, func(d span) (int, bool) { return d.from.day, d.withinDay() }},
	{startOfDay, func(d span) (int, bool) { return dayOfYear(d.from), d.daily() }},
	{endOfDay, func(d span) (int, bool) { return dayOfYear(d.to), d.daily() }},
}

func eventConsistent(r *record, _ *parameters) Response {
	if r.empty(eventDate) {
		return unmet("is empty").of(eventDate, "")
	}
	d, valid := r.eventDate()
	stated := false
	for _, a := range atoms {
		value := r.get(a.term)
		if isEmpty(value) {
			continue
		}
		stated = true
		n, ok := integer(value)
		if want, has := a.from(d); !valid || !ok || !has || n != want {
			return notCompliant("does not agree with dwc:eventDate").of(a.term, value)
		}
	}
	if !stated {
		return unmet("year, month, day, startDayOfYear and endDayOfYear are all empty")
	}
	return compliant("agrees with the terms that repeat its parts").of(eventDate, r.get(eventDate))
}

func eventFromEventDate(r *record, _ *parameters) Response {
	value := r.get(eventDate)
	if isEmpty(value) {
		return unmet("is empty").of(eventDate, "")
	}
	d, ok := r.eventDate()
	if !ok {
		return unmet("is not an ISO 8601 date").of(eventDate, value)
	}
	var changes []Change
	for _, a := range atoms {
		if n, has := a.from(d); has && r.empty(a.term) {
			changes = append(changes, Change{a.term, strconv.Itoa(n)})
		}
	}
	if len(changes) == 0 {
		return notAmended("gives nothing that is not stated").of(eventDate, value)
	}
	return filledIn("gives parts that are not stated", changes...).of(eventDate, value)
}

// eventDateFromVerbatim proposes the date that was written. Where nothing of a
// date is in the text, the standard's cases (LineNumber 688) say prerequisites
// not met, where its text says not amended; the cases are followed.
func eventDateFromVerbatim(r *record, _ *parameters) Response {
	const verbatim = "dwc:verbatimEventDate"
	if value := r.get(eventDate); !isEmpty(value) {
		return unmet("is stated already").of(eventDate, value)
	}
	value := r.get(verbatim)
	if isEmpty(value) {
		return unmet("is empty").of(verbatim, "")
	}
	iso, ok, dated := interpretDate(value)
	switch {
	case !dated:
		return unmet("has nothing of a date in it").of(verbatim, value)
	case !ok:
		return notAmended("cannot be read as one date").of(verbatim, value)
	}
	reason := "was read"
	// The last of the large states changed calendar on 14 February 1918
	// (Russia); the standard asks for the remark.
	if d, _ := parseISO(iso); d.first() < calendar.Number(1918, 2, 14) {
		reason = "was read; verbatimDate was assumed to be in the Gregorian calendar"
	}
	return filledIn(reason, Change{eventDate, iso}).of(verbatim, value)
}

func eventDateFromYearMonthDay(r *record, _ *parameters) Response {
	if value := r.get(eventDate); !isEmpty(value) {
		return unmet("is stated already").of(eventDate, value)
	}
	year, ok := integer(r.get(yearTerm))
	if !ok {
		return unmet("is empty or not a whole number").of(yearTerm, r.get(yearTerm))
	}
	p := parts{year: year}
	// Without a month a day says nothing; a month or day that is no whole
	// number leaves the coarser date.
	if month, ok := integer(r.get(monthTerm)); ok {
		p.month = month
		if day, ok := integer(r.get(dayTerm)); ok {
			p.day = day
			if day == 0 {
				return notAmended("is not a day").of(dayTerm, r.get(dayTerm))
			}
		}
		if month == 0 {
			return notAmended("is not a month").of(monthTerm, r.get(monthTerm))
		}
	}
	iso := p.iso()
	if _, valid := parseISO(iso); !valid || year < 1000 {
		return notAmended("year, month and day are not a date")
	}
	return filledIn("is put together from year, month and day", Change{eventDate, iso}).of(eventDate, "")
}

// eventDateFromDaysOfYear proposes the interval between two days of one year.
// A year that is no whole number is a prerequisite not met by the standard's
// cases (LineNumber 1061), where its text says not amended; the cases are
// followed.
func eventDateFromDaysOfYear(r *record, _ *parameters) Response {
	if value := r.get(eventDate); !isEmpty(value) {
		return unmet("is stated already").of(eventDate, value)
	}
	for _, term := range [...]string{yearTerm, startOfDay, endOfDay} {
		if r.empty(term) {
			return unmet("is empty").of(term, "")
		}
	}
	year, ok := isoYear(r.get(yearTerm))
	if !ok {
		return unmet("is not a year").of(yearTerm, r.get(yearTerm))
	}
	start, okStart := integer(r.get(startOfDay))
	end, okEnd := integer(r.get(endOfDay))
	length := 365
	if leap(year) {
		length = 366
	}
	if !okStart || !okEnd || start < 1 || end > length || start >= end {
		return notAmended("year, startDayOfYear and endDayOfYear are not an interval within one year")
	}
	iso := fmt.Sprintf("%s/%s", dateOfDay(year, start), dateOfDay(year, end))
	return filledIn("is put together from year, startDayOfYear and endDayOfYear", Change{eventDate, iso}).of(eventDate, "")
}

func dateOfDay(year, n int) string {
	y, m, d := calendar.Date(calendar.Number(year, 1, n))
	return parts{y, m, d}.iso()
}
