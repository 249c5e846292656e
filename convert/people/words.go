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

var othersPattern = regexp.MustCompile(`(?i)^((et\.? ?al\.?|etc\.?|others?|and others|(several|various|many|some|a few|two|three|four|five|\d+) (others?|people|friends|visitors|members|children|volunteers)|friends?|family|party|team|group|volunteers?|visitors?|members?|guests?|children|various|co\.?|company|a friend|a visitor|my (wife|husband|son|daughter|father|mother|brother|sister|family|partner)|wife|husband|various people|all|everyone|public|member of (the )?public)( members?)?)$`)

// kindOf recognises the words that stand for a person without naming one.
func kindOf(s string) wordKind {
	switch strings.ToLower(strings.Trim(s, ". ")) {
	case "self", "me", "myself", "own", "mine", "own record", "the recorder", "recorder", "as recorder", "owner", "pers. obs", "pers obs", "self recorded", "i":
		return selfWord
	case "unknown", "anon", "anonymous", "not known", "not recorded", "none", "n/a", "na", "nil", "not stated", "no name", "unk", "unrecorded", "not given", "nobody":
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

// scrubAddress is Scrub for a cell of names: of a private address, the rest
// goes too, which would otherwise look like further names.
func scrubAddress(text string) (string, []string) {
	if m := house.FindStringIndex(text); m != nil && !inTransect(text[:m[0]]) {
		clean, found := Scrub(text[:m[0]])
		return clean, append(found, strings.TrimSpace(text[m[0]:]))
	}
	return Scrub(text)
}

var (
	recorderWord   = regexp.MustCompile(`(?i)^((recorded|caught|trapped|seen|found|taken|collected|coll|noted|rec|observed)\.? by|leg|legit|coll|collector|collectors|collected|colls|recorders?|recs?|observers?|obs|finder|by)\b[.:]?`)
	determinerWord = regexp.MustCompile(`(?i)^(det|determined|determiner|determinavit|dets|gen\.? ?det|identified|identifier|ident|id'd|id|idd|dissected|dissector)(\.? by)?\b[.:]?`)
	verifierWord   = regexp.MustCompile(`(?i)^(conf|confirmed|ver|verif|verified|verifier|vid|checked|agreed|validated|accepted)(\.? by)?\b[.:]?`)
)

// group is a stretch of the cell whose names share their roles.
type group struct {
	roles []Role
	text  string
}

// roles cuts a cell at the words that say what somebody did ("det.", "leg."),
// whether they stand before a name or, at the end, behind it.
func roles(s string, first Role) []group {
	var out []group
	cur := group{roles: []Role{first}}
	said := false // the roles of cur were written
	var text strings.Builder
	flush := func() {
		cur.text = strings.Trim(text.String(), " ,;:-–—&+/")
		text.Reset()
		if strings.Trim(cur.text, "()[] .") != "" {
			out = append(out, cur)
		}
	}
	joined := false // "leg. & det.": the next role is added
	for i := 0; i < len(s); {
		if role, n, ok := roleAt(s, i); ok {
			rest := strings.Trim(s[i+n:], " .,;:)]")
			before := strings.Trim(text.String(), " ,;:&+/()[]")
			switch {
			case joined && said && before == "":
				cur.roles = append(cur.roles, role)
			case rest == "" && !said && before != "": // "T. Achterberg det."
				cur.roles = []Role{role}
			default:
				flush()
				cur = group{roles: []Role{role}}
			}
			said, joined = true, true
			text.Reset()
			if rest == "" && before != "" {
				text.WriteString(before)
			}
			i += n
			continue
		}
		c := s[i]
		text.WriteByte(c)
		i++
		if !strings.ContainsRune(" ,;:&+/.()[]", rune(c)) && !strings.HasPrefix(s[i-1:], "and ") && !insideAnd(s, i-1) {
			joined = false
		}
	}
	flush()
	for i := range out {
		out[i].text = balance(out[i].text)
	}
	return out
}

// insideAnd: the letter at i belongs to the word "and".
func insideAnd(s string, i int) bool {
	for k := 0; k < 3 && k <= i; k++ {
		if strings.HasPrefix(strings.ToLower(s[i-k:]), "and ") && (i-k == 0 || s[i-k-1] == ' ') {
			return true
		}
	}
	return false
}

// balance drops a bracket whose other half went to another group.
func balance(s string) string {
	if strings.Count(s, "(") != strings.Count(s, ")") {
		s = strings.NewReplacer("(", " ", ")", " ").Replace(s)
	}
	if strings.Count(s, "[") != strings.Count(s, "]") {
		s = strings.NewReplacer("[", " ", "]", " ").Replace(s)
	}
	return strings.Trim(s, " ,;:-–—&+/")
}

// roleAt finds a word for a role at the start of a word of s.
func roleAt(s string, i int) (Role, int, bool) {
	if i > 0 && !strings.ContainsRune(" ,;:&+/([-.", rune(s[i-1])) {
		return 0, 0, false
	}
	if !unicode.IsLetter(rune(s[i])) {
		return 0, 0, false
	}
	for _, k := range [...]struct {
		re   *regexp.Regexp
		role Role
	}{{determinerWord, Determiner}, {verifierWord, Verifier}, {recorderWord, Recorder}} {
		m := k.re.FindString(s[i:])
		if m == "" {
			continue
		}
		// Capitals may be somebody's initials: ID, VER, OBS.
		if w := strings.TrimRight(m, ".:"); strings.ToUpper(w) == w && len(w) <= 3 && strings.TrimSpace(s) == strings.TrimSpace(m) {
			continue
		}
		return k.role, len(m), true
	}
	return 0, 0, false
}
