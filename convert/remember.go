package convert

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/compare"
	"fieldfare/convert/ledger"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"
)

// ledgerRun is the ledger at work: records that were handed in before keep
// their ids, corrected or not. Without a project file there is no ledger, and
// a nil ledgerRun does nothing. The lines of this run wait in a temporary file;
// of each line that the ledger had before, and of each record of a run that finds
// it with lines, it keeps several hundred bytes.
type ledgerRun struct {
	path   string
	seen   stage.Seen // how the file was when it was read
	ledger *ledger.Ledger
	known  map[ledger.Content]int // line, by content
	ids    map[compare.Mark]bool  // under which something was handed in
	events map[[16]byte]string    // eventID, by fingerprint

	// Of this run:
	times    map[[16]byte]int          // how often a content was seen
	present  map[ledger.Content]string // source, by content
	sources  map[string]bool
	visits   map[[16]byte]bool
	fresh    []ledger.Line
	freshNo  []int        // number of the record that a fresh line is of
	adopted  map[int]int  // line, by number of the record
	gone     map[int]bool // lines whose record is in its notebook no more
	handed   *ledger.Builder
	replaced map[int]bool // lines that a line of this run stands for
}

// openLedger loads the ledger beside the project file. The folder is for a
// temporary file.
func openLedger(s *settings, folder string) (*ledgerRun, error) {
	if s.project.Path == "" {
		return nil, nil
	}
	m := &ledgerRun{
		handed: ledger.NewBuilder(folder),
		path:   filepath.Join(filepath.Dir(s.project.Path), ledger.FileName),
		known:  map[ledger.Content]int{}, ids: map[compare.Mark]bool{}, events: map[[16]byte]string{}, times: map[[16]byte]int{}, present: map[ledger.Content]string{},
		sources: map[string]bool{}, visits: map[[16]byte]bool{}, adopted: map[int]int{}, gone: map[int]bool{}, replaced: map[int]bool{},
	}
	m.seen = stage.See(m.path)
	var err error
	if m.ledger, err = ledger.Load(m.path); err != nil {
		return nil, err
	}
	for i := range m.ledger.Lines {
		l := &m.ledger.Lines[i]
		if _, found := m.known[l.Content]; !found { // as two may be after a merge
			m.known[l.Content] = i
		}
		if !l.Visit {
			m.ids[compare.IDMark(l.OccurrenceID)] = true
		}
		if _, found := m.events[l.Event]; !found && l.EventID != "" {
			m.events[l.Event] = l.EventID
		}
	}
	return m, nil
}

// restart forgets what was seen of this run's records.
func (m *ledgerRun) restart() {
	if m == nil {
		return
	}
	clear(m.times)
	clear(m.present)
	clear(m.sources)
	clear(m.visits)
	m.fresh, m.freshNo = nil, nil
}

// compares tells whether the records of this run are to be compared with
// earlier ones.
func (m *ledgerRun) compares() bool { return m != nil && len(m.ledger.Lines) > 0 }

// source names a notebook and sheet without the folder, which may move.
func source(sheet *sheetRun) string { return filepath.Base(sheet.file) + "/" + sheet.name }

// observe takes in a record without an id of its own, held or not: its number
// and its line, in which the ordinal is not yet counted.
func (m *ledgerRun) observe(n int, l ledger.Line) {
	m.times[l.Content.Print]++
	l.Content.Ordinal = m.times[l.Content.Print]
	m.present[l.Content] = l.Source
	m.sources[l.Source] = true
	m.visits[l.Event] = true
	if _, found := m.known[l.Content]; !found {
		m.fresh = append(m.fresh, l)
		m.freshNo = append(m.freshNo, n)
	}
}

// settle finds which new records are corrected forms of earlier ones.
func (m *ledgerRun) settle() {
	if m == nil {
		return
	}
	m.dropSpent()
	gone := m.ledger.Gone(
		func(c ledger.Content) (string, bool) { s, found := m.present[c]; return s, found },
		func(source string) bool { return m.sources[source] },
	)
	byContent := map[ledger.Content]int{}
	gone = slices.DeleteFunc(gone, func(l ledger.Line) bool {
		line, first := m.known[l.Content]
		return !first || m.gone[line] || m.ledger.Lines[line].OccurrenceID != l.OccurrenceID
	})
	for _, l := range gone {
		byContent[l.Content] = m.known[l.Content]
		m.gone[m.known[l.Content]] = true
	}
	moved := map[[16]byte]map[string]bool{} // a new visit: the earlier ones of its records
	pairs := ledger.Match(gone, m.fresh)
	given := map[string]bool{}
	for _, i := range slices.Sorted(maps.Keys(pairs)) {
		line := byContent[gone[pairs[i]].Content]
		if id := m.ledger.Lines[line].OccurrenceID; given[id] {
			continue
		} else if id != "" {
			given[id] = true
		}
		m.adopted[m.freshNo[i]] = line
		old, visit := &m.ledger.Lines[line], m.fresh[i].Event
		if _, known := m.events[visit]; !known && !m.visits[old.Event] {
			if moved[visit] == nil {
				moved[visit] = map[string]bool{}
			}
			moved[visit][old.EventID] = true
		}
	}
	taken := map[string]int{}
	for _, ids := range moved {
		for id := range ids {
			taken[id]++
		}
	}
	for visit, ids := range moved {
		for id := range ids {
			if len(ids) == 1 && taken[id] == 1 {
				m.events[visit] = id
			}
		}
	}
}

// dropSpent sees to it that an id goes to one record alone: after a merge of
// two ledgers several lines may bear it, of a record before and after a
// correction. The record that is there now has it.
func (m *ledgerRun) dropSpent() {
	holder := map[string]int{}
	for i := range m.ledger.Lines {
		l := &m.ledger.Lines[i]
		if _, here := m.present[l.Content]; !here || m.known[l.Content] != i || l.Visit {
			continue
		}
		if _, given := holder[l.OccurrenceID]; given {
			delete(m.known, l.Content)
			continue
		}
		holder[l.OccurrenceID] = i
	}
	for i := range m.ledger.Lines {
		if line, given := holder[m.ledger.Lines[i].OccurrenceID]; given && line != i {
			m.gone[i] = true
		}
	}
}

// unread returns what was handed in of notebooks that this run has not read,
// under whatever name, and the names of these.
func (m *ledgerRun) unread(books *bookRuns) (ids map[compare.Mark]bool, notebooks []string) {
	if m == nil {
		return nil, nil
	}
	ids = map[compare.Mark]bool{}
	read := map[string]bool{} // notebooks, some by another name
	for _, b := range books.books {
		read[filepath.Base(b.file)] = true
	}
	notebook := func(l *ledger.Line) string { name, _, _ := strings.Cut(l.Source, "/"); return name }
	for i := range m.ledger.Lines {
		l := &m.ledger.Lines[i]
		if _, here := m.present[l.Content]; here || m.gone[i] {
			read[notebook(l)] = true
		}
	}
	for i := range m.ledger.Lines {
		l := &m.ledger.Lines[i]
		name := notebook(l)
		if read[name] {
			continue
		}
		if l.Visit {
			ids[compare.VisitMark(l.EventID)] = true
		} else {
			ids[compare.IDMark(l.OccurrenceID)] = true
		}
		if !slices.Contains(notebooks, name) {
			notebooks = append(notebooks, name)
		}
	}
	slices.Sort(notebooks)
	return ids, notebooks
}

// line returns the ledger's line of a record, if it has one.
func (m *ledgerRun) line(n int, c ledger.Content) (int, bool) {
	if line, found := m.known[c]; found {
		return line, true
	}
	line, found := m.adopted[n]
	return line, found
}

// id returns the id under which a record was handed in before.
func (m *ledgerRun) id(n int, r *spool.Record, ordinal int) (string, bool) {
	if m == nil {
		return "", false
	}
	line, found := m.line(n, ledger.Content{Print: r.Content, Ordinal: ordinal})
	if !found || m.ledger.Lines[line].Visit {
		return "", false // a visit has no id of its own
	}
	return m.ledger.Lines[line].OccurrenceID, true
}

// knows tells whether something was handed in under the id.
func (m *ledgerRun) knows(id string) bool { return m != nil && m.ids[compare.IDMark(id)] }

// eventID returns the id of a visit: that under which it was handed in
// before, else one made of its fingerprint.
func (m *ledgerRun) eventID(visit [16]byte) string {
	if m != nil {
		if id, found := m.events[visit]; found {
			return id
		}
	}
	return eventIDOf(visit)
}

// handIn notes a record that was handed in.
func (m *ledgerRun) handIn(n, ordinal int, r *spool.Record, o *dwc.Occurrence, sheet *sheetRun) {
	if m == nil || ownID(r) != "" {
		return
	}
	l := lineOf(ordinal, r, o, sheet)
	l.OccurrenceID, l.EventID = o.OccurrenceID, o.EventID
	if line, found := m.line(n, l.Content); found {
		m.replaced[line] = true
	}
	m.handed.Add(l)
}

// ledgerChange is the ledger of a run before it is in its place: written, or
// with the error that kept it from being written. The zero value is none.
type ledgerChange struct {
	pending *stage.Pending
	err     error
}

// prepare writes the ledger beside its place: this run's records, those that
// are held at present, and those of notebooks that were not read. Where the
// ledger is not as it was read, that is an error: what somebody has added since
// would be lost.
func (m *ledgerRun) prepare() (c ledgerChange, err error) {
	if m == nil {
		return c, nil
	}
	if m.seen.Changed() {
		return c, &stage.Error{Path: m.path, Problem: "this file, which remembers ids, was changed while the run was at work, by another run or by hand. Nothing was replaced; run again"}
	}
	waiting := map[int]bool{} // lines of corrected records that are held: they keep their ids
	for _, line := range m.adopted {
		waiting[line] = true
	}
	for i := range m.ledger.Lines {
		if !m.replaced[i] && (!m.gone[i] || waiting[i]) {
			m.handed.Add(m.ledger.Lines[i])
		}
	}
	c.pending, c.err = stage.Prepare(m.path, m.handed.Write)
	return c, nil
}

// commit puts the ledger in its place.
func (c ledgerChange) commit() error {
	if c.pending == nil {
		return c.err
	}
	return c.pending.Commit()
}

// close gives the temporary file up.
func (m *ledgerRun) close() {
	if m != nil {
		m.handed.Close()
	}
}

// discard leaves the ledger as it was.
func (c ledgerChange) discard() {
	if c.pending != nil {
		c.pending.Discard()
	}
}

// lineOf says of a record what the ledger remembers.
func lineOf(ordinal int, r *spool.Record, o *dwc.Occurrence, sheet *sheetRun) ledger.Line {
	w := &r.Occurrence
	return ledger.Line{
		Visit: r.EmptyVisit, Content: ledger.Content{Print: r.Content, Ordinal: ordinal}, Event: eventKey(o), Source: source(sheet),
		Fields: ledger.Fields{
			Date: w.VerbatimEventDate, Name: w.VerbatimIdentification,
			Count: joinRemarks(w.IndividualCount, w.OrganismQuantity) + " " + w.Sex + " " + w.LifeStage,
			Place: joinRemarks(w.Locality, w.VerbatimCoordinates), People: joinRemarks(w.RecordedBy, w.IdentifiedBy),
			Rest: joinRemarks(w.OccurrenceRemarks, w.SamplingProtocol),
		},
	}
}
