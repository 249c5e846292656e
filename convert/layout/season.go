package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// holdSummaries holds rows that sum up several visits: a record made of them
// would be of none.
func (b *block) holdSummaries() {
	if b.axis != nil {
		return
	}
	b.holdFirstAndLast()
	b.holdDatesInACell()
}

// holdFirstAndLast holds a list of first and last dates, and of totals beside
// a first date.
func (b *block) holdFirstAndLast() {
	var first, last, total *column
	for i := range b.cols {
		c := &b.cols[i]
		if c.stats.n == 0 {
			continue
		}
		heading := " " + normHeading(c.heading) + " "
		dated := c.stats.shares(lookDate, lookDay, lookPair, lookRealDate) >= 0.5
		switch {
		case dated && (strings.Contains(heading, " first ") || strings.Contains(heading, " earliest ")):
			first = c
		case dated && (strings.Contains(heading, " last ") || strings.Contains(heading, " latest ")):
			last = c
		case c.used() && c.meaning == Count && isTotalHeading(c.heading):
			total = c
		}
	}
	date := b.find(Date, whole)
	switch {
	case first == nil || date == nil || date.fixed || last == nil && (total == nil || date != first):
		return
	case last != nil:
		date.doubt = reading.HeldOf("season-summed-up", "The columns “"+first.heading+"” and “"+last.heading+
			"” sum up a season: the row is no single sighting. Please give the dates and counts of the sightings themselves; if each row is one visit that lasted so long, say in the project file that the columns are the date and the end date.")
	default:
		date.doubt = reading.HeldOf("season-summed-up", "“"+first.heading+"” is one day and “"+total.heading+
			"” sums up many: they are not of one sighting. Please give the dates and counts of the sightings themselves, or say in the project file that column "+notebook.ColumnName(total.col+1)+" is ignored.")
	}
}

// holdDatesInACell holds a list without dates of its own where a column that
// is not understood, or holds remarks or counts, has several dates a cell:
// "3/7 (12), 10/7 (20)".
func (b *block) holdDatesInACell() {
	for _, pt := range []part{whole, partDay, partMonth} {
		if b.find(Date, pt) != nil {
			return
		}
	}
	for i := range b.cols {
		c := &b.cols[i]
		if c.left != leaveNotUnderstood && !(c.used() && (c.meaning == Remarks || c.meaning == Count)) || c.stats.n == 0 {
			continue
		}
		dated, several := 0, 0
		for t, n := range c.stats.distinct {
			switch k := daysIn(t); {
			case k > 1:
				several += n
				dated += n
			case k == 1:
				dated += n
			}
		}
		if several == 0 || dated*2 < c.stats.n {
			continue
		}
		for j := range b.cols {
			if x := &b.cols[j]; x.used() && isName(x.meaning) {
				x.doubt = reading.HeldOf("dates-in-one-cell", "Column "+notebook.ColumnName(c.col+1)+
					" holds several dates in one cell, and they are not read. Please give each date with its count a row of its own.")
			}
		}
	}
}

// daysIn counts the days of a text: "3/7", "10 July", "17.vii".
func daysIn(text string) int {
	n := 0
	for i := 0; i < len(text); i++ {
		if !isDigit(text[i]) || i > 0 && (isDigit(text[i-1]) || isLetter(text[i-1])) {
			continue
		}
		end := i
		for end < len(text) && isDigit(text[end]) {
			end++
		}
		day, _ := isInt(text[i:end])
		if day < 1 || day > 31 {
			continue
		}
		rest := text[end:]
		for _, suffix := range [...]string{"st", "nd", "rd", "th"} {
			rest = strings.TrimPrefix(rest, suffix)
		}
		if word := firstWord(strings.TrimLeft(rest, " ./-")); monthOf(word) > 0 || rest != "" && rest[0] != ' ' && romanMonths[strings.ToLower(word)] > 0 {
			n++
			continue
		}
		if len(rest) < 2 || rest[0] != '/' && rest[0] != '.' || !isDigit(rest[1]) {
			continue
		}
		to := 1
		for to < len(rest) && isDigit(rest[to]) {
			to++
		}
		if m, _ := isInt(rest[1:to]); m >= 1 && m <= 12 {
			n++
			i = end + to - 1
		}
	}
	return n
}
