package convert

import (
	"context"
	"runtime"
	"sync"

	"fieldfare/convert/spool"
)

// passRows is how many rows are looked at together in the second and third
// pass. Batches are the same in each pass, whatever the number of workers.
const passRows = 256

// passBatch is a run of consecutive rows on its way through a pass.
type passBatch[T any] struct {
	rows encodedRows
	made T
	err  error
	done chan struct{}
}

// encodedRows are consecutive rows of the spool.
type encodedRows struct {
	number  int // of the batch, from 0
	encoded []byte
	ends    []int // where each row ends
}

// each reads the rows, one after the other.
func (b *encodedRows) each(reader *spool.Reader, fn func(row *spool.Row)) error {
	start := 0
	for _, end := range b.ends {
		row, err := reader.Read(b.encoded[start:end])
		if err != nil {
			return err
		}
		start = end
		fn(row)
	}
	return nil
}

// pass goes through the rows of the spool, batch by batch. What does not depend
// on their order is made of each batch by as many goroutines as workers says,
// each with a function of its own from worker; settle is given what they made,
// in the order of the rows. It is valid only during the call: its memory is used
// again.
func pass[T any](ctx context.Context, workers int, rows *spool.Spool, worker func() func(rows *encodedRows, made *T) error, settle func(made *T) error) error {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var wait sync.WaitGroup
	defer wait.Wait()
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	batches := 2*workers + 2
	work, queue, free := make(chan *passBatch[T], batches), make(chan *passBatch[T], batches), make(chan *passBatch[T], batches)
	for range batches {
		free <- &passBatch[T]{done: make(chan struct{}, 1)}
	}
	for range workers {
		make := worker()
		wait.Go(func() {
			for b := range work {
				b.err = make(&b.rows, &b.made)
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
		err := b.err
		if err == nil {
			err = settle(&b.made)
		}
		if err != nil {
			cancel(err)
			continue
		}
		free <- b
	}
	return context.Cause(ctx)
}

// gather fills batches with the encoded rows of the spool.
func gather[T any](ctx context.Context, rows *spool.Spool, free, work, queue chan *passBatch[T]) error {
	var b *passBatch[T]
	number := 0
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
				b.rows.number, b.rows.encoded, b.rows.ends = number, b.rows.encoded[:0], b.rows.ends[:0]
				number++
			}
		}
		r := &b.rows
		r.encoded = append(r.encoded, encoded...)
		r.ends = append(r.ends, len(r.encoded))
		if len(r.ends) == passRows {
			send()
		}
		return nil
	})
	if b != nil && err == nil {
		send()
	}
	return err
}
