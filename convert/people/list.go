package people

import (
	"fmt"
	"regexp"
	"sort"
	"strings"
	"unicode"

	"github.com/agnivade/levenshtein"
)

// Person is one line of the list of people.
type Person struct {
	// Name is the name to go out.
	Name string
	// Initials are those by which the person is known in the notebooks.
	Initials []string
	// Other are other spellings and short names.
	Other []string
	// Withhold: the person is not to be named.
	Withhold bool
}

// List finds people by what is written of them. It does not change once made,
// and a nil List is an empty one.
type List struct {
	people []Person
	// keys leads from a folded spelling to the people who have it; derived
	// holds initials that the list does not give but the names have.
	keys, derived map[string][]int
	names         []parsedName
	withheld      *regexp.Regexp
}

// NewList makes a list. A line whose name is another line's, or one of its
// other spellings, adds to that line. The problems are plain sentences on lines that cannot
// be used as they stand.
func NewList(list []Person) (*List, []string) {
	l := &List{keys: map[string][]int{}, derived: map[string][]int{}}
	var problems []string
	for _, p := range list {
		p.Name = strings.Join(strings.Fields(p.Name), " ")
		if p.Name == "" {
			problems = append(problems, "The people list has a line without a name; it was left out.")
			continue
		}
		n := len(l.people)
		if at := l.keys[fold(p.Name)]; len(at) == 1 {
			n = at[0]
			if len(p.Initials)+len(p.Other) > 0 { // else it only says whom not to name
				problems = append(problems, fmt.Sprintf("The people list has “%s” twice; the lines were taken together.", p.Name))
			}
			l.people[n].Withhold = l.people[n].Withhold || p.Withhold
			l.people[n].Initials = append(l.people[n].Initials[:len(l.people[n].Initials):len(l.people[n].Initials)], p.Initials...)
			l.people[n].Other = append(l.people[n].Other[:len(l.people[n].Other):len(l.people[n].Other)], p.Other...)
		} else {
			l.people = append(l.people, p)
			l.names = append(l.names, parse(p.Name))
		}
		for _, s := range append(append([]string{p.Name}, p.Other...), p.Initials...) {
			if key := fold(s); key != "" {
				l.keys[key] = include(l.keys[key], n)
			}
		}
		if key := l.names[n].initials(); len(key) > 1 {
			l.derived[key] = include(l.derived[key], n)
		}
	}
	l.withheld = l.withheldPattern()
	var shared []string
	for key, at := range l.keys {
		if len(at) > 1 {
			var names []string
			for _, i := range at {
				names = append(names, l.people[i].Name)
			}
			shared = append(shared, fmt.Sprintf("“%s” stands for %s in the people list; wherever it is written alone it will be asked about.", strings.ToUpper(key), strings.Join(names, " and ")))
		}
	}
	sort.Strings(shared)
	return l, append(problems, shared...)
}

func include(list []int, n int) []int {
	for _, i := range list {
		if i == n {
			return list
		}
	}
	return append(list, n)
}

// Columns finds the columns of a people list by their headings, counted from
// 0; -1 where there is none. Without a name column the list cannot be used.
func Columns(header []string) (name, initials, other, withhold int) {
	name, initials, other, withhold = -1, -1, -1, -1
	for i, h := range header {
		var to *int
		switch fold(h) {
		case "name", "fullname", "person", "recorder", "recordername", "people", "recordedby":
			to = &name
		case "initials", "initial", "abbreviation", "abbreviations", "abbr", "short", "code", "knownas":
			to = &initials
		case "other", "othernames", "othername", "otherspellings", "alsowritten", "aliases", "alias", "alsoknownas", "spellings", "variants":
			to = &other
		case "withhold", "withheld", "private", "hide", "hidden", "donotname", "anonymous", "nottobenamed", "confidential":
			to = &withhold
		default:
			continue
		}
		if *to < 0 {
			*to = i
		}
	}
	return name, initials, other, withhold
}

// fold makes spellings comparable: lower case, letters and figures only,
// common accents removed.
func fold(s string) string {
	var b strings.Builder
	for _, r := range unaccent(s) {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			b.WriteRune(unicode.ToLower(r))
		}
	}
	return b.String()
}

// match is how a written name was found on the list.
type match uint8

const (
	notListed match = iota
	exactly
	byParts    // initial and surname
	byHalf     // surname or given name alone, or initials not given in the list
	misspelt   // one near spelling
	severalFit // more than one person
)

// find looks a written name up.
func (l *List) find(written string, n parsedName) (match, []int) {
	if l == nil || len(l.people) == 0 {
		return notListed, nil
	}
	key := fold(written)
	if at := l.keys[key]; len(at) > 0 {
		return fits(exactly, at)
	}
	if bare := fold(n.String()); bare != key {
		if at := l.keys[bare]; len(at) > 0 {
			return fits(exactly, at)
		}
	}
	if n.onlyInitials {
		if at := l.derived[n.initials()]; len(at) > 0 {
			return fits(byHalf, at)
		}
		return notListed, nil
	}
	if len(n.given) == 1 { // surname first
		if at := l.keys[fold(n.surname)+fold(n.given[0])]; len(at) > 0 {
			return fits(byHalf, at)
		}
	}
	var parts, half, near []int
	for i, p := range l.names {
		switch {
		case n.surname != "" && fold(n.surname) == fold(p.surname) && len(n.given) > 0 && agree(n.given, p.given):
			parts = append(parts, i)
		case len(n.given) == 0 && fold(n.surname) == fold(p.surname),
			len(n.given) == 0 && len(p.given) > 0 && fold(n.surname) == fold(p.given[0]):
			half = append(half, i)
		case givenAndInitial(n, p) || len(n.given) == 1 && initialOf(n.given[0], p.surname) && l.only(fold(n.surname), i):
			half = append(half, i)
		case close(n, p):
			near = append(near, i)
		}
	}
	switch {
	case len(parts) > 0:
		return fits(byParts, parts)
	case len(half) > 0:
		return fits(byHalf, half)
	case len(near) > 0:
		return fits(misspelt, near)
	}
	return notListed, nil
}

// Knows reports whether a text is the full name of somebody on the list, or
// their initial and surname, or several such names: "Ines Calloway and T.
// Achterberg". Initials alone and single words are too little to tell.
func (l *List) Knows(text string) bool {
	names := strings.Split(strings.NewReplacer(" and ", "\n", " & ", "\n", "; ", "\n").Replace(text), "\n")
	for _, name := range names {
		name = strings.TrimSpace(name)
		if !strings.Contains(name, " ") || len(name) > 60 {
			return false
		}
		if m, _ := l.find(name, parse(name)); m != exactly && m != byParts {
			return false
		}
	}
	return true
}

// only tells whether a spelling stands for the i-th person alone.
func (l *List) only(key string, i int) bool {
	at := l.keys[key]
	return len(at) == 1 && at[0] == i
}

func fits(m match, at []int) (match, []int) {
	if len(at) > 1 {
		return severalFit, at
	}
	return m, at
}

// givenAndInitial tells whether a name is another's given name with the surname's
// initial ("Ines C.").
func givenAndInitial(n, p parsedName) bool {
	if len(n.given) != 1 || len(p.given) == 0 {
		return false
	}
	return initialOf(n.given[0], p.surname) && fold(n.surname) == fold(p.given[0])
}

// initialOf tells whether a word is the initial of a name.
func initialOf(word, name string) bool {
	w, n := []rune(fold(word)), []rune(fold(name))
	return len(w) == 1 && len(n) > 1 && w[0] == n[0]
}

// agree tells whether given names and initials can be the same person's: each
// pair is equal, or one is the other's initial; one may have fewer.
func agree(a, b []string) bool {
	for i := 0; i < len(a) && i < len(b); i++ {
		x, y := fold(a[i]), fold(b[i])
		if x == y || x == "" || y == "" {
			continue
		}
		if len([]rune(x)) > 1 && len([]rune(y)) > 1 || []rune(x)[0] != []rune(y)[0] {
			return false
		}
	}
	return true
}

// close tells whether a name is another misspelt: one letter in a part of four
// to seven, two in a longer one, in either the given name or the surname.
func close(n, p parsedName) bool {
	if len(n.given) == 0 || len(p.given) == 0 {
		return false
	}
	a, b := fold(n.surname), fold(p.surname)
	if a == b {
		x, y := fold(n.given[0]), fold(p.given[0])
		return len(x) > 2 && len(y) > 2 && levenshtein.ComputeDistance(x, y) <= slips(x)
	}
	return agree(n.given, p.given) && levenshtein.ComputeDistance(a, b) <= slips(a)
}

func slips(s string) int {
	switch n := len([]rune(s)); {
	case n >= 8:
		return 2
	case n >= 4:
		return 1
	}
	return 0
}
