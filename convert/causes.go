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
	cases   int
	first   *report.Question
	named   []string // what is written in the first of them
}

// causes groups questions, given in their order, by their check.
type causes struct {
	list []cause
	at   map[causeKey]int
}

type causeKey struct {
	check string
	state reading.State
}

func (c *causes) add(q *report.Question) {
	check, _, _ := strings.Cut(q.Code, " ") // the worst of several
	k := causeKey{check, q.State}
	i, found := c.at[k]
	if !found {
		if c.at == nil {
			c.at = map[causeKey]int{}
		}
		i = len(c.list)
		c.at[k] = i
		c.list = append(c.list, cause{check: check, state: q.State, first: q})
	}
	of := &c.list[i]
	of.records += q.Records
	of.cases++
	if q.Written != "" && len(of.named) < casesNamed {
		of.named = append(of.named, shortened(q.Written))
	}
}

// sorted returns the causes: held first, then by how many records they concern.
func (c *causes) sorted() []cause {
	slices.SortStableFunc(c.list, func(a, b cause) int {
		return cmp.Or(cmp.Compare(b.state, a.state), cmp.Compare(b.records, a.records), cmp.Compare(a.check, b.check))
	})
	return c.list
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
		text := firstSentence(c.first)
		if n := c.cases - 1; n > 0 {
			text += fmt.Sprintf(" (and %s like it)", count(n, "more case"))
		}
		return text
	}
	named := slices.Clone(c.named)
	if len(named) == 0 {
		return says
	}
	for i, n := range named { // what a row does not say is in brackets already
		if inner, found := strings.CutPrefix(n, "(no "); found {
			named[i] = strings.TrimPrefix(strings.TrimSuffix("no "+inner, ")"), says+" ")
		}
	}
	if n := c.cases - len(named); n > 0 {
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
