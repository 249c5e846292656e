package when

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"fieldfare/convert/reading"
)

// dayAndWeek is a weekday and the day on which its week begins.
var dayAndWeek = regexp.MustCompile(`(?i)^(monday|tuesday|wednesday|thursday|friday|saturday|sunday), week of (.+)$`)

// dayOfWeek reads a day that is given by its weekday and the first day of its
// week, as where a page has a column for each day: "Wednesday, week of
// 5/7/2021". It is asked about, for the day written down may be another than
// the first.
func (b *builder) dayOfWeek(t string) bool {
	m := dayAndWeek.FindStringSubmatch(t)
	if m == nil {
		return false
	}
	o := *b.o
	o.Evening = false
	first := Read(m[2], o)
	if first.State == reading.Held || first.Start.IsZero() || first.Start != first.End {
		return false
	}
	d := first.Start
	for day := range 7 {
		if d = first.Start.Add(day); strings.EqualFold(time.Weekday(d.Weekday()).String(), m[1]) {
			break
		}
	}
	b.note(first.Verdict)
	b.have, b.e = true, extent{d, d, dayPrec}
	b.query("day-of-week", fmt.Sprintf("%s was read as %s. Check that %s is the first day of that week.", b.quoted(), d.Words(), first.Start.Words()))
	b.evening(nil)
	return true
}
