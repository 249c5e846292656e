package layout

// sixFigureDates takes a row of headings whose columns are headed 030719,
// 100719 for a row of dates: day, month and year of two figures, all of one
// year and rising. Where the figures read as year, month and day as well, they
// are left alone.
func (k *keptRow) sixFigureDates() {
	if k.n < 3 || k.first < 0 || len(vocabulary[normHeading(k.text(k.first))]) == 0 {
		return
	}
	n, last, year, otherYear := 0, 0, "", ""
	otherConstant := true
	for c := k.first + 1; c < len(k.cells); c++ {
		t := k.text(c)
		if !k.looks[c].is(lookInt) {
			if k.looks[c].is(lookDecimal | lookDate | lookGrid) {
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
	for c := k.first + 1; c < len(k.cells); c++ {
		if k.looks[c].is(lookInt) {
			k.looks[c] = lookText | lookDate
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
