package layout

import (
	"strings"
	"time"

	"fieldfare/convert/notebook"
)

// fewestWeekdays is how many neighbouring columns must be headed by weekdays
// in their order before single letters are taken for them.
const fewestWeekdays = 5

// weekdayCounts takes columns headed by the days of the week, beside a date for
// the week, for the counts of these days: "Week commencing | M | T | W | T | F".
// Each makes records of its own.
func (b *block) weekdayCounts() {
	if b.axis != nil || b.find(Date, whole) == nil {
		return
	}
	for i := range b.cols {
		for first := time.Sunday; first <= time.Saturday; first++ {
			if run := b.weekdaysFrom(i, first); len(run) >= fewestWeekdays {
				for n, c := range run {
					c.sense, c.left, c.trap, c.weight = sense{meaning: Count}, "", true, weightExact
					c.weekday = ((first + time.Weekday(n)) % 7).String()
					c.why = "its heading is a day of the week that the row's date begins"
				}
				b.leaveTotals()
				return
			}
		}
	}
}

// weekdaysFrom returns the columns from i on that are headed by weekdays one
// after the other, and hold counts or nothing.
func (b *block) weekdaysFrom(i int, day time.Weekday) (run []*column) {
	for ; i < len(b.cols) && len(run) < 7; i++ {
		c := &b.cols[i]
		name, key := strings.ToLower(day.String()), normHeading(c.heading)
		if c.fixed && !c.trap || c.master != i || key == "" || !strings.HasPrefix(name, key) || c.stats.n > 0 && c.stats.share(lookCount) < 0.8 {
			break
		}
		run = append(run, c)
		day = (day + 1) % 7
	}
	return run
}

// leaveTotals leaves out further counts beside columns that have all of them.
func (b *block) leaveTotals() {
	for i := range b.cols {
		if c := &b.cols[i]; c.meaning == Count && c.used() && !c.trap && !c.fixed {
			b.leave(c, leaveTotal)
		}
	}
}

// onWeekday gives a draft's date, which is that of the week, its day.
func onWeekday(d *Draft, weekday string) {
	date, ok := d.Get(Date)
	if !ok {
		return
	}
	if date.Verbatim == "" {
		date.Verbatim = date.Text
	}
	written := date.Text
	if date.Kind == notebook.Date && date.Raw != "" {
		written = date.Raw
	}
	date.Text, date.Raw, date.Kind = weekday+", week of "+written, "", notebook.Text
}
