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
