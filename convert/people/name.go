package people

import (
	"strings"
	"unicode"

	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// parsedName is a personal name taken apart. A name of one word has only a
// surname.
type parsedName struct {
	title        string
	given        []string
	surname      string
	onlyInitials bool
	// written is the name without titles and honours, in the order and with
	// the full stops in which it was written; empty where the order was turned.
	written string
	// turned: the initials stood behind the surname, without a comma.
	turned bool
}

// titles are left out where a given name or an initial remains.
var titles = map[string]bool{"mr": true, "mrs": true, "ms": true, "miss": true, "dr": true, "prof": true, "professor": true,
	"rev": true, "revd": true, "sir": true, "lady": true, "lord": true, "capt": true, "col": true, "major": true, "doctor": true, "mx": true, "canon": true, "lt": true, "brig": true, "cllr": true, "fr": true, "maj": true, "cdr": true, "sgt": true}

// particles belong to the surname after them.
var particles = map[string]bool{"van": true, "von": true, "de": true, "der": true, "den": true, "du": true, "la": true, "le": true, "ter": true, "st": true}

// honours are letters behind a name, left out.
var honours = map[string]bool{"fres": true, "phd": true, "bsc": true, "msc": true, "obe": true, "mbe": true, "cbe": true, "frs": true, "fls": true, "esq": true, "ba": true, "ma": true}

// younger tells people of the same name apart and stays with it.
var younger = map[string]bool{"jr": true, "jnr": true, "junior": true, "sr": true, "snr": true, "senior": true}

// parse takes a name apart: "Dr T. C. Achterberg", "Calloway I", "IC".
func parse(s string) parsedName {
	var n parsedName
	list := strings.Fields(spread(s))
	for len(list) > 0 && titles[strings.ToLower(strings.Trim(list[0], "."))] {
		n.title = strings.TrimSpace(n.title + " " + list[0])
		list = list[1:]
	}
	for len(list) > 1 && honours[strings.ToLower(strings.Trim(list[len(list)-1], ".,"))] {
		list = list[:len(list)-1]
	}
	if len(list) == 0 {
		return n
	}
	n.written = untitled(s, n.title)
	all := true
	for _, w := range list {
		all = all && isInitials(w)
	}
	if all {
		n.onlyInitials, n.given = true, list
		return n
	}
	if last := len(list) - 1; last > 0 && isInitials(list[last]) && !isInitials(list[0]) && lettersAreInitials(list[last]) {
		k := last // "Calloway I", "Gault P J"
		for k > 1 && isInitials(list[k-1]) {
			k--
		}
		if k == 1 || particles[strings.ToLower(list[0])] {
			n.surname, n.given, n.turned = strings.Join(list[:k], " "), list[k:], true
			if last := list[len(list)-1]; strings.Contains(last, ".") || len([]rune(last)) == 1 {
				n.written = ""
			}
			return n
		}
	}
	k := len(list) - 1
	for k > 0 && particles[strings.ToLower(list[k-1])] {
		k--
	}
	n.given, n.surname = list[:k], strings.Join(list[k:], " ")
	return n
}

// untitled removes the titles before a name and the honours behind it.
func untitled(s, title string) string {
	list := strings.Fields(s)
	for range strings.Fields(title) {
		if len(list) > 1 && titles[strings.ToLower(strings.Trim(list[0], "."))] {
			list = list[1:]
		}
	}
	for len(list) > 1 && honours[strings.ToLower(strings.Trim(list[len(list)-1], ".,"))] {
		list = list[:len(list)-1]
	}
	return strings.Join(list, " ")
}

// spread puts a space behind full stops between letters, so that "T.Achterberg"
// has two words and "P.J. Gault" three.
func spread(s string) string {
	var b strings.Builder
	list := []rune(s)
	for i, r := range list {
		b.WriteRune(r)
		if r == '.' && i+1 < len(list) && unicode.IsLetter(list[i+1]) && i > 0 && unicode.IsLetter(list[i-1]) {
			b.WriteByte(' ')
		}
	}
	return b.String()
}

// isInitials tells whether a word is one letter, letters with full stops, or
// up to three capitals.
func isInitials(w string) bool {
	w = strings.ReplaceAll(strings.ReplaceAll(w, ".", ""), "-", "")
	list := []rune(w)
	if len(list) == 0 || len(list) > 3 {
		return false
	}
	for _, r := range list {
		if !unicode.IsLetter(r) || len(list) > 1 && !unicode.IsUpper(r) {
			return false
		}
	}
	return true
}

// lettersAreInitials guards against a name written in capitals: a word of
// two or three letters behind others may be a surname (NG, LEE).
func lettersAreInitials(w string) bool {
	return strings.Contains(w, ".") || len([]rune(w)) <= 2
}

// initials are the folded initials of the whole name.
func (n parsedName) initials() string {
	var b strings.Builder
	for _, g := range n.given {
		if isInitials(g) {
			b.WriteString(fold(g))
		} else if f := []rune(fold(g)); len(f) > 0 {
			b.WriteRune(f[0])
		}
	}
	if f := []rune(fold(n.surname)); len(f) > 0 {
		b.WriteRune(f[0])
	}
	return b.String()
}

// String is the name in the usual order, without title unless there is no
// given name.
func (n parsedName) String() string {
	if n.written != "" && (len(n.given) > 0 || n.title == "") {
		return n.written
	}
	parts := append([]string{}, n.given...)
	if len(n.given) == 0 && n.title != "" {
		parts = append(parts, n.title)
	}
	if n.surname != "" {
		parts = append(parts, n.surname)
	}
	return strings.Join(parts, " ")
}

// unaccent removes accents, so that names typed without them are found.
func unaccent(s string) string {
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x80 {
			out, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), s)
			if err != nil {
				return s
			}
			return out
		}
	}
	return s
}
