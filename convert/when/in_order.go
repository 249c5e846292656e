package when

// inOrder watches whether the dates of a column, read with the day first,
// come one after the other as the year goes on.
type inOrder struct{ last, rises, falls int }

// observe takes in a date that can have the day first, of that sign. One that
// could be either way and is more than three numbers cannot be placed.
func (o *inOrder) observe(text string, sign orderSign) {
	day, ok := dayNumber(text)
	switch {
	case !ok:
		if sign == eitherOrder {
			o.falls++
		}
		return
	case o.last == 0:
	case day > o.last:
		o.rises++
	case day < o.last:
		o.falls++
	}
	o.last = day
}

// dayNumber numbers the days of all years, with gaps, by a date of three numbers
// with the day first. A day that the calendar does not have is none.
func dayNumber(text string) (int, bool) {
	var n [3]int
	i := afterWeekday(text)
	for k := range n {
		if i >= len(text) || !digit(text[i]) {
			return 0, false
		}
		n[k], i = shortNumber(text, i)
		for i < len(text) && (text[i] == '/' || text[i] == '.' || text[i] == '-' || text[i] == ' ') {
			i++
		}
	}
	if i < len(text) || n[0] > 30 && (n[1] == 4 || n[1] == 6 || n[1] == 9 || n[1] == 11) || n[0] > 29 && n[1] == 2 {
		return 0, false
	}
	return (n[2]*12+n[1])*31 + n[0], true
}

// leastRises is how many steps forward, and none back, show that a column is
// written in the order of its days (common practice, no source).
const leastRises = 10

// holds reports whether the column is in order: a date that could be either
// way then stands where it belongs with the day first.
func (o *inOrder) holds() bool { return o.falls == 0 && o.rises >= leastRises }
