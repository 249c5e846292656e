package when

import (
	"regexp"
	"strings"
)

var (
	newYear = regexp.MustCompile(`(?i)\bnew years?'?s? ?(day|eve)\b`)
	// A quarter of a year with its year behind or before it.
	quarterFirst = regexp.MustCompile(`(?i)^(?:Q([1-4])|([1-4])(?:st|nd|rd|th) (?:quarter|qtr)(?: of)?)[ ,/-]*(\d{4})$`)
	quarterLast  = regexp.MustCompile(`(?i)^(\d{4})[ ,/-]*Q([1-4])$`)
)

var quarters = map[string]string{"1": "January-March ", "2": "April-June ", "3": "July-September ", "4": "October-December "}

// spelledOut writes days and quarters that go by a name as days and months:
// "New Year's Eve 2020", "Q2 2021".
func spelledOut(s string) string {
	if strings.ContainsAny(s, "qQ") {
		if m := quarterFirst.FindStringSubmatch(s); m != nil {
			return quarters[m[1]+m[2]] + m[3]
		}
		if m := quarterLast.FindStringSubmatch(s); m != nil {
			return quarters[m[2]] + m[1]
		}
	}
	if !strings.ContainsAny(s, "yY") {
		return s
	}
	return newYear.ReplaceAllStringFunc(s, func(day string) string {
		if day[len(day)-1]|0x20 == 'e' {
			return "31 December"
		}
		return "1 January"
	})
}
