package when

// Page watches the order of a page's dates, for the slip of January: the old
// year written on. It keeps one small entry for every change of date. The
// zero value is ready.
type Page struct {
	days []int32
	rows []int32
}

// Slip is a run of rows whose year breaks the order of the page, and the year
// that would mend it.
type Slip struct {
	// FirstRow and LastRow are rows as given to Observe, both included.
	FirstRow, LastRow int
	// Years is what has to be added to the year: 1 or -1 for a run of dates,
	// any number but 0 for a single one.
	Years int
	// Written and Likely are the first date of the run, as read and mended.
	Written, Likely Date
}

// Observe takes in the date of a row, in the order of the page. Rows without
// a certain day are left out.
func (p *Page) Observe(row int, d Date) {
	n := int32(d.Days())
	if k := len(p.days); k > 0 && p.days[k-1] == n {
		return
	}
	p.days = append(p.days, n)
	p.rows = append(p.rows, int32(row))
}

// minOrdered is how many changes of date a page must have in order before a
// break in it means anything, and maxGap the days that may lie between two
// neighbours for a mended date to be believed (common practice, no source).
const (
	minOrdered = 3
	maxGap     = 120
)

// Slips returns the dates that break an otherwise ordered page, old to new or
// new to old, by a year, and single ones that bear another year altogether. A
// page with any other break has none: it is not in order.
func (p *Page) Slips() []Slip {
	if s, ok := p.slips(1); ok {
		return s
	}
	s, _ := p.slips(-1)
	return s
}

// slips walks the page in one direction (1 old to new, -1 new to old). ok is
// false where the page is not in that order.
func (p *Page) slips(dir int) (found []Slip, ok bool) {
	n := len(p.days)
	inOrder, last := 0, 0
	for i := 0; i < n; {
		d := int(p.days[i])
		switch {
		case i == 0:
		case dir*(d-last) < 0: // backwards
			end, years := p.mend(i, last, dir, dir)
			if years == 0 { // another year altogether: 1912 or 2012 on a page of 2021
				end, years = p.mendOne(i, last, dir)
			}
			if years == 0 {
				return nil, false
			}
			found = append(found, p.slip(i, end, years))
			last = shift(p.days[end-1], years)
			i = end
			continue
		case dir*(d-last) > 200:
			// A year too far, and back again.
			if end, years := p.mend(i, last, dir, -dir); years != 0 && end < n && dir*int(p.days[end]-p.days[end-1]) < 0 {
				found = append(found, p.slip(i, end, years))
				last = shift(p.days[end-1], years)
				i = end
				continue
			}
			inOrder++
		default:
			inOrder++
		}
		last = d
		i++
	}
	if inOrder < minOrdered || len(found) > 1+inOrder/minOrdered {
		return nil, inOrder >= minOrdered && len(found) == 0
	}
	return found, true
}

// mend finds the run from i whose dates, moved by a year, follow on from last
// and lead on to the date after the run. Years is 0 where there is none.
func (p *Page) mend(i, last, dir, years int) (end, mended int) {
	prev := last
	for end = i; end < len(p.days); end++ {
		d := int(p.days[end])
		// A date that follows on as it stands ends the run.
		if end > i && dir*(d-prev) >= 0 && dir*(d-prev) <= maxGap {
			return end, years
		}
		m := shift(p.days[end], years)
		if dir*(m-prev) < 0 || dir*(m-prev) > maxGap {
			if end > i && dir*(d-prev) >= 0 {
				return end, years
			}
			return end, 0
		}
		prev = m
	}
	// A run to the end of the page may be a second list, and not a slip that
	// nobody noticed.
	first := DateOf(int(p.days[i]))
	if span := dir * int(p.days[end-1]-p.days[i]); end-i > 2 && (first.Month > 3 || span > maxGap) {
		return end, 0
	}
	return end, years
}

// mendOne finds the years by which a single date would follow on from last and
// lead on to the date after it.
func (p *Page) mendOne(i, last, dir int) (end, years int) {
	years = DateOf(last).Year - DateOf(int(p.days[i])).Year
	for _, y := range [...]int{years, years + dir} {
		m := shift(p.days[i], y)
		if y == 0 || dir*(m-last) < 0 || dir*(m-last) > maxGap {
			continue
		}
		if i+1 == len(p.days) || dir*(int(p.days[i+1])-m) >= 0 && dir*(int(p.days[i+1])-m) <= maxGap {
			return i + 1, y
		}
	}
	return i, 0
}

func (p *Page) slip(i, end, years int) Slip {
	last := int(p.rows[end-1])
	if end < len(p.rows) {
		last = int(p.rows[end]) - 1
	}
	return Slip{
		FirstRow: int(p.rows[i]), LastRow: last, Years: years,
		Written: DateOf(int(p.days[i])), Likely: DateOf(shift(p.days[i], years)),
	}
}

// shift moves a day by years; 29 February becomes 1 March in a common year.
func shift(day int32, years int) int {
	d := DateOf(int(day))
	d.Year += years
	return d.Days()
}
