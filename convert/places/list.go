package places

import (
	"errors"
	"fmt"
	"sort"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/gridref"

	"github.com/agnivade/levenshtein"
)

// Place is one line of the list of places.
type Place struct {
	Name string
	// Other are other spellings and former names.
	Other []string
	// Reference is where the place is, as any reference that gridref reads.
	Reference          string
	ViceCounty, County string
	// Private: the place is not to be shown more finely than BlurTo, the side
	// of a square in metres; 0 leaves the size to the project.
	Private bool
	BlurTo  int
}

// List finds places by what is written of them. It does not change once made,
// and a nil List is an empty one.
type List struct {
	entries []entry
	keys    map[string][]int
	// full has the spellings with their short words written out.
	full map[string][]int
	// byLength has the folded spellings by their number of letters.
	byLength map[int][]spelling
	// privateWords is how many words the name of a private place may have; 0
	// where there is none.
	privateWords int
}

type entry struct {
	Place
	where  gridref.Reading
	placed bool
}

type spelling struct {
	text  string
	words []string
	place int
}

// NewList makes a list. The problems are plain sentences on lines that cannot
// be used as they stand.
func NewList(list []Place) (*List, []string) {
	l := &List{keys: map[string][]int{}, full: map[string][]int{}, byLength: map[int][]spelling{}}
	var problems []string
	for _, p := range list {
		p.Name = strings.Join(strings.Fields(p.Name), " ")
		if p.Name == "" {
			problems = append(problems, "The places list has a line without a name; it was left out.")
			continue
		}
		e := entry{Place: p}
		if p.Reference = strings.TrimSpace(p.Reference); p.Reference != "" {
			r, err := gridref.Parse(p.Reference)
			var fault *gridref.Fault
			switch {
			case errors.As(err, &fault):
				problems = append(problems, fmt.Sprintf("The places list gives “%s” for %s, which cannot be used: %s", p.Reference, p.Name, fault.Message))
			case err != nil:
				problems = append(problems, fmt.Sprintf("The places list gives “%s” for %s, which is not a grid reference.", p.Reference, p.Name))
			case r.Doubt.Code != "":
				problems = append(problems, fmt.Sprintf("The places list gives “%s” for %s. %s", p.Reference, p.Name, r.Doubt.Message))
				fallthrough
			default:
				e.where, e.placed = r, true
			}
		}
		n := len(l.entries)
		l.entries = append(l.entries, e)
		l.mostWords(&e.Place)
		for _, s := range append([]string{p.Name}, p.Other...) {
			l.add(s, n)
		}
	}
	return l, append(problems, l.shared()...)
}

// add enters a spelling of a place.
func (l *List) add(written string, place int) {
	key := fold(written)
	if key == "" {
		return
	}
	for _, i := range l.keys[key] {
		if i == place {
			return
		}
	}
	if len(l.keys[key]) == 0 {
		n := len([]rune(key))
		l.byLength[n] = append(l.byLength[n], spelling{key, foldedWords(written), place})
	}
	l.keys[key] = append(l.keys[key], place)
	long := expanded(written)
	l.full[long] = include(l.full[long], place)
}

// shared names the spellings that stand for several places.
func (l *List) shared() []string {
	var out []string
	for _, at := range l.keys {
		if len(at) > 1 {
			out = append(out, fmt.Sprintf("The places list has several places called “%s”; that name will be asked about.", l.entries[at[0]].Name))
		}
	}
	sort.Strings(out)
	return out
}

// Reading is what is known of a site as written.
type Reading struct {
	reading.Verdict
	// Name is the name to go out: the list's where the site was found on it,
	// else as written.
	Name string
	// Place is the line of the list; nil where the site is not on it. It is
	// not to be changed.
	Place *Place
	// Part: the site is only a part of Place ("Sallowmere Reserve, ride 2"),
	// and Name is as written.
	Part bool
	// Possible are places of the list that the site may be, where nothing
	// says which. What may be private is to be treated as private.
	Possible []*Place
	// Where is what the list's reference was read as; meaningful where Placed.
	Where  gridref.Reading
	Placed bool
}

// Find looks a site up. One that is on the list is fair, whatever its case,
// punctuation and accents; a near spelling of one place, or one with short
// words ("Nth Fen"), is a query and is taken for it; a name near to several, or shared by several, is a query and
// stays as written. A part of a listed place ("Sallowmere Reserve, ride 2") is
// fair where a comma or bracket parts the two, else a query; its Name stays as
// written. A site that the list does not have is fair: the list need
// not have every place. No site is held, for the name of a place is text.
//
// A site that is marked as uncertain ("?Sallowmere", "prob. North Fen") is a
// query, and so is one that names two listed places that lie apart, which is
// put at neither.
func (l *List) Find(site string) Reading {
	name := strings.Join(strings.Fields(site), " ")
	sure := withoutDoubt(name)
	if sure == name {
		return l.find(name)
	}
	out := l.find(sure)
	out.Name = name
	out.Verdict = out.Verdict.And(reading.QueryOf("site-doubtful", fmt.Sprintf("“%s” is marked as uncertain. Please write which place it was, or keep it as it is.", name), sure))
	return out
}

func (l *List) find(name string) Reading {
	out := Reading{Name: name}
	if l == nil || len(l.entries) == 0 || name == "" {
		return out
	}
	if at := l.keys[fold(name)]; len(at) == 1 {
		return l.found(out, at[0])
	} else if len(at) > 1 {
		out.Verdict = reading.QueryOf("site-ambiguous", fmt.Sprintf("The places list has %d places called “%s”. Please write which one it is.", len(at), name), l.describe(at)...)
		out.Possible = l.possible(at)
		return out
	}
	if at := l.without(name); len(at) == 1 {
		out = l.found(out, at[0])
		out.Verdict = reading.Verdict{Message: fmt.Sprintf("“%s” is %s of the places list.", name, out.Name)}
		return out
	}
	if at := l.without(name); len(at) > 1 {
		out.Possible = l.possible(at)
	}
	if part, ok := l.outerPart(&out); ok {
		return part
	}
	words := foldedWords(name)
	at := l.written(name)
	if len(at) == 0 && !besideWords(words[:min(1, len(words))]) {
		at = l.near(name)
	}
	switch len(at) {
	case 0:
		return l.innerPart(out)
	case 1:
		out = l.found(out, at[0])
		out.Verdict = reading.QueryOf("site-misspelt", fmt.Sprintf("“%s” is not on the places list and was read as “%s”. Please check; if it is another place, add it to the list.", name, out.Name), out.Name)
	default:
		out.Verdict = reading.QueryOf("site-ambiguous", fmt.Sprintf("“%s” is not on the places list, but near to several places that are. Please check the spelling.", name), l.describe(at)...)
		out.Possible = l.possible(at)
	}
	return out
}

// Named returns the places of the name, whatever its case, punctuation and
// accents; several where they share it.
func (l *List) Named(name string) []*Place {
	at := l.keys[fold(name)]
	if len(at) == 0 {
		at = l.without(name)
	}
	return l.possible(at)
}

func (l *List) found(out Reading, at int) Reading {
	e := &l.entries[at]
	out.Name, out.Place, out.Where, out.Placed = e.Name, &e.Place, e.where, e.placed
	return out
}

func (l *List) possible(at []int) []*Place {
	var out []*Place
	for _, i := range at {
		out = append(out, &l.entries[i].Place)
	}
	return out
}

// describe names places, with their reference where names are shared.
func (l *List) describe(at []int) []string {
	out := make([]string, len(at))
	for i, n := range at {
		out[i] = l.entries[n].Name
		if len(at) > 1 && l.entries[n].Reference != "" {
			out[i] += " (" + l.entries[n].Reference + ")"
		}
	}
	return out
}

// without looks for the name without what is usually added to or left out of
// one: an article, a county behind a comma.
func (l *List) without(name string) []int {
	short := strings.TrimPrefix(strings.ToLower(name), "the ")
	if at := l.keys[fold(short)]; len(at) > 0 {
		return at
	}
	return l.keys["the"+fold(short)]
}

// near returns the places with a spelling that the name could be a slip for,
// nearest first; those further away than the nearest are left out.
func (l *List) near(name string) []int {
	key, written := fold(name), foldedWords(name)
	n := len([]rune(key))
	best := slips(n) + 1
	var at []int
	for length := n - slips(n); length <= n+slips(n); length++ {
		for _, s := range l.byLength[length] {
			d := distance(key, s.text)
			if d > best || d > slips(n) || !wordsAgree(written, s.words) {
				continue
			}
			if d < best {
				best, at = d, at[:0]
			}
			at = include(at, l.keys[s.text]...)
		}
	}
	sort.Ints(at)
	return at
}

func include(list []int, add ...int) []int {
next:
	for _, n := range add {
		for _, have := range list {
			if have == n {
				continue next
			}
		}
		list = append(list, n)
	}
	return list
}

// slips is how many letters may be wrong in a name of n letters (common
// practice, no source).
func slips(n int) int {
	switch {
	case n >= 12:
		return 2
	case n >= 6:
		return 1
	}
	return 0
}

// distance counts slips: letters wrong, missing or too many, and neighbours
// that changed places as one.
func distance(a, b string) int {
	d := levenshtein.ComputeDistance(a, b)
	if d != 2 || len(a) != len(b) {
		return d
	}
	for i := 0; i+1 < len(a); i++ {
		if a[i] != b[i] {
			if a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:] {
				return 1
			}
			return d
		}
	}
	return d
}

// wordsAgree keeps apart names that differ on purpose: in a figure (Ride 2 and
// Ride 3), in a point of the compass (North Fen and South Fen), or in a word
// too short to be a slip.
func wordsAgree(a, b []string) bool {
	if len(a) != len(b) {
		return strings.Join(tellingOf(a), " ") == strings.Join(tellingOf(b), " ")
	}
	for i := range a {
		if a[i] == b[i] {
			continue
		}
		if telling(a[i]) && telling(b[i]) || figures(a[i]) || figures(b[i]) {
			return false
		}
		if n := min(len([]rune(a[i])), len([]rune(b[i]))); n <= 3 && distance(a[i], b[i]) >= n-1 {
			return false
		}
	}
	return true
}

func tellingOf(words []string) []string {
	var out []string
	for _, w := range words {
		if telling(w) {
			out = append(out, w)
		}
	}
	return out
}

// telling words tell one place from another of the same name.
func telling(w string) bool {
	switch w {
	case "north", "south", "east", "west", "ne", "nw", "se", "sw", "upper", "lower", "great", "little", "old", "new",
		"inner", "outer", "top", "bottom", "left", "right", "near", "far", "first", "second", "third", "northern",
		"southern", "eastern", "western", "middle", "mid", "big", "small", "high", "low":
		return true
	}
	return figures(w) || len(w) == 1
}

func figures(w string) bool { return strings.ContainsAny(w, "0123456789") }
