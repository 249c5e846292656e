package tally

import (
	"fmt"
	"regexp"
	"strings"

	"fieldfare/convert/reading"
)

var (
	datePattern = regexp.MustCompile(`(?i)^(\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}([ T].*)?|\d{1,2}[ -/.]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*([ -/.]\d{2,4})?|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[ -/.]\d{1,4})$`)
	timePattern = regexp.MustCompile(`^\d{1,2}:\d{2}(:\d{2})?$`)
	slashed     = regexp.MustCompile(`^(\d{1,3})\s*[/\\:]\s*(\d{1,3})$`)
	scientific  = regexp.MustCompile(`(?i)^\d+([.,]\d+)?e[+-]?\d+$`)
	spaced      = regexp.MustCompile(`^\d{1,3}([ ']\d{3})+$`)
	wholeFloat  = regexp.MustCompile(`^(\d{1,9})[.,]0*$`)
	fraction    = regexp.MustCompile(`^[+-]?\d*[.,·]\d+$`)
	negative    = regexp.MustCompile(`^[-–−]\s*\d+$`)
	bracketed   = regexp.MustCompile(`^[(\[]\s*(\d{1,9})\s*[)\]]$`)
	leadingZero = regexp.MustCompile(`^0+([1-9]\d{0,8})$`)
	allDigits   = regexp.MustCompile(`^\d+$`)
	measured    = regexp.MustCompile(`(?i)^\d+([.,]\d+)?\s*(mm|cm|km|m²|m2|ha|°c|%)$|\d\s*(per|/)\s*(m²|m2|sq\.? ?m|metre|meter|ha|hectare|hour|hr)\b`)
	// Three noughts alone: 1.250 cannot be a whole number with decimals.
	pointThousands = regexp.MustCompile(`^[1-9]\d{0,2}\.000$`)
	grouping       = regexp.MustCompile(`^\d{1,3}(,\d{3})+$`)
)

// damage recognises what a spreadsheet made of a count, or what was never one.
func damage(s string) (reading.Verdict, bool) {
	switch {
	case s[0] == '#' && (len(s) == 1 || !isDigit(s[1]) && s[1] != ' '):
		return heldPlainly(s, "spreadsheet-error", "is an error or an overfull cell of the spreadsheet, so the count itself has been lost"), true
	case datePattern.MatchString(s):
		return damagedDate(s), true
	case slashed.MatchString(s):
		m := slashed.FindStringSubmatch(s)
		return reading.HeldOf("two-numbers", fmt.Sprintf("“%s” gives two numbers without saying of what; it may also be a date or a time. Please say how many there were.", s),
			m[1]+"m "+m[2]+"f", m[1]+"-"+m[2]), true
	case timePattern.MatchString(s):
		return heldPlainly(s, "time-as-count", "is a time of day"), true
	case scientific.MatchString(s):
		return heldPlainly(s, "rounded-by-spreadsheet", "has been changed by the spreadsheet to a number with a power of ten"), true
	case grouping.MatchString(s):
		return reading.Verdict{}, false
	case pointThousands.MatchString(s):
		// A point between thousands, or three decimals of a whole number.
		whole, _, _ := strings.Cut(s, ".")
		return reading.HeldOf("thousands-or-decimals", fmt.Sprintf("“%s” could be %s or %s. Please say how many there were.", s, whole, strings.ReplaceAll(s, ".", "")), whole, strings.ReplaceAll(s, ".", "")), true
	case wholeFloat.MatchString(s):
		return reading.Verdict{}, false
	case measured.MatchString(s):
		return heldPlainly(s, "measure-as-count", "is a measurement or a density, not a number of individuals"), true
	case fraction.MatchString(s):
		return heldPlainly(s, "no-whole-number", "is not a whole number"), true
	case negative.MatchString(s):
		return heldPlainly(s, "negative-count", "is less than nothing"), true
	}
	return reading.Verdict{}, false
}

// damagedDate is a count that a spreadsheet turned into a date: 10-12 becomes
// 10 December. What it may have been is offered where the day and month show.
func damagedDate(s string) reading.Verdict {
	v := heldPlainly(s, "date-as-count", "is a date. A spreadsheet does this to counts such as 10-12 or 3/4")
	if m := isoDate.FindStringSubmatch(s); m != nil {
		month, day := strings.TrimLeft(m[2], "0"), strings.TrimLeft(m[3], "0")
		v.Candidates = []string{day + "-" + month, month + "-" + day}
	}
	return v
}

var isoDate = regexp.MustCompile(`^(\d{4})-(\d{2})-(\d{2})`)

// wholeNumber reads a cell that is one number in a form other than the plain one.
func wholeNumber(s string) (Part, reading.Verdict, bool) {
	digitsOf := func(s string) string {
		s = strings.TrimLeft(strings.NewReplacer(",", "", " ", "", "'", "").Replace(s), "0")
		if s == "" {
			return "0"
		}
		return s
	}
	var d string
	var said reading.Verdict
	switch {
	case grouping.MatchString(s):
		d = digitsOf(s)
	case spaced.MatchString(s):
		d = digitsOf(s)
		said = reading.QueryOf("spaced-number", fmt.Sprintf("“%s” was read as %s. Please check that it is one number.", s, d), d)
	case wholeFloat.MatchString(s):
		d = digitsOf(wholeFloat.FindStringSubmatch(s)[1])
	case bracketed.MatchString(s):
		d = digitsOf(bracketed.FindStringSubmatch(s)[1])
		said = inBrackets(s)
	case leadingZero.MatchString(s):
		d = leadingZero.FindStringSubmatch(s)[1]
		said = reading.QueryOf("leading-nought", fmt.Sprintf("“%s” begins with a nought. Please check that it is a count, not a code.", s))
	case allDigits.MatchString(s):
		d = s
	default:
		return Part{}, reading.Verdict{}, false
	}
	n, ok := digits(d)
	if !ok || d == "0" {
		return Part{}, heldPlainly(s, "count-too-large", "cannot be a number of individuals"), true
	}
	if (n >= 30000 && n <= 60000 || yearLike(n)) && grouping.MatchString(s) {
		return Part{IndividualCount: d}, said, true
	}
	v, _ := plausible(n, s)
	return Part{IndividualCount: d}, said.And(v), true
}

// Limits of a plausible count (common practice, no source).
const (
	manyIndividuals = 10_000
	tooMany         = 10_000_000
	// Days since 1899-12-30, as spreadsheets keep dates: 1982 to 2064.
	firstSerial, lastSerial = 30_000, 60_000
)

func yearLike(n int) bool { return n >= doubtfulFrom && n <= 2099 }

// plausible says what is odd about a number as a count. It returns false
// where it is rather something else: a year, a date, a code.
func plausible(n int, s string) (reading.Verdict, bool) {
	switch {
	case n < doubtfulFrom:
		return reading.Verdict{}, true
	case yearLike(n) && n%100 != 0:
		return heldPlainly(s, "year-as-count", "looks like a year"), false
	case yearLike(n):
		return reading.QueryOf("year-as-count", fmt.Sprintf("The count “%s” could be a year. Please check.", s)), true
	case n >= tooMany:
		return heldPlainly(s, "count-too-large", "is too large; it may be a date or a code"), false
	case n >= firstSerial && n <= lastSerial:
		return heldPlainly(s, "date-as-count", "looks like a date that a spreadsheet shows as a number"), false
	case n >= manyIndividuals:
		return reading.QueryOf("many-individuals", fmt.Sprintf("The count “%s” is very large. Please check.", s)), true
	}
	return reading.Verdict{}, true
}
