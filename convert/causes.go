package convert

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/convert/report"
)

// cause is all questions of one check: what the closing screen has a line for.
type cause struct {
	check   string
	state   reading.State
	records int
	cases   []*report.Question
}

// causesOf groups questions by their check: held first, then by how many
// records they concern.
func causesOf(questions []*report.Question) []cause {
	type key struct {
		check string
		state reading.State
	}
	var list []cause
	at := map[key]int{}
	for _, q := range questions {
		check, _, _ := strings.Cut(q.Code, " ") // the worst of several
		k := key{check, q.State}
		i, found := at[k]
		if !found {
			i = len(list)
			at[k] = i
			list = append(list, cause{check: check, state: q.State})
		}
		list[i].records += q.Records
		list[i].cases = append(list[i].cases, q)
	}
	slices.SortStableFunc(list, func(a, b cause) int {
		return cmp.Or(cmp.Compare(b.state, a.state), cmp.Compare(b.records, a.records), cmp.Compare(a.check, b.check))
	})
	return list
}

// Cases named in one line, and the longest text of one, in characters.
const (
	casesNamed  = 3
	longestCase = 60
)

// words says what is the matter, and what was written.
func (c *cause) words() string {
	says, known := causeWords[c.check]
	if !known {
		text := firstSentence(c.cases[0])
		if n := len(c.cases) - 1; n > 0 {
			text += fmt.Sprintf(" (and %s like it)", count(n, "more case"))
		}
		return text
	}
	var named []string
	for _, q := range c.cases {
		if q.Written != "" && len(named) < casesNamed {
			named = append(named, shortened(q.Written))
		}
	}
	if len(named) == 0 {
		return says
	}
	if n := len(c.cases) - len(named); n > 0 {
		named = append(named, fmt.Sprintf("and %d more", n))
	}
	return says + " (" + strings.Join(named, "; ") + ")"
}

func shortened(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if r := []rune(text); len(r) > longestCase {
		return string(r[:longestCase-1]) + "…"
	}
	return text
}

// causeWords say in a few words what the commonest checks find. A check that
// is not here speaks with the first of its questions.
var causeWords = map[string]string{
	"no-such-day":              "a day that the calendar does not have",
	"date-missing":             "no date",
	"date-unreadable":          "a date that cannot be read",
	"day-or-year":              "a figure that may be the day or the year",
	"night-or-date":            "two figures that may be a night or a date",
	"no-year":                  "a date without a year",
	"year-only":                "a date with the year alone",
	"month-only":               "a date without the day",
	"year-breaks-order":        "a year that breaks the order of its page",
	"weekday-disagrees":        "a weekday that is not that of the date",
	"name-missing":             "no name",
	"name-not-listed":          "a name that is not on the list",
	"name-ambiguous":           "a name that may be one of several taxa",
	"name-misspelt":            "a name that was read as one close to it on the list",
	"names-disagree":           "two names that do not belong to one taxon",
	"uneven-figures":           "a reference whose easting and northing differ in length",
	"odd-figures":              "a reference with an odd number of figures",
	"not-a-reference":          "a place that is no grid reference",
	"no-such-square":           "a reference with letters that the grid does not have",
	"letters-missing":          "a reference without its letters",
	"open-sea":                 "a reference in the open sea",
	"place-missing":            "neither a place nor a reference",
	"place-not-mapped":         "a place without a reference",
	"site-misspelt":            "a site that was read as one close to it on the places list",
	"site-ambiguous":           "a site that may be one of several",
	"site-reference-disagrees": "a reference far from its site",
	"count-not-understood":     "a count that cannot be read",
	"date-as-count":            "a date where a count should be",
	"year-as-count":            "a year where a count should be",
	"many-individuals":         "a very large count",
	"recorder-missing":         "no recorder",
	"contact-removed":          "an address or a name that is not handed in",
	"remarks-contradict":       "a remark that throws doubt on the record",
	"out-of-season":            "a date outside the flight season",
	"duplicate":                "the same observation twice",
	"near-duplicate":           "the same observation twice, with another count or remark",
	"two-notebooks":            "the same observation in two notebooks",
}
