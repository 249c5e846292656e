package layout

// unnamedDays takes figures without a heading, left of the names, for days of
// the month, where other figures behind the names are the counts and months
// stand on lines of their own.
func (b *block) unnamedDays() {
	if b.axis != nil || len(b.heads) > 0 || b.find(Date, whole) != nil || b.find(Date, partDay) != nil {
		return
	}
	var day, count *column
	named := false
	for i := range b.cols {
		c := &b.cols[i]
		switch {
		case isName(c.meaning) && c.used(), day != nil && c.heading == "" && c.stats.share(lookWords) >= 0.6:
			named = true
		case c.stats.n == 0 || c.fixed || c.heading != "":
		case !named && day == nil && c.stats.upTo(31) >= 0.95:
			day = c
		case named && c.used() && c.meaning == Count:
			count = c
		}
	}
	if day == nil || count == nil || !b.monthLines() {
		return
	}
	day.sense, day.left, day.why, day.weight = sense{meaning: Date, part: partDay}, "", "figures up to 31 before the names, under lines of months", accepted
}

// monthLines reports whether months stand on lines of their own.
func (b *block) monthLines() bool {
	for i := range b.sample {
		if r := &b.sample[i]; r.single() >= 0 && r.look(r.single()).is(lookMonth) {
			return true
		}
	}
	return b.facts.month > 0
}
