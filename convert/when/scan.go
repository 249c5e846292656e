package when

import (
	"bytes"
	"strings"
)

// kind says what an item is.
type kind uint8

const (
	number kind = iota
	month
	seasonItem
	decade // val is the first year, or the tens where width is 2
	blank  // written as not known: ??, xx, --
)

// item is a number or a name that is a component of a date.
type item struct {
	kind  kind
	val   int
	width int  // figures of a number
	sep   byte // what stands before it, 0 for nothing
	wide  bool // white space on both sides of a dash or stroke
	apos  bool // '98
	roman bool
	nth   bool // 12th
	part  part
	until part // early to mid: the last of two parts
	at    int  // where it begins in the text
}

// clock is a time of day in a date's text.
type clock struct {
	text  string // 22:45, 22:45:30, with its zone
	known bool   // false: no such time
}

// when-words about a whole week.
const (
	weekEnding = iota + 1
	weekStarting
	weekOf
	weekEnd
)

const maxItems = 12

// scan is a text taken apart.
type scan struct {
	text   string
	items  [maxItems]item
	n      int
	days   [2]int // weekdays
	nDays  int
	clocks [2]clock
	nClock int

	night, about, before, after, from, doubt, added, trailing, doubled bool
	dusk, dawn, daytime, either, plural                                bool

	week       int
	quality    quality
	named      string // a month's name as written, where quality is not plain
	remark     string // what follows the date
	lead       string // what stands before the date
	unknown    string // a word within the date, or one that changes what it means
	letters    bool   // letters taken for figures
	hourOrYear bool   // 12 June 10 am
	inside     bool   // unknown stands within the date
	openClock  bool   // till 22:00
	whyText    string
	why        class // emptyWord, pointWord, movingWord: what the text is instead
	full       bool  // too many items

	// while scanning
	sep      byte
	wide     bool
	part     part
	until    part
	nth      int
	weekSeen bool
	joined   bool // an ISO T stands before the next number
	pos      int
	last     class // of the word before
	leadAt   int
	aboutEnd int // where a word for about ends
}

// rank orders separators: of several in a row the strongest counts.
func rank(c byte) int { return bytes.IndexByte([]byte(" ,./-&T"), c) }

func (s *scan) separate(c byte) {
	if s.sep == c && (c == '/' || c == '-' || c == ',') && s.n > 0 {
		s.doubled = true
	}
	if s.sep == 0 || rank(c) > rank(s.sep) {
		s.sep = c
	}
}

// run takes the text apart.
func (s *scan) run(text string) {
	s.text = text
	for s.pos < len(text) && s.remark == "" {
		c := text[s.pos]
		switch {
		case digit(c):
			s.number()
		case letter(c):
			s.word()
		case c == '?' || c == '_' || c == '-' && s.blankDash():
			s.blank(c)
		default:
			s.mark(c)
		}
	}
	if len(text) > 0 && text[0] == '-' && s.n > 0 && s.items[0].width == 4 && s.items[0].at <= 2 {
		s.before = true // -1990
	}
	if s.sep != 0 && s.n > 0 && (s.sep == '-' || s.sep == '/' || s.sep == '&' || s.sep == 'T') && s.remark == "" {
		s.trailing = true
	}
	s.clockItems()
}

func (s *scan) mark(c byte) {
	text, i := s.text, s.pos
	s.pos++
	switch c {
	case ' ', '\t', '\n', '\r':
		s.separate(' ')
	case '.', ',', '/':
		if strings.HasPrefix(text[i:], "...") { // 12...14 June
			c, s.pos = '-', i+3
		}
		s.separate(c)
	case '-':
		s.separate(c)
		s.wide = i > 0 && text[i-1] == ' ' && i+1 < len(text) && text[i+1] == ' '
	case '&', '+':
		s.separate('&')
	case ';':
		if s.pos < len(text) {
			s.separate('&')
		}
	case ':', '*', '#', '=', '@':
		s.separate(' ')
	case '\'':
	case '"':
		if i == 0 && text == `"` || text == `""` {
			s.why = pointWord
		}
	case '[', ']', '{', '}':
		s.added = true
		s.separate(' ')
	case '(', ')':
		s.separate(' ')
	case '~':
		s.about = true
	case '<':
		s.before = true
	case '>':
		if i > 0 && text[i-1] == '-' { // 12->13
			return
		}
		s.after = true
	default:
		s.notUnderstood(i)
	}
}

// add appends an item.
func (s *scan) add(it item) {
	if s.n == maxItems {
		s.full = true
		return
	}
	it.sep, it.wide = s.sep, s.wide
	if it.kind != number && it.kind != blank || it.width == 4 {
		it.part, it.until = s.part, s.until
		s.part, s.until = wholePart, wholePart
		if s.nth > 0 && it.part == wholePart && s.weekSeen {
			it.part = weekPart(s.nth)
			s.nth, s.weekSeen = 0, false
		}
	}
	s.sep, s.wide, s.last = 0, false, noWord
	s.items[s.n] = it
	s.n++
}

func weekPart(n int) part {
	switch {
	case n >= 1 && n <= 5:
		return week1Part + part(n-1)
	case n == 9:
		return lastWeekPart
	}
	return wholePart
}

// number reads figures: a component, or a time of day.
func (s *scan) number() {
	text, i := s.text, s.pos
	if s.clock() {
		return
	}
	j, val := i, 0
	for j < len(text) && (digit(text[j]) || s.slipOf(i, j)) {
		d := int(text[j] - '0')
		if !digit(text[j]) {
			d = 1
			if text[j]|0x20 == 'o' {
				d = 0
			}
			s.letters = true
		}
		if j-i < 9 {
			val = val*10 + d
		}
		j++
	}
	s.pos = j
	if j-i == 8 && s.basic(i) {
		return
	}
	if j-i == 3 && val >= 150 && val <= 209 && j < len(text) && (text[j] == '?' || text[j]|0x20 == 'x' || text[j] == '_') &&
		(j+1 == len(text) || !letter(text[j+1]) && !digit(text[j+1])) { // 199?
		s.pos = j + 1
		s.add(item{kind: decade, val: val * 10, width: 4, at: i})
		return
	}
	if s.week == weekOf && s.last == weekWord && j-i == 1 && strings.HasPrefix(text[j:], " of ") { // week 3 of
		s.week, s.nth = 0, val
		return
	}
	// 20?? and 20-- are a century without its year.
	k := j
	for k < len(text) && (text[k] == '?' || text[k] == '_' || text[k] == '-' || text[k]|0x20 == 'x') && text[k] == text[j] {
		k++
	}
	if j-i == 2 && k-j >= 2 && val >= 15 && val <= 20 && (k == len(text) || text[k] == ' ') {
		s.pos = k
		s.add(item{kind: blank, width: 4, at: i})
		return
	}
	s.add(item{kind: number, val: val, width: j - i, apos: i > 0 && text[i-1] == '\'' && i > 1, at: i})
	if i == 1 && text[0] == '\'' && j == len(text) {
		s.items[s.n-1].apos = true
	}
}

// basic reads a day in the basic format of ISO 8601-1, 20210612, as three
// items.
func (s *scan) basic(i int) bool {
	t := s.text[i : i+8]
	y, m, d := shortFigures(t[:4]), shortFigures(t[4:6]), shortFigures(t[6:])
	if y < 1500 || !(Date{y, m, d}).Valid() {
		return false
	}
	s.add(item{kind: number, val: y, width: 4, at: i})
	s.sep = '-'
	s.add(item{kind: number, val: m, width: 2, at: i + 4})
	s.sep = '-'
	s.add(item{kind: number, val: d, width: 2, at: i + 6})
	return true
}

// slipOf reports whether the letter at j stands for a figure: an O, I or l
// among the figures of the number that begins at i.
func (s *scan) slipOf(i, j int) bool {
	switch s.text[j] {
	case 'O', 'o', 'I', 'l':
	default:
		return false
	}
	after := j+1 < len(s.text) && digit(s.text[j+1])
	if j == i {
		return after
	}
	for k := j + 1; k < len(s.text) && s.text[k]|0x20 == 'o'; k++ { // 2OO4
		after = after || k+1 < len(s.text) && digit(s.text[k+1]) && s.text[j]|0x20 == 'o'
	}
	// "3IV04" is a Roman month; "2O21" is not.
	ends := j+1 == len(s.text) || !letter(s.text[j+1])
	return (after || ends) && (s.text[j]|0x20 == 'o' || s.text[j] == 'l')
}

// blankDash reports whether the dash here stands for a component: "-/6/21".
func (s *scan) blankDash() bool {
	i := s.pos
	j := i
	for j < len(s.text) && s.text[j] == '-' {
		j++
	}
	if i == 0 && j < len(s.text) && s.text[j] == ' ' {
		j++
	}
	if j == len(s.text) || s.text[j] != '/' && s.text[j] != '.' {
		return false
	}
	return i == 0 || s.text[i-1] == '/' || s.text[i-1] == '.' && j-i > 1
}

// blank reads marks that stand for a component that is not known, or for a
// doubt about the one before.
func (s *scan) blank(c byte) {
	text, i := s.text, s.pos
	j := i
	for j < len(text) && text[j] == c {
		j++
	}
	s.pos = j
	opens := i == 0 || text[i-1] == '/' || text[i-1] == '.' || text[i-1] == '-'
	closes := j < len(text) && (text[j] == '/' || text[j] == '.' || text[j] == '-')
	switch {
	case opens && closes, i == 0 && j-i >= 2 && j < len(text) && text[j] == ' ', i > 0 && opens && j == len(text):
		s.add(item{kind: blank, width: j - i, at: i})
	case c == '?':
		s.doubt = true
	default:
		s.separate(' ')
	}
}

// word reads a run of letters.
func (s *scan) word() {
	text, i := s.text, s.pos
	if s.clockWord() {
		return
	}
	j := i
	for j < len(text) && letter(text[j]) {
		j++
	}
	var buf [16]byte
	if j-i > len(buf) {
		s.notUnderstood(i)
		return
	}
	w := buf[:j-i]
	for k := range w {
		w[k] = text[i+k]
		if w[k] >= 'A' && w[k] <= 'Z' {
			w[k] |= 0x20
		}
	}
	// "l2/6/21": a letter that begins a number.
	if len(w) == 1 && (text[i] == 'l' || text[i] == 'I' || text[i] == 'O') && j < len(text) && digit(text[j]) && s.slipOf(i, i) {
		s.number()
		return
	}
	s.pos = j
	c, val, q := lookUp(w)
	s.take(c, val, q, i, j)
	s.last = c
}

// notUnderstood ends the scan where a date stands before the place: the rest
// is a remark.
func (s *scan) notUnderstood(i int) {
	if s.n >= 2 && s.complete() {
		s.remark = strings.Trim(s.text[i:], "() ")
		s.sep = 0
		return
	}
	if last := s.n - 1; last >= 2 && s.items[last].kind == number && (s.items[last].sep == ' ' || s.items[last].sep == ',') {
		// 12/13 June 2021, 2 traps
		s.n = last
		if s.complete() {
			s.remark = strings.Trim(s.text[s.items[last].at:], "() ")
			s.sep = 0
			return
		}
		s.n++
	}
	j := i
	for j < len(s.text) && (letter(s.text[j]) || digit(s.text[j]) || s.text[j] == '\'') {
		j++
	}
	if j == i {
		j++
		for j < len(s.text) && s.text[j] >= 0x80 && s.text[j] < 0xc0 {
			j++
		}
	}
	s.pos = j
	switch {
	case s.n == 0 && s.nClock == 0 && s.unknown == "" && s.last != denyWord && letter(s.text[i]):
		if s.lead == "" {
			s.leadAt = i
		}
		if m := numbered.FindString(s.text[j:]); m != "" { // visit 2, 3/7/2004
			j += strings.IndexAny(m, ",:;") + 1
			s.pos = j
		}
		s.lead = s.text[s.leadAt:j]
	case s.unknown == "":
		s.unknown, s.inside = s.text[i:j], s.n > 0
	}
}

// complete reports whether the items so far make up a date of at least a
// month's precision.
func (s *scan) complete() bool {
	o := Options{Year: 2001}
	_, ok := parse(s, &o)
	return ok
}
