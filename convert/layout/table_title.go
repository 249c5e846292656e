package layout

import "fieldfare/convert/notebook"

// yearsAcross reports whether all columns of counts are headed by years,
// beside each other.
func (p *page) yearsAcross(r *keptRow, cols []int) bool {
	years := 0
	for i, c := range cols {
		if i > 0 && c != cols[i-1]+1 {
			return false // months below may stand under the gaps
		}
		if r.look(c).is(lookYear) {
			years++
		} else if !isTotalHeading(r.text(c)) {
			return false
		}
	}
	return years >= 2
}

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
		for _, part := range titleParts(text) { // "First sightings - Tinker's Row"
			if name := upToTitleWord(part); looksPlace(name) && capitals(name) > 1 {
				v.Text, v.Verbatim = name, text
			}
		}
	default:
		return false
	}
	if !b.facts.has(v.Meaning) {
		b.facts.set(v)
	}
	return true
}
