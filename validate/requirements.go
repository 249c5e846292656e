package validate

import (
	"fmt"
	"strings"
)

// Requirement is one thing that a scheme asks for.
type Requirement struct {
	// Check is the code of the findings of records that do not meet it, and
	// About their Written where one code has several requirements.
	Check, Written string
	// Text says what is asked for: "places in squares of 1 km or finer".
	Text string
}

// Requirements are what the scheme asks for, in the order of the checks. An
// area that it asks for is not among them.
func (a *Asks) Requirements() []Requirement {
	var list []Requirement
	add := func(asked bool, check, written, text string, values ...any) {
		if asked {
			list = append(list, Requirement{check, written, fmt.Sprintf(text, values...)})
		}
	}
	add(a.SquareMetres > 0, "asks-square", "", "places in squares of %s or finer", side(a.SquareMetres))
	add(a.Days > 0, "asks-date", "", "dates of %s at most", plural(int(a.Days), "day"))
	switch {
	case a.HasFrom && a.HasTo:
		add(true, "asks-period", "", "dates from %s to %s", words(a.From), words(a.To))
	case a.HasFrom:
		add(true, "asks-period", "", "dates from %s on", words(a.From))
	case a.HasTo:
		add(true, "asks-period", "", "dates up to %s", words(a.To))
	}
	add(len(a.Ranks) > 0, "asks-rank", "", "names of the rank %s", strings.Join(a.Ranks, " or "))
	add(a.CountNeeded, "asks-count", "", "a count of individuals")
	add(a.ViceCounty != "", "asks-vice-county", "", "records of vice-county %s", strings.TrimPrefix(a.ViceCounty, "vice-county "))
	for _, term := range a.Terms {
		add(true, "asks-term", "no "+term, "%s stated", term)
	}
	return list
}
