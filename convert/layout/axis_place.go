package layout

import (
	"strings"

	"fieldfare/convert/reading"
)

// placesAcross reports whether a row over counts names places for certain:
// half of its texts are known, or hold words that places end in.
func (p *page) placesAcross(a *axis, r *keptRow) bool {
	n, places := 0, 0
	for i := range a.cols {
		if l := r.look(a.cols[i].col); l != 0 && a.cols[i].left == "" {
			n++
			if l.is(lookPlace|lookGrid) || isSection(r.text(a.cols[i].col)) {
				places++
			}
		}
	}
	return places*2 >= n
}

// askAcross asks about a word over counts that may be a place or a trap:
// “Front” and “Back”. Where the page names its site it is kept as a remark.
func (b *block) askAcross(v *Value) {
	page := b.facts.get(Site)
	if page == nil {
		page = b.facts.get(GridRef)
	}
	if page == nil {
		v.Doubt = v.Doubt.And(reading.QueryOf("place-or-trap", "“"+v.Text+"” stands over counts and is taken for the name of a place. If it is a trap or a method, say so above the columns: write “Trap” at their left.", v.Text))
		return
	}
	v.Meaning, v.Heading = Remarks, "over the counts"
	delete(b.axis.means, Site)
	v.Doubt = v.Doubt.And(reading.QueryOf("place-or-trap", "“"+v.Text+"” stands over counts. The page is of “"+page.Text+"”, so it is taken for a trap or a part of that place, and kept as a remark. If it is another place, write “Site” at the left of the columns.", v.Text))
}

// trapWord: a trap by kind or number, which may stand over counts: “MV”,
// “Actinic”, “Trap 2”.
func trapWord(text string) bool {
	low := strings.ToLower(text)
	if strings.Contains(low, "watt") || strings.Contains(low, "hour") || strings.Contains(low, "hrs") {
		return false
	}
	rest, isTrap := strings.CutPrefix(low, "trap")
	if isTrap {
		rest = trim(rest)
		return rest != "" && len(rest) <= 2
	}
	word := strings.Trim(firstWord(low), ".,")
	return methodWord(text) && word != "light" && word != "lamp" && word != "w" && word != "net"
}
