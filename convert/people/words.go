package people

import (
	"regexp"
	"strings"
	"unicode"
)

// wordKind is what stands in a name's place.
type wordKind uint8

const (
	aName wordKind = iota
	selfWord
	nobody
	sameAgain
	others
)

var othersPattern = regexp.MustCompile(`(?i)^((not me|us|we|ourselves|both of us|(his|her|their|my|our)\s.*|(vice-?county|vc|county)( moth| butterfly)? recorder|c\.?m\.?r|v\.?c\.?r|et\.? ?al\.?|etc\.?|others?|several|and others|(several|various|many|some|a few|two|three|four|five|\d+) (others?|people|friends|visitors|members|children|volunteers)|friends?|family|party|team|group|volunteers?|visitors?|members?|guests?|children|various|co\.?|company|a friend|a visitor|my (wife|husband|son|daughter|father|mother|brother|sister|family|partner)|wife|husband|various people|all|everyone|((the|his|her|our|my|their) )?(kids|grandkids|grandchildren|dogs?|mum|dad|mam|mother|father|gran|grandad|grandma)|public|members? of (the )?public|\+?\d|((the|a|an|site|reserve|head|assistant|nature|land|estate|local|my|our)\s+)*(warden|ranger|manager|keeper|owner|farmer|gardener|student|neighbours?|landowner|resident|trapper)s?)( members?)?)$`)

// kindOf recognises the words that stand for a person without naming one.
func kindOf(s string) wordKind {
	switch strings.ToLower(strings.Trim(s, ". ")) {
	case "self", "me", "myself", "own", "mine", "own record", "the recorder", "recorder", "as recorder", "owner", "pers. obs", "pers obs", "own records", "my record", "my records", "my own", "my own record", "my own records", "self recorded", "i", "on my own", "alone", "solo", "just me", "only me", "me alone", "by myself", "on own", "me only", "i was alone", "my own obs", "own obs", "pers observation", "no one else", "nobody else":
		return selfWord
	case "unknown", "anon", "anonymous", "not known", "not recorded", "none", "n/a", "na", "nil", "not stated", "no name", "unk", "n/k", "nk", "n.k", "n.a", "not noted", "unrecorded", "not given", "nobody", "name withheld", "withheld", "confidential", "private", "name not given":
		return nobody
	case "ditto", "do", "as above", "same", "\"", "''", "〃", "idem", "same as above":
		return sameAgain
	}
	if othersPattern.MatchString(s) {
		return others
	}
	return aName
}

var groupPattern = regexp.MustCompile(`(?i)\b(group|club|society|trust|team|survey|surveys|university|museum|association|school|branch|council|wardens?|rangers?|staff|volunteers|naturalists|reserve|expedition|outing|meeting|party|college|institute|committee|network|partnership|project|class|cubs|scouts|guides)\b`)

// isGroup tells whether a name is that of a body of people.
func isGroup(s string) bool { return groupPattern.MatchString(s) }

func hasLetter(s string) bool { return strings.ContainsFunc(s, unicode.IsLetter) }

// through introduces those by whose hand a record came, or for whom it was
// made: neither saw what was recorded.
var through = regexp.MustCompile(`(?i)(?:^|\s)(for|on behalf of|per|via|fide|c/o|through|courtesy of|ex)\.?\s+\p{Lu}.*$`)

// scrubAddress is Scrub for a cell of names: of a private address, the rest
// goes too, which would otherwise look like further names.
func scrubAddress(text string) (string, []string) {
	if m := house.FindStringIndex(text); m != nil && !inTransect(text[:m[0]]) {
		clean, found := Scrub(text[:m[0]])
		return clean, append(found, strings.TrimSpace(text[m[0]:]))
	}
	return Scrub(text)
}
