package ledger

import (
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
)

// Match finds, for records that the ledger does not know by content, the line
// that each is the corrected form of. It is given the lines whose content is
// gone from the notebooks read, and the new records of the same notebooks; a
// pair is made only where all else agrees, and where neither the line nor the
// record fits another, so that a doubtful pair is no pair. The result leads
// from the index of a new record to that of its line.
func Match(gone, fresh []Line) map[int]int {
	pairs := map[int]int{}
	taken := make([]bool, len(gone))
	for _, corrected := range corrections {
		byRest := map[key][]int{}
		for i := range gone {
			if !taken[i] {
				k := keyWithout(&gone[i], corrected)
				byRest[k] = append(byRest[k], i)
			}
		}
		claims := map[key][]int{}
		for i := range fresh {
			if _, paired := pairs[i]; !paired {
				k := keyWithout(&fresh[i], corrected)
				if len(byRest[k]) > 0 {
					claims[k] = append(claims[k], i)
				}
			}
		}
		for k, records := range claims {
			if lines := byRest[k]; len(lines) == 1 && len(records) == 1 && plausible(&gone[lines[0]], &fresh[records[0]], corrected) {
				pairs[records[0]] = lines[0]
				taken[lines[0]] = true
			}
		}
	}
	return pairs
}

// corrections are the fields that a corrected record may differ in, the
// likeliest first: one before two, and what leaves the name as it was before
// what changes it, since two rows of one night are told apart by their names.
// Name and date, name and place, and date with count or place never go
// together: that is another observation.
var corrections = [][]int{
	{count}, {rest}, {name}, {date}, {people}, {place},
	{count, rest}, {date, rest}, {name, rest}, {people, rest}, {place, rest},
	{people, place}, {count, people}, {count, place}, {count, name},
}

// plausible tells whether a pair may be one: where name and count both
// differ, only if the names are alike but for a slip of the pen.
func plausible(line, record *Line, corrected []int) bool {
	if !slices.Contains(corrected, name) || !slices.Contains(corrected, count) {
		return true
	}
	return levenshtein.ComputeDistance(strings.ToLower(line.Name), strings.ToLower(record.Name)) <= slips
}

// slips is how many letters two spellings of one name may differ by: common
// practice, no source.
const slips = 2

// The places of the fields in Fields.list.
const (
	date = iota
	name
	count
	place
	people
	rest
)

type key struct {
	source string
	fields [6]string
}

// keyWithout is all that a line says but some fields.
func keyWithout(l *Line, fields []int) key {
	k := key{l.Source, l.list()}
	for _, f := range fields {
		k.fields[f] = ""
	}
	return k
}

// Gone returns, of the ledger's lines, those whose notebook is among the ones
// read and whose content is not in it any more. A notebook is among them if
// one of its name was read, or if most of its lines are found again under
// another name, which the lines returned then bear. Present tells for a
// content in which source it stands now, read whether a source was read.
func (l *Ledger) Gone(present func(Content) (source string, found bool), read func(source string) bool) []Line {
	type tally struct {
		all   int
		found map[string]int
	}
	sources := map[string]*tally{}
	for i := range l.Lines {
		x := &l.Lines[i]
		t := sources[x.Source]
		if t == nil {
			t = &tally{found: map[string]int{}}
			sources[x.Source] = t
		}
		t.all++
		if now, found := present(x.Content); found {
			t.found[now]++
		}
	}
	now := map[string]string{}
	for source, t := range sources {
		if read(source) {
			now[source] = source
		}
		for name, n := range t.found {
			if 2*n > t.all {
				now[source] = name
			}
		}
	}
	var gone []Line
	for i := range l.Lines {
		x := l.Lines[i]
		name, here := now[x.Source]
		if _, found := present(x.Content); here && !found {
			x.Source = name
			gone = append(gone, x)
		}
	}
	return gone
}
