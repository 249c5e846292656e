package layout

// daysUnderMonths reports whether the figures of a row directly below months
// are their days, one or several a month: within a month they rise, and they
// are not the numbers of species counted below.
func (p *page) daysUnderMonths(i int, cols []int) bool {
	if i == 0 {
		return false
	}
	up, r := &p.rows[i-1], &p.rows[i]
	month, last, months := false, 0, 0
	for _, c := range cols {
		if up.look(c).is(lookMonth) {
			month, last = true, 0
			months++
		} else if up.look(c) != 0 {
			return false
		}
		day, ok := isInt(r.text(c))
		if !ok {
			continue
		}
		if !month || day < 1 || day > 31 || day <= last {
			return false
		}
		last = day
	}
	return months > 0 && !p.countsRows(i, cols)
}

// countsRows reports whether the figures of a row are how many cells are
// filled below them: the number of species of each month.
func (p *page) countsRows(i int, cols []int) bool {
	fit, n := 0, 0
	for _, c := range cols {
		figure, ok := isInt(p.rows[i].text(c))
		if !ok {
			continue
		}
		filled := 0
		for j := i + 1; j < len(p.rows); j++ {
			if l := p.rows[j].look(c); l != 0 && !l.is(lookNil) && !p.rows[j].firstLook().is(lookTotal) {
				filled++
			}
		}
		n++
		if figure == filled {
			fit++
		}
	}
	return n > 1 && fit*5 >= n*4
}
