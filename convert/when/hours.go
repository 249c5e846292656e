package when

import (
	"fmt"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
)

// Hours is what a text says about the time of day.
type Hours struct {
	reading.Verdict
	// Start and End are times as "22:45"; End is empty where one time is
	// stated. Either is empty where only a word is: dusk, dawn.
	Start, End string
	// EventTime is the value of dwc:eventTime, a time or an interval of ISO
	// 8601-1 (22:45, 22:45/01:30); empty where an end is a word, or the
	// reading is held.
	EventTime string
	// Overnight: the hours run over midnight.
	Overnight bool
}

// hour is one end of the hours.
type hour struct {
	minutes int // from midnight, -1 for a word
	dusk    bool
	dawn    bool
	bare    bool // an hour alone, without minutes, am or pm: 22
	small   bool // 1 to 11, with neither a leading nought nor am or pm
	half    int  // 1 am, 2 pm
}

// ReadTime reads a time of day, or two, as written apart from a date: 22:45,
// 22.45, 2245, 10.45pm, 22h45, dusk, dusk-01:00, 22:30 to 02:15.
func ReadTime(text string) Hours {
	t := strings.ToLower(tidy(text))
	held := func(code, why string) Hours {
		return Hours{Verdict: reading.HeldOf(code, "“"+t+"” "+why)}
	}
	if t == "" {
		return Hours{}
	}
	if f, ok := dayFraction(t); ok {
		h := Hours{Start: f, EventTime: f}
		h.Verdict = reading.QueryOf("day-fraction", fmt.Sprintf("“%s” looks like a spreadsheet's part of a day: it was read as %s.", t, f))
		return h
	}
	doubt := strings.ContainsRune(t, '?')
	plain := strings.ReplaceAll(t, "?", "")
	for _, about := range [...]string{"circa ", "about ", "approx. ", "approx ", "around ", "ca. ", "ca ", "c. ", "c.", "c ", "~", "from ", "at ", "lit ", "on at "} {
		if rest, found := strings.CutPrefix(plain, about); found {
			plain = rest
			doubt = doubt || about != "from " && about != "at " && about != "lit " && about != "on at "
			break
		}
	}
	if plain == "all night" || plain == "overnight" || plain == "night" {
		plain = "dusk-dawn"
	}
	first, last, two := cutHours(plain)
	a, ok := readHour(first)
	if !ok {
		return held("time-unreadable", "could not be read as a time of day. Write it as 22:45.")
	}
	b := hour{minutes: -1}
	if two {
		if b, ok = readHour(last); !ok {
			return held("time-unreadable", "could not be read as two times of day. Write them as 22:45-01:30.")
		}
		if a.half == 0 && b.half == 2 && a.small && a.minutes+720 <= b.minutes { // 10-11pm
			a.minutes, a.small, a.bare = a.minutes+720, false, false
		}
	}
	h := Hours{Start: a.text(), End: b.text()}
	switch {
	case h.Start != "" && !two:
		h.EventTime = h.Start
	case h.Start != "" && h.End != "":
		h.EventTime = h.Start + "/" + h.End
		h.Overnight = b.minutes < a.minutes
	case two:
		h.Overnight = a.dusk && (b.dawn || b.minutes >= 0 && b.minutes < 720) || b.dawn && a.minutes >= 720
	}
	if a.bare || two && b.bare {
		h.Verdict = reading.QueryOf("bare-hour", fmt.Sprintf("“%s” was read as whole hours, %s. Write the minutes.", t, strings.ReplaceAll(h.EventTime, "/", " to ")))
	}
	if doubt {
		h.Verdict = h.And(reading.QueryOf("time-doubt", fmt.Sprintf("“%s” is not certain of the time.", t)))
	}
	if h.EventTime == "" && h.State == reading.Fair {
		h.Message = fmt.Sprintf("“%s” names no hour, and stays as written.", t)
	}
	return h
}

// cutHours cuts "22:30 to 02:15" in two.
func cutHours(t string) (first, last string, two bool) {
	for _, sep := range [...]string{" to ", " until ", " till ", " - ", "-", "/", "–"} {
		if i := strings.Index(t, sep); i > 0 && i+len(sep) < len(t) {
			return strings.TrimSpace(t[:i]), strings.TrimSpace(t[i+len(sep):]), true
		}
	}
	return t, "", false
}

// readHour reads one end.
func readHour(t string) (hour, bool) {
	switch t {
	case "dusk", "sunset", "dark", "at dusk", "nightfall":
		return hour{minutes: -1, dusk: true}, true
	case "dawn", "sunrise", "morning", "first light":
		return hour{minutes: -1, dawn: true}, true
	case "midnight", "24:00", "2400", "24.00":
		return hour{minutes: 0}, true
	case "noon", "midday":
		return hour{minutes: 720}, true
	}
	h := hour{}
	for k := len(t) - 1; k >= 1; k-- { // am, p.m.
		add, end := noonMark(t, k)
		if end == len(t) {
			h.half = 1 + add/12
			t = strings.TrimSpace(t[:k])
			break
		}
	}
	for _, unit := range [...]string{"hours", "hrs", "hr", "h", "bst", "gmt", "utc", "z"} {
		t = strings.TrimSpace(strings.TrimSuffix(t, unit))
	}
	hours, minutes, shape := clockFigures(t)
	if shape == "" || hours > 23 || minutes > 59 {
		return hour{}, false
	}
	h.small = h.half == 0 && hours >= 1 && hours <= 11 && t[0] != '0'
	h.bare = shape == "h" && h.half == 0
	if h.half > 0 {
		var ok bool
		if hours, ok = twelve(hours, 12*(h.half-1)); !ok {
			return hour{}, false
		}
	}
	h.minutes = hours*60 + minutes
	return h, true
}

// clockFigures reads 22, 2245, 945, 22:45, 22.45, 22h45 and 22:45:30. Shape is
// empty for anything else, "h" for an hour alone.
func clockFigures(t string) (hours, minutes int, shape string) {
	i := 0
	for i < len(t) && digit(t[i]) {
		i++
	}
	switch {
	case i == len(t) && (i == 1 || i == 2):
		return figures(t), 0, "h"
	case i == len(t) && (i == 3 || i == 4):
		return figures(t[:i-2]), figures(t[i-2:]), "hm"
	case i < 1 || i > 2 || i == len(t):
		return 0, 0, ""
	}
	rest := t[i+1:]
	if strings.IndexByte(":.,;h ", t[i]) < 0 || len(rest) < 2 || !digit(rest[0]) || !digit(rest[1]) {
		return 0, 0, ""
	}
	if len(rest) == 5 && rest[2] == ':' && digit(rest[3]) && digit(rest[4]) && rest[3] < '6' {
		rest = rest[:2] // seconds are not kept
	}
	if len(rest) != 2 {
		return 0, 0, ""
	}
	return figures(t[:i]), figures(rest), "hm"
}

// dayFraction reads a spreadsheet's time that has become a number: 0.947916.
func dayFraction(t string) (string, bool) {
	if len(t) < 5 || t[0] != '0' || t[1] != '.' {
		return "", false
	}
	v, err := strconv.ParseFloat(t, 64)
	if err != nil || v >= 1 {
		return "", false
	}
	minutes := int(v*1440+0.5) % 1440
	return hhmm(minutes/60, minutes%60, -1), true
}

func (h hour) text() string {
	if h.minutes < 0 {
		return ""
	}
	return hhmm(h.minutes/60, h.minutes%60, -1)
}

// At gives a date the hours of a column of its own. Hours over midnight make
// a single day a night; a time that could not be read, or that the date
// contradicts, is a query, and the date stands.
func (r Reading) At(h Hours) Reading {
	if r.State == reading.Held {
		return r
	}
	v := h.Verdict
	if v.State == reading.Held {
		v.State = reading.Query
	}
	r.Verdict = r.And(v)
	switch {
	case r.Time != "" && h.Start != "" && r.Time != h.Start:
		r.Verdict = r.And(reading.QueryOf("times-disagree", fmt.Sprintf("The date has the time %s, and the time stands as %s. One of the two is wrong.", r.Time, h.Start)))
		return r
	case r.Time != "" || r.EndTime != "":
		return r
	}
	r.Time, r.EndTime = h.Start, h.End
	if h.Overnight && r.Start == r.End && unitOf(r) == dayPrec {
		r.Night = true
		r.spanDays(extent{r.Start, r.Start.Add(1), dayPrec})
		r.EventDate = r.Start.String() + "/" + r.End.String()
	}
	return r
}

// MorningAfter gives a single day that is the evening of a night the hour of the
// morning that follows it: 00:40 of the night of 21 July is on the 22nd. Hours
// that are no single time before noon are given as by At.
func (r Reading) MorningAfter(h Hours) Reading {
	if r.State != reading.Held && r.Time == "" && h.State != reading.Held && h.Start != "" && h.Start < "12:00" && h.End == "" && r.Start == r.End && unitOf(r) == dayPrec {
		day := r.Start.Add(1)
		r.spanDays(extent{day, day, dayPrec})
		r.EventDate = day.String()
	}
	return r.At(h)
}

// EventTime is the value of dwc:eventTime: 22:45, 22:45/01:30, or empty.
func (r Reading) EventTime() string {
	if r.Time != "" && r.EndTime != "" {
		return r.Time + "/" + r.EndTime
	}
	return r.Time
}
