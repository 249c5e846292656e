package people

import (
	"regexp"
	"strings"
	"unicode"
)

var (
	recorderWord   = regexp.MustCompile(`(?i)^((recorded|caught|trapped|seen|found|taken|collected|coll|noted|rec|observed|accompanied|assisted|helped)\.? by|leg|legit|coll|collector|collectors|collected|colls|recorders?|recs?|observers?|obs|finder|by)\b[.:]?`)
	determinerWord = regexp.MustCompile(`(?i)^(det|determined|determiner|determinavit|dets|gen\.? ?det|identified|identifier|ident|id'd|ids?|idd|dissected|dissector)(\.? (from|on|via) (a |the )?(photo|specimen|picture|pic|image|description)\w*)?(\.? by)?\b[.:]?`)
	verifierWord   = regexp.MustCompile(`(?i)^(conf|confirmed|ver|verif|verified|verifier|vid|checked|agreed|validated|accepted)(\.? (from|on|via) (a |the )?(photo|specimen|picture|pic|image|description)\w*)?(\.? by)?\b[.:]?`)
)

// countyRecorder ends before the word "recorder" of an office, which is no role
// in the record.
var countyRecorder = regexp.MustCompile(`(?i)\b(county|vc)( moth| butterfly)?\s$`)

// group is a stretch of the cell whose names share their roles.
type group struct {
	roles []Role
	text  string
}

// piece is a word for a role, or the text up to the next one.
type piece struct {
	role Role
	is   bool // a role
	text string
}

// roles cuts a cell at the words that say what somebody did ("det.", "leg."),
// whether they stand before a name or behind it.
func (r *reader) roles(s string, first Role) []group {
	var out []group
	put := func(roles []Role, text string) {
		if names(text) {
			out = append(out, group{roles, balance(text)})
		}
	}
	list := pieces(s)
	cur, text, led := []Role{first}, "", false // led: a role stands before text
	for i := 0; i < len(list); i++ {
		if !list[i].is {
			text += list[i].text
			continue
		}
		chain := []Role{list[i].role}
		for i+2 < len(list) && list[i+2].is && !names(list[i+1].text) {
			chain = append(chain, list[i+2].role)
			i += 2
		}
		after := ""
		if i+1 < len(list) {
			after = list[i+1].text
		}
		switch ends := endsThere(after); {
		case names(text) && !led && ends: // "J. Fenn leg., P. Gault det."
			if strings.ContainsAny(strings.Trim(text, " ,;&+/()[]"), ",;&+/") {
				r.doubt("role-of-whom", "It is not certain whether the words behind the names are about all of them, or the last only. Please check.")
			}
			put(chain, text)
			cur, text = []Role{first}, ""
		case names(text) && led && ends && i+1 >= len(list)-1 && !names(after): // "det. TA conf."
			r.doubt("role-of-whom", "It is not certain whom the last words of the cell are about. Please check.")
			put(append(cur, chain...), text)
			cur, text = []Role{first}, ""
		default:
			put(cur, text)
			cur, text, led = chain, "", true
		}
	}
	put(cur, text)
	return out
}

// names tells whether a text has more than signs and the word "and".
func names(text string) bool {
	t := strings.ToLower(strings.Trim(text, " .,;:&+/()[]-–—\n"))
	return t != "" && t != "and"
}

// endsThere tells whether what follows a role's word shows that its name
// stood before it.
func endsThere(after string) bool {
	t := strings.TrimLeft(after, " .:")
	return t == "" || strings.ContainsRune(",;)]/", rune(t[0]))
}

// pieces cuts a cell at the words for roles.
func pieces(s string) []piece {
	var out []piece
	from := 0
	for i := 0; i < len(s); {
		role, n, ok := roleAt(s, i)
		if !ok {
			i++
			continue
		}
		if i > from {
			out = append(out, piece{text: s[from:i]})
		}
		out = append(out, piece{role: role, is: true, text: s[i : i+n]})
		i += n
		from = i
	}
	if from < len(s) {
		out = append(out, piece{text: s[from:]})
	}
	return out
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
	if !unicode.IsLetter(rune(s[i])) || countyRecorder.MatchString(s[:i]) {
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
