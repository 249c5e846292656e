package convert

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/validate"
)

// askedCounts counts which records meet what the scheme asks for.
type askedCounts struct {
	records int
	met     int // everything that is asked
	held    int // of those, for other reasons
	unmet   map[validate.Requirement]int
}

// record counts a record by its findings.
func (a *askedCounts) record(r *spool.Record, requirements []validate.Requirement) {
	a.records++
	met := true
	for _, q := range requirements {
		failed := slices.ContainsFunc(r.Findings, func(f reading.Finding) bool {
			return f.Code == q.Check && (q.Written == "" || f.Written == q.Written)
		})
		if failed {
			if a.unmet == nil {
				a.unmet = map[validate.Requirement]int{}
			}
			a.unmet[q]++
			met = false
		}
	}
	if met {
		a.met++
		if r.State() >= reading.Held {
			a.held++
		}
	}
}

// requirements are all that the scheme asks for, its area included.
func (s *settings) requirements() []validate.Requirement {
	list := s.asks.Requirements()
	if s.polygons.Wanted != nil {
		list = append(list, validate.Requirement{Check: "outside-area", Text: "places in " + s.polygons.Wanted.Name})
	}
	return list
}

// obstacles are what keeps records from being handed in, by cause.
type obstacles map[string]*report.Cause

// add takes in a question, the most frequent first.
func (o obstacles) add(q *report.Question) {
	if q.State != reading.Held {
		return
	}
	key := q.Code
	if q.Code == "asks-term" {
		key += q.Written
	}
	c := o[key]
	if c == nil {
		c = &report.Cause{Check: q.Code, Says: firstSentence(q)}
		o[key] = c
	}
	c.Records += q.Records
	c.Cases++
}

// asked draws up the answer; nil where nothing is asked for.
func (s *settings) asked(counts *askedCounts, inTheWay obstacles) *report.Asked {
	requirements := s.requirements()
	if len(requirements) == 0 {
		return nil
	}
	a := &report.Asked{Scheme: s.asks.Scheme, Records: counts.records, Met: counts.met, HeldOtherwise: counts.held}
	for _, q := range requirements {
		a.Requirements = append(a.Requirements, report.Requirement{Asks: q.Text, Met: counts.records - counts.unmet[q]})
	}
	for _, c := range inTheWay {
		a.InTheWay = append(a.InTheWay, *c)
	}
	slices.SortFunc(a.InTheWay, func(x, y report.Cause) int {
		return cmp.Or(cmp.Compare(y.Records, x.Records), cmp.Compare(x.Check, y.Check), cmp.Compare(x.Says, y.Says))
	})
	return a
}

// causesShown is how many causes fit on one screen with the rest.
const causesShown = 12

// Asked is one screen that says whether the set meets what the scheme asks
// for, and what stands in the way; empty where nothing is asked for.
func (r *Result) Asked() string {
	a := r.Summary.Asks
	if a == nil {
		return ""
	}
	var b strings.Builder
	scheme := a.Scheme
	if scheme == "" {
		scheme = "The scheme"
	}
	fmt.Fprintf(&b, "%s asks for\n", scheme)
	for _, q := range a.Requirements {
		fmt.Fprintf(&b, "  %-44s %s\n", q.Asks, metBy(q.Met, a.Records))
	}
	switch {
	case a.Met == a.Records && a.HeldOtherwise == 0:
		fmt.Fprintf(&b, "\nThe set meets it: %s.\n", metBy(a.Met, a.Records))
		return b.String()
	case a.Met == a.Records:
		fmt.Fprintf(&b, "\nThe set meets it, but %s held for other reasons.\n", isAre(a.HeldOtherwise))
	default:
		fmt.Fprintf(&b, "\nThe set does not meet it yet: all of it is %s", metBy(a.Met, a.Records))
		if a.HeldOtherwise > 0 {
			fmt.Fprintf(&b, ", of which %s held for other reasons", isAre(a.HeldOtherwise))
		}
		b.WriteString(".\n")
	}
	b.WriteString("\nWhat stands in the way:\n")
	for i, c := range a.InTheWay {
		if i == causesShown {
			fmt.Fprintf(&b, "  and %s.\n", count(len(a.InTheWay)-i, "more cause"))
			break
		}
		more := ""
		if c.Cases > 1 {
			more = fmt.Sprintf(" (and %s)", count(c.Cases-1, "more case"))
		}
		fmt.Fprintf(&b, "  %-12s %s%s\n", count(c.Records, "record"), c.Says, more)
	}
	return b.String()
}

func metBy(n, of int) string { return fmt.Sprintf("met by %d of %s", n, count(of, "record")) }

func isAre(n int) string {
	if n == 1 {
		return "1 record is"
	}
	return fmt.Sprintf("%d records are", n)
}
