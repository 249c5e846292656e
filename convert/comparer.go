package convert

import (
	"fieldfare/convert/compare"
	"fieldfare/convert/ledger"
	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// comparer looks at the records of rows on a goroutine of its own: it does what
// does not depend on their order.
type comparer struct {
	set       *setView
	reader    *spool.Reader
	publisher publisher
	observer  *validate.Observer
	sites     places.Sites
	squares   squares
	// leaving is of the records as they leave, exact as they are.
	leaving, exact batchOutline
	public         dwc.Occurrence
}

// compared is what rows have for the set.
type compared struct {
	rows           []int // how many records each has
	records        []comparedRecord
	leaving, exact batchEvents
}

// comparedRecord is what the set takes in of a record in its order.
type comparedRecord struct {
	glance     validate.Glance
	sheet, row int
	day        int32
	dated      bool // day is one
	blurred    bool
	measured   []spool.Measurement // of a record that leaves
	line       *ledger.Line        // for the ledger, of one without an id of its own
	// own is the mark of the record's own id; likeness that of what leaves of a
	// blurred one without. The zero value is none.
	own, likeness compare.Mark
}

func newComparer(s *settings, v *setView, parts *spool.Parts) *comparer {
	return &comparer{
		set: v, reader: spool.NewReader(parts), publisher: publisher{settings: s}, observer: v.checks.Observer(),
		squares: newSquares(), leaving: batchOutline{newOutline()}, exact: batchOutline{newOutline()},
	}
}

func (m *compared) reset() {
	m.rows, m.records = m.rows[:0], m.records[:0]
	m.leaving.any, m.exact.any = false, false
}

// batch looks at rows of the spool.
func (c *comparer) batch(rows *encodedRows, sheet func(index int) *sheetRun, made *compared) error {
	made.reset()
	return rows.each(c.reader, func(row *spool.Row) {
		c.row(row, sheet(row.Sheet), made)
		for i := range row.Records {
			c.reader.Changed(i, &published)
		}
	})
}

// row looks at the next row, whose records may then be as they leave.
func (c *comparer) row(row *spool.Row, sheet *sheetRun, made *compared) {
	made.rows = append(made.rows, len(row.Records))
	for i := range row.Records {
		if n := len(made.records); n < cap(made.records) {
			made.records = made.records[:n+1]
		} else {
			made.records = append(made.records, comparedRecord{})
		}
		c.record(row, &row.Records[i], sheet, made)
	}
}

func (c *comparer) record(row *spool.Row, r *spool.Record, sheet *sheetRun, made *compared) {
	seen := &made.records[len(made.records)-1]
	seen.sheet, seen.row, seen.blurred = row.Sheet, row.Number, r.Facts.Blur > 0
	seen.day, seen.dated, seen.measured, seen.line = 0, false, nil, nil
	seen.own, seen.likeness = compare.Mark{}, compare.Mark{}
	if f := &r.Facts; f.Dated && f.End-f.Start <= 1 {
		seen.day, seen.dated = f.Start, true
	}
	c.sites.Add(r.Occurrence.Locality, c.squares.of(r))
	c.observer.Look(entry(row, r, 0), &seen.glance)
	public := &c.public
	if r.Facts.Blur > 0 || r.EmptyVisit {
		c.publisher.public(public, r)
	} else {
		public = c.publisher.leave(r)
	}
	if r.State() < reading.Held {
		seen.measured = r.Measurements
		c.leaving.add(public, r, &made.leaving)
		if c.set.exact != nil {
			full := r.Occurrence
			c.publisher.finish(&full, r)
			c.exact.add(&full, r, &made.exact)
		}
	}
	if own := ownID(r); own != "" {
		seen.own = compare.IDMark(own)
		return
	}
	if seen.blurred {
		seen.likeness = blurredContent(public)
	}
	if c.set.ledger.compares() {
		line := lineOf(0, r, public, sheet)
		seen.line = &line
	}
}

// join gives the set what the comparer has kept for itself.
func (c *comparer) join(v *setView, sites *places.Sites) {
	sites.Join(&c.sites)
	v.join(&c.leaving.outline)
	if v.exact != nil {
		v.exact.join(&c.exact.outline)
	}
}
