package when

import (
	"regexp"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
)

const (
	monthName   = `(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?`
	ordinalName = `(?:(?:twenty|thirty)[ -]?)?(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)|(?:ten|eleven|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen)th|twelfth|twentieth|thirtieth`
)

var (
	// The letters for "night of" or "overnight", before or behind the date.
	nightLetters = regexp.MustCompile(`(?i)^(?:n/o\b|o/n\b|n\.o\.|o\.n\.|noct\b|nocte\b)[.: ]*|[ ,(]+(?:n/o|o/n|noct|nocte)\b[.)]*$`)
	// n/o, which may be short for something else
	nightOf = regexp.MustCompile(`(?i)^n[/.]o\b`)
	// l.vii.2004: a letter that stands for the figure one before a month.
	letterOne = regexp.MustCompile(`^[lI]([./ ]+)([ivx]+|[IVX]+)([./ ]+\d)`)
	// l.7.2004, and I.7.2004, where the letter may be a Roman month as well
	letterL      = regexp.MustCompile(`^l([./ ]+\d{1,2}[./ ]+\d)`)
	oneOrJanuary = regexp.MustCompile(`^[Ii][./ ]+\d{1,2}[./ ]+\d`)
	// third of July, third and fourth of July, July the third
	ordinalBefore = regexp.MustCompile(`(?i)\b(` + ordinalName + `)(?:( ?(?:-|/|&|and|to) ?)(` + ordinalName + `))?(?: day)?(?: of)? (` + monthName + `)`)
	ordinalBehind = regexp.MustCompile(`(?i)\b(` + monthName + `)(?: the)? (` + ordinalName + `)\b`)
	// The number of a visit or trap, before a date in figures.
	numbered = regexp.MustCompile(`^ \d{1,2}[,:;] *\d{1,2}[./-]`)
	// The number of a visit, walk or trap with nothing but a space behind it.
	visit = regexp.MustCompile(`(?i)^((?:visit|vis|walk|survey|session|trip|round|transect|sample|count|trap|v|no|#)\.? ?(?:(?:no\.?|number|#) ?)?\d{1,3}(?: of \d{1,3})?(?:[,:;.)]| [-–])?|\(?\d{1,3}\)) +[(\[]?(\d.*)$`)
	// A number that says nothing but which visit it was.
	ofVisit = regexp.MustCompile(`(?i)^(?:visit|vis|walk|survey|session|trip|round)\b`)
	// That something went on, or goes on still: "13 June 2004 to date", "2004+".
	goesOn = regexp.MustCompile(`(?i)(?: *- *| +(?:up )?to | +until )(?:date|the present|present|now|today|this day)\.?$|((?:^|[^:\d])\d{1,4}) ?\+$`)
	// What an ordinal before or behind a month may belong to instead.
	partsAhead = regexp.MustCompile(`(?i)^ *(?:-? ?(?:week|wk|half|fortnight|quarter|third|part|brood|gen|visit|record))`)
)

// visitApart takes the number of a visit or trap from before a whole date in
// figures, where it could be taken for one of them: "visit 3 3/7/2004".
func visitApart(s string, o *Options) (lead, rest string) {
	m := visit.FindStringSubmatch(s)
	if m == nil {
		return "", s
	}
	if r := Read(m[2], *o); r.State == reading.Held || r.Day == 0 && !r.Night {
		return "", s
	}
	return strings.TrimRight(m[1], " ,:;-–"), m[2]
}

// openEnded writes that something goes on still in the one way that is known.
func openEnded(s string) string {
	if s == "" || !strings.Contains("etwyETWY.+", s[len(s)-1:]) {
		return s
	}
	return goesOn.ReplaceAllString(s, "$1 onwards")
}

// spelledDays writes days that are given by words or by letters in figures:
// "third of July", "l.vii.2004", "n/o 3.7.04".
func spelledDays(s string) string {
	s = nightLetters.ReplaceAllString(s, " night ")
	s = letterOne.ReplaceAllString(strings.TrimSpace(s), "O1${1}${2}${3}") // the O for a nought says that it is a slip
	s = replaceUnless(ordinalBefore, s, func(m []string) string {
		if m[3] == "" {
			return inFigures(m[1]) + " " + m[4]
		}
		return inFigures(m[1]) + m[2] + inFigures(m[3]) + " " + m[4]
	})
	s = letterL.ReplaceAllString(s, "O1$1")
	return replaceUnless(ordinalBehind, s, func(m []string) string { return m[1] + " " + inFigures(m[2]) })
}

// replaceUnless replaces what matches, but where a part of a month follows.
func replaceUnless(re *regexp.Regexp, s string, by func([]string) string) string {
	at := re.FindStringSubmatchIndex(s)
	if at == nil || partsAhead.MatchString(s[at[1]:]) {
		return s
	}
	return s[:at[0]] + by(re.FindStringSubmatch(s)) + s[at[1]:]
}

// inFigures writes an ordinal number in figures.
func inFigures(word string) string {
	word = strings.ToLower(word)
	tens := 0
	for name, n := range map[string]int{"twenty": 20, "thirty": 30} {
		if rest, found := strings.CutPrefix(word, name); found {
			tens, word = n, strings.TrimLeft(rest, " -")
		}
	}
	return strconv.Itoa(tens+ordinals[word]) + "th"
}

var ordinals = map[string]int{
	"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
	"tenth": 10, "eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16,
	"seventeenth": 17, "eighteenth": 18, "nineteenth": 19, "twentieth": 20, "thirtieth": 30,
}
