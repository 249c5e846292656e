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
