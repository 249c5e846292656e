package layout

import "regexp"

// winterWords are the two years of one winter: "Winter 2018/19", "winter of
// 2018-2019".
var winterWords = regexp.MustCompile(`(?i)\bwinter(?: of)?[ :]+((?:18|19|20)[0-9]{2}) ?[/–-] ?((?:18|19|20)?[0-9]{2})\b`)

// winterIn finds the first year of the winter that a title speaks of, and
// where the words stand; 0 for none.
func winterIn(text string) (year, from, to int) {
	at := winterWords.FindStringSubmatchIndex(text)
	if at == nil {
		return 0, 0, 0
	}
	first, _ := isInt(text[at[2]:at[3]])
	second, _ := isInt(text[at[4]:at[5]])
	if second != first+1 && second != (first+1)%100 {
		return 0, 0, 0
	}
	return first, at[0], at[1]
}

// winterYear is the year of a date without one on the page of a winter: the
// first to December, the second from January. 0 where the page is of none, or
// the month is no winter's.
func (f *facts) winterYear(t string) int {
	if f.winter == 0 {
		return 0
	}
	switch m := monthIn(monthWord(t)); {
	case m >= 9:
		return f.winter
	case m >= 1 && m <= 4:
		return f.winter + 1
	}
	return 0
}
