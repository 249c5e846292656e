package when

import "strings"

// take does what a word from i to j asks for.
func (s *scan) take(c class, val int, q quality, i, j int) {
	text := s.text
	switch c {
	case monthWord:
		s.add(item{kind: month, val: val, at: i})
		if q > s.quality {
			s.quality, s.named = q, text[i:j]
		}
		s.skipStop()
	case romanWord:
		s.add(item{kind: month, val: val, roman: true, at: i})
	case dayWord:
		if s.nDays < len(s.days) {
			s.days[s.nDays] = val
			s.nDays++
		}
		s.skipStop()
	case suffixWord:
		s.ordinal(i)
	case fillWord:
		if s.last == beforeWord && text[i:j] == "day" { // by day
			s.partOfDay(3)
			return
		}
		s.separate(' ')
	case nightWord:
		s.nights(i)
		s.plural = s.plural || text[j-1]|0x20 == 's'
	case aboutWord:
		s.about = true
		s.skipStop()
		s.aboutEnd = s.pos
	case doubtWord:
		s.doubt = true
		s.skipStop()
	case beforeWord:
		s.before = true
	case afterWord:
		s.after = true
	case fromWord:
		s.from, s.either = true, val == 1
	case toWord:
		s.to(val)
	case andWord:
		s.separate('&')
	case manyWord:
		s.plurals(i)
	case seasonWord:
		it := item{kind: seasonItem, val: val % 10, at: i}
		s.add(it)
		if val > 10 {
			s.items[s.n-1].part = midPart
		}
	case hourWord:
		switch {
		case s.part == earlyPart: // early hours
			s.partOfDay(3)
		case !s.hourFigures():
			s.notUnderstood(i)
		}
	case noonWord:
		s.noon(val, i)
	case spellWord:
		s.spell(val, i, j)
	case joinWord:
		s.join(i, j)
	case blankWord:
		s.add(item{kind: blank, width: j - i, at: i})
	case feastWord:
		s.feastDay(val, i)
	case setWord:
		if s.n > 0 {
			s.notUnderstood(i)
			return
		}
		s.skipStop()
	case denyWord:
		if s.unknown == "" {
			s.unknown, s.inside = text[i:j], s.n > 0
		}
	case movingWord, emptyWord, pointWord:
		if s.n > 0 && s.complete() && (c != movingWord || s.n > 1) { // not August Bank Holiday
			s.notUnderstood(i)
			return
		}
		if s.why, s.whyText = c, text[i:j]; c == movingWord {
			s.nDays = 0 // Easter Monday
		}
	default:
		s.takePart(c, val, i, j)
	}
}

// ordinal marks the number before it as one of a row: 12th.
func (s *scan) ordinal(i int) {
	if s.n == 0 || s.items[s.n-1].kind != number || s.items[s.n-1].width > 2 {
		s.notUnderstood(i)
		return
	}
	s.items[s.n-1].nth = true
	s.sep = 0
}

// to parts the ends of a stretch, or begins one that has no other end.
func (s *scan) to(val int) {
	if s.n == 0 {
		// Not of early to mid June, or of 22:00 to dawn.
		s.before = s.before || val == 1 || s.part == wholePart && s.last != spellWord && s.last != noonWord && s.nClock == 0 && !s.from
		return
	}
	s.separate('T')
}

// plurals reads the s of 1990s.
func (s *scan) plurals(i int) {
	text := s.text
	if s.n > 0 && s.items[s.n-1].kind == number && (text[i-1] == '\'' || digit(text[i-1])) && s.items[s.n-1].val%10 == 0 {
		s.items[s.n-1].kind = decade
		if s.items[s.n-1].part == wholePart {
			s.items[s.n-1].part, s.part = s.part, wholePart
		}
		return
	}
	s.notUnderstood(i)
}

// spell reads a word for a part of the day.
func (s *scan) spell(val, i, j int) {
	text := s.text
	if j-i == 3 && strings.HasPrefix(strings.ToLower(text[j:]), " of") {
		s.doubt = true // the eve of a day is the day before, or its evening
	}
	if last := s.n - 1; val == 3 && last > 2 && strings.EqualFold(text[i:j], "noon") && s.items[last].val == 12 && s.items[last].sep == ' ' {
		s.popClock(1, 12, 0, true) // 12 noon
		return
	}
	s.partOfDay(val)
}

// join reads a T between a day and its time.
func (s *scan) join(i, j int) {
	text := s.text
	if s.n == 0 || i == 0 || !digit(text[i-1]) || j >= len(text) || !digit(text[j]) {
		s.notUnderstood(i)
		return
	}
	s.joined = true
}

// takePart does what words about parts of months and about weeks ask for.
func (s *scan) takePart(c class, val, i, j int) {
	switch c {
	case partWord:
		if s.week == weekOf || s.weekSeen {
			if strings.HasPrefix(strings.ToLower(s.text[i:j]), "end") {
				s.week = weekEnding
			} else {
				s.week = weekStarting
			}
			s.weekSeen = false
			return
		}
		if s.part != wholePart && s.sep != 0 {
			s.until, s.sep = part(val), ' '
			return
		}
		s.part = part(val)
	case nthWord:
		s.nth = val
	case weekWord:
		s.takeNth()
		if s.nth == 0 {
			s.week = weekOf
		}
		s.weekSeen = true
	case halfWord:
		s.takeNth()
		switch s.nth {
		case 1:
			s.part = half1Part
		case 2, 9:
			s.part = half2Part
		default:
			s.notUnderstood(i)
		}
		s.nth = 0
	case endWord:
		s.week, s.weekSeen = weekEnding, false
	case startWord:
		s.week, s.weekSeen = weekStarting, false
	case weekendWord:
		s.week = weekEnd
	default:
		s.letterWords(i)
	}
}

// takeNth takes a number before week or half for its own: 1st week.
func (s *scan) takeNth() {
	if s.nth == 0 && s.n > 0 && s.items[s.n-1].nth {
		s.n--
		s.nth = s.items[s.n].val
	}
}

// letterWords reads w/e, w/c and n.d.
func (s *scan) letterWords(i int) {
	rest := strings.ToLower(s.text[i:min(len(s.text), i+3)])
	switch rest {
	case "w/e":
		s.week = weekEnding
	case "w/c", "w/b":
		s.week = weekStarting
	default:
		s.notUnderstood(i)
		return
	}
	s.pos = i + 3
}

// skipStop passes over the full stop of an abbreviation, so that it is not
// taken for a separator where another follows.
func (s *scan) skipStop() {
	if s.pos < len(s.text) && s.text[s.pos] == '.' && (s.pos+1 == len(s.text) || s.text[s.pos+1] == ' ') {
		s.pos++
	}
}

// feastDay adds the day and month of a fixed feast: Christmas Day, Boxing Day.
func (s *scan) feastDay(val, i int) {
	rest := strings.ToLower(s.text[s.pos:])
	if !strings.HasPrefix(rest, " day") && !strings.HasPrefix(rest, " eve") {
		s.why = movingWord
		return
	}
	day := val % 100
	if strings.HasPrefix(rest, " eve") {
		day--
	}
	s.pos += len(" day")
	s.add(item{kind: number, val: day, width: 2, at: i})
	s.sep = ' '
	s.add(item{kind: month, val: val / 100, at: i})
}

// nights takes a word for night, and keeps a number of nights (3 nights) apart
// from the date.
func (s *scan) nights(i int) {
	last := s.n - 1
	switch {
	case s.n > 0 && s.items[last].kind == number && !s.items[last].nth && s.n == 1:
		s.notUnderstood(i)
	case s.n > 1 && s.items[last].kind == number && s.items[last].sep == ' ' && s.whole(last):
		s.n = last
		s.remark = strings.Trim(s.text[s.items[last].at:], "() ")
		s.sep = 0
	default:
		s.night = true
		s.separate(' ')
	}
}

// partOfDay takes a word for a part of the day: 1 dusk, 2 dawn, 3 by day. What
// stands before it belongs to it and not to the date: early morning, before
// dawn, to dawn.
func (s *scan) partOfDay(val int) {
	s.dusk = s.dusk || val == 1
	s.dawn = s.dawn || val == 2
	s.daytime = s.daytime || val == 3
	s.part, s.until = wholePart, wholePart
	switch s.last {
	case beforeWord:
		s.before = false
	case afterWord:
		s.after = false
	}
	if s.sep != 'T' && s.sep != '-' || !s.dayAhead() { // dusk 3 July to dawn 4 July
		s.sep = ' '
	}
}

// dayAhead reports whether a number follows that is no time of day.
func (s *scan) dayAhead() bool {
	rest := strings.TrimPrefix(strings.TrimLeft(s.text[s.pos:], " "), "of ")
	after := strings.TrimLeft(rest, "0123456789")
	return len(after) < len(rest) && after != "" && after[0] != ':' && !strings.HasPrefix(after, "am")
}
