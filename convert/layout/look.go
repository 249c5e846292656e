package layout

import (
	"strings"

	"fieldfare/convert/notebook"
)

// look is what a cell's text looks like, as a set.
type look uint32

const (
	lookText    look = 1 << iota // has text
	lookDate                     // day, month and year
	lookDay                      // day and month without a year
	lookMonth                    // a month, with or without a year
	lookYear                     // a year alone
	lookPair                     // 12/6, 2-4
	lookInt                      // a whole number
	lookDecimal                  // any other number
	lookSmall                    // 1 to 31
	lookGrid
	lookLetters // the letters of a 100 km square
	lookTick
	lookNil // 0 or a dash
	lookDitto
	lookTime
	lookBinomial
	lookTaxon // known, or ending like a vernacular name
	lookGroup // a family or other group
	lookPerson
	lookPlace
	lookCount
	lookLong // a sentence
	lookTotal
	lookWords    // letters, no figures
	lookRealDate // a spreadsheet date
	lookMarked   // ends in a colon
	lookError
	lookKnownTaxon
)

func (l look) is(m look) bool { return l&m != 0 }

// eyes look at cells with the help of a Probe, and remember what they have
// seen.
type eyes struct {
	probe Probe
	seen  map[string]look
}

// maxSeen bounds what the eyes remember.
const maxSeen = 20_000

func (e eyes) look(c *notebook.Cell) look {
	text := trim(c.Text)
	if text == "" {
		return 0
	}
	text, _ = tidy(text)
	l := lookText
	switch c.Kind {
	case notebook.Date:
		if isClock(c.Raw) {
			return l | lookTime
		}
		return l | lookDate | lookRealDate
	case notebook.Error:
		return l | lookError
	case notebook.Bool:
		return l | lookTick
	}
	known, ok := e.seen[text]
	if !ok {
		known = e.lookText(text)
		if len(e.seen) < maxSeen {
			e.seen[text] = known
		}
	}
	return l | known
}

// isClock: a time of day without a date.
func isClock(raw string) bool {
	return len(raw) >= 5 && raw[2] == ':'
}

func (e eyes) lookText(text string) look {
	var l look
	if isDitto(text) {
		return lookDitto
	}
	if strings.HasSuffix(text, ":") {
		l |= lookMarked
	}
	if n, ok := isInt(text); ok {
		l |= lookInt | lookCount
		if n >= 1 && n <= 31 {
			l |= lookSmall
		}
		if n == 0 {
			l |= lookNil
		}
		if len(text) == 4 && n >= 1700 && n <= 2199 {
			l |= lookYear
		}
		if len(text) == 8 && scanDate(text) == fullDate {
			l |= lookDate
		}
		return l
	}
	if dayNumber(text) > 0 { // 12th
		return l | lookSmall
	}
	if isTick(text) {
		l |= lookTick | lookCount
	}
	if isNotSeen(text) {
		return l | lookNil | lookCount
	}
	if isDecimal(text) {
		l |= lookDecimal
		if scanDate(text) == pairOnly {
			l |= lookPair
		}
		return l
	}
	hasDigit := strings.ContainsAny(text, "0123456789")
	if hasDigit || len(text) <= 20 {
		switch scanDate(text) {
		case fullDate:
			l |= lookDate
		case dayMonth:
			l |= lookDay
		case monthOnly, monthYear:
			l |= lookMonth
		case yearOnly:
			l |= lookYear
		case pairOnly:
			l |= lookPair
		}
	}
	if hasDigit && (scanGridRef(text) || !l.is(lookDate) && e.probe.LooksLikeGridRef(text)) {
		l |= lookGrid
	}
	if isTime(text) {
		l |= lookTime
	}
	if isCount(text) || hasDigit && !l.is(lookDate|lookDay|lookGrid) && e.probe.LooksLikeCount(text) {
		l |= lookCount
	}
	if l.is(lookDate|lookGrid|lookTime) || l.is(lookCount) && hasDigit {
		return l
	}
	if hasDigit && !l.is(lookDay|lookMonth|lookYear|lookPair) && mayBeDate(text) && !holdsGridRef(text) && e.probe.LooksLikeDate(text) {
		l |= lookDay
	}
	return l | e.lookWords(text, hasDigit)
}

// mayBeDate keeps the reader of dates from texts with a year in passing,
// such as "(Linnaeus, 1758)": a date has a month, or figures in two places.
func mayBeDate(text string) bool {
	groups, in := 0, false
	for i := 0; i < len(text); i++ {
		if isDigit(text[i]) && !in {
			groups++
		}
		in = isDigit(text[i])
	}
	return groups >= 2 && len(text) <= 40 || monthIn(text) > 0
}

// known reports whether the text is a name on the taxon list. Words that head
// columns or sum up rows are none, though the list may know them as groups:
// "Moth", "Total moths".
func (e eyes) known(text string) bool {
	if len(vocabulary[normHeading(text)]) > 0 || isTotalWord(text) {
		return false
	}
	return e.probe.KnownTaxon(text)
}

func (e eyes) lookWords(text string, hasDigit bool) look {
	var l look
	if !hasDigit {
		l |= lookWords
	}
	if isGridLetters(text) {
		l |= lookLetters
	}
	if isBinomial(text) {
		l |= lookBinomial | lookTaxon
	}
	if e.known(text) {
		l |= lookTaxon | lookKnownTaxon
	} else if looksVernacular(text) {
		l |= lookTaxon
	}
	if isGroupName(text) {
		l |= lookGroup
	}
	if e.probe.KnownPlace(text) {
		l |= lookPlace
	} else if looksPlace(text) && !l.is(lookBinomial|lookKnownTaxon) {
		l |= lookPlace
	}
	if isPerson(text) || e.probe.KnownPerson(text) {
		l |= lookPerson
	}
	if isTotalWord(text) {
		l |= lookTotal
	}
	if len(text) > 45 || strings.Count(text, " ") >= 6 {
		l |= lookLong
	}
	return l
}
