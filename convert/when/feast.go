package when

import (
	"fmt"
	"regexp"
	"strings"
)

// movableFeast is a feast that goes by Easter, with its year.
var movableFeast = regexp.MustCompile(`(?i)^(?:the )?(good friday|easter(?: sunday| day| monday| weekend)?|whit ?sunday|whit ?monday)[ ,]+(\d{4})$`)

// feastDays is the first and last day of such a feast, counted from Easter
// Sunday.
var feastDays = map[string][2]int{
	"good friday": {-2, -2}, "easter": {-2, 1}, "easter weekend": {-2, 1}, "easter sunday": {0, 0}, "easter day": {0, 0},
	"easter monday": {1, 1}, "whitsunday": {49, 49}, "whitmonday": {50, 50},
}

// feast reads a movable feast. Whoever wrote it down may have meant a day
// about it, so it is asked about.
func (b *builder) feast(t string) bool {
	m := movableFeast.FindStringSubmatch(t)
	if m == nil {
		return false
	}
	name := strings.ToLower(m[1])
	days, found := feastDays[name]
	if !found {
		days = feastDays[strings.ReplaceAll(name, " ", "")]
	}
	sunday := easter(figures(m[2]))
	b.have, b.e = true, extent{sunday.Add(days[0]), sunday.Add(days[1]), dayPrec}
	b.query("feast", fmt.Sprintf("%s falls on different days in different years: it was read as %s. Write the day, month and year.", b.quoted(), b.e.words()))
	return true
}

// easter is Easter Sunday of a year of the Gregorian calendar (Meeus,
// Astronomical Algorithms, chapter 8).
func easter(year int) Date {
	a, b, c := year%19, year/100, year%100
	d, e := b/4, b%4
	f := (b + 8) / 25
	g := (b - f + 1) / 3
	h := (19*a + b - d - g + 15) % 30
	i, k := c/4, c%4
	l := (32 + 2*e + 2*i - h - k) % 7
	m := (a + 11*h + 22*l) / 451
	n := h + l - 7*m + 114
	return Date{year, n / 31, n%31 + 1}
}
