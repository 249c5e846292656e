package when

import (
	"fmt"

	"fieldfare/convert/reading"
)

// Evidence gathers what the dates of one column say about the order of day
// and month: 25/6 can only have the day first, 6/25 only the month. It takes
// constant memory; the zero value is ready.
type Evidence struct {
	dayFirst, monthFirst, either int
	dayText, monthText           string
	years                        yearsFirst
	rising                       inOrder
}

// Observe takes in one date as written. Texts that are no dates of numbers
// say nothing.
func (e *Evidence) Observe(text string) {
	e.years.observe(text)
	sign := numericOrder(text)
	if sign == dayFirst || sign == eitherOrder {
		e.rising.observe(text, sign)
	}
	switch sign {
	case dayFirst:
		if e.dayFirst++; e.dayText == "" {
			e.dayText = text
		}
	case monthFirst:
		if e.monthFirst++; e.monthText == "" {
			e.monthText = text
		}
	case eitherOrder:
		e.either++
	}
}

// Order returns the order in which the column is to be read, def where it
// says nothing itself. The verdict is a query where dates contradict each
// other; it then belongs to every date that could be read both ways (see
// Ambiguous), and the order is that of the greater number, def where they are
// as many.
func (e *Evidence) Order(def Order) (Order, reading.Verdict) {
	switch {
	case e.dayFirst == 0 && e.monthFirst == 0:
		return def, reading.Verdict{}
	case e.monthFirst == 0:
		return DayMonth, e.settled(def, DayMonth, "day", e.dayText)
	case e.dayFirst == 0:
		return MonthDay, e.settled(def, MonthDay, "month", e.monthText)
	case e.dayFirst > e.monthFirst && e.rising.holds():
		return DayMonth, e.settled(def, DayMonth, "day", e.dayText) // but for slips, which are asked about themselves
	}
	order, words := def, "day first"
	switch {
	case e.dayFirst > e.monthFirst:
		order = DayMonth
	case e.monthFirst > e.dayFirst:
		order = MonthDay
	}
	if order == MonthDay {
		words = "month first"
	}
	return order, reading.QueryOf("date-order-mixed", fmt.Sprintf(
		"The column has dates with the day first (“%s”, %d in all) and with the month first (“%s”, %d in all), so a date that could be either is not certain. It was read with the %s.",
		e.dayText, e.dayFirst, e.monthText, e.monthFirst, words))
}

func (e *Evidence) settled(def, order Order, word, text string) reading.Verdict {
	if order == def {
		return reading.Verdict{}
	}
	return reading.Verdict{Message: fmt.Sprintf("The column's dates are read with the %s first: “%s” can only be that.", word, text)}
}

// Ambiguous reports whether a text is a date of numbers that is one day with
// the day first and another with the month first.
func Ambiguous(text string) bool { return numericOrder(text) == eitherOrder }

type orderSign uint8

const (
	noOrder orderSign = iota
	dayFirst
	monthFirst
	eitherOrder
)

// numericOrder tells what a date of numbers says about the order of its day
// and month. Only the two numbers before a year, or alone, are looked at; the
// text of a night (12/13.6.21) says that the day is first.
func numericOrder(text string) orderSign {
	var nums [6]int
	var widths [6]int
	n := 0
	i := afterWeekday(text)
	for i < len(text) && n < len(nums) {
		if !digit(text[i]) {
			return noOrder
		}
		v, end := shortNumber(text, i)
		nums[n], widths[n] = v, end-i
		n++
		i = end
		if i < len(text) && (text[i] == ' ' || text[i] == 'T') && n >= 3 {
			i = len(text) // a time follows
		}
		for i < len(text) && (text[i] == '/' || text[i] == '.' || text[i] == '-' || text[i] == ' ') {
			i++
		}
	}
	if i < len(text) || n < 2 || n > 5 || widths[0] > 2 || widths[1] > 2 {
		return noOrder
	}
	a, b := nums[n-2], nums[n-1]
	if n > 2 {
		if widths[n-1] != 2 && widths[n-1] != 4 {
			return noOrder
		}
		a, b = nums[n-3], nums[n-2]
	}
	if n == 4 && nums[0] <= 12 && nums[1] > 12 && nums[2] > 12 {
		a, b = nums[0], nums[1] // 6/12-13/2021
	}
	switch {
	case a < 1 || b < 1 || a > 31 || b > 31 || a > 12 && b > 12, a == b:
		return noOrder
	case a > 12:
		return dayFirst
	case b > 12:
		return monthFirst
	}
	return eitherOrder
}

// afterWeekday returns where a text goes on after a weekday, white space and
// a spreadsheet's text mark.
func afterWeekday(text string) int {
	i := 0
	var buf [10]byte
	n := 0
	for i+n < len(text) && n < len(buf) && letter(text[i+n]) {
		buf[n] = text[i+n] | 0x20
		n++
	}
	if n > 0 {
		if c, _, _ := lookUp(buf[:n]); c != dayWord {
			return 0
		}
		i = n
	}
	for i < len(text) && (text[i] == ' ' || text[i] == '\'' || n > 0 && (text[i] == '.' || text[i] == ',')) {
		i++
	}
	return i
}
