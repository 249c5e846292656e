package layout

import "strings"

// compassWords are sides of a place that may stand over counts; beside each
// other they are neither eastings nor northings.
var compassWords = wordSet("north south east west n s e w ne nw se sw north-east north-west south-east south-west northeast northwest southeast southwest centre center middle")

func compassWord(text string) bool { return compassWords[strings.ToLower(trim(text))] }

// compassAcross reports whether the sides of a place stand over counts: three
// of them at least, north or south and east or west among them.
func (p *page) compassAcross(r *keptRow) bool {
	n, along, across := 0, false, false
	for c := range r.looks {
		text := strings.ToLower(r.text(c))
		if !compassWords[text] {
			continue
		}
		n++
		along = along || text == "north" || text == "south" || text == "n" || text == "s"
		across = across || text == "east" || text == "west" || text == "e" || text == "w"
	}
	return n >= 3 && along && across
}

// squaresAcross reports whether a row names different squares, and else only
// words: "Species | TL4588 | TL4589".
func (p *page) squaresAcross(r *keptRow, from, to int) bool {
	seen := map[string]bool{}
	for c := from; c <= to && c < len(r.looks); c++ {
		switch l := r.looks[c]; {
		case l == 0:
		case l.is(lookGrid):
			if c == r.first || seen[r.text(c)] {
				return false
			}
			seen[r.text(c)] = true
		case l.is(lookDate | lookDay | lookInt | lookDecimal | lookTime | lookLong | lookKnownTaxon | lookBinomial):
			return false
		}
	}
	if len(seen) < 2 || r.first < from {
		return false
	}
	ms := headingSenses(r.text(r.first), false)
	return len(ms) > 0 && ms[0].weight >= weightExact-5 && isName(ms[0].meaning) || p.cornerTitle(r.text(r.first), r.looks[r.first])
}

// hoursAcross reports whether times of day stand side by side, and nothing else
// but a word before them: "Species | 21:00 | 22:00 | 23:00".
func hoursAcross(r *keptRow, from, to int) bool {
	seen := map[string]bool{}
	for c := from; c <= to && c < len(r.looks); c++ {
		switch l := r.looks[c]; {
		case l == 0, isTotalHeading(r.text(c)):
		case l.is(lookTime):
			if seen[r.text(c)] {
				return false
			}
			seen[r.text(c)] = true
		case c != r.first:
			return false
		}
	}
	return len(seen) >= 2
}
