package layout

import (
	"regexp"
	"strings"
)

// setAndEmptied is what a title says of the time that traps stood: "Set 1 May
// 2018, emptied 15 May 2018", "Traps set 8 Oct 2021 pm; checked 9 Oct am".
var setAndEmptied = regexp.MustCompile(`(?i)\b(?:set(?: out| up)?|put out|laid|installed|deployed|out|from)(?: on)?:? +([0-9][0-9A-Za-z/. ]{3,22}?)(?: (?:am|pm|evening|morning|dusk|dawn))?[,;–-]? +(?:and |then |to )?(?:emptied|collected|checked|taken in|taken up|lifted|serviced|retrieved|removed|in|to|until)(?: on)?:? +([0-9][0-9A-Za-z/. ]{3,22}?)(?: (?:am|pm|evening|morning|dusk|dawn))?[.,;)]?(?: |$)`)

// interval takes such a line for the dates of the page, and returns the rest of
// the text.
func (f *facts) interval(text string, v Value) (rest string, ok bool) {
	at := setAndEmptied.FindStringSubmatchIndex(text + " ")
	if at == nil {
		return text, false
	}
	from, to := trim(text[at[2]:at[3]]), trim(text[at[4]:at[5]])
	a, b := scanDate(from), scanDate(to)
	switch {
	case a == fullDate && b == dayMonth:
		to = addYear(to, yearIn(from))
	case a == dayMonth && b == fullDate:
		from = addYear(from, yearIn(to))
	case a != fullDate || b != fullDate:
		return text, false
	}
	w := v
	w.Meaning, w.Text, w.Verbatim = Date, from, text
	f.set(w)
	w.Meaning, w.Text = EndDate, to
	f.set(w)
	return trim(strings.TrimSpace(text[:at[0]]) + " " + (text + " ")[at[1]:]), true
}
