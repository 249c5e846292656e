package when

import "fieldfare/dwc/calendar"

// extent is a run of whole days, months or years.
type extent struct {
	first, last Date
	unit        precision // dayPrec, monthPrec or yearPrec
}

// extentOf gives a point of time in a year its first and last day. The parts
// of months, seasons, years and decades have the meanings that the package
// documentation lists (common practice, no source; the seasons are those of
// meteorology, whole months from March).
func extentOf(p point, year int) extent {
	if p.until != wholePart {
		from, to := p, p
		from.until, to.until, to.part = wholePart, wholePart, p.until
		return extentOf(from, year).to(extentOf(to, year))
	}
	switch p.prec {
	case monthPrec:
		first, last := partDays(p.part, calendar.DaysIn(year, p.m))
		e := extent{Date{year, p.m, first}, Date{year, p.m, last}, dayPrec}
		if p.part == wholePart {
			e.unit = monthPrec
		}
		return e
	case seasonPrec:
		from, to := 0, 2
		switch p.part {
		case earlyPart:
			to = 0
		case midPart:
			from, to = 1, 1
		case latePart:
			from = 2
		}
		m := int(p.season)*3 + 12*year - 1 // months from year 0, spring being March to May
		return monthsExtent(m+from, m+to)
	case yearPrec:
		switch p.part {
		case earlyPart:
			return monthsExtent(12*year, 12*year+3)
		case midPart:
			return monthsExtent(12*year+4, 12*year+7)
		case latePart:
			return monthsExtent(12*year+8, 12*year+11)
		case half1Part:
			return monthsExtent(12*year, 12*year+5)
		case half2Part:
			return monthsExtent(12*year+6, 12*year+11)
		}
		return yearsExtent(year, year)
	case decadePrec:
		switch p.part {
		case earlyPart:
			return yearsExtent(year, year+3)
		case midPart:
			return yearsExtent(year+4, year+6)
		case latePart:
			return yearsExtent(year+7, year+9)
		}
		return yearsExtent(year, year+9)
	}
	d := Date{year, p.m, p.d}
	return extent{d, d, dayPrec}
}

// monthsExtent is a run of months, counted from January of the year 0.
func monthsExtent(from, to int) extent {
	y, m := to/12, to%12+1
	return extent{Date{from / 12, from%12 + 1, 1}, Date{y, m, calendar.DaysIn(y, m)}, monthPrec}
}

func yearsExtent(from, to int) extent {
	return extent{Date{from, 1, 1}, Date{to, 12, 31}, yearPrec}
}

// partDays returns the first and last day of a part of a month of n days.
func partDays(p part, n int) (first, last int) {
	switch p {
	case earlyPart:
		return 1, 10
	case midPart:
		return 11, 20
	case latePart:
		return 21, n
	case week1Part, week2Part, week3Part, week4Part:
		i := int(p - week1Part)
		return 7*i + 1, 7*i + 7
	case week5Part:
		return 29, max(n, 29)
	case lastWeekPart:
		return n - 6, n
	case half1Part:
		return 1, 15
	case half2Part:
		return 16, n
	}
	return 1, n
}

// to joins two extents; their unit is the finer of both.
func (e extent) to(f extent) extent {
	return extent{e.first, f.last, min(e.unit, f.unit)}
}

// around widens an approximate extent: by five years either way for years, a
// month for months, three days for days (common practice, no source).
func (e extent) around() extent {
	switch e.unit {
	case yearPrec:
		return yearsExtent(e.first.Year-5, e.last.Year+5)
	case monthPrec:
		return monthsExtent(12*e.first.Year+e.first.Month-2, 12*e.last.Year+e.last.Month)
	}
	return extent{e.first.Add(-3), e.last.Add(3), dayPrec}
}

// eventDate writes the extent as ISO 8601-1 does, both ends in full.
func (e extent) eventDate() string {
	var buf [24]byte
	b := e.append(buf[:0], e.first)
	n := len(b)
	b = append(b, '/')
	b = e.append(b, e.last)
	if string(b[:n]) == string(b[n+1:]) {
		b = b[:n]
	}
	return string(b)
}

func (e extent) append(b []byte, d Date) []byte {
	switch e.unit {
	case yearPrec:
		return appendYear(b, d.Year)
	case monthPrec:
		return append(appendYear(b, d.Year), '-', byte('0'+d.Month/10), byte('0'+d.Month%10))
	}
	return d.appendTo(b)
}

// words writes the extent for a reader.
func (e extent) words() string {
	one := func(d Date) string {
		switch e.unit {
		case yearPrec:
			return d.String()[:4]
		case monthPrec:
			return monthNames[d.Month-1] + " " + d.String()[:4]
		}
		return d.Words()
	}
	a, b := one(e.first), one(e.last)
	if a == b {
		return a
	}
	return a + " to " + b
}
