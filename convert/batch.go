package convert

import (
	"context"
	"runtime"
	"sync"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
)

// batchRows is how many source rows a worker takes at once: enough to make
// the hand-over cheap, few enough to keep memory small, and what one processor
// has written near at hand for the next.
const batchRows = 64

// batchDrafts is how many drafts fill a batch before it has all its rows: those
// of a wide table have many.
const batchDrafts = 16 * batchRows

// draftRow is one outcome of the layout, copied so that it outlives the walk.
type draftRow struct {
	number int
	cells  []string
	skip   string
	drafts []layout.Draft
	notes  []layout.Note
	// genus holds, for each draft with an abbreviated genus, what it stands
	// for on this page; nil where there is none.
	genus []string
}

// batch is a run of consecutive rows of one sheet on its way through the
// workers.
type batch struct {
	sheet *sheetRun
	rows  []draftRow
	// texts and drafts back the rows' slices, so that a batch costs few
	// allocations and none when used again. The drafts beyond its length have
	// memory for values.
	texts   []string
	drafts  []layout.Draft
	encoded []byte
	ends    []int // where each encoded row ends
	// private are the numbers of rows whose texts must not be carried down,
	// carried what was.
	private []int
	carried []carriedText
	// compared is what the set has to take in of the rows, or of the first of
	// them where others may yet change.
	compared compared
	done     chan struct{}
}

func (b *batch) reset(s *sheetRun) {
	b.sheet = s
	b.rows, b.texts, b.drafts = b.rows[:0], b.texts[:0], b.drafts[:0]
	b.encoded, b.ends = b.encoded[:0], b.ends[:0]
	b.private, b.carried = b.private[:0], b.carried[:0]
	b.compared.reset()
}

// add copies an outcome into the batch.
func (b *batch) add(o *layout.Outcome, g *genera) {
	r := draftRow{number: o.Row.Number, skip: o.Skip}
	start := len(b.texts)
	for i := range o.Row.Cells {
		b.texts = append(b.texts, o.Row.Cells[i].Text)
	}
	r.cells = b.texts[start:len(b.texts):len(b.texts)]
	first := len(b.drafts)
	for i := range o.Drafts {
		d := b.take(&o.Drafts[i])
		if name, ok := d.Get(layout.Taxon); ok {
			if genus := g.above(name.Text); genus != "" {
				if r.genus == nil {
					r.genus = make([]string, len(o.Drafts))
				}
				r.genus[i] = genus
			}
		}
	}
	r.drafts = b.drafts[first:len(b.drafts):len(b.drafts)]
	if len(o.Notes) > 0 {
		r.notes = append([]layout.Note(nil), o.Notes...)
	}
	r.notes = append(r.notes, doubts(o.Row)...)
	b.rows = append(b.rows, r)
}

// take moves a draft into the batch, and leaves it the memory of one that was
// there before for its next values.
func (b *batch) take(d *layout.Draft) *layout.Draft {
	var spare []layout.Value
	n := len(b.drafts)
	if n < cap(b.drafts) {
		b.drafts = b.drafts[:n+1]
		spare = b.drafts[n].Values[:0]
	} else {
		b.drafts = append(b.drafts, layout.Draft{})
	}
	if cap(spare) == 0 {
		spare = make([]layout.Value, 0, len(d.Values)+2)
	}
	b.drafts[n] = *d
	d.Values = spare
	return &b.drafts[n]
}

// doubts are what the notebook itself noticed about the row's cells.
func doubts(row *notebook.Row) []layout.Note {
	var notes []layout.Note
	if row.Repaired != "" {
		notes = append(notes, layout.Note{
			Verdict: reading.QueryOf("row-repaired", "The line was hard to part into cells: "+row.Repaired+". Check that each value stands in its column."),
			Ref:     notebook.Ref{Col: 1, Row: row.Number},
		})
	}
	for i := range row.Cells {
		if c := &row.Cells[i]; c.PartStruck {
			notes = append(notes, layout.Note{
				Verdict: reading.QueryOf("part-struck", "Part of “"+c.Text+"” is struck through. All of it was read; leave out of the cell what does not count."),
				Ref:     notebook.Ref{Col: i + 1, Row: row.Number}, Text: c.Text,
			})
		}
	}
	return notes
}

// crew reads batches with several workers and appends the results to the
// spool in the order of the rows, whatever the number of workers.
type crew struct {
	rows *spool.Spool
	set  *comparing // takes the records in; nil where nothing does
	// own looks at rows that have changed since a worker read them.
	own  *comparer
	in   chan *batch // to the workers
	free chan *batch
	wait sync.WaitGroup
}

func newCrew(s *settings, workers int, rows *spool.Spool, set *comparing) *crew {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	c := &crew{rows: rows, set: set, in: make(chan *batch, workers), free: make(chan *batch, 2*workers+2)}
	for range cap(c.free) {
		c.free <- &batch{done: make(chan struct{}, 1)}
	}
	f := newFacets(rows.Parts())
	if set != nil {
		c.own = set.comparer(rows.Parts())
	}
	for range workers {
		in := newInterpreter(s, f)
		var look *comparer
		if set != nil {
			look = set.comparer(rows.Parts())
		}
		c.wait.Go(func() {
			for b := range c.in {
				if set != nil && set.stale {
					look = nil
				}
				b.read(in, look)
				b.done <- struct{}{}
			}
		})
	}
	return c
}

// read reads the rows of the batch, and looks at them, where look is not nil.
func (b *batch) read(in *interpreter, look *comparer) {
	var row spool.Row
	for i := range b.rows {
		in.row(b.sheet, &b.rows[i], &row)
		b.note(i, &row)
		b.encoded = spool.Encode(b.encoded, &row)
		b.ends = append(b.ends, len(b.encoded))
		if look != nil && len(b.carried) == 0 {
			look.row(&row, b.sheet, &b.compared)
		}
	}
}

func (c *crew) close() {
	close(c.in)
	c.wait.Wait()
}

// read walks a sheet and spools what its rows say.
func (c *crew) read(ctx context.Context, s *sheetRun, step func(rows int)) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	queue := make(chan *batch, cap(c.free))
	collected := make(chan struct{})
	go func() {
		defer close(collected)
		for b := range queue {
			<-b.done
			if ctx.Err() == nil {
				if err := c.append(b); err != nil {
					cancel(err)
				}
			}
			c.free <- b
		}
	}()
	var b *batch
	send := func() {
		c.in <- b
		queue <- b
		step(len(b.rows))
		b = nil
	}
	err := s.plan.Walk(s.sheet, func(o *layout.Outcome) error {
		if b == nil {
			if ctx.Err() != nil {
				return context.Cause(ctx)
			}
			b = <-c.free
			b.reset(s)
		}
		s.observe(o)
		b.add(o, &s.genera)
		if len(b.rows) == batchRows || len(b.drafts) >= batchDrafts {
			send()
		}
		return nil
	})
	if b != nil && err == nil {
		send()
	} else if b != nil {
		c.free <- b
	}
	close(queue)
	<-collected
	if err == nil && ctx.Err() != nil {
		err = context.Cause(ctx)
	}
	return err
}

func (c *crew) append(b *batch) error {
	if err := b.withoutPrivate(c.rows.Parts()); err != nil {
		return err
	}
	start := 0
	for _, end := range b.ends {
		if err := c.rows.Append(b.encoded[start:end]); err != nil {
			return err
		}
		start = end
	}
	if c.set == nil || c.set.stale {
		return nil
	}
	seen := len(b.compared.rows)
	c.set.take(&b.compared)
	if seen < len(b.ends) {
		return c.lookAt(b, seen)
	}
	return nil
}

// lookAt has the set take in the rows of the batch, from the one at first, that
// no worker has looked at.
func (c *crew) lookAt(b *batch, first int) error {
	var rows encodedRows
	start := 0
	if first > 0 {
		start = b.ends[first-1]
	}
	rows.encoded = b.encoded[start:]
	for _, end := range b.ends[first:] {
		rows.ends = append(rows.ends, end-start)
	}
	c.own.reader = spool.NewReader(c.rows.Parts()) // with the parts of these rows
	err := c.own.batch(&rows, func(int) *sheetRun { return b.sheet }, &b.compared)
	if err == nil {
		c.set.take(&b.compared)
	}
	return err
}

// rewind drops the rows that were appended since the mark.
func (c *crew) rewind(mark spool.Mark) error {
	if c.set != nil {
		c.set.stale = true
	}
	return c.rows.Rewind(mark)
}
