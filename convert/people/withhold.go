package people

import (
	"regexp"
	"strings"

	"github.com/agnivade/levenshtein"
)

func (l *List) empty() bool { return l == nil || len(l.people) == 0 }

// mayBeWithheld tells whether a name that is not on the list could be meant
// for someone who is not to be named: the surname, or one near to it, with
// the same initial. It errs on the side of silence.
func (l *List) mayBeWithheld(n parsedName) bool {
	if l.empty() || len(n.given) == 0 {
		return false
	}
	for i, p := range l.names {
		if !l.people[i].Withhold || len(p.given) == 0 {
			continue
		}
		a, b := fold(n.surname), fold(p.surname)
		x, y := []rune(fold(n.given[0])), []rune(fold(p.given[0]))
		if len(x) > 0 && len(y) > 0 && x[0] == y[0] && levenshtein.ComputeDistance(a, b) <= slips(b) {
			return true
		}
	}
	return false
}

// betrays tells whether a text names somebody who is not to be named.
func (l *List) betrays(s string) bool {
	return l != nil && l.withheld != nil && l.withheld.MatchString(s)
}

// Scrub is the package's Scrub, and removes the people of the list who are not
// to be named as well: by their names, initials as given in the list, initial
// and surname, or title and surname. A nil list removes contacts only.
func (l *List) Scrub(text string) (clean string, found []string) {
	clean, found = Scrub(text)
	if !l.betrays(clean) {
		return clean, found
	}
	for _, m := range l.withheld.FindAllStringSubmatch(clean, -1) {
		found = append(found, m[1])
	}
	// Two names side by side share the sign between them, so look again.
	for l.withheld.MatchString(clean) {
		clean = l.withheld.ReplaceAllString(clean, "$2")
	}
	return mend(clean), found
}

// withheldPattern matches whatever names somebody who is not to be named; nil
// where there is nobody.
func (l *List) withheldPattern() *regexp.Regexp {
	var all []string
	for i, p := range l.people {
		if !p.Withhold {
			continue
		}
		for _, s := range append([]string{p.Name}, p.Other...) {
			if len([]rune(fold(s))) > 2 {
				all = append(all, "(?i:"+loosely(s)+")")
			}
		}
		for _, s := range p.Initials {
			if len([]rune(fold(s))) > 1 {
				all = append(all, loosely(s), dotted(s))
			}
		}
		if n := l.names[i]; len([]rune(n.surname)) > 2 {
			// The surname alone where it is plainly a person's: "Grey's trap",
			// "with Grey"; else it may be a colour.
			surname := loosely(n.surname)
			all = append(all, surname+"['’]s?", "(?:with|by|and|&|per|from|for|of|det|leg|rec|conf)[.:]? +"+surname)
		}
		if n := l.names[i]; len(n.given) > 0 {
			initial := string([]rune(n.given[0])[:1])
			all = append(all, "(?i:"+regexp.QuoteMeta(initial)+`\.?\s*(?:\p{L}\.?\s*)?`+loosely(n.surname)+")",
				`(?i:(?:mr|mrs|ms|miss|dr|prof)\.?\s+`+loosely(n.surname)+")",
				"(?i:"+loosely(n.surname)+`,\s*`+regexp.QuoteMeta(initial)+`(?:\p{L}*|\.))`)
		}
	}
	if len(all) == 0 {
		return nil
	}
	return regexp.MustCompile(strings.ToValidUTF8(`(?:^|\b)(`+strings.Join(all, "|")+`)([^\p{L}\d]|$)`, "\ufffd"))
}

// loosely matches a name with any white space between its words.
func loosely(s string) string {
	words := strings.Fields(s)
	for i := range words {
		words[i] = regexp.QuoteMeta(words[i])
	}
	return strings.Join(words, `\s+`)
}

// dotted matches initials with full stops.
func dotted(s string) string {
	var b strings.Builder
	for _, r := range fold(s) {
		b.WriteString(strings.ToUpper(string(r)) + `\.\s?`)
	}
	return b.String()
}
