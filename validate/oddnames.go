package validate

import (
	"fmt"
	"strings"
	"unicode"

	"fieldfare/convert/reading"
)

// names finds names that occur once and are at most one letter from a common
// one, whatever their capitals, spaces and stops.
type names struct {
	counts    map[string]*int32
	last      string // the last name and its count
	lastCount *int32
	full      bool
	odd       map[string]string // the name: the common one
}

const (
	// mostNames is how many different names of a kind are remembered; a set
	// with more is not looked at for slips.
	mostNames = 1 << 16
	// commonName is how often a name must occur for one that is nearly the
	// same to be taken for a slip (common practice, no source).
	commonName = 10
	// leastLetters is how long a name must be: short names differ by a letter
	// on purpose.
	leastLetters = 6
)

func (n *names) add(name string) {
	switch {
	case name == "" || n.full:
	case n.lastCount != nil && name == n.last:
		*n.lastCount++
	default:
		if count := n.of(name); count != nil {
			*count++
			n.last, n.lastCount = name, count
		}
	}
}

// of returns the count of a name; nil where there are too many names.
func (n *names) of(name string) *int32 {
	if count, known := n.counts[name]; known {
		return count
	}
	if n.counts == nil {
		n.counts = map[string]*int32{}
	}
	if len(n.counts) == mostNames {
		*n = names{full: true}
		return nil
	}
	count := new(int32)
	n.counts[strings.Clone(name)] = count
	return count
}

// join takes in what another has.
func (n *names) join(other *names) {
	if n.full || other.full {
		*n = names{full: true}
		return
	}
	for name, times := range other.counts {
		count := n.of(name)
		if count == nil {
			return
		}
		*count += *times
	}
}

// settle compares each name that occurs once with the common ones, by the
// forms that each leaves with a letter taken out.
func (n *names) settle() {
	n.odd = map[string]string{}
	forms := map[uint64]string{}
	for name, count := range n.counts {
		if *count < commonName || len(name) < leastLetters {
			continue
		}
		for form := range shortened(foldName(name)) {
			if other, taken := forms[form]; !taken || name < other {
				forms[form] = name
			}
		}
	}
	if len(forms) > 0 {
		for name, count := range n.counts {
			if *count == 1 && len(name) >= leastLetters {
				n.settleOne(name, forms)
			}
		}
	}
	n.counts, n.last, n.lastCount = nil, "", nil
}

func (n *names) settleOne(name string, forms map[uint64]string) {
	best, folded := "", foldName(name)
	for form := range shortened(folded) {
		if common, found := forms[form]; found && common != name && oneLetter(folded, foldName(common)) && (best == "" || common < best) {
			best = common
		}
	}
	if best != "" {
		n.odd[name] = best
	}
}

// foldName leaves the letters and figures of a name, in lower case.
func foldName(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
}

// shortened yields the hash of a name and of every form with one rune less.
func shortened(name string) func(yield func(uint64) bool) {
	return func(yield func(uint64) bool) {
		if !yield(newHash.text(name).sum()) {
			return
		}
		runes := []rune(name)
		short := make([]rune, 0, len(runes))
		for i := range runes {
			short = append(append(short[:0], runes[:i]...), runes[i+1:]...)
			if !yield(newHash.text(string(short)).sum()) {
				return
			}
		}
	}
}

// oneLetter tells whether two names are alike, or differ by one letter wrong,
// missing or too many, or by two neighbours that changed places. Figures differ
// on purpose: Ride 2 and Ride 3.
func oneLetter(a, b string) bool {
	x, y := []rune(a), []rune(b)
	if len(x) > len(y) {
		x, y = y, x
	}
	if len(y)-len(x) > 1 {
		return false
	}
	i := 0
	for i < len(x) && x[i] == y[i] {
		i++
	}
	j := 0
	for j < len(x)-i && x[len(x)-1-j] == y[len(y)-1-j] {
		j++
	}
	inX, inY := x[i:len(x)-j], y[i:len(y)-j]
	for _, r := range append(append([]rune{}, inX...), inY...) {
		if r >= '0' && r <= '9' {
			return false
		}
	}
	switch {
	case len(inX) <= 1 && len(inY) <= 1:
		return true
	case len(inX) == 2 && len(inY) == 2:
		return inX[0] == inY[1] && inX[1] == inY[0]
	}
	return false
}

// oddNames asks about the odd names of a record.
func (s *Set) oddNames(e *Entry) []reading.Finding {
	var found []reading.Finding
	ask := func(kind int, name, about, text string) {
		common, odd := s.names[kind].odd[name]
		if !odd {
			return
		}
		found = append(found, queryOf(about, text, "name-once", fmt.Sprintf(
			"“%s” stands there once, and “%s”, which is nearly the same, often. Check whether it is a slip.", name, common), common))
	}
	if len(s.names[0].odd) > 0 {
		ask(0, e.ScientificName, aboutName, e.VerbatimIdentification)
	}
	if len(s.names[1].odd) > 0 {
		for person := range strings.SplitSeq(e.RecordedBy, " | ") {
			ask(1, person, "recorder", person)
		}
	}
	if len(s.names[2].odd) > 0 {
		text := e.Locality
		if e.VerbatimLocality != "" {
			text = e.VerbatimLocality
		}
		ask(2, e.Locality, "site", text)
	}
	return found
}
