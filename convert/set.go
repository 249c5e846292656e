package convert

import (
	"context"
	"fmt"

	"fieldfare/convert/compare"
	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/convert/when"
	"fieldfare/dwc"
	"fieldfare/gridref"
	"fieldfare/validate"
)

// setView is what the second pass learns of the records as a set.
type setView struct {
	checks *validate.Set
	// slips are the dates that break the order of their page by a year, by
	// sheet; sites has where each site's records usually lie.
	slips   map[int][]when.Slip
	sites   *places.Usual
	squares squares
	// used knows which terms, and so which columns, have a value at all.
	used, usedByEvents *dwc.Used
	lastEvent          string // the id of the last event added
	measured           measuredKinds
	// visits and chances count the records that belong to a trap night or
	// visit, and those that do not.
	visits, chances int
	// coverage is that of the occurrences, visited that of the visits on which
	// nothing was found.
	coverage, visited coverage
	ledger            *ledgerRun
	ownIDs            map[compare.Mark]int // the notebooks' own ids
	// exact is the same of the records as they are, for the full copy; nil
	// where none is asked for.
	exact *setView
	all   bool // nothing is blurred
}

func newView() setView {
	return setView{used: dwc.NewUsed(dwc.RowOccurrence), usedByEvents: dwc.NewUsed(dwc.RowEvent)}
}

// compareAll looks at the records as a set: at those that can be handed in
// for the columns and the coverage, at all of them for the checks.
func compareAll(ctx context.Context, s *settings, books *bookRuns, rows *spool.Spool, job Job, remembered *ledgerRun) (*setView, error) {
	view := newView()
	v := &view
	v.checks, v.slips, v.ownIDs, v.squares = validate.NewSet(), map[int][]when.Slip{}, map[compare.Mark]int{}, squares{}
	if job.Exact {
		full := newView()
		full.all = true
		v.exact = &full
	}
	defer v.checks.Close() // where the work is given up
	v.ledger = remembered
	if err := s.recallPast(ctx, job.Against, v.checks); err != nil {
		return nil, err
	}
	var sites places.Sites
	var page when.Page
	sheet := -1
	p := publisher{settings: s}
	progress, compared := job.progress(), 0
	progress.Stage("Comparing", rows.Rows())
	n := 0
	err := s.pass(ctx, job.Workers, rows, func(row *spool.Row, public []dwc.Occurrence) error {
		if compared%batchRows == 0 {
			progress.Step(batchRows)
		}
		compared++
		if row.Sheet != sheet {
			v.turnPage(sheet, &page)
			sheet = row.Sheet
		}
		for i := range row.Records {
			r := &row.Records[i]
			if f := &r.Facts; f.Dated && f.End-f.Start <= 1 {
				page.Observe(row.Number, when.DateOf(int(f.Start)))
			}
			sites.Add(r.Occurrence.Locality, v.squares.of(r))
			v.checks.Observe(entry(row, r, n))
			o := &public[i]
			if r.State() < reading.Held {
				v.leaves(o, r)
				if v.exact != nil {
					full := r.Occurrence
					p.finish(&full, r)
					v.exact.leaves(&full, r)
				}
			}
			if own := ownID(r); own != "" {
				v.ownIDs[compare.IDMark(own)]++
			}
			v.ledger.observe(n, r, o, books.sheets[row.Sheet])
			n++
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	v.turnPage(sheet, &page)
	v.sites = sites.Settle()
	v.ledger.settle()
	return v, v.checks.Settle()
}

// entry is a record as the checks of the set know it.
func entry(row *spool.Row, r *spool.Record, n int) *validate.Entry {
	return &validate.Entry{N: n, Sheet: row.Sheet, Row: row.Number, Content: r.Content, Visit: r.EmptyVisit, Occurrence: &r.Occurrence, Facts: &r.Facts}
}

// turnPage notes the slips of a page that has been seen whole.
func (v *setView) turnPage(sheet int, page *when.Page) {
	if slips := page.Slips(); len(slips) > 0 {
		v.slips[sheet] = slips
	}
	*page = when.Page{}
}

// squares remembers the squares of references.
type squares map[string]gridref.Square

// of returns the recorded square, or for a place given by latitude and
// longitude the one that it fills; the zero value where there is none.
func (m squares) of(r *spool.Record) gridref.Square {
	f := &r.Facts
	if f.Reference == "" {
		if !f.Placed {
			return gridref.Square{}
		}
		p := gridref.Point{Lat: f.Latitude, Lon: f.Longitude, Uncertainty: float64(f.Radius)}
		square, _ := p.Smallest(p.Serving()) // too rough a place has none
		return square
	}
	return recall(m, r.Facts.Reference, func() gridref.Square {
		read, err := gridref.Parse(r.Facts.Reference)
		if err != nil {
			return gridref.Square{}
		}
		return read.Square
	})
}

// slip asks about a date that breaks its page by a year.
func (v *setView) slip(sheet, row int, r *spool.Record) (reading.Finding, bool) {
	for _, s := range v.slips[sheet] {
		written := when.DateOf(int(r.Facts.Start))
		if s.FirstRow <= row && row <= s.LastRow && r.Facts.Dated && written.Year == s.Written.Year {
			likely := written
			likely.Year += s.Years
			return reading.Finding{
				Verdict: reading.QueryOf("year-breaks-order", fmt.Sprintf("The dates of this page run in order, but for %s: with the year %d it would fit. The old year is easily written on.", written.Words(), likely.Year), likely.Words()),
				About:   "date", Written: r.Occurrence.VerbatimEventDate,
			}, true
		}
	}
	return reading.Finding{}, false
}

// wander asks about a reference far from the usual one of its site.
func (v *setView) wander(s *settings, r *spool.Record) (reading.Finding, bool) {
	verdict := v.sites.Check(r.Occurrence.Locality, v.squares.of(r), s.placeMetres())
	return reading.Finding{Verdict: verdict, About: "grid reference", Written: r.Occurrence.VerbatimCoordinates}, verdict.State != reading.Fair
}

// leaves takes in a record that can be handed in, as it may leave.
func (v *setView) leaves(o *dwc.Occurrence, r *spool.Record) {
	if isVisit(r) {
		v.visits++
	} else {
		v.chances++
	}
	if o.EventID != v.lastEvent {
		// Only the first record of an event describes it.
		v.lastEvent = o.EventID
		e := withoutNames(o).Event()
		v.usedByEvents.Add(&e)
	}
	if r.Facts.Blur == 0 || v.all {
		for i := range r.Measurements {
			v.measured.add(&r.Measurements[i])
		}
	}
	if r.EmptyVisit {
		v.visited.add(o)
		return
	}
	v.used.Add(o)
	v.coverage.add(o)
}

// covers is what the archive covers: visits on which nothing was found are in
// it where its shape has a place for them.
func (v *setView) covers(s *settings) *coverage {
	if v.shape(s) == shapeEvent {
		return v.coverage.with(&v.visited)
	}
	return &v.coverage
}

// shape chooses between an archive of occurrences and one of events.
func (v *setView) shape(s *settings) string {
	if shape := s.project.Dataset.Shape; shape != "" {
		return shape
	}
	if v.visits > 0 {
		return shapeEvent
	}
	return shapeOccurrence
}
