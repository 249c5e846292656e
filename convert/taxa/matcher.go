package taxa

import (
	"fmt"
	"sort"
	"strings"

	"fieldfare/convert/reading"
)

// Written is what a page gives for the name of one taxon; any part may be
// empty.
type Written struct {
	// Name is a cell that may hold a name of any kind, with notes and numbers.
	Name string
	// Scientific, Vernacular, Authorship and Number are cells of columns of
	// their own.
	Scientific, Vernacular, Authorship, Number string
}

// Context is what the page and the project know beside the name.
type Context struct {
	// Genus is the genus that stands above on the page, for "N. pronuba".
	Genus string
	// Group is what the page or the project is about: "moths", "Odonata".
	Group string
	// Month is the month of the record, 1 to 12, or 0.
	Month int
	// OnPage and AtSite report whether a taxon is on the page already, or has
	// been recorded at the site; nil where that is not known.
	OnPage, AtSite func(*Taxon) bool
}

// Reading is what a name was read as.
type Reading struct {
	reading.Verdict
	// Taxon is the accepted taxon, of the rank that is certain; nil where the name is held.
	Taxon *Taxon
	// Qualifier is the identificationQualifier: "cf. pronuba", "sp.", "agg.".
	Qualifier string
	// Remarks is the identificationRemarks: that a synonym, a spelling or a
	// form was resolved.
	Remarks string
	// Rest is what stood beside the name: notes, counts, sex, as text.
	Rest string
	// Possible are the taxa behind Candidates, in their order.
	Possible []*Taxon
}

// Matcher reads names against an index. It keeps what it has read, so each
// worker needs one of its own.
type Matcher struct {
	ix     *Index
	cache  map[cacheKey]*cached
	groups map[string]group
}

type cacheKey struct {
	Written
	genus, group string
}

// cached is a reading before the month, page and site are looked at.
type cached struct {
	reading Reading
	cands   []int32
	// unweighed is the reading with nothing known that speaks for a candidate.
	unweighed *Reading
}

// cacheSize bounds a Matcher's memory; a full cache is begun anew.
const cacheSize = 1 << 14

// NewMatcher returns a Matcher for one worker.
func (ix *Index) NewMatcher() *Matcher {
	return &Matcher{ix: ix, cache: make(map[cacheKey]*cached), groups: map[string]group{}}
}

// Match reads a name. The same name in the same context is always read the
// same way.
func (m *Matcher) Match(w Written, c Context) Reading {
	if t := m.plain(&w, c.Group); t != nil {
		return Reading{Taxon: t}
	}
	k := cacheKey{w, c.Genus, c.Group}
	found, there := m.cache[k]
	if !there {
		if len(m.cache) >= cacheSize {
			clear(m.cache)
		}
		found = m.read(w, c, nil)
		m.cache[k] = found
	}
	if len(found.cands) < 2 {
		return found.reading
	}
	if c.Month == 0 && c.OnPage == nil && c.AtSite == nil {
		if found.unweighed == nil {
			r := m.weigh(found, c)
			found.unweighed = &r
		}
		return *found.unweighed
	}
	return m.weigh(found, c)
}

// plain finds a name that is spelt as on the list and stands for one taxon,
// with nothing to say about it, without the cache; else it returns nil.
func (m *Matcher) plain(w *Written, group string) *Taxon {
	s := w.Name
	if s == "" {
		s = w.Scientific
	} else if w.Scientific != "" {
		return nil
	}
	if s == "" || w.Vernacular != "" || w.Authorship != "" || w.Number != "" || len(s) > maxKey {
		return nil
	}
	var buf [3 * maxKey]byte
	k, ok := appendPlainKey(buf[:0], s)
	if !ok || s[0] >= 'a' && selfDoubting[s] {
		return nil
	}
	switch found := m.ix.keys.find(k); {
	case found == nil, found.plain == none:
		return nil
	case found.plain >= 0:
		return m.ix.taxa[found.plain]
	case group == "":
		return m.ix.taxa[onlyUngrouped(found.plain)]
	}
	return nil
}

// Explain reads a name and tells the steps, one sentence each.
func (m *Matcher) Explain(w Written, c Context) (Reading, []string) {
	var steps []string
	found := m.read(w, c, func(format string, args ...any) {
		s := fmt.Sprintf(format, args...)
		if len(steps) == 0 || steps[len(steps)-1] != s {
			steps = append(steps, s)
		}
	})
	if len(found.cands) < 2 {
		return found.reading, steps
	}
	return m.weigh(found, c), steps
}

func (m *Matcher) read(w Written, c Context, trace func(string, ...any)) *cached {
	g, there := m.groups[c.Group]
	if !there {
		g = groupOf(c.Group, m.ix.isHigher)
		m.groups[c.Group] = g
	}
	r := resolver{ix: m.ix, group: g, groupText: c.Group, trace: trace}
	if c.Genus != "" {
		r.genus = key(strings.Fields(c.Genus + " .")[0])
	}
	r.author = parseAuthorship(w.Authorship)
	o := r.readWritten(w)
	return m.finished(&o)
}

// isHigher reports whether a word is a higher taxon of the lists.
func (ix *Index) isHigher(name string) bool {
	for _, rank := range higherRanks {
		if len(ix.higher[identity{rank, name}]) > 0 {
			return true
		}
	}
	return false
}

// longestName is how many bytes a text may have that is searched for names
// (chosen by us): where each part of it is tried with each other, a page of text
// would take minutes.
const longestName = 2000

// readWritten reads every cell that is filled and joins them.
func (r *resolver) readWritten(w Written) outcome {
	var texts []string
	for _, s := range [...]string{w.Scientific, w.Name, w.Vernacular} {
		if s = strings.TrimSpace(s); s != "" {
			texts = append(texts, s)
		}
	}
	number := strings.TrimSpace(w.Number)
	if len(texts) == 0 {
		if number == "" {
			return held(CodeNoName, "No name is given.")
		}
		if n, there := r.ix.number(number); there {
			return r.takeNumber(n, number)
		}
		return held(CodeNotListed, "There is no name, and the number %s is not on the list.", quoted(number))
	}
	for _, text := range texts {
		if len(text) > longestName {
			return held(CodeNotListed, "%s is far longer than a name. Write the name alone, and the rest under remarks.", quoted(text))
		}
	}
	o := r.readText(texts[0])
	for _, text := range texts[1:] {
		o = r.joinCells(o, r.readText(text), texts[0], text)
	}
	if !r.author.empty() && o.taxon != none {
		r.checkAuthor(&o, r.author, w.Authorship)
	}
	if number != "" {
		if n, there := r.ix.number(number); there {
			o = r.withNumber(o, n, number, texts[0])
		} else if len(r.ix.numbers.exact) > 0 && o.taxon != none {
			o.and(query(CodeNumberListed, "%s was read as %s; the number %s beside it is not on the list.", quoted(texts[0]), r.ix.taxa[o.taxon], quoted(number)))
		}
	}
	return o
}

// joinCells weighs the names of two cells of one row.
func (r *resolver) joinCells(a, b outcome, textA, textB string) outcome {
	if b.verdict.Code == CodeNoName {
		return a
	}
	if a.verdict.Code == CodeNoName {
		return b
	}
	both := quoted(textA) + " and " + quoted(textB)
	has := func(list []int32, t int32) bool {
		for _, c := range list {
			if c == t {
				return true
			}
		}
		return false
	}
	switch {
	case a.taxon != none && b.taxon != none:
		if a.taxon == b.taxon || r.within(a.taxon, b.taxon) {
			r.step("Both cells name %s.", r.ix.taxa[a.taxon])
			if b.state() < a.state() && a.taxon == b.taxon && a.qualifier == "" {
				b.rest = append(a.rest, b.rest...)
				return b
			}
			if b.qualifier != "" && a.qualifier == "" {
				a.qualifier = b.qualifier
			}
			return a
		}
		if r.within(b.taxon, a.taxon) || b.qualifier == "" && a.qualifier != "" && r.ix.above(r.ix.taxa[b.taxon], r.ix.taxa[a.taxon].Rank) == a.taxon {
			return a
		}
		if b.qualifier != "" && r.ix.above(r.ix.taxa[a.taxon], r.ix.taxa[b.taxon].Rank) == b.taxon {
			return b
		}
		o := held(CodeNames, "%s are not the same taxon. Say which is right.", both)
		o.cands = []int32{a.taxon, b.taxon}
		return o
	case a.taxon != none:
		return r.oneRead(a, b, textA, textB, has(b.cands, a.taxon))
	case b.taxon != none:
		return r.oneRead(b, a, textB, textA, has(a.cands, b.taxon))
	}
	for _, c := range a.cands {
		if has(b.cands, c) {
			a.cands = append([]int32{c}, a.cands...)
			break
		}
	}
	return a
}

// oneRead: one cell is read, the other is not.
func (r *resolver) oneRead(o, other outcome, text, unread string, close bool) outcome {
	t := r.ix.taxa[o.taxon]
	switch {
	case close && other.verdict.Code == CodeAmbiguous:
		return o
	case close:
		r.step("%s is close to the same taxon's other name.", quoted(unread))
		o.remark("The other name was written %s.", unread)
		return o
	case t.Vernacular == "" && !r.ix.namesLike(unread):
		return o // the list has no vernacular names to compare with
	}
	o.and(query(CodeOtherName, "%s was read as %s, but the name beside it, %s, was not found. Say which is right.", quoted(text), t, quoted(unread)))
	return o
}

// namesLike: the text looks scientific, so that the list should have it.
func (ix *Index) namesLike(s string) bool {
	n := splitName(s)
	return n.epithet != "" && latinLook(key(n.epithet)) && !ix.isVernacularWord(key(n.genus))
}

// finished makes the reading of an outcome.
func (m *Matcher) finished(o *outcome) *cached {
	rd := Reading{Verdict: o.verdict, Qualifier: o.qualifier, Remarks: strings.Join(o.remarks, " "), Rest: strings.Join(o.rest, "; ")}
	if o.taxon != none {
		rd.Taxon = m.ix.taxa[o.taxon]
	} else if rd.State < reading.Held {
		rd.State = reading.Held
	}
	var cands []int32
	for _, c := range o.cands {
		if !containsID(cands, c) {
			cands = append(cands, c)
		}
	}
	for _, c := range cands {
		rd.Candidates = append(rd.Candidates, m.ix.taxa[c].String())
		rd.Possible = append(rd.Possible, m.ix.taxa[c])
	}
	if len(cands) == 1 && o.taxon == none {
		rd.Message += " The nearest is " + rd.Candidates[0] + "; say if that was meant."
	}
	if len(cands) == 0 && rd.Code == CodeNotListed && rd.Taxon == nil {
		rd.Message += " Write another name for it, or add it to the taxon list."
	}
	rd.Message, rd.Remarks = oneStop.Replace(rd.Message), oneStop.Replace(rd.Remarks)
	return &cached{reading: rd, cands: cands}
}

// oneStop: "agg." at the end of a sentence has its full stop already.
var oneStop = strings.NewReplacer("..", ".")

func containsID(list []int32, id int32) bool {
	for _, l := range list {
		if l == id {
			return true
		}
	}
	return false
}

// weigh orders the candidates by what speaks for each and says so. Names that
// are close by their spelling keep that order among equals.
func (m *Matcher) weigh(f *cached, c Context) Reading {
	rd := f.reading
	type weighed struct {
		t    *Taxon
		for_ []string
		at   int
	}
	all := make([]weighed, len(f.cands))
	for i, id := range f.cands {
		w := weighed{t: m.ix.taxa[id], at: i}
		if c.OnPage != nil && c.OnPage(w.t) {
			w.for_ = append(w.for_, "already on the page")
		}
		if c.Month > 0 && w.t.Flight != 0 {
			if w.t.Flight.Has(c.Month) {
				w.for_ = append(w.for_, "in season")
			}
		}
		if c.AtSite != nil && c.AtSite(w.t) {
			w.for_ = append(w.for_, "recorded at the site")
		}
		all[i] = w
	}
	if rd.Taxon == nil {
		sort.SliceStable(all, func(i, j int) bool { return len(all[i].for_) > len(all[j].for_) })
	}
	rd.Candidates, rd.Possible = make([]string, len(all)), make([]*Taxon, len(all))
	said := make([]string, len(all))
	for i, w := range all {
		rd.Candidates[i], rd.Possible[i] = f.reading.Candidates[w.at], w.t
		said[i] = rd.Candidates[i]
		if len(w.for_) > 0 {
			said[i] += " [" + strings.Join(w.for_, ", ") + "]"
		}
	}
	if rd.Taxon == nil {
		rd.Message += " It could be " + orList(said) + "; say which."
	}
	rd.Message = oneStop.Replace(rd.Message)
	return rd
}
