package convert

import (
	"context"
	"runtime"
	"slices"
	"sync"

	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// passRows is how many rows are decoded at once in the second and third pass:
// few, so that they are still in the processor's cache when they are used.
const passRows = 256

// passBatch is a run of consecutive rows on its way through a pass.
type passBatch struct {
	encoded []byte
	ends    []int // where each encoded row ends
	rows    []spool.Row
	public  [][]dwc.Occurrence
	err     error
	done    chan struct{}
}

// pass yields every row of the spool in order, with its records as they may
// leave. Rows are decoded in the background, by as many goroutines as workers
// says; what is yielded does not depend on it, and is valid only during the
// call.
func (s *settings) pass(ctx context.Context, workers int, rows *spool.Spool, fn func(row *spool.Row, public []dwc.Occurrence) error) error {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var wait sync.WaitGroup
	defer wait.Wait()
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	batches := 2*workers + 2
	work, queue, free := make(chan *passBatch, batches), make(chan *passBatch, batches), make(chan *passBatch, batches)
	for range batches {
		free <- &passBatch{rows: make([]spool.Row, passRows), public: make([][]dwc.Occurrence, passRows), done: make(chan struct{}, 1)}
	}
	for range workers {
		wait.Go(func() {
			p := publisher{settings: s}
			for b := range work {
				b.err = b.decode(&p, rows.Parts())
				b.done <- struct{}{}
			}
		})
	}
	wait.Go(func() {
		defer close(work)
		defer close(queue)
		if err := gather(ctx, rows, free, work, queue); err != nil {
			cancel(err)
		}
	})
	for b := range queue {
		<-b.done
		if ctx.Err() != nil {
			continue
		}
		if err := b.each(fn); err != nil {
			cancel(err)
			continue
		}
		free <- b
	}
	return context.Cause(ctx)
}

// gather fills batches with the encoded rows of the spool.
func gather(ctx context.Context, rows *spool.Spool, free, work, queue chan *passBatch) error {
	var b *passBatch
	send := func() {
		work <- b
		queue <- b
		b = nil
	}
	err := rows.Each(func(encoded []byte) error {
		if b == nil {
			select {
			case <-ctx.Done():
				return context.Cause(ctx)
			case b = <-free:
				b.encoded, b.ends = b.encoded[:0], b.ends[:0]
			}
		}
		b.encoded = append(b.encoded, encoded...)
		b.ends = append(b.ends, len(b.encoded))
		if len(b.ends) == passRows {
			send()
		}
		return nil
	})
	if b != nil && err == nil {
		send()
	}
	return err
}

func (b *passBatch) decode(p *publisher, parts *spool.Parts) error {
	start := 0
	for i, end := range b.ends {
		row := &b.rows[i]
		if err := spool.Decode(b.encoded[start:end], row, parts); err != nil {
			return err
		}
		start = end
		public := slices.Grow(b.public[i][:0], len(row.Records))[:len(row.Records)]
		for j := range row.Records {
			p.public(&public[j], &row.Records[j])
		}
		b.public[i] = public
	}
	return nil
}

func (b *passBatch) each(fn func(row *spool.Row, public []dwc.Occurrence) error) error {
	if b.err != nil {
		return b.err
	}
	for i := range b.ends {
		if err := fn(&b.rows[i], b.public[i]); err != nil {
			return err
		}
	}
	return nil
}
