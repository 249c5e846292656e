package when

import "strings"

// clock reads a time of day that stands at the scan's place: 22:45, 22:45:30,
// 22h45, after an ISO T also 22 and 2245; with am or pm, or a zone. It reports
// whether it found one.
func (s *scan) clock() bool {
	text, i := s.text, s.pos
	j := i
	for j < len(text) && digit(text[j]) {
		j++
	}
	hours, minutes, seconds := 0, 0, -1
	switch {
	case j-i <= 2 && j+2 < len(text) && (text[j] == ':' || text[j]|0x20 == 'h') && digit(text[j+1]) && digit(text[j+2]) &&
		(j+3 == len(text) || !digit(text[j+3])):
		hours, minutes = figures(text[i:j]), figures(text[j+1:j+3])
		j += 3
		if j+2 < len(text) && text[j] == ':' && digit(text[j+1]) && digit(text[j+2]) {
			seconds = figures(text[j+1 : j+3])
			j += 3
			if j < len(text) && text[j] == '.' { // fractions of a second
				for j++; j < len(text) && digit(text[j]); j++ {
				}
			}
		}
	case s.joined && j-i == 2:
		hours = figures(text[i:j])
	case s.joined && j-i == 4:
		hours, minutes = figures(text[i:i+2]), figures(text[i+2:j])
	case s.joined && j-i == 6:
		hours, minutes, seconds = figures(text[i:i+2]), figures(text[i+2:i+4]), figures(text[i+4:j])
	default:
		return false
	}
	hours, known, j := half(text, j, hours)
	j = hourUnit(text, j)
	// A plus never means "to"; a dash may, but not after a T or seconds.
	zone, j, iso := zone(text, j, s.joined || seconds >= 0 || j < len(text) && text[j] == '+')
	if zone == "" {
		zone, j = namedZone(text, j)
	}
	s.joined = false
	c := clock{known: known && iso && valid(hours, minutes, seconds), text: hhmm(hours, minutes, seconds) + zone}
	if !c.known {
		c.text = text[i:j]
	}
	if s.about && s.aboutEnd > 0 && strings.TrimLeft(text[s.aboutEnd:i], " .") == "" {
		s.about = false // c. 22:00
	}
	s.pos = j
	s.addClock(c)
	return true
}

func (s *scan) addClock(c clock) {
	if s.nClock == len(s.clocks) {
		s.full = true
		return
	}
	// A word before the time belongs to the time: before 22:00, till 22:00.
	switch {
	case s.last == beforeWord:
		s.before, s.openClock = false, true
	case s.last == afterWord:
		s.after, s.openClock = false, true
	case s.last == fromWord:
		s.from, s.openClock = false, true
	case s.sep == 'T' && s.nClock == 0:
		s.openClock = true
	}
	s.last = noWord
	s.clocks[s.nClock] = c
	s.nClock++
	s.sep, s.wide = 0, false
}

func valid(hours, minutes, seconds int) bool {
	return hours <= 23 && minutes <= 59 && seconds <= 59
}

// figures reads up to four figures.
func figures(t string) int {
	n := 0
	for i := 0; i < len(t); i++ {
		n = n*10 + int(t[i]-'0')
	}
	return n
}

func hhmm(hours, minutes, seconds int) string {
	b := make([]byte, 0, 8)
	b = append(b, byte('0'+hours/10%10), byte('0'+hours%10), ':', byte('0'+minutes/10%10), byte('0'+minutes%10))
	if seconds >= 0 {
		b = append(b, ':', byte('0'+seconds/10%10), byte('0'+seconds%10))
	}
	return string(b)
}

// half applies an am or pm that stands at j, with or without white space and
// stops before and in it.
func half(text string, j, hours int) (int, bool, int) {
	k := j
	for k < len(text) && text[k] == ' ' {
		k++
	}
	add, end := noonMark(text, k)
	if end == 0 {
		return hours, true, j
	}
	h, ok := twelve(hours, add)
	return h, ok, end
}

// twelve turns an hour of the twelve-hour clock into one of twenty-four.
func twelve(hours, add int) (int, bool) {
	if hours > 12 || hours == 0 {
		return hours, add == 12 && hours > 12
	}
	return hours%12 + add, true
}

// noonMark reads am, pm, a.m., p.m. at k; end is 0 where there is none.
func noonMark(text string, k int) (add, end int) {
	if k >= len(text) {
		return 0, 0
	}
	switch text[k] | 0x20 {
	case 'a':
	case 'p':
		add = 12
	default:
		return 0, 0
	}
	m := k + 1
	if m < len(text) && text[m] == '.' {
		m++
	}
	if m >= len(text) || text[m]|0x20 != 'm' || m+1 < len(text) && letter(text[m+1]) {
		return 0, 0
	}
	end = m + 1
	if end < len(text) && text[end] == '.' {
		end++
	}
	return add, end
}

// hourUnit passes over hrs, hours or h after a time.
func hourUnit(text string, j int) int {
	for _, unit := range [...]string{" hours", " hrs", "hours", "hrs", "hr", "h"} {
		if end := j + len(unit); end <= len(text) && strings.EqualFold(text[j:end], unit) && (end == len(text) || !letter(text[end])) {
			return end
		}
	}
	return j
}

// namedZone reads the names of the clock at Greenwich and of British Summer
// Time.
func namedZone(text string, j int) (z string, end int) {
	k := j
	for k < len(text) && text[k] == ' ' {
		k++
	}
	if k+3 > len(text) || k+3 < len(text) && letter(text[k+3]) {
		return "", j
	}
	switch strings.ToUpper(text[k : k+3]) {
	case "GMT", "UTC":
		return "Z", k + 3
	case "BST":
		return "+01:00", k + 3
	}
	return "", j
}

// zone reads a zone of ISO 8601-1: Z, +01, +0100, +01:00; the offsets only
// where it is told that there may be one.
func zone(text string, j int, offset bool) (z string, end int, ok bool) {
	if j < len(text) && (text[j] == 'Z' || text[j] == 'z') && (j+1 == len(text) || !letter(text[j+1])) {
		return "Z", j + 1, true
	}
	if !offset || j >= len(text) || text[j] != '+' && text[j] != '-' {
		return "", j, true
	}
	t := text[j+1:]
	n := 0
	for n < len(t) && n < 5 && (digit(t[n]) || n == 2 && t[n] == ':') {
		n++
	}
	t = strings.Replace(t[:n], ":", "", 1)
	switch len(t) {
	case 2:
		return text[j:j+1] + t, j + 1 + n, figures(t) <= 14
	case 4:
		return text[j:j+1] + t[:2] + ":" + t[2:], j + 1 + n, figures(t[:2]) <= 14 && figures(t[2:]) <= 59
	}
	return "", j, true
}

// clockWord reads a.m. and p.m. where they stand apart from a number.
func (s *scan) clockWord() bool {
	add, end := noonMark(s.text, s.pos)
	if end == 0 {
		return false
	}
	i := s.pos
	s.pos = end
	s.noon(add, i)
	return true
}

// noon applies an am or pm that begins at i to the figures before it, or
// takes it for a part of the day.
func (s *scan) noon(add, i int) {
	touches := i > 0 && digit(s.text[i-1])
	n := s.n
	switch {
	case n >= 2 && s.items[n-1].sep == '.' && s.items[n-1].width == 2 && s.items[n-1].at > 0 &&
		s.items[n-2].kind == number && (s.items[n-2].sep == ' ' || s.items[n-2].sep == ',' || s.items[n-2].sep == 0 || s.items[n-2].wide) &&
		(touches || n >= 5 || n == 2):
		h, ok := twelve(s.items[n-2].val, add)
		s.popClock(2, h, s.items[n-1].val, ok)
	case n >= 1 && s.items[n-1].kind == number && s.items[n-1].width <= 2 && (touches && s.items[n-1].sep != '/' && s.items[n-1].sep != '.' || n >= 4 && s.items[n-1].sep == ' ' || n == 1):
		h, ok := twelve(s.items[n-1].val, add)
		s.popClock(1, h, 0, ok)
	default:
		if last := n - 1; n == 3 && s.items[last].kind == number && s.items[last].sep == ' ' && s.items[last].val <= 12 {
			s.hourOrYear = true // 12 June 10 am
		}
		s.partOfDay(3 - add/4)
	}
}

// hourFigures turns the number before an h into a time: 2245h, 22 hrs.
func (s *scan) hourFigures() bool {
	if s.n == 0 || s.items[s.n-1].kind != number {
		return false
	}
	switch it := s.items[s.n-1]; {
	case it.sep == '-' && s.n > 4:
		// 2200-2300 hrs: clockItems will see to it.
	case it.width == 2 && it.sep == '.' && s.n > 3 && s.dated(s.n-2):
		s.popClock(2, s.items[s.n-2].val, it.val, true)
	case it.width == 4:
		s.popClock(1, it.val/100, it.val%100, true)
	case it.width <= 2:
		s.popClock(1, it.val, 0, true)
	default:
		return false
	}
	return true
}

// popClock replaces the last items by a time.
func (s *scan) popClock(items, hours, minutes int, ok bool) {
	s.n -= items
	at := s.items[s.n].at
	c := clock{known: ok && valid(hours, minutes, 0), text: hhmm(hours, minutes, -1)}
	if !c.known {
		c.text = s.text[at:s.pos]
	}
	s.addClock(c)
}

// clockItems turns figures after a whole date into times: 2245, 22.45,
// 2245-0130, 22.45-01.30; and before one: 22.45 12/6/2021.
func (s *scan) clockItems() {
	if s.nClock > 0 || s.remark != "" {
		return
	}
	for k := 3; k < s.n; k++ {
		if it := s.items[k]; (it.sep == ' ' || it.sep == ',') && it.kind == number && it.width != 3 && s.clockTail(k) {
			return
		}
	}
	s.clockHead()
}

// clockHead turns figures before a whole date into times: 22.45 12/6/2021.
// Minutes up to 12 could be a month (22.05 12/6/2021), and figures that rise
// to the day of the date could be days (22.23 24/6/2021).
func (s *scan) clockHead() {
	k := s.n - 3
	if k != 2 && k != 4 || s.items[1].val <= 12 || s.items[k].sep != ' ' && s.items[k].sep != ',' {
		return
	}
	p, ok := single(s.items[k:s.n], &Options{})
	if !ok || p.prec != dayPrec || p.d == 0 || p.year.width == 0 || s.items[0].val < s.items[1].val && s.items[1].val < p.d {
		return
	}
	found, n, ok := s.times(s.items[:k], s.items[k].at)
	if !ok {
		return
	}
	copy(s.items[:], s.items[k:s.n])
	s.n, s.items[0].sep, s.last, s.sep = 3, 0, noWord, 0
	for _, c := range found[:n] {
		s.addClock(c)
	}
}

// clockTail turns the items from k on into times, if they are times after a
// whole date.
func (s *scan) clockTail(k int) bool {
	found, n, ok := s.times(s.items[k:s.n], len(s.text))
	if !ok || !s.whole(k) {
		return false
	}
	s.n, s.last, s.sep = k, noWord, 0
	for _, c := range found[:n] {
		s.addClock(c)
	}
	return true
}

// times reads items as one time of day or two: 2245, 22.45, 2245-0130.
// End is where they end in the text.
func (s *scan) times(list []item, end int) (found [2]clock, n int, ok bool) {
	for i := 0; i < len(list); n++ {
		it := list[i]
		switch {
		case n == len(found) || it.kind != number || n > 0 && it.sep != '-' && it.sep != 'T':
			return found, 0, false
		case it.width == 4:
			found[n] = clock{known: valid(it.val/100, it.val%100, 0), text: hhmm(it.val/100, it.val%100, -1)}
			i++
		case it.width <= 2 && i+1 < len(list) && list[i+1].kind == number && list[i+1].width == 2 && list[i+1].sep == '.':
			found[n] = clock{known: valid(it.val, list[i+1].val, 0), text: hhmm(it.val, list[i+1].val, -1)}
			i += 2
		default:
			return found, 0, false
		}
		if !found[n].known {
			found[n].text = strings.TrimRight(s.text[it.at:end], " ,")
		}
	}
	return found, n, true
}

// dated reports whether the first n items are one whole date.
func (s *scan) dated(n int) bool {
	p, ok := single(s.items[:n], &Options{})
	return ok && p.prec == dayPrec && p.d > 0 && p.year.val > 0
}

// whole reports whether the first n items are one whole date or interval of
// days, with its year.
func (s *scan) whole(n int) bool {
	all := s.n
	s.n = n
	v, ok := parse(s, &Options{})
	s.n = all
	return ok && v.to.prec == dayPrec && !v.to.noDay && v.to.year.width > 0
}
