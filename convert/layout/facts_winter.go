package layout

import (
	"fmt"
	"regexp"

	"fieldfare/convert/reading"
)

// winterWords are the two years of one winter: "Winter 2018/19", "winter of
// 2018-2019".
var winterWords = regexp.MustCompile(`(?i)\bwinter(?: of)?[ :]+((?:18|19|20)[0-9]{2}) ?[/–-] ?((?:18|19|20)?[0-9]{2})\b`)

// seasonYears are the two years of one season in a title that does not say
// winter: "2011/12", "2011-2012". 2011-12 may be a month.
var seasonYears = regexp.MustCompile(`\b((?:18|19|20)[0-9]{2})(?: ?[/–] ?| ?[/–-] ?(?:18|19|20))([0-9]{2})\b`)

// winterIn finds the first year of the winter that a title speaks of, and
// where the words stand; 0 for none.
func winterIn(text string) (year, from, to int) {
	at := winterWords.FindStringSubmatchIndex(text)
	if at == nil {
		at = seasonYears.FindStringSubmatchIndex(text)
	}
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

// winterDoubt asks about a year that the season of the page gave.
func (f *facts) winterDoubt(t string, year int) reading.Verdict {
	return reading.QueryOf("year-of-winter", fmt.Sprintf("“%s” has no year. The page is of the season of %d/%02d, so %d was taken. Please check it.", t, f.winter, (f.winter+1)%100, year))
}

// winterYear is the year of a date without one on the page of a winter: the
// first to December, the second from January to March. 0 where the page is of
// none, or the month is no winter's.
func (f *facts) winterYear(t string) int {
	if f.winter == 0 {
		return 0
	}
	switch m := monthIn(monthWord(t)); {
	case m >= 9:
		return f.winter
	case m >= 1 && m <= 3:
		return f.winter + 1
	}
	return 0
}
