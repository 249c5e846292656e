package layout

import (
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// sixFigureDates takes a row of headings whose columns are headed 030719,
// 100719 for a row of dates: day, month and year of two figures, all of one
// year and rising. Where the figures read as year, month and day as well, they
// are left alone.
func (r *keptRow) sixFigureDates() {
	if r.n < 3 || r.first < 0 || len(vocabulary[normHeading(r.text(r.first))]) == 0 {
		return
	}
	n, last, year, otherYear := 0, 0, "", ""
	otherConstant := true
	for c := r.first + 1; c < len(r.cells); c++ {
		t := r.text(c)
		if !r.looks[c].is(lookInt) {
			if r.looks[c].is(lookDecimal | lookDate | lookGrid) {
				return
			}
			continue
		}
		d, m, ok := sixFigureDate(t)
		if !ok || m*100+d <= last || n > 0 && t[4:] != year {
			return
		}
		if n > 0 && t[:2] != otherYear {
			otherConstant = false
		}
		last, year, otherYear = m*100+d, t[4:], t[:2]
		n++
	}
	if n < 2 || otherConstant {
		return
	}
	for c := r.first + 1; c < len(r.cells); c++ {
		if r.looks[c].is(lookInt) {
			r.looks[c] = lookText | lookDate
		}
	}
}

// sixFigureDate returns the day and month of 030719.
func sixFigureDate(t string) (day, month int, ok bool) {
	if len(t) != 6 {
		return 0, 0, false
	}
	day, okD := isInt(t[:2])
	month, okM := isInt(t[2:4])
	_, okY := isInt(t[4:])
	return day, month, okD && okM && okY && day >= 1 && day <= 31 && month >= 1 && month <= 12
}

// sixFigures reports whether the cells are dates of six figures, some of which
// may have lost a leading zero: 030718, 40718.
func (s *stats) sixFigures() bool {
	six := false
	for t := range s.distinct {
		d, y := padded(t), ""
		if len(d) == 6 {
			y = d[4:] + d[2:4] + d[:2]
		}
		_, _, dmy := sixFigureDate(d)
		_, _, ymd := sixFigureDate(y)
		if !dmy && !ymd {
			return false
		}
		six = six || len(t) == 6
	}
	return six && s.n >= 2 && len(s.distinct) >= 2
}

// padded gives a date of five figures its leading zero back.
func padded(t string) string {
	if len(t) == 5 && allDigits(t) {
		return "0" + t
	}
	return t
}

// dayFirst reports whether the column's dates of six figures can only be day,
// month and year: one of them is nothing else, or they fall on several days of
// one year and would else fall on one day of several years.
func (s *stats) dayFirst() bool {
	years, days := map[string]bool{}, map[string]bool{}
	only := false
	for t := range s.distinct {
		d := padded(t)
		if _, _, ok := sixFigureDate(d); !ok {
			return false
		}
		_, _, other := sixFigureDate(d[4:] + d[2:4] + d[:2])
		only = only || !other
		years[d[4:]], days[d[:2]] = true, true
	}
	return only || len(s.distinct) >= 3 && len(years) == 1 && len(days) > 1
}

// sixFigureDamage gives a date of six figures its lost zero back, and parts
// it where the column leaves one order only.
func sixFigureDamage(v *Value, c *column) {
	if len(v.Text) < 5 || len(v.Text) > 6 || !allDigits(v.Text) {
		return
	}
	said, whole := v.Text, padded(v.Text)
	if len(said) == 5 {
		v.Doubt = v.Doubt.And(reading.QueryOf("leading-zero-lost", fmt.Sprintf(
			"Cell %s says “%s” among dates of six figures: the spreadsheet has dropped a zero. It was probably %s.", v.Ref, said, whole), whole))
	}
	v.Text = whole
	if c.stats.dayFirst() {
		v.Text = whole[:2] + "/" + whole[2:4] + "/" + whole[4:]
		v.Doubt = v.Doubt.And(reading.QueryOf("six-figure-date", fmt.Sprintf(
			"“%s” was read as day, month and year (%s), as the column's other dates leave no other order. Please check it.", said, v.Text), v.Text))
	}
	if v.Text != said {
		v.Verbatim, v.Kind, v.Raw = said, notebook.Text, ""
	}
}
