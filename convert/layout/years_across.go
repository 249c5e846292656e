package layout

import (
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// yearsOverDates finds columns headed by years whose cells are days: the first
// of each species, year by year.
func (p *page) yearsOverDates(r *keptRow, body []keptRow, from, to int) []int {
	var cols []int
	for c := from; c <= to && c < len(r.looks); c++ {
		if r.looks[c].is(lookYear) && daysBelow(body, c) {
			cols = append(cols, c)
		}
	}
	if len(cols) < 2 {
		return nil
	}
	return cols
}

// daysBelow reports whether a column below its heading holds days.
func daysBelow(body []keptRow, c int) bool {
	days, n := 0, 0
	for i := range body {
		l := body[i].look(c)
		if l == 0 || l.is(lookNil|lookTick) {
			continue
		}
		n++
		if l.is(lookDate | lookDay | lookPair | lookRealDate) {
			days++
		}
	}
	return days > 0 && days*5 >= n*4
}

// datesInCells makes columns of days under a year columns of dates.
func (a *axis) datesInCells(body []keptRow) {
	for i := range a.cols {
		ac := &a.cols[i]
		if ac.left != "" || ac.year == "" || ac.day != "" || ac.month != "" || !daysBelow(body, ac.col) {
			continue
		}
		ac.role = Date
		kept := ac.values[:0]
		for _, v := range ac.values {
			if v.Meaning != Date {
				kept = append(kept, v)
			}
		}
		ac.values = kept
	}
}

// underYear completes a day by the year above it.
func (ac *axisColumn) underYear(v *Value) {
	year, ok := isInt(ac.year)
	if !ok {
		return
	}
	said := v.Text
	switch {
	case isTick(v.Text):
		v.Text, v.Kind = ac.year, notebook.Text
	case scanDate(v.Text).hasYear():
		if y := yearIn(v.Text); y > 0 && y != year {
			v.Doubt = v.Doubt.And(reading.HeldOf("year-above-differs", fmt.Sprintf("“%s” stands under “%s”. Please say which year is right.", said, ac.year)))
		}
		return
	case v.Kind == notebook.Date && len(v.Raw) >= 10: // the year it was typed in
		v.Text, v.Kind = ac.year+v.Raw[4:10], notebook.Text
	default:
		v.Text = addYear(v.Text, year)
	}
	if v.Verbatim == "" {
		v.Verbatim = said
	}
}
