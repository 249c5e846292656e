package gridref

import (
	"fmt"
	"regexp"
	"strings"
)

var (
	severalHead = regexp.MustCompile(`^([A-Z]{1,2})([ .:/,;_-]*)(\d.*)$`)
	severalGap  = regexp.MustCompile(` *(?:[/,;+]|-+>?|\b(?:TO|AND|OR|THROUGH|THRU)\b) *`)
	severalItem = regexp.MustCompile(`^(\d[\d .]*?) ?([A-Z]{0,2})$`)
	twoRuns     = regexp.MustCompile(`^(\d{6}|\d{8}|\d{10}) (\d{6}|\d{8}|\d{10})$`)
)

// item is one of the references, or the part of it that differs.
type item struct{ figures, spaced, suffix string }

// parseSeveral knows references that share the letters of their square
// ("TL4581/4681", "TL45/46 81", "TL4581 to 4681", "TL45J & 45K"), of which some
// could also be taken for one reference with twice the figures.
func parseSeveral(w written) (Reading, error, bool) {
	m := severalHead.FindStringSubmatch(w.text)
	if m == nil {
		return Reading{}, nil, false
	}
	s, ok := squareOf(m[1])
	if !ok || !s.HasLand() {
		return Reading{}, nil, false
	}
	rest, gap := m[3], " "
	parts := severalGap.Split(rest, -1)
	if found := severalGap.FindString(rest); found != "" {
		gap = strings.TrimSpace(found)
	} else if runs := twoRuns.FindStringSubmatch(rest); runs != nil {
		parts = runs[1:]
	}
	if len(parts) < 2 || gap == strings.TrimSpace(m[2]) {
		return Reading{}, nil, false
	}
	items := make([]item, len(parts))
	for i, p := range parts {
		found := severalItem.FindStringSubmatch(p)
		switch {
		case found != nil:
			items[i] = item{strings.NewReplacer(" ", "", ".", "").Replace(found[1]), found[1], found[2]}
		case i > 0 && len(p) > 0 && len(p) <= 2 && strings.Trim(p, letters) == "":
			items[i].suffix = p
		default:
			return Reading{}, nil, false
		}
	}
	written, ok := apartItems(items)
	if !ok {
		return Reading{}, nil, false
	}
	gaps := severalGap.FindAllString(rest, -1)
	if len(items[0].figures) == 2 && len(gaps) > 1 && strings.TrimSpace(gaps[0]) != strings.TrimSpace(gaps[1]) {
		return ranges(w, m[1], items)
	}
	var names []string
	for _, figures := range written {
		one, ok := parsePlain(m[1] + figures)
		if !ok {
			return Reading{}, nil, false
		}
		names = append(names, one.String())
	}
	one, alsoOne := oneOfTwo(m[1], items)
	first := items[0].figures
	if alsoOne && gap != "+" && !(gap == ";" && len(first) == 4) && strings.Trim(gap, letters) != "" && !near(atoi(first), atoi(items[1].figures), len(first)) {
		return Reading{}, nil, false
	}
	if len(first) == 6 && len(items) == 2 && s.Contains(Plane{s.Grid, float64(atoi(first)), float64(atoi(items[1].figures))}) {
		// A full easting and northing behind letters that agree with it.
		return Reading{}, nil, false
	}
	if gap == " " && !near(atoi(first), atoi(items[1].figures), len(first)) {
		return Reading{}, nil, false
	}
	if alsoOne && len(first) == 2 && strings.Trim(gap, letters) != "" {
		return query(Reading{Square: one, Note: one.datumNote()}, TwoReferences, fmt.Sprintf("%s may be two squares, %s. It was read as one reference, %s; please confirm it.",
			w.quoted, strings.Join(names, " and "), one)), nil, true
	}
	message := fmt.Sprintf("%s seems to hold more than one reference, %s. Please give the one that belongs to this record.", w.quoted, strings.Join(names, " and "))
	if alsoOne {
		message = fmt.Sprintf("%s may be %d references, %s, or one, %s. Please give the one that belongs to this record.",
			w.quoted, len(names), strings.Join(names, " and "), one)
		names = append(names, one.String())
	}
	r, err := fault(TwoReferences, message, names...)
	return r, err, true
}

// ranges knows a block of squares, 45-46/81-82.
func ranges(w written, letters string, items []item) (Reading, error, bool) {
	if len(items) != 4 {
		return Reading{}, nil, false
	}
	var corners []string
	for _, pair := range [][2]int{{0, 2}, {1, 3}} {
		s, ok := parsePlain(letters + items[pair[0]].figures + items[pair[1]].figures)
		if !ok {
			return Reading{}, nil, false
		}
		corners = append(corners, s.String())
	}
	r, err := fault(TwoReferences, fmt.Sprintf("%s seems to be a block of squares, from %s to %s. Please give the one that belongs to this record.",
		w.quoted, corners[0], corners[1]), corners...)
	return r, err, true
}

// apartItems writes the figures and suffix of each reference in full; ok is
// false where the items are no such references.
func apartItems(items []item) (full []string, ok bool) {
	first, last := items[0], items[len(items)-1]
	if e, n, spaced := strings.Cut(last.spaced, " "); spaced && len(e) == len(n) && len(first.figures) == len(e) && first.suffix == "" {
		// Eastings with one northing: 45/46 81.
		for _, it := range items[:len(items)-1] {
			if len(it.figures) != len(e) || it.suffix != "" {
				return nil, false
			}
			full = append(full, it.figures+n)
		}
		return append(full, e+n), full[0] != e+n
	}
	k := len(first.figures)
	if k%2 == 1 || k == 0 || k > 10 {
		return nil, false
	}
	for _, it := range items {
		switch m := len(it.figures); {
		case m == 0 && first.suffix != "" && len(it.suffix) == len(first.suffix):
			full = append(full, first.figures+it.suffix)
		case m == k && len(it.suffix) == len(first.suffix):
			full = append(full, it.figures+it.suffix)
		case k >= 4 && m > 0 && m <= k/2 && first.suffix == "" && it.suffix == "":
			full = append(full, first.figures[:k-m]+it.figures)
		default:
			return nil, false
		}
	}
	for _, f := range full[1:] {
		if f != full[0] {
			return full, true
		}
	}
	return nil, false
}

// oneOfTwo takes two items for the easting and northing of one reference.
func oneOfTwo(letters string, items []item) (Square, bool) {
	if len(items) != 2 || items[0].suffix+items[1].suffix != "" || len(items[0].figures) != len(items[1].figures) {
		return Square{}, false
	}
	return parsePlain(letters + items[0].figures + items[1].figures)
}

// near reports whether two references of so many figures each lie so close
// together that they are likelier two neighbours than halves of one: within 3
// squares, or 1 of the large ones (common practice, no source).
func near(a, b int64, figures int) bool {
	power, reach := int64(1), int64(3)
	for range figures / 2 {
		power *= 10
	}
	switch figures {
	case 2:
		reach = 1
	case 6, 8, 10:
		reach = power / 20
	}
	east, north := a/power-b/power, a%power-b%power
	return a != b && max(east, -east, north, -north) <= reach
}
