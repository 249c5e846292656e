package layout

import "strings"

// dayMonthYear gives columns headed by the initials of day, month and year
// those meanings, where they stand beside each other in any order and their
// cells agree: “Year, M, Day”, “D, M, Y”. An M alone is males.
func (b *block) dayMonthYear() {
	for i := 0; i+2 < len(b.cols); i++ {
		if b.dateParts(i, i+1, i+2) {
			return
		}
	}
	if b.find(Date, whole) != nil {
		return
	}
	for i := 0; i+1 < len(b.cols); i++ { // the year stands elsewhere
		if b.dateParts(i, i+1) {
			return
		}
	}
}

// dateParts takes columns for the parts of a date where each is headed as
// another of them, at least one by its initial only, and nothing in them says
// otherwise.
func (b *block) dateParts(at ...int) bool {
	taken := map[part]bool{}
	parts := make([]part, len(at))
	initials := 0
	for j, i := range at {
		c := &b.cols[i]
		key := normHeading(c.heading)
		pt, initial := datePart(key)
		if pt == whole || c.fixed || taken[pt] || agree(sense{meaning: Date, part: pt}, &c.stats) < 0 || c.stats.n == 0 {
			return false
		}
		parts[j], taken[pt] = pt, true
		if initial {
			initials++
		}
	}
	if initials == 0 || !taken[partMonth] || len(at) == 2 && (!taken[partDay] || b.headed("f") || b.headed("females")) {
		return false
	}
	for j, i := range at {
		c := &b.cols[i]
		c.sense, c.left, c.weight = sense{meaning: Date, part: parts[j]}, "", weightExact
		c.why = "the headings of day, month and year beside each other"
	}
	return true
}

// datePart is the part of a date that a heading may be, and whether it is one
// letter.
func datePart(key string) (part, bool) {
	switch key {
	case "d":
		return partDay, true
	case "m":
		return partMonth, true
	case "y":
		return partYear, true
	}
	for _, x := range vocabulary[key] {
		if x.meaning == Date && (x.part == partDay || x.part == partMonth || x.part == partYear) {
			return x.part, false
		}
	}
	return whole, false
}

// headed reports whether a column has the heading, in its normal form.
func (b *block) headed(key string) bool {
	for i := range b.cols {
		if normHeading(b.cols[i].heading) == key {
			return true
		}
	}
	return false
}

// romans is the part of the cells that are months in Roman figures.
func (s *stats) romans() float64 {
	return s.shareWhere(func(t string) bool { return romanMonths[strings.ToLower(strings.Trim(t, " ."))] > 0 })
}
