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
	for n, corrected := range slices.Concat(corrections, inPlace) {
		if n == len(corrections) {
			gone, fresh = oneLeft(gone, taken, fresh, pairs)
		}
		byRest := map[key][]int{}
		for i := range gone {
			if !taken[i] && gone[i].Source != "" {
				k := keyWithout(&gone[i], corrected)
				byRest[k] = append(byRest[k], i)
			}
		}
		claims := map[key][]int{}
		for i := range fresh {
			if fresh[i].Source == "" {
				continue
			}
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
// Name and date, and name and place go together only where the name is alike
// but for a slip of the pen (see inPlace): else that is another observation.
var corrections = [][]int{
	{count}, {rest}, {name}, {date}, {people}, {place},
	{count, rest}, {date, rest}, {name, rest}, {people, rest}, {place, rest},
	{people, place}, {count, people}, {count, place}, {count, name},
}

// inPlace may be another observation, and are tried only where one line of the
// notebook is gone and one record is new, so that a row was changed in place:
// date with count, people or place, any other name with a count, and a name but
// for a slip with date or place.
var inPlace = [][]int{{date, count}, {name, count}, {date, people}, {date, place}, {name, date}, {name, place}}

// oneLeft returns the lines and records with all but those blanked of whose
// notebook one of each is left.
func oneLeft(gone []Line, taken []bool, fresh []Line, pairs map[int]int) (lines, records []Line) {
	lines, records = slices.Clone(gone), slices.Clone(fresh)
	left := map[string][2]int{}
	count := func(list []Line, used func(i int) bool, which int) {
		for i := range list {
			if !used(i) {
				n := left[list[i].Source]
				n[which]++
				left[list[i].Source] = n
			}
		}
	}
	paired := func(i int) bool { _, is := pairs[i]; return is }
	count(lines, func(i int) bool { return taken[i] }, 0)
	count(records, paired, 1)
	for _, list := range [][]Line{lines, records} {
		for i := range list {
			if left[list[i].Source] != [2]int{1, 1} {
				list[i] = Line{}
			}
		}
	}
	return lines, records
}

// plausible tells whether a pair may be one: names that differ with a count
// where more than one row was changed, or with a date or place, must be alike
// but for a slip of the pen.
func plausible(line, record *Line, corrected []int) bool {
	switch {
	case slices.Equal(corrected, []int{count, name}), slices.Equal(corrected, []int{name, date}), slices.Equal(corrected, []int{name, place}):
		return levenshtein.ComputeDistance(bare.Replace(strings.ToLower(line.Name)), bare.Replace(strings.ToLower(record.Name))) <= slips
	}
	return true
}

// bare takes out of a name what is written or left out at will.
var bare = strings.NewReplacer("&", "and", "-", "", "'", "", "’", "", " ", "", ".", "")

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
	visit  bool
	fields [6]string
}

// keyWithout is all that a line says but some fields.
func keyWithout(l *Line, fields []int) key {
	k := key{l.Source, l.Visit, l.list()}
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
