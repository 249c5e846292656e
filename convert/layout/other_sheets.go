package layout

import (
	"errors"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// Bounds on what is looked at of the other sheets of a workbook.
const (
	otherSheets = 12
	coverRows   = 25
	keyRows     = 2000
)

var errSeenEnough = errors.New("seen enough")

// peek reads the head of another sheet; nil where it is longer than wanted.
func (p *Plan) peek(s notebook.Sheet, most int) *page {
	pg := &page{file: s.File(), sheet: s.Name(), complete: true, eyes: p.page.eyes, hiddenColumns: map[int]bool{}}
	texts := 0
	err := s.Walk(func(r *notebook.Row) error {
		pg.keep(r)
		if pg.rows[len(pg.rows)-1].n > 0 {
			texts++
		}
		if texts > most || len(pg.rows) > 2*keyRows {
			return errSeenEnough
		}
		return nil
	})
	if err != nil || texts == 0 {
		return nil
	}
	return pg
}

// readOthers looks for what other sheets of the workbook say of this one: a
// cover with the year, the place and the recorder, and a key to codes.
func (p *Plan) readOthers() {
	for i, s := range p.opts.Others {
		if i == otherSheets {
			break
		}
		if p.coverFrom == "" {
			if pg := p.peek(s, coverRows); pg != nil && pg.isCover() {
				p.takeCover(pg)
			}
		}
	}
	codes := p.page.codesUnderHeading()
	for i, s := range p.opts.Others {
		if len(codes) == 0 || i == otherSheets {
			break
		}
		if pg := p.peek(s, keyRows); pg != nil {
			p.takeKey(pg, codes)
		}
	}
}

// isCover reports whether a sheet holds a few lines about the workbook and no
// records.
func (p *page) isCover() bool {
	for i := range p.rows {
		r := &p.rows[i]
		if r.n > 3 || r.count(lookInt|lookTick, 0, len(r.looks)) > 0 && r.count(lookTaxon, 0, len(r.looks)) > 0 {
			return false
		}
		if headings, _ := p.headingScore(r); headings {
			return false
		}
		for c := range r.looks {
			if r.looks[c].is(lookKnownTaxon|lookBinomial) && r.single() < 0 {
				return false
			}
		}
	}
	return true
}

func (p *Plan) takeCover(pg *page) {
	var f facts
	for i := range pg.rows {
		if r := &pg.rows[i]; r.n > 0 && !r.struck {
			f.read(pg, r, FromCover)
		}
	}
	kept := f.values[:0]
	for _, v := range f.values {
		if v.Meaning == Site || v.Meaning == GridRef || v.Meaning == Recorder || v.Meaning == Method || v.Meaning == ViceCounty {
			v.Ref = notebook.Ref{}
			kept = append(kept, v)
		}
	}
	f.values = kept
	if len(f.values) > 0 || f.year > 0 {
		p.cover, p.coverFrom = f, pg.sheet
	}
}

// yearOfCover takes the year of the cover where the page has none anywhere.
func (p *Plan) yearOfCover(f *facts) {
	if p.cover.year == 0 || f.year > 0 || !p.page.headsNoYear(len(p.page.rows)) {
		return
	}
	f.setYear(itoa(p.cover.year), FromCover, "the sheet “"+p.coverFrom+"”")
	p.askCover()
}

// factsOfCover adds what the cover says, and neither the page nor its rows do.
func (p *Plan) factsOfCover(b *block) {
	taken := false
	for _, v := range p.cover.values {
		place := v.Meaning == Site || v.Meaning == GridRef
		if b.facts.has(v.Meaning) && !place || b.find(v.Meaning, whole) != nil || b.axis != nil && b.axis.means[v.Meaning] || place && !taken && (b.placed() || b.facts.has(Site) || b.facts.has(GridRef)) {
			continue
		}
		b.facts.values = append(b.facts.values, v)
		taken = taken || place
		p.askCover()
	}
}

// askCover asks once about what was taken from the cover.
func (p *Plan) askCover() {
	for i := range p.notes {
		if p.notes[i].Code == "facts-of-cover" {
			return
		}
	}
	p.notes = append(p.notes, Note{Verdict: reading.QueryOf("facts-of-cover", "Sheets that do not say it themselves were taken to be of the year, the place and the recorder that the sheet “"+
		p.coverFrom+"” names. Please check that it speaks of all of them."), Ref: notebook.Ref{Col: 1, Row: 1}, Text: p.coverFrom})
}

// codesUnderHeading gathers short codes that stand where names or numbers of
// taxa should.
func (p *page) codesUnderHeading() map[string]bool {
	codes := map[string]bool{}
	for i := range min(len(p.rows), 40) {
		r := &p.rows[i]
		if r.headsNames() > 1 {
			return nil // the names stand beside the codes
		}
		for c := range r.looks {
			if r.looks[c] == 0 || len(r.cells[c].Text) > 24 {
				continue
			}
			ms := headingSenses(r.text(c), false)
			if len(ms) == 0 || ms[0].weight < weightExact-5 || !isName(ms[0].meaning) {
				continue
			}
			found, n := map[string]bool{}, 0
			for j := i + 1; j < len(p.rows); j++ {
				l := p.rows[j].look(c)
				if l == 0 || l.is(lookDitto) {
					continue
				}
				if text := p.rows[j].text(c); !isCode(text) || l.is(lookKnownTaxon|lookInt) {
					n = -1
					break
				}
				found[p.rows[j].text(c)] = true
				n++
			}
			if n >= 2 {
				for k := range found {
					codes[k] = true
				}
			}
		}
	}
	return codes
}

// headsNames counts the headings of a row that are of names or their codes.
func (r *keptRow) headsNames() int {
	n := 0
	for c := range r.looks {
		if r.looks[c] == 0 || len(r.cells[c].Text) > 24 {
			continue
		}
		if ms := headingSenses(r.text(c), false); len(ms) > 0 && ms[0].weight >= weightExact-5 && isName(ms[0].meaning) {
			n++
		}
	}
	return n
}

// isCode: a short word of letters, with figures behind it or not: "MI", "Aesmix",
// "HD2".
func isCode(s string) bool {
	if len(s) < 1 || len(s) > 8 || !isLetter(s[0]) {
		return false
	}
	for i := 0; i < len(s); i++ {
		if !isLetter(s[i]) && !isDigit(s[i]) && s[i] != '.' && s[i] != '-' {
			return false
		}
	}
	return true
}

// takeKey takes what another sheet says that codes of this one stand for, where
// it explains most of them.
func (p *Plan) takeKey(pg *page, codes map[string]bool) {
	for code := 0; code < min(pg.width, 12); code++ {
		found := map[string]string{}
		for i := range pg.rows {
			r := &pg.rows[i]
			key := r.text(code)
			if !codes[key] {
				continue
			}
			if found[key] != "" {
				clear(found) // a key has each code once
				break
			}
			name := ""
			for c := range r.looks {
				if t := r.text(c); c != code && r.looks[c] != 0 && !r.looks[c].is(lookInt|lookDate|lookRealDate|lookGrid|lookGroup|lookPlace) && len(t) > len(key) && strings.ContainsAny(t, "aeiouy") &&
					(name == "" || r.looks[c].is(lookBinomial)) {
					name = t
				}
			}
			if name != "" {
				found[key] = name
			}
		}
		if len(found)*5 >= len(codes)*4 && len(found) > 0 {
			for k, v := range found {
				p.page.legend[k] = v
			}
			p.notes = append(p.notes, Note{Verdict: reading.QueryOf("codes-from-key", "Codes of species were written out by the sheet “"+pg.sheet+"”. Please look over a few of them."),
				Ref: notebook.Ref{Col: 1, Row: 1}, Text: pg.sheet})
			return
		}
	}
}
