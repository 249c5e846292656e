package tally

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"fieldfare/convert/reading"
)

// Read reads one count cell.
//
// Fair: the parts are what was written. Query: the parts are likely what was
// meant. Held: it was not understood, or something other than a count stands
// there. Skipped, without parts: blank, or nothing was seen and that is not
// asked for as an absence. A sign or word for mere presence gives one part
// without a quantity.
func Read(text string, o Options) Reading {
	parts, v := Append(nil, text, o)
	return Reading{v, parts}
}

// Append is Read for long runs: it appends the parts to a slice, which may
// then be used again, and needs no memory of its own for a plain number.
func Append(parts []Part, text string, o Options) ([]Part, reading.Verdict) {
	from := len(parts)
	if n, ok := plain(text); ok && n < doubtfulFrom && !o.Date {
		parts = append(parts, Part{IndividualCount: text})
		if o.Sex == "" && o.Stage == "" {
			return parts, reading.Verdict{}
		}
		return parts, headed(parts[from:], text, o)
	}
	parts, v := read(parts, text, o)
	if v.State > reading.Query {
		return parts[:from], v
	}
	return parts, v.And(headed(parts[from:], text, o))
}

// doubtfulFrom is the smallest number that could be a year.
const doubtfulFrom = 1900

// plain reads digits without a leading nought, at most five of them.
func plain(s string) (int, bool) {
	if len(s) == 0 || len(s) > 5 || s[0] == '0' {
		return 0, false
	}
	return digits(s)
}

// digits reads a text of at most ten digits.
func digits(s string) (int, bool) {
	if len(s) == 0 || len(s) > 10 {
		return 0, false
	}
	n := 0
	for i := 0; i < len(s); i++ {
		if !isDigit(s[i]) {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return n, true
}

func read(parts []Part, text string, o Options) ([]Part, reading.Verdict) {
	s := tidy(text)
	if s == "" {
		return parts, reading.Verdict{State: reading.Skipped, Code: "blank", Message: "The count is blank."}
	}
	if len(s) > longest {
		return parts, heldLong(s)
	}
	if o.Date {
		return parts, damagedDate(s)
	}
	if n, ok := plain(s); ok {
		v, _ := plausible(n, s)
		return append(parts, Part{IndividualCount: s}), v
	}
	if p, v, ok := wholeCell(s, o); ok {
		if v.State > reading.Query {
			return parts, v
		}
		return append(parts, p), v
	}
	if p, v, ok := amount(s); ok {
		if v.State > reading.Query {
			return parts, v
		}
		return append(parts, p), v
	}
	if v, ok := damage(s); ok {
		return parts, v
	}
	if p, v, ok := wholeNumber(s); ok {
		if v.State > reading.Query {
			return parts, v
		}
		return append(parts, p), v
	}
	if p, v, ok := strokes(s); ok {
		if v.State > reading.Query {
			return parts, v
		}
		return append(parts, p), v
	}
	list, ok := lex(s)
	if !ok {
		return parts, heldPlainly(s, "no-whole-number", "holds a number that is not whole, which no count of individuals can be")
	}
	list, bracketed := unbracket(list)
	items, ok := parse(s, list)
	if !ok {
		return parts, unread(s)
	}
	from := len(parts)
	parts, v, ok := resolve(parts, s, items)
	if bracketed {
		v = v.And(inBrackets(s))
	}
	switch {
	case !ok && v.State > reading.Query:
		return parts, v
	case !ok:
		return parts, unread(s)
	case len(parts)-from == 1 && items[0].nothing() && parts[from].IndividualCount == "" && parts[from].OrganismQuantity == "":
		return notSeen(parts[:from], s, o, false)
	}
	if strings.Contains(s, "*") { // it points to a note, or marks what is new
		parts[from].Remarks = appendRemark(parts[from].Remarks, "*")
	}
	if v.State == reading.Query {
		v.Message = quoting(s, v.Message)
	}
	return parts, v
}

// unbracket takes away brackets around the whole of a cell.
func unbracket(list []token) ([]token, bool) {
	n := len(list)
	if n < 3 || list[0].kind != open || list[n-1].kind != shut {
		return list, false
	}
	for _, t := range list[1 : n-1] {
		if t.kind == open || t.kind == shut {
			return list, false
		}
	}
	return list[1 : n-1], true
}

func inBrackets(s string) reading.Verdict {
	return reading.QueryOf("count-in-brackets", fmt.Sprintf("“%s” stands in brackets. Please check that it is the count.", s))
}

// quoting puts what was written before the message, where it is not quoted.
func quoting(s, message string) string {
	if strings.Contains(message, "“"+s+"”") {
		return message
	}
	return "The count says “" + s + "”. " + message
}

func unread(s string) reading.Verdict {
	return reading.HeldOf("count-not-understood", fmt.Sprintf("The count “%s” could not be understood. Please say how many there were, or that it was only present.", s))
}

// longest is how many bytes a text may have that is read as a count (chosen by
// us): each of its pieces may belong with any other, so that a page of text would
// take minutes.
const longest = 1000

func heldLong(s string) reading.Verdict {
	begins := strings.ToValidUTF8(s[:60], "")
	return reading.HeldOf("count-not-understood", fmt.Sprintf("The count is a text of %d letters, which begins “%s”. Please say how many there were, and put the text under remarks.", utf8.RuneCountInString(s), begins))
}

func heldPlainly(s, code, what string) reading.Verdict {
	return reading.HeldOf(code, fmt.Sprintf("The count “%s” %s. Please say how many there were.", s, what))
}

// tidy removes white space and quotation marks from around a cell, and the
// blanks that only typesetting tells apart from a space.
func tidy(s string) string {
	s = strings.Map(func(r rune) rune {
		switch r {
		case '\u00a0', '\u2009', '\u202f', '\u2007', '\t', '\r':
			return ' '
		case '\u200b', '\ufeff', '\u00ad', '\u200e', '\u200f', '\ufe0e', '\ufe0f':
			return -1
		}
		return r
	}, s)
	s = strings.TrimSpace(s)
	s = strings.TrimLeft(s, "'’`")
	if len(s) > 1 && s[0] == '"' && s[len(s)-1] == '"' {
		s = s[1 : len(s)-1]
	}
	return strings.TrimSpace(s)
}
