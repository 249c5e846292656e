package layout

import (
	"path/filepath"
	"strings"

	"fieldfare/convert/reading"
)

// siteFromSheet takes the sheet's name for the site where nothing else names
// one and the name is no word of the trade.
func (p *Plan) siteFromSheet(b *block) {
	name := strings.Join(strings.Fields(cutYear(strings.ReplaceAll(trim(p.page.sheet), "_", " "))), " ")
	if len(name) < 2 || b.allPlaced() || isGenericSheet(p.page.sheet) || name[0] < 'A' || name[0] > 'Z' || strings.Count(name, " ") > 4 || b.facts.has(GridRef) && b.facts.get(GridRef).From == FromSheet {
		p.siteFromFile(b)
		return
	}
	for w := range strings.FieldsSeq(strings.ToLower(name)) {
		w = strings.Trim(w, ".,()&-")
		if titleWords[w] || genericWords[w] || monthOf(w) > 0 || strings.ContainsAny(w, "0123456789") {
			p.siteFromFile(b)
			return
		}
		if ss, ok := vocabulary[w]; ok && len(ss) > 0 && !placeWords[w] {
			return
		}
	}
	if isInitials(name) {
		return
	}
	v := Value{Meaning: Site, Text: name, From: FromSheet}
	if !p.opts.Probe.KnownPlace(name) {
		v.Doubt = reading.QueryOf("site-from-sheet-name", "The page names no site, so the sheet's name “"+name+"” was taken. Please check it.", name)
	}
	b.facts.set(v)
}

// allPlaced reports whether every row has a reference of its own: no name of a
// site need be made up.
func (b *block) allPlaced() bool {
	for _, m := range []Meaning{GridRef, Latitude} {
		if c := b.find(m, whole); c != nil && c.stats.n > 0 && b.filled[c.col] >= 0.999 {
			return true
		}
	}
	return false
}

// genericWords name sheets and files, not places.
var genericWords = wordSet("data sheet table tables test sample samples example input output total header headings heading section blank blanks merged ditto " +
	"rows row column columns date dates grid ref refs split joined cells cell file notebook notebooks copy final new old draft raw clean export import mixed facts fact title titles note " +
	"notes two three side one several many carry down across first second list lists sheet1 main master all misc other others draft upload db database results counts count day days names name " +
	"macros micros macro micro moths vice county hidden damage damaged sorted autofill wide long page pages")

// siteFromFile takes the file's name for the site where it is a known place,
// or words that names of places end in, and no others.
func (p *Plan) siteFromFile(b *block) {
	base := filepath.Base(strings.ReplaceAll(p.page.file, `\`, "/"))
	base = strings.TrimSuffix(base, filepath.Ext(base))
	name := trim(cutYear(strings.Join(strings.FieldsFunc(base, func(r rune) bool { return r == '_' || r == ' ' || r == '+' }), " ")))
	if p.opts.Probe.KnownPlace(name) {
		b.facts.set(Value{Meaning: Site, Text: name, From: FromFile})
		return
	}
	place, _ := placeInTitle(p.page, name)
	if place == "" || capitals(place) < 2 {
		return
	}
	for w := range strings.FieldsSeq(strings.ToLower(place)) {
		if genericWords[w] && w != "row" {
			return
		}
	}
	b.facts.set(Value{Meaning: Site, Text: place, From: FromFile,
		Doubt: reading.QueryOf("site-from-file-name", "The page names no site, so “"+place+"” was taken from the file's name. Please check it.", place)})
}

// yearFromFile takes the year that the file's name or the caller states.
func (p *Plan) yearFromFile(f *facts) {
	base := filepath.Base(strings.ReplaceAll(p.page.file, `\`, "/"))
	base = strings.TrimSuffix(base, filepath.Ext(base))
	if y := yearIn(base); y > 0 {
		f.year, f.yearFrom, f.yearSaid = y, FromFile, originWords(FromFile)
	} else if y := p.opts.FileYear; y > 0 {
		f.year, f.yearFrom, f.yearSaid = y, FromFile, originWords(FromFile)
	}
}

// empty reports whether the entry says nothing about the reading of the page.
func (e *Entry) empty() bool {
	return e.Page == "" && e.Headings == "" && e.Rows == "" && len(e.Columns) == 0 && len(e.Facts) == 0 && e.CarryDown == nil && len(e.Skip) == 0
}
