package layout

import (
	"slices"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// overridden opens the blocks that the project file describes, and reports
// whether it describes any.
func (p *Plan) overridden() bool {
	var running facts
	done := false
	beside := map[string][]*block{} // blocks side by side that await their entry
	p.namesOfPage(&running)
	for i := range p.entries {
		e := &p.entries[i]
		if e.Page == string(kindNone) {
			p.blocks = append(p.blocks, &block{kind: kindNone, first: 1, why: "left out by the project file"})
			return true
		}
		if e.Headings == "" && e.Rows == "" && e.Page == "" {
			continue // only lines that change the automatic reading
		}
		key := e.Headings + "/" + e.Rows
		if waiting, ok := beside[key]; ok {
			if len(waiting) > 0 {
				waiting[0].entry = e
				beside[key] = waiting[1:]
			}
			continue
		}
		if opened := p.openEntry(&running, e, done); len(opened) > 0 {
			beside[key] = opened[1:]
			done = true
		}
	}
	return done
}

// openEntry opens the block of one entry at the rows it names.
func (p *Plan) openEntry(running *facts, e *Entry, later bool) []*block {
	pg := p.page
	rows := parseSpan(e.Rows)
	heads := parseSpan(e.Headings)
	if e.Headings == "" || strings.EqualFold(e.Headings, "none") {
		heads = span{}
	}
	if heads.from == 0 && rows.from == 0 {
		return nil
	}
	first := rows.from
	if first == 0 {
		first = heads.to + 1
	}
	h := head{from: pg.indexOf(heads.from), to: pg.indexOf(heads.to)}
	start := first
	if heads.from > 0 {
		start = min(first, heads.from)
	}
	if heads.from > 0 && h.from >= 0 && h.to >= 0 {
		for i := h.from; i <= h.to; i++ {
			if cols, species, ok := pg.tableAt(i, 0, pg.width-1); ok && len(cols) > len(h.cols) {
				h.cols, h.species, h.table = cols, species, true
			}
		}
		switch {
		case e.Page == string(kindList):
			h.table = false
		case !h.table && (e.Page == string(kindAcross) || e.Page == string(kindDown)):
			h.table, h.species = true, e.Page == string(kindDown)
			h.cols = pg.otherColumns(h, e)
			h.table = len(h.cols) > 0
		}
	}
	if heads.from > 0 && h.from >= 0 && e.Page == string(kindDown) {
		if side, ok := pg.transposed(h.from); ok && side.to == h.to {
			h = side
		}
	}
	if !later {
		p.preamble(running, 0, pg.indexFrom(start))
	}
	before := len(p.blocks)
	if h.from >= 0 && h.to >= 0 && heads.from > 0 {
		p.openBlocks(running, running.clone(), pg.indexFrom(start), h)
	} else if groups := pg.listsBeside(pg.indexFrom(start)); groups != nil && e.Page == string(kindList) {
		p.openBeside(groups, pg.indexFrom(start), running)
	} else {
		p.blocks = append(p.blocks, &block{kind: kindList, from: 0, to: pg.width - 1, facts: running.clone()})
	}
	for _, b := range p.blocks[before:] {
		b.first, b.last = first, rows.to
		if e.Page == string(kindDiary) {
			b.kind = kindDiary
		}
	}
	p.blocks[before].entry = e
	return p.blocks[before:]
}

// otherColumns are the headed columns that an entry does not name: those of
// the counts, in a table that the project file calls one.
func (p *page) otherColumns(h head, e *Entry) []int {
	var out []int
	for c := range p.width {
		headed := false
		for i := h.from; i <= h.to; i++ {
			headed = headed || p.rows[i].look(c) != 0
		}
		if _, named := e.column(notebook.ColumnName(c + 1)); headed && !named {
			out = append(out, c)
		}
	}
	return out
}

// entryFor finds the entry whose lines change an automatically found block.
func (p *Plan) entryFor(b *block) *Entry {
	if b.entry != nil {
		return b.entry
	}
	for i := range p.entries {
		if e := &p.entries[i]; e.Headings == "" && e.Rows == "" {
			return e
		}
	}
	return nil
}

// apply lets an entry's lines override what was decided.
func (e *Entry) apply(b *block) {
	// The site comes first: a new site takes the old one's reference away.
	keys := sortedKeys(e.Facts)
	slices.SortStableFunc(keys, func(a, b string) int {
		switch {
		case strings.EqualFold(trim(a), string(Site)):
			return -1
		case strings.EqualFold(trim(b), string(Site)):
			return 1
		}
		return 0
	})
	for _, k := range keys {
		key, text := strings.ToLower(trim(k)), trim(e.Facts[k])
		switch key {
		case "year":
			b.facts.setYear(text, FromProject, originWords(FromProject))
		case "month":
			b.facts.setMonth(text, FromProject, originWords(FromProject))
		default:
			if m, ok := meaningNamed(key); ok && !b.facts.says(m, text) {
				b.facts.set(Value{Meaning: m, Text: text, From: FromProject})
			}
		}
	}
	if e.CarryDown != nil {
		b.carry = map[Meaning]bool{}
		for _, name := range e.CarryDown {
			if m, ok := meaningNamed(strings.ToLower(trim(name))); ok && !isName(m) && m != Count {
				b.carry[m] = true
			}
		}
	}
	for _, s := range e.Skip {
		if sp := parseSpan(s); sp.from > 0 {
			b.skip = append(b.skip, sp)
		}
	}
}

// says reports whether the page states the same already, and takes its word
// for it: what the project file repeats needs no check.
func (f *facts) says(m Meaning, text string) bool {
	for i := range f.values {
		if v := &f.values[i]; v.Meaning == m && v.Text == text {
			if v.Doubt.State < reading.Held {
				v.Doubt = reading.Verdict{}
			}
			return true
		}
	}
	return false
}

// column returns what the entry says of a column.
func (e *Entry) column(letters string) (sense, bool) {
	for k, role := range e.Columns {
		if strings.EqualFold(trim(k), letters) {
			return roleNamed(role)
		}
	}
	return sense{}, false
}

// roleTrap is the role of a column that holds the counts of the trap that its
// heading names.
const (
	roleTrap = "count trap"
	partTrap = "trap"
)

// roleNamed reads the words of Entry.Columns.
func roleNamed(role string) (sense, bool) {
	role = strings.Join(strings.Fields(role), " ")
	low := strings.ToLower(role)
	for pt, name := range partNames {
		if low != name {
			continue
		}
		switch pt {
		case partDay, partMonth, partYear:
			return sense{meaning: Date, part: pt}, true
		case partEasting, partNorthing, partLetters, partFigures:
			return sense{meaning: GridRef, part: pt}, true
		case partGenus, partEpithet, partSubspecies:
			return sense{meaning: Taxon, part: pt}, true
		}
		return sense{meaning: Ignored, leave: leaveProject}, true
	}
	if low == roleTrap {
		return sense{meaning: Count, stage: partTrap}, true
	}
	if rest, ok := strings.CutPrefix(low, "count "); ok {
		s := sense{meaning: Count}
		for w := range strings.FieldsSeq(rest) {
			for _, x := range vocabulary[w] {
				if x.meaning == Count && (x.sex != "" || x.stage != "") {
					if x.sex != "" {
						s.sex = x.sex
					} else {
						s.stage = x.stage
					}
					break
				}
			}
		}
		return s, true
	}
	if strings.HasPrefix(low, "term ") {
		name := trim(role[5:])
		if t, ok := termNames[strings.ToLower(name)]; ok {
			name = t
		}
		return sense{meaning: Term, term: name}, true
	}
	if m, ok := meaningNamed(low); ok {
		s := sense{meaning: m}
		if m == Ignored {
			s.leave = leaveProject
		}
		return s, true
	}
	return sense{}, false
}

const leaveProject = "left out by the project file"

var meanings = [...]Meaning{Date, EndDate, Time, EndTime, Taxon, Scientific, Vernacular, Authorship, TaxonNumber, Group, Count, Sex, Stage, Status,
	Recorder, Determiner, Verifier, Site, GridRef, Latitude, Longitude, Uncertainty, ViceCounty, County, Country, Elevation, Habitat, Method,
	Effort, Weather, Temperature, Measurement, Specimen, Remarks, Certainty, Basis, RecordID, Term, Ignored}

// FactMeaning returns the meaning that a name in Entry.Facts has; a year or a
// month by itself has none.
func FactMeaning(name string) (Meaning, bool) {
	return meaningNamed(strings.ToLower(trim(name)))
}

// TermColumns are the terms that an entry gives the columns of a page of
// terms, by the columns' letters; empty for a column that is left out.
func (e *Entry) TermColumns() map[string]string {
	out := map[string]string{}
	for letters, role := range e.Columns {
		s, _ := roleNamed(role)
		out[strings.ToUpper(trim(letters))] = s.term
	}
	return out
}

func meaningNamed(s string) (Meaning, bool) {
	for _, m := range meanings {
		if string(m) == s {
			return m, true
		}
	}
	return "", false
}

// Check returns a sentence about the first line of the entry that cannot be
// understood, "" where there is none.
func (e *Entry) Check() string {
	for _, k := range sortedKeys(e.Columns) {
		if _, ok := roleNamed(e.Columns[k]); !ok {
			return "columns: " + k + " = “" + e.Columns[k] + "” is no meaning that a column can have. Write one of: " + meaningList() + "."
		}
	}
	for _, k := range sortedKeys(e.Facts) {
		if _, ok := meaningNamed(strings.ToLower(k)); !ok && k != "year" && k != "month" {
			return "facts: “" + k + "” is nothing that a page can state. Write one of: year, month, " + meaningList() + "."
		}
	}
	for _, k := range e.CarryDown {
		if m, ok := meaningNamed(strings.ToLower(k)); !ok || isName(m) || m == Count {
			return "carry_down: “" + k + "” cannot be carried down."
		}
	}
	switch e.Page {
	case "", string(kindList), string(kindAcross), string(kindDown), string(kindDiary), string(kindNone):
	case Terms:
		for _, k := range sortedKeys(e.Columns) {
			if s, _ := roleNamed(e.Columns[k]); s.meaning != Term && s.meaning != Ignored {
				return "columns: " + k + " = “" + e.Columns[k] + "”: on a page of terms a column is a term, such as \"term eventDate\", or \"ignored\"."
			}
		}
	default:
		return "page = “" + e.Page + "”: write list, nights across, nights down, diary, terms or skip."
	}
	for _, s := range append([]string{e.Headings, e.Rows}, e.Skip...) {
		if s != "" && !strings.EqualFold(s, "none") && parseSpan(s).from == 0 {
			return "“" + s + "” is no row. Write a number, or the first and last as in 4-20."
		}
	}
	return ""
}

func meaningList() string {
	var out []string
	for _, m := range meanings {
		out = append(out, string(m))
	}
	return strings.Join(out, ", ")
}

// parseSpan reads "4", "4-20" and "4-".
func parseSpan(s string) span {
	a, b, dash := strings.Cut(strings.ReplaceAll(trim(s), "–", "-"), "-")
	from, ok := isInt(trim(a))
	if !ok {
		return span{}
	}
	if !dash {
		return span{from, from}
	}
	to, _ := isInt(trim(b))
	return span{from, to}
}

// indexOf returns the index of a kept row by its number, -1 for none.
func (p *page) indexOf(number int) int {
	for i := range p.rows {
		if p.rows[i].number == number {
			return i
		}
	}
	return -1
}

// indexFrom returns the index of the first kept row at or after a number.
func (p *page) indexFrom(number int) int {
	for i := range p.rows {
		if p.rows[i].number >= number {
			return i
		}
	}
	return len(p.rows)
}
