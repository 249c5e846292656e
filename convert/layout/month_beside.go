package layout

// monthBeside takes a month that stands over the names of one of several
// tables side by side for that table's month: its days stand beside it, a row
// below.
func (b *block) monthBeside(cols []int) {
	for _, r := range b.heads[:len(b.heads)-1] {
		month, texts := -1, 0
		for c := b.from; c <= b.to && c < len(r.looks); c++ {
			if r.looks[c] == 0 {
				continue
			}
			texts++
			if r.looks[c].is(lookMonth) && c < cols[0] {
				month = c
			}
		}
		if texts == 1 && month >= 0 {
			b.facts.setMonth(r.text(month), FromHeading, originWords(FromHeading))
		}
	}
}
