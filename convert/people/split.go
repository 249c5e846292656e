package people

import (
	"fmt"
	"regexp"
	"strings"
)

var (
	strongSign = regexp.MustCompile(`\s*[;|/\n\\]\s*|\s+[-–—]\s+|\s+(?i:with|w/|w\.|also|along with|together with)\s+`)
	andSign    = regexp.MustCompile(`\s*[&+]\s*|\s+(?i:and|et)\s+|,\s*(?i:and)\s+`)
	commaSign  = regexp.MustCompile(`\s*,\s*`)
	etAl       = regexp.MustCompile(`(?i)[\s,]+et\.? ?al\.?$`)
)

// split cuts a list of names into names, putting surname and initials in
// their usual order ("Calloway, I." is one name) and giving a shared surname
// to each who shares it ("J & M Surtees").
func (r *reader) split(s string) []string {
	s = strings.TrimSpace(s)
	if m := etAl.FindStringIndex(s); m != nil {
		return append(r.split(s[:m[0]]), "et al.")
	}
	if r.known(s) || r.wholeGroup(s) {
		return []string{s}
	}
	var out []string
	for _, strong := range strongSign.Split(s, -1) {
		if strings.TrimSpace(strong) == "" {
			continue
		}
		r.bodies(strong)
		out = append(out, r.splitAnd(strong)...)
	}
	return out
}

// bodies asks where bodies of people are parted at an "and" that may be in the
// name of one: "Sallowmere Reserve & Tinker's Row group".
func (r *reader) bodies(s string) {
	pieces := andSign.Split(s, -1)
	if len(pieces) < 2 {
		return
	}
	for _, p := range pieces {
		if !isGroup(p) || r.known(strings.Trim(p, " ,")) {
			return
		}
	}
	r.doubt("one-body-or-two", fmt.Sprintf("“%s” was read as the names of %d bodies. Please check that it is not the name of one.", strings.TrimSpace(s), len(pieces)))
}

// wholeGroup tells whether the text is the name of one body, with whatever
// "and" is in it: "Fenland Moth and Butterfly Group", but not "Fenland Moth
// Group and IC".
func (r *reader) wholeGroup(s string) bool {
	if !isGroup(s) || strings.ContainsAny(s, ",;|") {
		return false
	}
	pieces := andSign.Split(s, -1)
	if len(pieces) > 1 && kindOf(pieces[len(pieces)-1]) == others {
		return false
	}
	for _, p := range pieces[:len(pieces)-1] {
		if isGroup(p) || r.known(p) || r.listed(p) || kindOf(p) != aName || parse(p).onlyInitials {
			return false
		}
	}
	return isGroup(pieces[len(pieces)-1])
}

// known tells whether the whole text is one spelling on the list.
func (r *reader) known(s string) bool {
	return r.list != nil && len(r.list.keys[fold(s)]) > 0
}

// splitAnd cuts at ampersands and commas.
func (r *reader) splitAnd(s string) []string {
	var out []string
	pieces := andSign.Split(s, -1)
	for i, p := range pieces {
		p = strings.Trim(p, " ,")
		if p == "" {
			continue
		}
		if i+1 < len(pieces) && len(pieces) > 1 {
			if shared, ok := r.shares(p, pieces[i+1:]); ok {
				out = append(out, shared...)
				continue
			}
		}
		if n := parse(p); i > 0 && n.onlyInitials && !r.known(p) {
			if surname, ok := invertedSurname(pieces[i-1]); ok { // "Fenn, A.M. & J.P."
				out = append(out, p+" "+surname)
				continue
			}
		}
		out = append(out, r.splitComma(p)...)
	}
	return out
}

// invertedSurname is the surname of a piece that ends in a surname, a comma
// and initials.
func invertedSurname(piece string) (string, bool) {
	list := commaSign.Split(strings.Trim(piece, " ,"), -1)
	if n := len(list); n >= 2 && parse(list[n-1]).onlyInitials {
		if a := parse(list[n-2]); a.surname != "" && len(a.given) == 0 {
			return list[n-2], true
		}
	}
	return "", false
}

// shares reads a piece that has no surname of its own, but takes that of the
// last name in the list: "J" before "M Surtees", "Mr" before "Mrs Surtees".
func (r *reader) shares(p string, rest []string) ([]string, bool) {
	last := parse(strings.Trim(rest[len(rest)-1], " ,."))
	if last.surname == "" || len(last.given) == 0 && last.title == "" || strings.Contains(p, ",") && !allInitials(p) {
		return nil, false
	}
	capital := strings.Trim(p, ". ") == "I" && len(last.given) > 0 && isInitials(last.given[0])
	if kindOf(p) != aName && !capital || r.known(p) || kindOf(strings.TrimSpace(rest[len(rest)-1])) != aName || strings.Contains(rest[len(rest)-1], ",") {
		return nil, false
	}
	if capital && !r.listed(p+" "+last.surname) {
		r.doubt("shared-surname", "“"+p+"” before “"+last.surname+"” was read as an initial. Please check that it does not stand for the owner of the notebook.")
	}
	var out []string
	for _, w := range commaSign.Split(p, -1) {
		n := parse(w)
		switch {
		case r.known(w):
			out = append(out, w)
		case titles[strings.ToLower(strings.Trim(w, "."))]:
			out = append(out, r.titled(w, last))
		case n.onlyInitials && len(fold(w)) <= 2 && (len(fold(w)) == 1 || strings.Contains(w, ".") || strings.Contains(w, " ")):
			out = append(out, w+" "+last.surname)
		case n.surname != "" && len(n.given) == 0 && n.title == "" && len(last.given) > 0 && !isInitials(last.given[0]) && !r.listed(w):
			out = append(out, n.surname+" "+last.surname)
			r.doubt("shared-surname", "The name “"+w+"” was taken to share the surname “"+last.surname+"”. Please check.")
		default:
			return nil, false
		}
	}
	return out, len(out) > 0
}

// titled gives a title the surname of a couple.
func (r *reader) titled(title string, last parsedName) string {
	r.couple = true
	if len(last.given) == 0 {
		return title + " " + last.surname
	}
	r.doubt("shared-surname", "The initials before the surname “"+last.surname+"” may belong to one of the couple only. Please check.")
	return title + " " + strings.Join(last.given, " ") + " " + last.surname
}

// listed tells whether the list has somebody whom the text fits, in whatever way.
func (r *reader) listed(s string) bool {
	how, _ := r.list.find(s, parse(s))
	return how == exactly || how == byParts || how == byHalf
}

func allInitials(s string) bool {
	for _, w := range commaSign.Split(s, -1) {
		if w = strings.Trim(w, " "); w != "" && !parse(w).onlyInitials {
			return false
		}
	}
	return true
}

// splitComma cuts at commas, except between a surname and its initials.
func (r *reader) splitComma(s string) []string {
	var list []string
	for _, w := range commaSign.Split(s, -1) {
		w = strings.TrimSpace(w)
		switch key := strings.ToLower(strings.Trim(w, ".")); {
		case w == "" || honours[key]:
		case younger[key] && len(list) > 0:
			list[len(list)-1] += " " + w
		default:
			list = append(list, w)
		}
	}
	list = r.withoutAddress(list)
	var out []string
	for i := 0; i < len(list); i++ {
		if i+1 < len(list) {
			if name, ok := r.inverted(list[i], list[i+1], len(list) == 2); ok {
				out = append(out, name)
				i++
				continue
			}
		}
		out = append(out, r.byInitials(list[i])...)
	}
	return out
}

// inverted reads a surname and what stands behind its comma as one name.
func (r *reader) inverted(surname, given string, alone bool) (string, bool) {
	a, b := parse(surname), parse(given)
	if len(a.given) > 0 || a.surname == "" || a.onlyInitials {
		return "", false
	}
	switch {
	case b.onlyInitials && !r.known(given):
		return given + " " + surname, true
	case b.onlyInitials && !r.known(surname): // TA may be Tom Achterberg or a surname's initials
		if strings.Contains(given, ".") {
			return given + " " + surname, true
		}
		return "", false
	case len(b.given) > 0 || b.surname == "" || b.title != "" || r.known(surname):
		return "", false
	}
	whole := given + " " + surname
	if r.known(whole) {
		return whole, true
	}
	if !alone || r.listed(surname) || r.listed(given) {
		return "", false
	}
	r.doubt("order-of-names", "“"+surname+", "+given+"” was read as one name, "+whole+". Please check that these are not two people.", whole)
	return whole, true
}

// byInitials cuts a run of initials of which at least one is on the list:
// "IC TA", "IC–TA".
func (r *reader) byInitials(s string) []string {
	list := strings.FieldsFunc(s, func(c rune) bool { return c == ' ' || c == '–' || c == '-' })
	if len(list) < 2 || r.known(s) {
		return []string{s}
	}
	known := false
	for _, w := range list {
		if !isInitials(w) || len(fold(w)) < 2 {
			return []string{s}
		}
		known = known || r.known(w)
	}
	if !known {
		return []string{s}
	}
	return list
}
