package convert

import (
	"context"
	"errors"

	"fieldfare/convert/places"
	"fieldfare/convert/spool"
	"fieldfare/convert/when"
	"fieldfare/validate"
)

// comparing looks at the records as a set: at those that can be handed in for
// the columns and the coverage, at all of them for the checks. The crew that
// reads the notebooks does it on the way, each worker with a comparer of its
// own. Where rows turn out to be read another way than they were seen, or were
// read into parts of the set before, a pass of its own does it.
type comparing struct {
	settings  *settings
	against   string
	view      *setView
	comparers []*comparer
	page      when.Page
	sheet     int // of the page
	rows      int // taken in so far
	records   int
	stale     bool // rows that were taken in are no longer what was read
}

func newComparing(ctx context.Context, s *settings, job Job, remembered *ledgerRun) (*comparing, error) {
	c := &comparing{settings: s, against: job.Against, view: &setView{ledger: remembered}}
	if job.Exact {
		c.view.exact = &setView{}
	}
	return c, c.start(ctx)
}

// start begins with no rows, and with what was recorded before.
func (c *comparing) start(ctx context.Context) error {
	c.close()
	remembered, exact := c.view.ledger, c.view.exact
	*c.view = setView{outline: newOutline(), checks: validate.NewSet(), slips: map[int][]when.Slip{}, ledger: remembered}
	if exact != nil {
		c.view.exact = &setView{outline: newOutline()}
	}
	remembered.restart()
	c.comparers, c.page, c.sheet, c.rows, c.records, c.stale = nil, when.Page{}, -1, 0, 0, false
	return c.settings.recallPast(ctx, c.against, c.view.checks)
}

// close gives up the temporary files of the set.
func (c *comparing) close() {
	if c.view.checks != nil {
		c.view.close()
	}
}

// comparer returns a comparer for a goroutine. All must be asked for before
// settle.
func (c *comparing) comparer(parts *spool.Parts) *comparer {
	one := newComparer(c.settings, c.view, parts)
	c.comparers = append(c.comparers, one)
	return one
}

// take takes in what a comparer has made of rows, in the order of the rows.
func (c *comparing) take(made *compared) {
	v, records := c.view, made.records
	for _, n := range made.rows {
		if c.rows%passRows == 0 {
			v.firsts = append(v.firsts, c.records)
		}
		c.rows++
		for i := range records[:n] {
			r := &records[i]
			if r.sheet != c.sheet {
				c.turnPage()
				c.sheet = r.sheet
			}
			if r.dated {
				c.page.Observe(r.row, when.DateOf(int(r.day)))
			}
			v.take(c.records, r)
			c.records++
		}
		records = records[n:]
	}
	v.between(&made.leaving)
	if v.exact != nil {
		v.exact.between(&made.exact)
	}
}

// turnPage notes the slips of a page that has been seen whole.
func (c *comparing) turnPage() {
	if slips := c.page.Slips(); len(slips) > 0 {
		c.view.slips[c.sheet] = slips
	}
	c.page = when.Page{}
}

// settle draws the conclusions once every row has been taken in.
func (c *comparing) settle() (*setView, error) {
	c.turnPage()
	var sites places.Sites
	for _, one := range c.comparers {
		one.join(c.view, &sites)
	}
	c.comparers = nil
	c.view.sites = sites.Settle()
	c.view.ledger.settle()
	return c.view, errors.Join(c.view.checks.Settle(), c.view.ownIDs.Settle(true), c.view.blurred.Settle(false))
}

// compareAll looks at the records as a set, where the crew has not seen all of
// them as they are.
func compareAll(ctx context.Context, job Job, c *comparing, books *bookRuns, rows *spool.Spool) (*setView, error) {
	progress := job.progress()
	progress.Stage("Comparing", rows.Rows())
	if !c.stale && c.rows == rows.Rows() {
		progress.Step(c.rows)
		return c.settle()
	}
	if err := c.start(ctx); err != nil {
		return nil, err
	}
	err := pass(ctx, job.Workers, rows, func() func(*encodedRows, *compared) error {
		one := c.comparer(rows.Parts())
		return func(rows *encodedRows, made *compared) error { return one.batch(rows, books.sheet, made) }
	}, func(made *compared) error {
		c.take(made)
		progress.Step(len(made.rows))
		return nil
	})
	if err != nil {
		return nil, err
	}
	return c.settle()
}
