package validate

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Asks is what the receiving scheme requires of every record. A zero value
// asks for nothing.
type Asks struct {
	// Scheme is the scheme's name, for messages.
	Scheme string
	// SquareMetres is the side of the coarsest square, in metres.
	SquareMetres int32
	// Days is the longest date, in days.
	Days int32
	// From and To are the first and last day, counted from 1970-01-01;
	// meaningful where HasFrom and HasTo.
	From, To       int32
	HasFrom, HasTo bool
	// Ranks are the acceptable values of taxonRank.
	Ranks []string
	// Terms are Darwin Core terms that must be filled.
	Terms []string
	// CountNeeded: a record without a number is not accepted.
	CountNeeded bool
	// ViceCounty is the one that is wanted: its number or name.
	ViceCounty string
}

// nothing tells whether nothing is asked for.
func (a *Asks) nothing() bool {
	return a.SquareMetres == 0 && a.Days == 0 && !a.HasFrom && !a.HasTo && len(a.Ranks) == 0 && len(a.Terms) == 0 && !a.CountNeeded && a.ViceCounty == ""
}

func (a *Asks) who() string {
	if a.Scheme != "" {
		return a.Scheme
	}
	return "The scheme"
}

const orKeep = " Answer keep to hand it in as it is."

// checkAsksSquare holds a place that is coarser than asked for. A place given
// by latitude and longitude counts by its uncertainty: a square's radius
// reaches its corner, 0.71 of its side.
func checkAsksSquare(s *subject) {
	limit := s.asks.SquareMetres
	if limit == 0 {
		return
	}
	f := s.f
	switch {
	case !f.Placed:
		s.hold("site", siteOf(s.o, f), "asks-square", fmt.Sprintf(
			"%s asks for places in squares of %s or finer, and this record has no place on the map.%s", s.asks.who(), side(limit), orKeep))
	case f.SquareSize > limit:
		s.hold(aboutPlace, s.place(), "asks-square", fmt.Sprintf(
			"%s asks for places in squares of %s or finer; “%s” is a square of %s.%s", s.asks.who(), side(limit), s.place(), side(f.SquareSize), orKeep))
	case f.SquareSize == 0 && float64(f.Radius) > 0.71*float64(limit)+10:
		s.hold(aboutPlace, s.place(), "asks-square", fmt.Sprintf(
			"%s asks for places in squares of %s or finer; “%s” is known only within %.0f m.%s", s.asks.who(), side(limit), s.place(), f.Radius, orKeep))
	}
}

func side(metres int32) string {
	if metres >= 1000 && metres%1000 == 0 {
		return strconv.Itoa(int(metres/1000)) + " km"
	}
	return strconv.Itoa(int(metres)) + " m"
}

// checkAsksDate holds a date that is longer than asked for. A night counts as
// one day.
func checkAsksDate(s *subject) {
	f := s.f
	if s.asks.Days == 0 || !f.Dated {
		return
	}
	days := f.End - f.Start + 1
	if f.Night && days == 2 {
		days = 1
	}
	if days > s.asks.Days {
		s.hold(aboutDate, s.o.VerbatimEventDate, "asks-date", fmt.Sprintf(
			"%s asks for dates of %s at most; “%s” leaves %d days open.%s", s.asks.who(), plural(int(s.asks.Days), "day"), s.o.VerbatimEventDate, days, orKeep))
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}

// checkAsksPeriod holds a date outside the years asked for.
func checkAsksPeriod(s *subject) {
	a, f := s.asks, s.f
	if !f.Dated || !a.HasFrom && !a.HasTo {
		return
	}
	switch {
	case a.HasFrom && f.End < a.From:
		s.hold(aboutDate, s.o.VerbatimEventDate, "asks-period", fmt.Sprintf("%s asks for records from %s on; “%s” is before it.%s", a.who(), words(a.From), s.o.VerbatimEventDate, orKeep))
	case a.HasTo && f.Start > a.To:
		s.hold(aboutDate, s.o.VerbatimEventDate, "asks-period", fmt.Sprintf("%s asks for records up to %s; “%s” is after it.%s", a.who(), words(a.To), s.o.VerbatimEventDate, orKeep))
	}
}

// checkAsksRank holds a taxon of a rank that is not accepted.
func checkAsksRank(s *subject) {
	rank := s.o.TaxonRank
	if len(s.asks.Ranks) == 0 || rank == "" || slices.Contains(s.asks.Ranks, rank) {
		return
	}
	s.hold(aboutName, s.o.VerbatimIdentification, "asks-rank", fmt.Sprintf(
		"%s accepts names of the rank %s; “%s” is a %s.%s", s.asks.who(), strings.Join(s.asks.Ranks, " or "), s.o.VerbatimIdentification, rank, orKeep))
}

// checkAsksCount holds a record without a number where one is asked for.
func checkAsksCount(s *subject) {
	if !s.asks.CountNeeded || s.f.Counted || s.o.IndividualCount != "" || s.o.OccurrenceStatus == "absent" {
		return
	}
	says := "there is none"
	if s.o.OrganismQuantity != "" {
		says = "“" + s.o.OrganismQuantity + "” is no number"
	}
	s.hold(aboutCount, s.o.OrganismQuantity, "asks-count", fmt.Sprintf("%s asks for a count, and %s.%s", s.asks.who(), says, orKeep))
}

// checkAsksViceCounty holds a record that states another vice-county.
func checkAsksViceCounty(s *subject) {
	if s.asks.ViceCounty == "" {
		return
	}
	for _, stated := range [...]string{s.o.HigherGeography, s.o.County} {
		number := ViceCountyNumber(stated)
		if number == 0 {
			continue
		}
		if wanted := ViceCountyNumber(s.asks.ViceCounty); wanted != 0 && wanted != number {
			s.hold(aboutCounty, stated, "asks-vice-county", fmt.Sprintf("%s asks for records of vice-county %d; this one states “%s”.%s", s.asks.who(), wanted, stated, orKeep))
		}
		return
	}
}

// ViceCountyNumber reads the number of a vice-county from any usual way of
// writing it: "29", "VC29", "v.c. 29", "vice-county 29", "29 Cambridgeshire",
// "H12" of Ireland as -12. It is 0 where there is none.
func ViceCountyNumber(text string) int {
	t := strings.ToLower(strings.TrimSpace(text))
	for _, lead := range [...]string{"watsonian ", "vice-county", "vice county", "vicecounty", "v.c.", "vc", "no.", "number"} {
		t = strings.TrimLeft(strings.TrimPrefix(t, lead), " .:")
	}
	sign := 1
	if len(t) > 1 && t[0] == 'h' && t[1] >= '0' && t[1] <= '9' {
		sign, t = -1, t[1:]
	}
	n := 0
	for n < len(t) && t[n] >= '0' && t[n] <= '9' {
		n++
	}
	if n == 0 || n > 3 || n < len(t) && letter(t[n]) {
		return 0
	}
	v, err := strconv.Atoi(t[:n])
	if err != nil || v < 1 || v > 112 || sign < 0 && v > 40 {
		return 0
	}
	return sign * v
}

// checkAsksTerms holds a record without a term that is asked for.
func checkAsksTerms(s *subject) {
	for _, term := range s.asks.Terms {
		if s.o.Get(term) == "" {
			s.hold(aboutRecord, "no "+term, "asks-term", fmt.Sprintf("%s asks for %s, and the record does not say it.%s", s.asks.who(), term, orKeep))
		}
	}
}
