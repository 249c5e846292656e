package layout

import "strings"

// dayAndRest parts a line that begins with a day and goes on behind a full
// stop, or with the weather behind another mark: "Sat 3 June. Warm and still",
// "10/11 April - cold, clear". The rest is more than a year.
func dayAndRest(text string) (day, rest string) {
	if len(text) > 120 {
		return "", ""
	}
	for _, mark := range [...]string{". ", " - ", " – ", " — ", "; ", ", ", ": ", " ("} {
		for at := 0; ; {
			i := strings.Index(text[at:], mark)
			if i < 0 {
				break
			}
			day, rest = text[:at+i], trim(text[at+i+len(mark):])
			at += i + len(mark)
			if n := len(day); n > 3 && day[n-3:n-1] == ", " && day[n-1] >= 'A' && day[n-1] <= 'Z' { // "14 July 2021, I. Calloway"
				day, rest = day[:n-3], text[n-1:]
			}
			if form := scanDate(day); form != dayMonth && form != fullDate || monthIn(monthWord(day)) == 0 && form != fullDate {
				continue
			}
			if rest != "" && !(isDigit(rest[0]) && yearIn(rest) > 0) && (mark == ". " || tellsWeather(rest)) {
				return day, strings.TrimSuffix(rest, ")")
			}
		}
	}
	return "", ""
}

// weatherWords tell of a night's weather or moon.
var weatherWords = wordSet("calm still warm cold cool mild hot clear cloud clouds cloudy overcast rain rainy raining drizzle drizzly showers wind windy breeze breezy " +
	"fog foggy mist misty frost frosty snow dry wet damp humid muggy close thundery moon moonlit moonlight sunny gale storm stormy chilly")

// tellsWeather reports whether a short text without figures tells of the weather.
func tellsWeather(text string) bool {
	if strings.ContainsAny(text, "0123456789") || strings.Count(text, " ") > 8 {
		return false
	}
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return r < 'a' || r > 'z' }) {
		if weatherWords[w] {
			return true
		}
	}
	return false
}

// beginsWithDay: the line is of a visit, with what the weather was.
func beginsWithDay(text string) bool {
	day, _ := dayAndRest(text)
	return day != ""
}

// dateStarts reports whether a text begins with a full date.
func dateStarts(text string) bool {
	words := strings.Fields(text)
	for n := min(4, len(words)); n >= 1; n-- {
		if scanDate(strings.Trim(strings.Join(words[:n], " "), ",;.")) == fullDate {
			return true
		}
	}
	return false
}

// isTimeOnly: two figures behind a full stop that are no month: 9.30, 14.00.
func isTimeOnly(s string) bool {
	hours, minutes, ok := strings.Cut(s, ".")
	h, isH := isInt(hours)
	m, isM := isInt(minutes)
	return ok && isH && isM && len(minutes) == 2 && h < 24 && m < 60 && (m > 12 || m == 0)
}
