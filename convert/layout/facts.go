package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// facts are what a page says once for all its rows.
type facts struct {
	values []Value
	// Year and month complete dates that lack them; 0 is unknown.
	year, month         int
	yearFrom, monthFrom Origin
	yearSaid, monthSaid string // where: "the title", "the sheet's name"
	// winter is the first of the two years of a page about one winter.
	winter int
}

func (f *facts) has(m Meaning) bool {
	for i := range f.values {
		if f.values[i].Meaning == m {
			return true
		}
	}
	return false
}

func (f *facts) get(m Meaning) *Value {
	for i := range f.values {
		if f.values[i].Meaning == m {
			return &f.values[i]
		}
	}
	return nil
}

// set adds a value, in place of one of the same meaning. A new site takes the
// old one's grid reference with it; a reference just above the first site is
// its own.
func (f *facts) set(v Value) {
	if v.Text = trim(strings.Trim(v.Text, " \t,;|")); v.Text == "" {
		return
	}
	if g := f.get(GridRef); v.Meaning == Site && g != nil && (f.has(Site) || g.From != v.From || v.Ref.Row-g.Ref.Row > 6) {
		f.drop(GridRef)
	}
	if !manyAllowed[v.Meaning] || v.Meaning == Group {
		f.drop(v.Meaning)
	}
	f.values = append(f.values, v)
}

// join adds what other facts say, in place of its own.
func (f *facts) join(g *facts) {
	for _, v := range g.values {
		f.set(v)
	}
	if g.year > 0 {
		f.year, f.yearFrom, f.yearSaid = g.year, g.yearFrom, g.yearSaid
	}
	if g.month > 0 {
		f.month, f.monthFrom, f.monthSaid = g.month, g.monthFrom, g.monthSaid
	}
}

func (f *facts) drop(m Meaning) {
	out := f.values[:0]
	for _, v := range f.values {
		if v.Meaning != m {
			out = append(out, v)
		}
	}
	f.values = out
}

func (f *facts) clone() facts {
	g := *f
	g.values = append([]Value(nil), f.values...)
	return g
}

// manyAllowed are meanings of which a draft may have several values.
var manyAllowed = map[Meaning]bool{Remarks: true, Measurement: true, Term: true, Weather: true, Temperature: true,
	Specimen: true, Method: true, Effort: true, Group: true, Count: true, Habitat: true, Ignored: true}

// factMeanings are those that a page may state for all its rows.
var factMeanings = map[Meaning]bool{Date: true, Recorder: true, Determiner: true, Verifier: true, Site: true, GridRef: true,
	Latitude: true, Longitude: true, ViceCounty: true, County: true, Country: true, Elevation: true, Habitat: true, Method: true,
	Effort: true, Weather: true, Temperature: true, Time: true, EndTime: true, Group: true, Stage: true, EndDate: true, Uncertainty: true, Taxon: true, Scientific: true, Vernacular: true}

// read takes the facts of one line, reports which cells said any, and whether
// the line is a title or note instead.
func (f *facts) read(p *page, r *keptRow, from Origin) (used []bool) {
	used = make([]bool, len(r.cells))
	nights := r.count(lookDate|lookDay|lookRealDate, 0, len(r.looks)) > 2 // no one of them is the date of the page
	for c := 0; c < len(r.cells); c++ {
		if nights && r.looks[c].is(lookDate|lookDay|lookRealDate) {
			continue
		}
		if r.looks[c] == 0 || used[c] || r.cells[c].Spread {
			if c > 0 && r.cells[c].Spread && used[c-1] {
				used[c] = true
			}
			continue
		}
		text := r.text(c)
		ref := notebook.Ref{Col: c + 1, Row: r.number}
		if p.saysBands(text) {
			used[c] = true
			continue
		}
		// A label with its value in the next cell with text.
		if s, ok := labelOf(text); ok {
			next := c + 1
			for next < len(r.cells) && (r.looks[next] == 0 || r.cells[next].Spread && r.text(next) == text) {
				next++
			}
			marked := r.looks[c].is(lookMarked)
			if !marked && (!sureLabel(text) || valueWords[normHeading(text)] && normHeading(text) != "trap") {
				next = len(r.cells)
			}
			if nights && next < len(r.cells) && r.looks[next].is(lookDate|lookDay|lookRealDate) {
				continue
			}
			if next < len(r.cells) && (marked || !labelled(r.text(next), s)) {
				f.add(p, s, &r.cells[next], r.text(next), text, notebook.Ref{Col: next + 1, Row: r.number}, from)
				for i := c; i <= next; i++ {
					used[i] = true
				}
				c = next
				continue
			}
			if marked {
				continue // a label left empty
			}
		}
		if f.readText(p, text, ref, from, &r.cells[c]) || f.heldFor(r, c, Value{Ref: ref, From: from}) {
			used[c] = true
			for next := c + 1; next < len(r.cells) && r.looks[next] != 0 && f.goesOn(text, r.text(next), ref); next++ {
				used[next] = true
			}
		}
	}
	return used
}

// labelled reports whether a text beside a label is a label itself, of
// something else, and not its value.
func labelled(text string, s sense) bool {
	ss := vocabulary[normHeading(text)]
	return len(ss) > 0 && ss[0].meaning != s.meaning && factMeanings[ss[0].meaning]
}

// labelOf returns what a label means: a phrase of the vocabulary that a page
// may state once.
func labelOf(text string) (sense, bool) {
	text = strings.TrimRight(text, " :=-–")
	if len(text) > 40 {
		return sense{}, false
	}
	ms := headingSenses(text, false)
	for _, m := range ms {
		if m.weight < weightMisspelt-stepDown {
			break
		}
		if m.part == partYear || m.part == partMonth || m.part == whole && factMeanings[m.meaning] {
			return m.sense, true
		}
	}
	if len(ms) > 0 && ms[0].weight >= weightExact-5 {
		switch ms[0].meaning {
		case Remarks:
			return ms[0].sense, true
		}
	}
	return sense{}, false
}

// add takes a labelled value.
func (f *facts) add(p *page, s sense, cell *notebook.Cell, text, label string, ref notebook.Ref, from Origin) {
	said := trim(text)
	text, doubt := tidy(said)
	v := Value{Meaning: s.meaning, Text: text, Heading: strings.TrimRight(label, " :=-"), Ref: ref, From: from, Doubt: doubt}
	if cell != nil && trim(cell.Text) == text {
		v.Kind, v.Raw = cell.Kind, cell.Raw
	}
	if doubt.State != reading.Fair {
		v.Verbatim = said
	}
	if s.meaning == Site && methodWord(text) && hasSense(label, Method) {
		s.meaning, v.Meaning = Method, Method // "Trap: 125W MV"
	}
	switch {
	case s.part == partYear:
		f.setYear(text, from, "the line “"+label+"”")
	case s.part == partMonth:
		f.setMonth(text, from, "the line “"+label+"”")
	case s.meaning == Date && (cell == nil || cell.Kind != notebook.Date) && scanDate(text) == noDate && !strings.ContainsAny(text, "0123456789"):
	case s.meaning == Date && (cell == nil || cell.Kind != notebook.Date):
		f.date(v)
	case isName(s.meaning):
		if p.eyes.lookText(text).is(lookTaxon) {
			v.Meaning = Taxon
			f.set(v)
		}
	case s.meaning == Remarks: // a note about the page, not about each record
	case s.meaning == Recorder || s.meaning == Determiner:
		if at := strings.IndexAny(text, "0123456789"); at > 0 { // "Bea Wenlock, 14 Aug 2020, 22:00-23:30"
			if comma := strings.LastIndexAny(text[:at], ",;"); comma > 0 {
				if rest := trim(text[comma+1:]); dateStarts(rest) {
					f.readText(p, rest, ref, from, nil)
					v.Verbatim, text = text, trim(text[:comma])
					v.Text = text
				}
			}
		}
		who, place := personAndPlace(text)
		if place != "" && !f.has(Site) {
			w := v
			w.Meaning, w.Text, w.Verbatim, w.Heading = Site, place, text, ""
			if a, b := gridRefIn(place); a >= 0 {
				f.siteAndGrid(w, a, b)
			} else {
				f.set(w)
			}
			v.Text, v.Verbatim = who, text
		}
		f.set(v)
	case s.meaning == Site:
		if a, b := gridRefIn(text); a >= 0 {
			f.siteAndGrid(v, a, b)
			return
		}
		f.set(v)
	default:
		f.set(v)
	}
}

// hasSense reports whether a label may mean m.
func hasSense(label string, m Meaning) bool {
	for _, x := range headingSenses(strings.TrimRight(label, " :=-–"), false) {
		if x.meaning == m {
			return true
		}
	}
	return false
}

// siteAndGrid parts "Tinker's Row TL 453 812".
func (f *facts) siteAndGrid(v Value, a, b int) {
	text := v.Text
	site := trim(strings.Trim(text[:a]+" "+trim(text[b:]), " ,;-–()[]|:"))
	site = trim(strings.TrimSuffix(strings.TrimSuffix(site, "()"), "grid ref"))
	if site != "" {
		w := v
		w.Meaning, w.Text, w.Verbatim = Site, site, text
		f.set(w)
	}
	w := v
	w.Meaning, w.Text, w.Verbatim = GridRef, text[a:b], text
	f.set(w)
}

// date takes a date of the whole page: in full it is every row's, a month or a
// year completes the rows' own.
func (f *facts) date(v Value) {
	switch scanDate(v.Text) {
	case yearOnly:
		f.setYear(v.Text, v.From, originWords(v.From))
	case monthOnly, monthYear:
		f.setMonth(v.Text, v.From, originWords(v.From))
	default:
		f.set(v)
	}
}

func originWords(o Origin) string {
	switch o {
	case FromSheet:
		return "the sheet's name"
	case FromFile:
		return "the file's name"
	case FromSection:
		return "the line above"
	case FromHeading:
		return "the heading"
	case FromProject:
		return "the project file"
	}
	return "the top of the page"
}

func (f *facts) setYear(text string, from Origin, said string) {
	if y := yearIn(text); y > 0 {
		f.year, f.yearFrom, f.yearSaid = y, from, said
	}
}

// setMonth takes "June" or "June 2014".
func (f *facts) setMonth(text string, from Origin, said string) {
	if m := monthIn(text); m > 0 {
		f.month, f.monthFrom, f.monthSaid = m, from, said
	}
	f.setYear(text, from, said)
}

func monthIn(text string) int {
	if n, ok := isInt(text); ok && n >= 1 && n <= 12 {
		return n
	}
	for w := range strings.FieldsFuncSeq(text, func(r rune) bool { return r < 0x80 && !isLetter(byte(r)) }) {
		if m := monthOf(w); m > 0 && len(w) >= 3 {
			return m
		}
	}
	return 0
}

// yearIn returns the only plausible year of four figures in a text, else 0.
func yearIn(text string) int {
	found := 0
	for i := 0; i < len(text); {
		if !isDigit(text[i]) {
			i++
			continue
		}
		j, n := i, 0
		for j < len(text) && isDigit(text[j]) && j-i < 9 {
			n = n*10 + int(text[j]-'0')
			j++
		}
		if j-i == 4 && n >= 1800 && n <= 2100 && !(i > 0 && isLetter(text[i-1]) && i > 1 && isLetter(text[i-2]) && (i < 3 || !isLetter(text[i-3])) && text[i-1] < 'a') {
			if found != 0 && found != n {
				return 0
			}
			found = n
		} else if j-i < 4 && found != 0 && i > 0 && (text[i-1] == '/' || text[i-1] == '-') && j-i == 2 && i >= 5 && isDigit(text[i-2]) {
			return 0 // 2013-14, 2013/4
		}
		i = j
	}
	return found
}
