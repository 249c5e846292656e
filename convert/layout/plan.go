package layout

import (
	"sort"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// Options are what is known about a sheet beyond its cells.
type Options struct {
	// FileYear is a year that holds for the whole file, 0 where there is
	// none; the sheet's own wins.
	FileYear int
	// Overrides are the [[notebook]] entries of the project file; those about
	// other sheets are ignored.
	Overrides []Entry
	// Probe knows the lists; nil is allowed.
	Probe Probe
	// ZeroIsAbsence: 0 or a dash in a table says that the species was looked
	// for and not found; otherwise such cells are left out.
	ZeroIsAbsence bool
	// Others are the other sheets of the workbook: a cover, or a key to codes,
	// may speak of this one.
	Others []notebook.Sheet
}

// Plan is the decision about one sheet: which parts are lists and tables, what
// each column means, what holds for the whole page. It is not for use by
// several goroutines at once.
type Plan struct {
	page    *page
	opts    Options
	entries []Entry // those of the overrides that fit
	blocks  []*block
	fixed   []fixedRow
	notes   []Note            // about the whole page
	side    map[int]sideCells // by row: facts that stand beside a list,
	beside  facts             // and what they say
	tally   tally
	// cover is what another sheet says of the whole workbook, coverFrom its name.
	cover     facts
	coverFrom string
}

// Survey walks the sheet once and decides how to read it. It keeps the head of
// the sheet in memory and no more than headings beyond it.
func Survey(s notebook.Sheet, o Options) (*Plan, error) {
	if o.Probe == nil {
		o.Probe = plain{}
	}
	pg, err := readPage(s, o.Probe)
	if err != nil {
		return nil, err
	}
	p := &Plan{page: pg, opts: o}
	for _, e := range o.Overrides {
		if e.Fits(pg.file, pg.sheet) && !e.empty() {
			p.entries = append(p.entries, e)
		}
	}
	pg.findInitials()
	pg.findBands()
	pg.findLegend()
	p.readOthers()
	p.takeSideFacts()
	p.findBlocks()
	if s.Hidden() {
		p.notes = append(p.notes, Note{Verdict: reading.QueryOf("hidden-sheet",
			"A hidden sheet of the workbook was read like the others. If it should not be, say page = \"skip\" for it in the project file."),
			Ref: notebook.Ref{Col: 1, Row: 1}, Text: "(hidden sheets)"}) // one question for all of them
	}
	sort.SliceStable(p.fixed, func(i, j int) bool { return p.fixed[i].number < p.fixed[j].number })
	if pg.complete { // a trial, so that Print can tell what is carried and skipped
		if err := p.Walk(pg, func(*Outcome) error { return nil }); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// The page is a sheet itself, for the trial walk over rows kept whole.

// File returns the notebook's path.
func (p *page) File() string { return p.file }

// Name returns the sheet's name.
func (p *page) Name() string { return p.sheet }

// Hidden reports false: that the sheet is hidden is noted by Survey.
func (p *page) Hidden() bool { return false }

// HiddenColumns returns none; the page keeps them itself.
func (p *page) HiddenColumns() []int { return nil }

// Walk yields the rows kept.
func (p *page) Walk(fn func(*notebook.Row) error) error {
	for i := range p.rows {
		r := &p.rows[i]
		row := notebook.Row{Number: r.number, Cells: r.cells, Hidden: r.hidden, Struck: r.struck}
		if err := fn(&row); err != nil {
			return err
		}
	}
	return nil
}
