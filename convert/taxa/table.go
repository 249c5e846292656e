package taxa

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// row is one line of a list, by meaning.
type row struct {
	line   int
	values [fieldCount]string
	// vernaculars and synonyms may come from several columns.
	vernaculars, synonyms []string
	months                Months
}

// headingSearch is how many rows may stand above the headings.
const headingSearch = 25

// tableReader turns rows of cells into a list.
type tableReader struct {
	b       *builder
	pending [][]string // rows seen before the headings were found
	lines   []int
	cols    columns
	found   bool
	family  string // of the heading above
}

// add takes one row of cells.
func (t *tableReader) add(line int, cells []string) {
	if t.found {
		t.read(line, cells)
		return
	}
	t.pending = append(t.pending, append([]string(nil), cells...))
	t.lines = append(t.lines, line)
	if len(t.pending) == headingSearch {
		t.decide()
	}
}

// decide chooses the row of headings among those seen so far: the one with
// the most columns that have a meaning.
func (t *tableReader) decide() {
	best, bestKnown := -1, 0
	for i, cells := range t.pending {
		if c, known, ok := recognise(cells); ok && known > bestKnown {
			best, bestKnown, t.cols = i, known, c
		}
	}
	t.found = true
	if best < 0 {
		c, ok := guessColumns(t.pending)
		if !ok {
			t.cols = columns{names: -1}
			return
		}
		t.cols = c
	}
	t.b.columns = t.cols.of
	rows, lines := t.pending, t.lines
	t.pending, t.lines = nil, nil
	for i := best + 1; i < len(rows); i++ {
		t.read(lines[i], rows[i])
	}
}

// finish ends the table; an error says that no column names the taxa.
func (t *tableReader) finish() error {
	if !t.found {
		t.decide()
	}
	if t.cols.of == nil {
		return fmt.Errorf("%s: no column of names was found; give one the heading “scientificName”", t.b.list.Name)
	}
	return nil
}

// guessColumns reads a list without headings by what its columns hold: one of
// binomials, perhaps one of other words, which are vernacular names.
func guessColumns(rows [][]string) (columns, bool) {
	var binomials, words, filled []int
	for _, r := range rows {
		for i, cell := range r {
			for len(filled) <= i {
				filled, binomials, words = append(filled, 0), append(binomials, 0), append(words, 0)
			}
			cell = tidy(cell)
			if cell == "" {
				continue
			}
			filled[i]++
			if looksBinomial(cell) {
				binomials[i]++
			} else if strings.ContainsFunc(cell, unicode.IsLetter) {
				words[i]++
			}
		}
	}
	c := columns{of: make([]field, len(filled)), names: -1}
	for i := range filled {
		if binomials[i]*10 >= filled[i]*7 && binomials[i] > 0 && (c.names < 0 || binomials[i] > binomials[c.names]) {
			c.names = i
		}
	}
	if c.names < 0 {
		return c, false
	}
	c.of[c.names] = fName
	for i := range filled {
		if i != c.names && words[i]*10 >= filled[i]*7 && words[i] > 0 {
			c.of[i] = fVernacular
			break
		}
	}
	return c, true
}

// looksBinomial: a capitalised word and a word in lower case with a Latin look.
func looksBinomial(s string) bool {
	n := splitName(s)
	e := key(n.epithet)
	return len(e) > 2 && n.infra == "" && !startsLower(n.genus) && strings.ContainsRune("aseimoxru", rune(e[len(e)-1]))
}

func (t *tableReader) read(line int, cells []string) { t.readAs(line, cells, "") }

// readAs reads a row whose id stands elsewhere than in its cells.
func (t *tableReader) readAs(line int, cells []string, id string) {
	var r row
	r.line = line
	r.values[fID] = id
	blank := true
	for i, cell := range cells {
		if i >= len(t.cols.of) {
			break
		}
		if m := t.cols.months[i]; m > 0 {
			if marked(cell) {
				r.months |= 1 << (m - 1)
			}
			continue
		}
		f := t.cols.of[i]
		if f == noField {
			continue
		}
		if cell = strings.TrimSpace(cell); cell == "" {
			continue
		}
		blank = false
		switch f {
		case fVernacular:
			r.vernaculars = appendSeveral(r.vernaculars, cell, ";|\n")
		case fSynonyms:
			r.synonyms = appendSeveral(r.synonyms, cell, ";|\n")
		default:
			r.values[f] = tidy(cell)
		}
	}
	if blank {
		return
	}
	t.underFamily(&r)
	t.b.add(&r)
}

// underFamily gives the taxa below a family in capitals, on a line of its own,
// to that family, where the list has no column for it.
func (t *tableReader) underFamily(r *row) {
	if slices.Contains(t.cols.of, fFamily) || slices.Contains(t.cols.of, fParent) || slices.Contains(t.cols.of, fParentID) {
		return
	}
	switch name := r.values[fName]; {
	case name == strings.ToUpper(name) && (strings.HasSuffix(name, "IDAE") || strings.HasSuffix(name, "ACEAE")) && !strings.Contains(name, " "):
		t.family = name
	case t.family != "":
		r.values[fFamily] = t.family
	}
}

// marked reads a mark in a month's column: anything but nothing, no and 0.
func marked(cell string) bool {
	switch strings.ToLower(strings.TrimSpace(cell)) {
	case "", "0", "-", "no", "n", "false", ".":
		return false
	}
	return true
}

// yes reads a yes-or-no cell.
func yes(cell string) bool {
	switch strings.ToLower(cell) {
	case "", "0", "-", "no", "n", "false", "none", "never":
		return false
	}
	return true
}

// appendSeveral appends the names in a cell that holds several, split at any
// of the separators.
func appendSeveral(names []string, cell, separators string) []string {
	for {
		i := strings.IndexAny(cell, separators)
		part := cell
		if i >= 0 {
			part = cell[:i]
		}
		if part = tidy(strings.TrimSpace(part)); part != "" {
			names = append(names, part)
		}
		if i < 0 {
			return names
		}
		cell = cell[i+1:]
	}
}

// squareOf reads the size of the square that a sensitive taxon may be shown
// in, in metres: "10 km", "2000", "hectad". ok is false where a cell says
// that the taxon is sensitive but not how far.
func squareOf(cell string) (metres int, ok bool) {
	s := strings.ToLower(strings.ReplaceAll(strings.ReplaceAll(cell, " ", ""), ",", ""))
	switch s {
	case "", "0", "no", "n", "false", "none", "-", "not":
		return 0, true
	case "hectad":
		return 10000, true
	case "tetrad":
		return 2000, true
	case "monad":
		return 1000, true
	}
	s = strings.TrimSuffix(strings.TrimSuffix(s, "square"), "²")
	unit := 1.0
	for _, u := range [...]struct {
		word   string
		metres float64
	}{{"kilometres", 1000}, {"kilometre", 1000}, {"kms", 1000}, {"km", 1000}, {"metres", 1}, {"metre", 1}, {"m", 1}} {
		if rest, found := strings.CutSuffix(s, u.word); found {
			s, unit = rest, u.metres
			break
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || v < 0 || v*unit > 1e6 || v*unit < 1 {
		return 0, false
	}
	// A bare figure below 101 can only be kilometres.
	if unit == 1 && v <= 100 && !strings.ContainsAny(strings.ToLower(cell), "m") {
		unit = 1000
	}
	return int(v*unit + 0.5), true
}
