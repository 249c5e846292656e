package when

import (
	"fmt"

	"fieldfare/convert/reading"
)

// leastYearFirst is how many different dates a column must have, all with the
// same first pair of figures, before that pair is taken for the year (common
// practice, no source).
const leastYearFirst = 3

// yearsFirst watches for a column of dates of three pairs of figures that
// begin with the year, 21-06-12: the first pair stays the same while the last
// goes on, where a column of days first has it the other way round.
type yearsFirst struct {
	first, last byte // the pairs of the last date seen
	dates       int  // changes of date
	other       bool // the first pair varied, or a date had another form
}

func (y *yearsFirst) observe(text string) {
	first, _, last, ok := pairs(text)
	switch {
	case !ok || y.dates > 0 && first != y.first:
		y.other = true
	case y.dates == 0 || last != y.last:
		y.first, y.last = first, last
		y.dates++
	}
}

// YearFirst tells whether every date of the column is three pairs of figures
// that begin with the year. Such dates are to be read with ReadYearFirst.
func (e *Evidence) YearFirst() bool {
	return !e.years.other && e.years.dates >= leastYearFirst
}

// ReadYearFirst reads a date of three pairs of figures as year, month, day.
// It is a query, since the pairs could stand in another order. Any other text
// is read as by Read.
func ReadYearFirst(text string, o Options) Reading {
	first, month, last, ok := pairs(text)
	if !ok {
		return Read(text, o)
	}
	year, _ := o.shortYear(int(first))
	d := Date{year, int(month), int(last)}
	if !d.Valid() {
		return Reading{Verdict: reading.HeldOf("no-such-day", fmt.Sprintf("The dates of the column begin with the year, and “%s” would be no day of the calendar then. Write the date out.", text))}
	}
	r := ReadCell(d.String(), o)
	if r.State == reading.Held {
		return r
	}
	r.Verdict = r.Verdict.And(reading.QueryOf("year-first", fmt.Sprintf(
		"The dates of the column begin alike, so “%s” was read with the year first, as %s. Please check.", text, r.Start.Words()), r.Start.String()))
	return r
}

// pairs takes a date of three pairs of figures apart.
func pairs(text string) (a, b, c byte, ok bool) {
	if len(text) != 8 || text[2] != text[5] || text[2] != '-' && text[2] != '/' && text[2] != '.' && text[2] != ' ' {
		return 0, 0, 0, false
	}
	var n [3]byte
	for i := range n {
		x, y := text[3*i], text[3*i+1]
		if x < '0' || x > '9' || y < '0' || y > '9' {
			return 0, 0, 0, false
		}
		n[i] = (x-'0')*10 + y - '0'
	}
	return n[0], n[1], n[2], true
}
