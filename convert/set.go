package convert

import (
	"fmt"

	"fieldfare/convert/compare"
	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/convert/when"
	"fieldfare/gridref"
	"fieldfare/validate"
)

// setView is what there is to know of the records as a set.
type setView struct {
	outline
	checks *validate.Set
	// slips are the dates that break the order of their page by a year, by
	// sheet; sites has where each site's records usually lie.
	slips    map[int][]when.Slip
	sites    *places.Usual
	measured measuredKinds
	ledger   *ledgerRun
	// ownIDs are the notebooks' own ids; blurred has what leaves of blurred
	// records without one.
	ownIDs, blurred validate.Repeats
	// exact is the same of the records as they are, for the full copy; nil
	// where none is asked for.
	exact *setView
	// firsts are the numbers of the first records of the third pass's batches.
	firsts []int
}

// close gives up the temporary files of the set.
func (v *setView) close() {
	v.checks.Close()
	v.ownIDs.Drop()
	v.blurred.Drop()
}

// take takes in what a record, the n-th, has for the set.
func (v *setView) take(n int, r *comparedRecord) {
	v.checks.Take(n, &r.glance)
	none := compare.Mark{}
	if r.own != none {
		v.ownIDs.Add((*[16]byte)(&r.own))
	}
	if r.likeness != none {
		v.blurred.Add((*[16]byte)(&r.likeness))
	}
	for i := range r.measured {
		if !r.blurred {
			v.measured.add(&r.measured[i])
		}
		if v.exact != nil {
			v.exact.measured.add(&r.measured[i])
		}
	}
	if r.line != nil {
		v.ledger.observe(n, *r.line)
	}
}

// entry is a record as the checks of the set know it.
func entry(row *spool.Row, r *spool.Record, n int) *validate.Entry {
	return &validate.Entry{N: n, Sheet: row.Sheet, Row: row.Number, Content: r.Content, Visit: r.EmptyVisit, Occurrence: &r.Occurrence, Facts: &r.Facts}
}

// squares remembers the squares of references. It is for one goroutine.
type squares struct {
	known  map[string]gridref.Square
	last   string // the last reference, of the square ofLast
	ofLast gridref.Square
}

func newSquares() squares { return squares{known: map[string]gridref.Square{}} }

// of returns the recorded square, or for a place given by latitude and
// longitude the one that it fills; the zero value where there is none.
func (m *squares) of(r *spool.Record) gridref.Square {
	f := &r.Facts
	if f.Reference == "" {
		if !f.Placed {
			return gridref.Square{}
		}
		p := gridref.Point{Lat: f.Latitude, Lon: f.Longitude, Uncertainty: float64(f.Radius)}
		square, _ := p.Smallest(p.Serving()) // too rough a place has none
		return square
	}
	if f.Reference != m.last {
		m.last, m.ofLast = f.Reference, recall(m.known, f.Reference, func() gridref.Square {
			read, err := gridref.Parse(f.Reference)
			if err != nil {
				return gridref.Square{}
			}
			return read.Square
		})
	}
	return m.ofLast
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
func (s *settings) wander(sites *places.Usual, q *squares, r *spool.Record) (reading.Finding, bool) {
	verdict := sites.Check(r.Occurrence.Locality, q.of(r), s.placeMetres())
	return reading.Finding{Verdict: verdict, About: "grid reference", Written: r.Occurrence.VerbatimCoordinates}, verdict.State != reading.Fair
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
