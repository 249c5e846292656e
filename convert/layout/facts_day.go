package layout

import "strings"

// dayAndRest parts a line that begins with a day and goes on behind a full
// stop: "Sat 3 June. Warm and still". The rest is more than a year.
func dayAndRest(text string) (day, rest string) {
	day, rest, ok := strings.Cut(text, ". ")
	if !ok || len(text) > 120 {
		return "", ""
	}
	if form := scanDate(day); form != dayMonth && form != fullDate || monthIn(monthWord(day)) == 0 && form != fullDate {
		return "", ""
	}
	if rest = trim(rest); rest == "" || isDigit(rest[0]) && yearIn(rest) > 0 {
		return "", ""
	}
	return day, rest
}

// beginsWithDay: the line is of a visit, with what the weather was.
func beginsWithDay(text string) bool {
	day, _ := dayAndRest(text)
	return day != ""
}
