package layout

import "fieldfare/convert/notebook"

// headsTable takes a trap or a place that stands over the names of a table, in
// a row above its last headings, for a fact of the whole table: "MV trap" over
// "Species".
func (b *block) headsTable(text string, r *keptRow, c int) bool {
	if ms := headingSenses(text, false); len(ms) > 0 && ms[0].weight >= weightExact-5 {
		return false
	}
	v := Value{Text: text, Kind: notebook.Text, Ref: cellRef(c, r.number), From: FromHeading}
	switch {
	case trapWord(text) || methodIn(text) == text:
		v.Meaning = Method
	case r.look(c).is(lookPlace):
		v.Meaning = Site
	default:
		return false
	}
	if !b.facts.has(v.Meaning) {
		b.facts.set(v)
	}
	return true
}
